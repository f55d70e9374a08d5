/**
 * Skins of triangles as one binary glTF 2.0 file, a node a pipe.
 *
 * In    named skins in axes with z upwards, metres
 * Out   the bytes; glTF has y upwards, which its root node turns to
 *
 * [glTF] Khronos Group, glTF 2.0 specification, chapter 4 (binary container) and 3.6 (accessors), from memory
 */
import type { Skin } from './kernel.ts';

export interface NamedSkin {
  readonly name: string;
  readonly skin: Skin;
}

const FLOAT = 5126;
const UNSIGNED_INT = 5125;
const VERTICES = 34962;
const INDICES = 34963;

/** −90° about x as a quaternion: z upwards becomes y upwards. */
const Y_UP = [-Math.SQRT1_2, 0, 0, Math.SQRT1_2];

export function glbOf(skins: readonly NamedSkin[]): Uint8Array {
  const chunks: Uint8Array[] = [];
  let length = 0;
  const views: object[] = [];
  const accessors: object[] = [];
  const put = (values: Float32Array | Uint32Array, target: number, of: object): number => {
    const bytes = new Uint8Array(values.buffer, values.byteOffset, values.byteLength);
    views.push({ buffer: 0, byteOffset: length, byteLength: bytes.length, target });
    accessors.push({ bufferView: views.length - 1, ...of });
    chunks.push(bytes);
    length += bytes.length;
    return accessors.length - 1;
  };
  const vectors = (values: readonly number[], bounds: boolean): number => {
    const data = Float32Array.from(values);
    const of = { componentType: FLOAT, count: data.length / 3, type: 'VEC3' };
    return put(data, VERTICES, bounds ? { ...of, ...extent(data) } : of);
  };
  const meshes = skins.map(({ name, skin }) => ({
    name,
    primitives: [
      {
        attributes: { POSITION: vectors(skin.positions, true), NORMAL: vectors(skin.normals, false) },
        indices: put(Uint32Array.from(skin.triangles), INDICES, {
          componentType: UNSIGNED_INT,
          count: skin.triangles.length,
          type: 'SCALAR',
        }),
        material: 0,
      },
    ],
  }));
  const json = {
    asset: { version: '2.0', generator: 'Flatpatch' },
    scene: 0,
    scenes: [{ nodes: [0] }],
    nodes: [
      { name: 'primaries', rotation: Y_UP, children: skins.map((_, k) => k + 1) },
      ...skins.map(({ name }, k) => ({ name, mesh: k })),
    ],
    meshes,
    materials: [
      {
        name: 'tube',
        pbrMetallicRoughness: {
          baseColorFactor: [0.72, 0.71, 0.69, 1],
          metallicFactor: 0.8,
          roughnessFactor: 0.45,
        },
        doubleSided: true,
      },
    ],
    accessors,
    bufferViews: views,
    buffers: [{ byteLength: length }],
  };
  return container(new TextEncoder().encode(JSON.stringify(json)), chunks, length);
}

function extent(data: Float32Array): { readonly min: number[]; readonly max: number[] } {
  const min = [Infinity, Infinity, Infinity];
  const max = [-Infinity, -Infinity, -Infinity];
  data.forEach((value, k) => {
    min[k % 3] = Math.min(min[k % 3]!, value);
    max[k % 3] = Math.max(max[k % 3]!, value);
  });
  return { min, max };
}

const padded = (length: number): number => Math.ceil(length / 4) * 4;

function container(json: Uint8Array, chunks: readonly Uint8Array[], length: number): Uint8Array {
  const jsonRoom = padded(json.length);
  const dataRoom = padded(length);
  const bytes = new Uint8Array(12 + 8 + jsonRoom + 8 + dataRoom);
  const view = new DataView(bytes.buffer);
  const words = (at: number, ...values: readonly number[]): void =>
    values.forEach((value, k) => {
      view.setUint32(at + 4 * k, value, true);
    });
  const word = (text: string): number =>
    new DataView(new TextEncoder().encode(text).buffer).getUint32(0, true);
  words(0, word('glTF'), 2, bytes.length);
  words(12, jsonRoom, word('JSON'));
  // what JSON is short of a word is filled with spaces, as the format asks
  bytes.fill(0x20, 20, 20 + jsonRoom);
  bytes.set(json, 20);
  words(20 + jsonRoom, dataRoom, word('BIN\0'));
  let at = 28 + jsonRoom;
  for (const chunk of chunks) {
    bytes.set(chunk, at);
    at += chunk.length;
  }
  return bytes;
}
