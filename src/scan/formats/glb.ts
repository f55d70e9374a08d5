/**
 * GLB, the binary form of glTF 2.0: a chunk of JSON that tells of meshes and where their nodes stand, and a chunk of
 * bytes. Triangles, strips and fans are read, with the nodes' own places; what is packed by an extension is refused by
 * its name. glTF is in metres.
 *
 * [glTF]  Khronos, glTF 2.0 Specification (ISO/IEC 12113:2022), sections 3.5 to 3.7 and 4.4 (from memory)
 */
import { z } from 'zod';
import type { Mesh } from '../mesh.ts';
import { cutOff, growingIndices, growingNumbers, otherForm } from './reading.ts';

const index = z.int().min(0);
const form = z.object({
  scene: index.optional(),
  scenes: z.array(z.object({ nodes: z.array(index).optional() })).optional(),
  nodes: z
    .array(
      z.object({
        mesh: index.optional(),
        children: z.array(index).optional(),
        matrix: z.array(z.number()).length(16).optional(),
        translation: z.array(z.number()).length(3).optional(),
        rotation: z.array(z.number()).length(4).optional(),
        scale: z.array(z.number()).length(3).optional(),
      }),
    )
    .optional(),
  meshes: z
    .array(
      z.object({
        primitives: z.array(
          z.object({
            attributes: z.record(z.string(), index),
            indices: index.optional(),
            mode: index.optional(),
          }),
        ),
      }),
    )
    .optional(),
  accessors: z
    .array(
      z.object({
        bufferView: index.optional(),
        byteOffset: index.optional(),
        componentType: index,
        count: index,
        type: z.string(),
        sparse: z.unknown().optional(),
      }),
    )
    .optional(),
  bufferViews: z
    .array(
      z.object({
        buffer: index,
        byteOffset: index.optional(),
        byteLength: index,
        byteStride: index.optional(),
      }),
    )
    .optional(),
  extensionsRequired: z.array(z.string()).optional(),
});
type Form = z.output<typeof form>;
type Node = NonNullable<Form['nodes']>[number];

const MAGIC = 0x46546c67;
const JSON_CHUNK = 0x4e4f534a;
const BYTES_CHUNK = 0x004e4942;

export function readGlb(bytes: Uint8Array): Mesh {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length < 20 || view.getUint32(0, true) !== MAGIC)
    throw otherForm('The file does not begin as a GLB does.');
  if (view.getUint32(4, true) !== 2)
    throw otherForm(`The file is glTF ${view.getUint32(4, true)}; version 2 is read.`);
  const said = view.getUint32(8, true);
  if (said > bytes.length) throw cutOff(`The file says ${said} bytes and holds ${bytes.length}.`);
  const { told, data } = chunks(bytes, view, said);
  const packed = told.extensionsRequired ?? [];
  if (packed.length > 0) throw otherForm(`The surface is packed by ${packed.join(', ')}, which is not read.`);
  return gathered(told, data);
}

function chunks(bytes: Uint8Array, view: DataView, end: number): { told: Form; data: Uint8Array } {
  let told: Form | undefined;
  let data = new Uint8Array(0);
  for (let at = 12; at + 8 <= end; ) {
    const length = view.getUint32(at, true);
    const kind = view.getUint32(at + 4, true);
    if (at + 8 + length > end) throw cutOff(`A part of ${length} bytes goes past the end of the file.`);
    const part = bytes.slice(at + 8, at + 8 + length);
    if (kind === JSON_CHUNK && told === undefined) told = described(part);
    if (kind === BYTES_CHUNK && data.length === 0) data = part;
    at += 8 + length;
  }
  if (told === undefined) throw otherForm('The file has no part that tells what is in it.');
  return { told, data };
}

function described(part: Uint8Array): Form {
  let plain: unknown;
  try {
    plain = JSON.parse(new TextDecoder().decode(part));
  } catch {
    throw otherForm('The part of the file that tells what is in it is no JSON.');
  }
  const read = form.safeParse(plain);
  if (read.success) return read.data;
  const [first] = read.error.issues;
  throw otherForm(`In the file ${first?.path.join('.') ?? ''} is not as glTF has it.`);
}

type Placing = readonly number[];
const STILL: Placing = [1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1];

