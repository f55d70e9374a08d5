/**
 * Scans read from every format, against three.js's own loaders (a general-purpose library, as installed), and damaged
 * files told with their place.
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import type { BufferGeometry, Mesh as Drawn } from 'three';
import { GLTFLoader } from 'three/examples/jsm/loaders/GLTFLoader.js';
import { OBJLoader } from 'three/examples/jsm/loaders/OBJLoader.js';
import { PLYLoader } from 'three/examples/jsm/loaders/PLYLoader.js';
import { STLLoader } from 'three/examples/jsm/loaders/STLLoader.js';
import { type Mesh, readMesh } from '../../src/scan/index.ts';
import { arch, glb, obj, ply, plyWords, stl, stlWords } from './made.ts';

const made = arch(7, 11);

const bufferOf = (bytes: Uint8Array): ArrayBuffer => bytes.slice().buffer as ArrayBuffer;
const wordsOf = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);

/** All triangles as nine numbers each, as a drawing library holds them. */
function soupOf(geometry: BufferGeometry): number[][] {
  const flat = geometry.index === null ? geometry : geometry.toNonIndexed();
  const at = flat.attributes.position!.array;
  return Array.from({ length: at.length / 9 }, (_, n) => [...at.slice(9 * n, 9 * n + 9)]);
}

const soup = ({ corners, triangles }: Mesh): number[][] =>
  Array.from({ length: triangles.length / 3 }, (_, n) =>
    [0, 1, 2].flatMap((k) => {
      const at = 3 * triangles[3 * n + k]!;
      return [...corners.slice(at, at + 3)];
    }),
  );

function read(bytes: Uint8Array, name: string): Mesh {
  const answer = readMesh(bytes, name);
  assert.ok(answer.ok, answer.ok ? '' : answer.message);
  return answer.mesh;
}

const geometryOf = (of: { readonly children: readonly unknown[] }): BufferGeometry =>
  (of.children[0] as Drawn).geometry;

const FORMATS: readonly (readonly [
  name: string,
  file: string,
  bytes: Uint8Array,
  theirs: () => BufferGeometry,
])[] = [
  ['STL, binary', 'a.stl', stl(made), () => new STLLoader().parse(bufferOf(stl(made)))],
  ['STL, words', 'a.stl', stlWords(made), () => new STLLoader().parse(wordsOf(stlWords(made)))],
  ['OBJ', 'a.OBJ', obj(made), () => geometryOf(new OBJLoader().parse(wordsOf(obj(made))))],
  ['PLY, words', 'a.ply', plyWords(made), () => new PLYLoader().parse(wordsOf(plyWords(made)))],
  ['PLY, low end first', 'a.ply', ply(made, true), () => new PLYLoader().parse(bufferOf(ply(made, true)))],
  ['PLY, high end first', 'a.ply', ply(made, false), () => new PLYLoader().parse(bufferOf(ply(made, false)))],
];

for (const [name, file, bytes, theirs] of FORMATS) {
  test(`${name}: the same triangles as the drawing library reads`, () => {
    const ours = read(bytes, file);
    assert.deepEqual(soup(ours), soupOf(theirs()));
    // corners that STL writes again are one again
    assert.equal(ours.corners.length, made.corners.length);
  });
}

test('GLB with nodes that turn, shift and scale: the same corners as the drawing library', async () => {
  const half = Math.SQRT1_2;
  const bytes = glb(made, { translation: [100, -20, 5], rotation: [half, 0, 0, half], scale: [2, 3, 0.5] });
  const scene = await new Promise<{ scene: Drawn }>((done, failed) => {
    new GLTFLoader().parse(bufferOf(bytes), '', (gltf) => done(gltf as unknown as { scene: Drawn }), failed);
  });
  scene.scene.updateMatrixWorld(true);
  const theirs: number[][] = [];
  scene.scene.traverse((each) => {
    const drawn = each as Drawn;
    if (drawn.isMesh) theirs.push(...soupOf(drawn.geometry.clone().applyMatrix4(drawn.matrixWorld)));
  });
  const ours = soup(read(bytes, 'a.glb'));
  assert.equal(ours.length, theirs.length);
  ours.flat().forEach((value, k) => {
    // their corners are 32-bit floats
    assert.ok(Math.abs(value - theirs.flat()[k]!) < 1e-3, `${value} and ${theirs.flat()[k]}`);
  });
});

