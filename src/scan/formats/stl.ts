/**
 * STL, binary and text.
 *
 * Binary: 80 bytes of heading, a count, then 50 bytes a triangle: normal, three corners as 32-bit floats, two bytes
 * that nobody agrees on. Text: `facet`, `vertex` and so on as words. The normals are not read: many programs write
 * them wrongly, and the order of the corners says the same.
 *
 * [STL]  StereoLithography Interface Specification, 3D Systems, 1988 (from memory)
 */
import type { Mesh } from '../mesh.ts';
import { cutOff, growingNumbers, otherForm } from './reading.ts';

const HEADING = 80;
const TRIANGLE = 50;

export function readStl(bytes: Uint8Array): Mesh {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const said = bytes.length >= HEADING + 4 ? view.getUint32(HEADING, true) : undefined;
  // a binary heading may begin with "solid" too: the size settles it
  if (said !== undefined && bytes.length === HEADING + 4 + said * TRIANGLE) return binary(view, said);
  if (beginsWith(bytes, 'solid') && isText(bytes)) return text(bytes);
  if (said === undefined)
    throw cutOff(`The file ends after ${bytes.length} bytes, before its first triangle.`);
  const holds = Math.floor((bytes.length - HEADING - 4) / TRIANGLE);
  if (holds >= said) return binary(view, said);
  throw cutOff(`The file says ${said} triangles and holds ${holds}.`);
}

function binary(view: DataView, count: number): Mesh {
  const corners = new Float64Array(9 * count);
  for (let n = 0; n < count; n += 1) {
    const at = HEADING + 4 + n * TRIANGLE + 12;
    for (let k = 0; k < 9; k += 1) corners[9 * n + k] = view.getFloat32(at + 4 * k, true);
  }
  return { corners, triangles: Uint32Array.from({ length: 3 * count }, (_, k) => k) };
}

function text(bytes: Uint8Array): Mesh {
  const corners = growingNumbers();
  const words = new TextDecoder().decode(bytes);
  // of the whole grammar only the corners matter
  const vertex = /\bvertex\s+(\S+)\s+(\S+)\s+(\S+)/g;
  for (let found = vertex.exec(words); found !== null; found = vertex.exec(words)) {
    for (const part of found.slice(1)) {
      const value = Number(part);
      if (!Number.isFinite(value)) {
        const line = words.slice(0, found.index).split('\n').length;
        throw otherForm(`Line ${line}: "${part}" is no number.`);
      }
      corners.push(value);
    }
  }
  if (corners.length % 9 !== 0 || !/\bendsolid\b/.test(words.slice(-2000))) {
    throw cutOff(`The file ends within a triangle, after ${Math.floor(corners.length / 9)} whole ones.`);
  }
  return {
    corners: corners.done(),
    triangles: Uint32Array.from({ length: corners.length / 3 }, (_, k) => k),
  };
}

export const beginsWith = (bytes: Uint8Array, word: string): boolean =>
  [...word].every((letter, k) => bytes[k] === letter.charCodeAt(0));

/** No zero byte and nothing of control but tab and line ends in the first part. */
const isText = (bytes: Uint8Array): boolean =>
  bytes.subarray(0, 1024).every((byte) => byte >= 32 || byte === 9 || byte === 10 || byte === 13);
