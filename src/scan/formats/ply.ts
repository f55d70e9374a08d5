/**
 * PLY: a heading in words that says what follows, then corners and faces as text or binary, either end first.
 *
 * [PLY]  G. Turk, The PLY Polygon File Format, Stanford 1994 (from memory)
 */
import type { Mesh } from '../mesh.ts';
import { cutOff, growingIndices, otherForm } from './reading.ts';

interface Property {
  readonly name: string;
  readonly kind: Kind;
  /** Kind of its count, where it is a list. */
  readonly count?: Kind;
}

interface Element {
  readonly name: string;
  readonly many: number;
  readonly properties: readonly Property[];
}

type Kind = 'i1' | 'u1' | 'i2' | 'u2' | 'i4' | 'u4' | 'f4' | 'f8';

const KINDS: Readonly<Record<string, Kind>> = {
  ...{ char: 'i1', uchar: 'u1', short: 'i2', ushort: 'u2', int: 'i4', uint: 'u4', float: 'f4', double: 'f8' },
  ...{
    int8: 'i1',
    uint8: 'u1',
    int16: 'i2',
    uint16: 'u2',
    int32: 'i4',
    uint32: 'u4',
    float32: 'f4',
    float64: 'f8',
  },
};

const LONGEST_HEADING = 100_000;

export function readPly(bytes: Uint8Array): Mesh {
  const start = new TextDecoder('latin1').decode(bytes.subarray(0, LONGEST_HEADING));
  const end = /^end_header[^\n]*\n/m.exec(start);
  if (end === null) throw cutOff('The heading of the file does not end.');
  const { form, elements } = heading(start.slice(0, end.index));
  const from = end.index + end[0].length;
  const next = form === 'ascii' ? words(bytes, from) : binary(bytes, from, form === 'binary_little_endian');
  let corners = new Float64Array(0);
  const triangles = growingIndices();
  for (const element of elements) {
    if (element.name === 'vertex') corners = vertices(element, next);
    else faces(element, next, element.name === 'face' ? triangles : undefined);
  }
  return { corners, triangles: triangles.done() };
}

function heading(text: string): { form: string; elements: Element[] } {
  const elements: { name: string; many: number; properties: Property[] }[] = [];
  let form = '';
  text.split(/\r?\n/).forEach((row, k) => {
    const parts = row.trim().split(/\s+/);
    const wrong = (what: string) => otherForm(`Line ${k + 1}: ${what}.`);
    const kindOf = (name: string | undefined): Kind => {
      if (!Object.hasOwn(KINDS, name ?? '')) throw wrong(`"${name ?? ''}" is no kind of number`);
      return KINDS[name!]!;
    };
    if (parts[0] === 'format') form = parts[1] ?? '';
    else if (parts[0] === 'element') {
      const many = Number(parts[2]);
      if (!Number.isInteger(many) || many < 0) throw wrong(`"${parts[2] ?? ''}" is no count`);
      elements.push({ name: parts[1] ?? '', many, properties: [] });
    } else if (parts[0] === 'property') {
      const of = elements.at(-1);
      if (of === undefined) throw wrong('a property stands before any element');
      of.properties.push(
        parts[1] === 'list'
          ? { name: parts[4] ?? '', count: kindOf(parts[2]), kind: kindOf(parts[3]) }
          : { name: parts[2] ?? '', kind: kindOf(parts[1]) },
      );
    }
  });
  if (!['ascii', 'binary_little_endian', 'binary_big_endian'].includes(form)) {
    throw otherForm(`The heading names the form "${form}", which is none of PLY.`);
  }
  return { form, elements };
}

/** Gives the next number of a kind, one after another. */
type Next = (kind: Kind, where: string) => number;

function words(bytes: Uint8Array, from: number): Next {
  let at = from;
  return (_, where) => {
    while (bytes[at]! <= 32) at += 1;
    const start = at;
    while (bytes[at]! > 32) at += 1;
    if (start === at) throw cutOff(`The file ends at ${where}.`);
    const written = String.fromCharCode(...bytes.subarray(start, Math.min(at, start + 64)));
    const value = Number(written);
    if (!Number.isFinite(value)) throw otherForm(`At ${where} stands "${written}", which is no number.`);
    return value;
  };
}

const SIZES: Readonly<Record<Kind, number>> = { i1: 1, u1: 1, i2: 2, u2: 2, i4: 4, u4: 4, f4: 4, f8: 8 };

function binary(bytes: Uint8Array, from: number, little: boolean): Next {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let at = from;
  return (kind, where) => {
    const here = at;
    at += SIZES[kind];
    if (at > bytes.length) throw cutOff(`The file ends at ${where}.`);
    switch (kind) {
      case 'i1':
        return view.getInt8(here);
      case 'u1':
        return view.getUint8(here);
      case 'i2':
        return view.getInt16(here, little);
      case 'u2':
        return view.getUint16(here, little);
      case 'i4':
        return view.getInt32(here, little);
      case 'u4':
        return view.getUint32(here, little);
      case 'f4':
        return view.getFloat32(here, little);
      case 'f8':
        return view.getFloat64(here, little);
    }
  };
}

/** More than a scanner writes; a heading that says more is damaged, and would ask for all the memory there is. */
const MOST = 60_000_000;

function vertices(element: Element, next: Next): Float64Array<ArrayBuffer> {
  const axes = ['x', 'y', 'z'].map((axis) => element.properties.findIndex(({ name }) => name === axis));
  if (axes.includes(-1)) throw otherForm('The corners of the file have no x, y and z.');
  if (element.many > MOST) throw otherForm(`The heading says ${element.many} corners.`);
  const corners = new Float64Array(3 * element.many);
  for (let n = 0; n < element.many; n += 1) {
    const where = `corner ${n + 1} of ${element.many}`;
    element.properties.forEach((property, k) => {
      const value = numbersAt(property, next, where);
      const axis = axes.indexOf(k);
      if (axis >= 0) corners[3 * n + axis] = value[0]!;
    });
  }
  return corners;
}

const LISTS = ['vertex_indices', 'vertex_index'];

function faces(element: Element, next: Next, into: ReturnType<typeof growingIndices> | undefined): void {
  for (let n = 0; n < element.many; n += 1) {
    const where = `${element.name} ${n + 1} of ${element.many}`;
    for (const property of element.properties) {
      const face = numbersAt(property, next, where);
      if (into === undefined || !LISTS.includes(property.name)) continue;
      for (let k = 2; k < face.length; k += 1) {
        for (const each of [face[0]!, face[k - 1]!, face[k]!]) into.push(each);
      }
    }
  }
}

const LONGEST_LIST = 10_000;

function numbersAt(property: Property, next: Next, where: string): readonly number[] {
  if (property.count === undefined) return [next(property.kind, where)];
  const many = next(property.count, where);
  if (!(many >= 0 && many <= LONGEST_LIST)) throw otherForm(`At ${where} stands a list of ${many}.`);
  return Array.from({ length: many }, () => next(property.kind, where));
}
