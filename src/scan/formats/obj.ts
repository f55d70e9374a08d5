/**
 * OBJ: `v` lines are corners, `f` lines faces by corner number, from one up or from the last back. Faces of more than
 * three corners are cut into a fan. All other lines (normals, textures, materials, groups) say nothing of the shape.
 *
 * Read byte by byte: a scan of two million triangles is a hundred megabytes of text.
 *
 * [OBJ]  Wavefront object file format, version 3.0, as reproduced by Library of Congress, fdd000507 (from memory)
 */
import type { Mesh } from '../mesh.ts';
import { growingIndices, growingNumbers, otherForm } from './reading.ts';

const LINE = 10;
const RETURN = 13;
const SPACE = 32;
const TAB = 9;
const SLASH = 47;
const [V, F] = [118, 102];

export function readObj(bytes: Uint8Array): Mesh {
  const corners = growingNumbers();
  const triangles = growingIndices();
  const face: number[] = [];
  let line = 1;
  let at = 0;
  const blank = (byte: number | undefined): boolean => byte === SPACE || byte === TAB || byte === RETURN;
  const skip = (): void => {
    while (blank(bytes[at])) at += 1;
  };
  const word = (): string => {
    const from = at;
    while (at < bytes.length && !blank(bytes[at]) && bytes[at] !== LINE) at += 1;
    return String.fromCharCode(...bytes.subarray(from, Math.min(at, from + 64)));
  };
  const number = (what: string): number => {
    skip();
    const written = word();
    const value = Number(written);
    if (written === '' || !Number.isFinite(value)) {
      throw otherForm(
        `Line ${line}: ${what} is ${written === '' ? 'missing' : `"${written}", which is no number`}.`,
      );
    }
    return value;
  };
  while (at < bytes.length) {
    skip();
    const key = bytes[at];
    const alone = blank(bytes[at + 1]);
    if (key === V && alone) {
      at += 1;
      for (const axis of 'xyz') corners.push(number(`${axis} of the corner`));
    } else if (key === F && alone) {
      at += 1;
      face.length = 0;
      for (skip(); at < bytes.length && bytes[at] !== LINE; skip()) face.push(corner(corners.length / 3));
      if (face.length < 3) throw otherForm(`Line ${line}: a face of ${face.length} corners is none.`);
      for (let k = 2; k < face.length; k += 1) {
        for (const each of [face[0]!, face[k - 1]!, face[k]!]) triangles.push(each);
      }
    }
    while (at < bytes.length && bytes[at] !== LINE) at += 1;
    at += 1;
    line += 1;
  }
  return { corners: corners.done(), triangles: triangles.done() };

  /** The corner that a part of a face names: what comes before its first slash. */
  function corner(known: number): number {
    const from = at;
    let value = 0;
    const back = bytes[at] === 45;
    if (back) at += 1;
    for (; bytes[at]! >= 48 && bytes[at]! <= 57; at += 1) value = 10 * value + bytes[at]! - 48;
    const ended = at >= bytes.length || blank(bytes[at]) || bytes[at] === LINE || bytes[at] === SLASH;
    if (!ended || at === from || value === 0) {
      at = from;
      throw otherForm(`Line ${line}: "${word()}" names no corner.`);
    }
    while (at < bytes.length && !blank(bytes[at]) && bytes[at] !== LINE) at += 1;
    // a corner may be named before its line; the count from the end may not
    if (back && value > known)
      throw otherForm(`Line ${line}: the face counts ${value} corners back; there are ${known}.`);
    return back ? known - value : value - 1;
  }
}