test('a binary STL that begins with "solid" is binary all the same', () => {
  assert.equal(read(stl(made, 'solid by some program'), 'a.stl').triangles.length, made.triangles.length);
});

test('faces of four corners are cut in two, corners counted from the end', () => {
  const square = 'v 0 0 0\nv 1 0 0\nv 1 1 0\nv 0 1 0\nf -4 -3 -2 -1\n';
  assert.deepEqual([...read(new TextEncoder().encode(square), 'a.obj').triangles], [0, 1, 2, 0, 2, 3]);
});

const told = (bytes: Uint8Array, name: string): string => {
  const answer = readMesh(bytes, name);
  assert.ok(!answer.ok);
  assert.ok(answer.remedy.length > 10);
  return answer.message;
};
const asBytes = (text: string): Uint8Array => new TextEncoder().encode(text);

test('damaged files are told with the place', () => {
  assert.equal(told(stl(made).subarray(0, 4000), 'a.stl'), 'The file says 154 triangles and holds 78.');
  assert.match(
    told(stlWords(made).subarray(0, 5000), 'a.stl'),
    /ends within a triangle, after \d+ whole ones/,
  );
  assert.match(told(asBytes('v 0 0 0\nv 1 zero 0\n'), 'a.obj'), /^Line 2: y of the corner is "zero"/);
  assert.match(told(asBytes('v 0 0 0\nf 1 2 3\n'), 'a.obj'), /^Triangle 1 asks for corner 2; the file has 1/);
  assert.match(told(asBytes('v 0 0 0\nf 1 0 1\n'), 'a.obj'), /^Line 2: "0" names no corner/);
  assert.match(told(asBytes('v 0 0 0\nv 1 0 0\nv 0 1 0\n'), 'a.obj'), /no triangle/);
  assert.match(told(ply(made, true).subarray(0, 900), 'a.ply'), /^The file ends at corner \d+ of 96/);
  assert.match(
    told(asBytes('ply\nformat ascii 2\nelement vertex many\n'), 'a.ply'),
    /heading of the file does not end/,
  );
  assert.match(
    told(asBytes('ply\nformat ascii 1.0\nelement vertex -1\nend_header\n'), 'a.ply'),
    /^Line 3: "-1" is no count/,
  );
  assert.match(told(glb(made).subarray(0, 2000), 'a.glb'), /says \d+ bytes and holds 2000/);
  assert.match(told(asBytes('%PDF'), 'cover.pdf'), /"cover.pdf" is no scan/);
  assert.match(told(new Uint8Array(0), 'a.stl'), /ends after 0 bytes/);
});

test('whatever bytes are given, the answer is a surface of sound numbers or a sentence', () => {
  const wholes = [stl(made), stlWords(made), obj(made), ply(made, true), plyWords(made), glb(made)];
  const names = ['a.stl', 'a.stl', 'a.obj', 'a.ply', 'a.ply', 'a.glb'];
  fc.assert(
    fc.property(
      fc.nat(wholes.length - 1),
      fc.nat(),
      fc.array(fc.tuple(fc.nat(), fc.nat(255)), { maxLength: 6 }),
      (which, cut, bites) => {
        const whole = wholes[which]!;
        const bytes = whole.slice(0, cut % (whole.length + 1));
        for (const [at, value] of bites)
          if (bytes.length > 0) bytes[at % Math.min(bytes.length, 1200)] = value;
        const answer = readMesh(bytes, names[which]!);
        if (!answer.ok) return;
        assert.ok(answer.mesh.corners.every(Number.isFinite));
        assert.ok(answer.mesh.triangles.every((corner) => corner < answer.mesh.corners.length / 3));
      },
    ),
    { numRuns: 600 },
  );
});
