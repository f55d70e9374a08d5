/** Surfaces and files of them for the tests, written by hand: an open shell of rings, as a cover is. */
import type { Mesh } from '../../src/scan/index.ts';

/** Half a tube of so many rings by so many steps, open at both ends and along the bottom; some inches long. */
export function arch(rings: number, steps: number, size = 1): Mesh {
  const corners: number[] = [];
  for (let i = 0; i <= rings; i += 1) {
    for (let j = 0; j <= steps; j += 1) {
      const angle = (Math.PI * j) / steps;
      // as a 32-bit float, so that every format gives the very same number back
      for (const value of [(i / rings) * 900, Math.cos(angle) * 300, Math.sin(angle) * 250]) {
        corners.push(Math.fround(value * size));
      }
    }
  }
  const triangles: number[] = [];
  const at = (i: number, j: number): number => i * (steps + 1) + j;
  for (let i = 0; i < rings; i += 1) {
    for (let j = 0; j < steps; j += 1) {
      triangles.push(at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j), at(i + 1, j + 1), at(i, j + 1));
    }
  }
  return { corners: Float64Array.from(corners), triangles: Uint32Array.from(triangles) };
}

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

const corner = ({ corners }: Mesh, n: number): readonly number[] => [...corners.subarray(3 * n, 3 * n + 3)];
const faces = ({ triangles }: Mesh): readonly (readonly number[])[] =>
  Array.from({ length: triangles.length / 3 }, (_, n) => [...triangles.subarray(3 * n, 3 * n + 3)]);

export function stl(mesh: Mesh, heading = 'a scan'): Uint8Array {
  const count = mesh.triangles.length / 3;
  const bytes = new Uint8Array(84 + 50 * count);
  bytes.set(bytesOf(heading));
  const view = new DataView(bytes.buffer);
  view.setUint32(80, count, true);
  faces(mesh).forEach((face, n) => {
    face
      .flatMap((each) => corner(mesh, each))
      .forEach((value, k) => {
        view.setFloat32(84 + 50 * n + 12 + 4 * k, value, true);
      });
  });
  return bytes;
}

export const stlWords = (mesh: Mesh): Uint8Array =>
  bytesOf(
    [
      'solid arch',
      ...faces(mesh).flatMap((face) => [
        ' facet normal 0 0 0',
        '  outer loop',
        ...face.map((each) => `   vertex ${corner(mesh, each).join(' ')}`),
        '  endloop',
        ' endfacet',
      ]),
      'endsolid arch',
      '',
    ].join('\n'),
  );

export const obj = (mesh: Mesh): Uint8Array =>
  bytesOf(
    [
      '# a scan',
      ...Array.from({ length: mesh.corners.length / 3 }, (_, n) => `v ${corner(mesh, n).join(' ')}`),
      'vn 0 0 1',
      ...faces(mesh).map((face) => `f ${face.map((each) => `${each + 1}//1`).join(' ')}`),
      '',
    ].join('\r\n'),
  );

const plyHeading = (mesh: Mesh, form: string): string =>
  [
    'ply',
    `format ${form} 1.0`,
    'comment a scan',
    `element vertex ${mesh.corners.length / 3}`,
    'property float x',
    'property float y',
    'property float z',
    'property uchar red',
    `element face ${mesh.triangles.length / 3}`,
    'property list uchar int vertex_indices',
    'end_header',
    '',
  ].join('\n');

export const plyWords = (mesh: Mesh): Uint8Array =>
  bytesOf(
    plyHeading(mesh, 'ascii') +
      Array.from({ length: mesh.corners.length / 3 }, (_, n) => `${corner(mesh, n).join(' ')} 7\n`).join('') +
      faces(mesh)
        .map((face) => `3 ${face.join(' ')}\n`)
        .join(''),
  );

export function ply(mesh: Mesh, little: boolean): Uint8Array {
  const heading = bytesOf(plyHeading(mesh, little ? 'binary_little_endian' : 'binary_big_endian'));
  const [many, count] = [mesh.corners.length / 3, mesh.triangles.length / 3];
  const bytes = new Uint8Array(heading.length + 13 * many + 13 * count);
  bytes.set(heading);
  const view = new DataView(bytes.buffer);
  let at = heading.length;
  for (let n = 0; n < many; n += 1, at += 13) {
    corner(mesh, n).forEach((value, k) => {
      view.setFloat32(at + 4 * k, value, little);
    });
  }
  for (const face of faces(mesh)) {
    view.setUint8(at, 3);
    face.forEach((each, k) => {
      view.setInt32(at + 1 + 4 * k, each, little);
    });
    at += 13;
  }
  return bytes;
}

/** The surface below a node that turns it a quarter about z, makes it twice as large and shifts it. */
export function glb(mesh: Mesh, node: object = {}): Uint8Array {
  const corners = new Uint8Array(Float32Array.from(mesh.corners).buffer);
  const triangles = new Uint8Array(Uint32Array.from(mesh.triangles).buffer);
  const told = {
    asset: { version: '2.0' },
    scene: 0,
    scenes: [{ nodes: [0] }],
    nodes: [{ children: [1], ...node }, { mesh: 0 }],
    meshes: [{ primitives: [{ attributes: { POSITION: 0 }, indices: 1 }] }],
    accessors: [
      { bufferView: 0, componentType: 5126, count: mesh.corners.length / 3, type: 'VEC3', ...ends(mesh) },
      { bufferView: 1, componentType: 5125, count: mesh.triangles.length, type: 'SCALAR' },
    ],
    bufferViews: [
      { buffer: 0, byteOffset: 0, byteLength: corners.length },
      { buffer: 0, byteOffset: corners.length, byteLength: triangles.length },
    ],
    buffers: [{ byteLength: corners.length + triangles.length }],
  };
  const words = JSON.stringify(told);
  const text = bytesOf(words.padEnd(4 * Math.ceil(words.length / 4)));
  const data = new Uint8Array([...corners, ...triangles]);
  const bytes = new Uint8Array(12 + 8 + text.length + 8 + data.length);
  const view = new DataView(bytes.buffer);
  [0x46546c67, 2, bytes.length, text.length, 0x4e4f534a].forEach((value, k) => {
    view.setUint32(4 * k, value, true);
  });
  bytes.set(text, 20);
  view.setUint32(20 + text.length, data.length, true);
  view.setUint32(24 + text.length, 0x004e4942, true);
  bytes.set(data, 28 + text.length);
  return bytes;
}

function ends({ corners }: Mesh): { min: number[]; max: number[] } {
  const along = (axis: number): number[] => [...corners].filter((_, k) => k % 3 === axis);
  return {
    min: [0, 1, 2].map((axis) => Math.min(...along(axis))),
    max: [0, 1, 2].map((axis) => Math.max(...along(axis))),
  };
}
