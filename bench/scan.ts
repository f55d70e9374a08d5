/**
 * A scan of two million triangles read and looked over, as binary STL and as OBJ, against the drawing library's own
 * loaders (three.js) reading the same bytes in the same run.
 *
 *   node --import tsx bench/scan.ts [triangles]
 *
 * Exit code 1 when the two do not read the same number of triangles; times are only reported.
 */
import { OBJLoader } from 'three/examples/jsm/loaders/OBJLoader.js';
import { STLLoader } from 'three/examples/jsm/loaders/STLLoader.js';
import { lookOver, readMesh } from '../src/scan/index.ts';
import { arch, obj, stl } from '../tests/scan/made.ts';

const asked = Number(process.argv[2] ?? 2_000_000);
const steps = 1000;
const made = arch(Math.ceil(asked / (2 * steps)), steps);

function timed<T>(work: () => T): readonly [T, number] {
  const start = performance.now();
  const is = work();
  return [is, performance.now() - start];
}

function compared(name: string, bytes: Uint8Array, theirs: () => number): void {
  const [read, ours] = timed(() => readMesh(bytes, name));
  if (!read.ok) throw new Error(read.message);
  const [like, looking] = timed(() => lookOver(read.mesh));
  const [count, reference] = timed(theirs);
  process.stdout.write(
    `${name}, ${(bytes.length / 1e6).toFixed(0)} MB, ${like.triangles} triangles: read and welded in ${(ours / 1000).toFixed(1)} s, ` +
      `${(ours / reference).toFixed(2)} times the drawing library without welding; looked over in ${(looking / 1000).toFixed(1)} s\n`,
  );
  if (count !== like.triangles) {
    process.stdout.write(`the drawing library reads ${count}: DISAGREE\n`);
    process.exitCode = 1;
  }
}

const asStl = stl(made);
compared(
  'a.stl',
  asStl,
  () => new STLLoader().parse(asStl.slice().buffer as ArrayBuffer).attributes.position!.count / 3,
);
const asObj = obj(made);
compared('a.obj', asObj, () => {
  const [first] = new OBJLoader().parse(new TextDecoder().decode(asObj)).children;
  return (first as import('three').Mesh).geometry.attributes.position!.count / 3;
});