function gathered(told: Form, data: Uint8Array): Mesh {
  const corners = growingNumbers();
  const triangles = growingIndices();
  const nodes = told.nodes ?? [];
  const walk = (number: number, above: Placing, depth: number): void => {
    const node = nodes[number];
    if (node === undefined || depth > nodes.length)
      throw otherForm('The nodes of the file do not hang together.');
    const here = times(above, placingOf(node));
    for (const each of told.meshes?.[node.mesh ?? -1]?.primitives ?? []) {
      const mode = each.mode ?? 4;
      if (mode < 4) continue;
      const at = numbersOf(told, data, each.attributes.POSITION, 3);
      const first = corners.length / 3;
      for (let n = 0; n < at.length; n += 3) {
        for (let row = 0; row < 3; row += 1) {
          corners.push(
            here[row]! * at[n]! + here[4 + row]! * at[n + 1]! + here[8 + row]! * at[n + 2]! + here[12 + row]!,
          );
        }
      }
      const order =
        each.indices === undefined
          ? Float64Array.from({ length: at.length / 3 }, (_, k) => k)
          : numbersOf(told, data, each.indices, 1);
      for (const corner of inThrees(order, mode)) triangles.push(first + corner);
    }
    for (const child of node.children ?? []) walk(child, here, depth + 1);
  };
  const scene = told.scenes?.[told.scene ?? 0]?.nodes ?? nodes.map((_, k) => k);
  for (const root of scene) walk(root, STILL, 0);
  return { corners: corners.done(), triangles: triangles.done() };
}

/** Triangles (4), strips (5) and fans (6) as corners three by three. */
function* inThrees(order: Float64Array, mode: number): Generator<number> {
  if (mode === 4) {
    for (let k = 0; k + 2 < order.length; k += 3) yield* [order[k]!, order[k + 1]!, order[k + 2]!];
    return;
  }
  for (let k = 2; k < order.length; k += 1) {
    if (mode === 6) yield* [order[0]!, order[k - 1]!, order[k]!];
    // every other triangle of a strip is turned over
    else
      yield* k % 2 === 0
        ? [order[k - 2]!, order[k - 1]!, order[k]!]
        : [order[k - 1]!, order[k - 2]!, order[k]!];
  }
}

const SIZES: Readonly<Record<number, number>> = { 5120: 1, 5121: 1, 5122: 2, 5123: 2, 5125: 4, 5126: 4 };

function numbersOf(told: Form, data: Uint8Array, number: number | undefined, wide: number): Float64Array {
  const of = told.accessors?.[number ?? -1];
  if (of === undefined) throw otherForm('A surface of the file has no corners.');
  const size = SIZES[of.componentType];
  if (of.sparse !== undefined || size === undefined || of.type !== (wide === 3 ? 'VEC3' : 'SCALAR')) {
    throw otherForm(`The numbers ${number} of the file are stored in a way that is not read.`);
  }
  const part = told.bufferViews?.[of.bufferView ?? -1];
  if (part === undefined || part.buffer !== 0)
    throw otherForm('The surface stands in another file beside this one.');
  const start = (part.byteOffset ?? 0) + (of.byteOffset ?? 0);
  const step = part.byteStride ?? size * wide;
  if (of.count > 0 && start + (of.count - 1) * step + size * wide > data.length) {
    throw cutOff(`The numbers ${number} go past the end of the file.`);
  }
  const view = new DataView(data.buffer, data.byteOffset, data.byteLength);
  const out = new Float64Array(of.count * wide);
  for (let n = 0; n < of.count; n += 1) {
    for (let k = 0; k < wide; k += 1)
      out[n * wide + k] = one(view, start + n * step + k * size, of.componentType);
  }
  return out;
}

function one(view: DataView, at: number, kind: number): number {
  switch (kind) {
    case 5120:
      return view.getInt8(at);
    case 5121:
      return view.getUint8(at);
    case 5122:
      return view.getInt16(at, true);
    case 5123:
      return view.getUint16(at, true);
    case 5125:
      return view.getUint32(at, true);
    default:
      return view.getFloat32(at, true);
  }
}

/** Four by four, column after column, as glTF writes it. */
function placingOf(node: Node): Placing {
  if (node.matrix !== undefined) return node.matrix;
  const [x, y, z, w] = node.rotation ?? [0, 0, 0, 1];
  const [a, b, c] = node.scale ?? [1, 1, 1];
  const [p, q, r] = node.translation ?? [0, 0, 0];
  const turn = [
    [1 - 2 * (y! * y! + z! * z!), 2 * (x! * y! + z! * w!), 2 * (x! * z! - y! * w!)],
    [2 * (x! * y! - z! * w!), 1 - 2 * (x! * x! + z! * z!), 2 * (y! * z! + x! * w!)],
    [2 * (x! * z! + y! * w!), 2 * (y! * z! - x! * w!), 1 - 2 * (x! * x! + y! * y!)],
  ];
  const columns = [a!, b!, c!].map((size, k) => [...turn[k]!.map((value) => value * size), 0]);
  return [...columns.flat(), p!, q!, r!, 1];
}

const times = (a: Placing, b: Placing): Placing =>
  Array.from({ length: 16 }, (_, n) => {
    const [column, row] = [n >> 2, n & 3];
    return [0, 1, 2, 3].reduce((sum, k) => sum + a[4 * k + row]! * b[4 * column + k]!, 0);
  });
