/** What a scan is like, its unit by its size, and its place by datum points: closed forms and facts of topology. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { laidIn, lookOver, type Mesh, possibleUnits } from '../../src/scan/index.ts';
import { near } from '../near.ts';
import { arch } from './made.ts';

/** The six faces of a box as twelve triangles, all seen from outside. */
const CUBE: Mesh = {
  corners: Float64Array.from([0, 1, 2, 3, 4, 5, 6, 7].flatMap((n) => [n & 1, (n >> 1) & 1, n >> 2])),
  triangles: Uint32Array.from([
    ...[0, 2, 1, 1, 2, 3, 4, 5, 6, 5, 7, 6, 0, 1, 4, 1, 5, 4],
    ...[2, 6, 3, 3, 6, 7, 0, 4, 2, 2, 4, 6, 1, 3, 5, 3, 7, 5],
  ]),
};

test('a closed box: area six, no hole, nothing turned', () => {
  const is = lookOver(CUBE);
  assert.deepEqual([is.area, is.holes.length, is.turned, is.crowded, is.slivers], [6, 0, 0, 0, 0]);
});

test('one triangle out: one hole, its rim 2 + √2 about the middle of its sides', () => {
  const is = lookOver({ ...CUBE, triangles: CUBE.triangles.slice(3) });
  assert.equal(is.holes.length, 1);
  near(is.holes[0]!.rim, 2 + Math.SQRT2, 1e-12);
  assert.equal(is.holes[0]!.at[2], 0);
});

test('one triangle turned over: its three edges are told, and no hole is made of it', () => {
  const triangles = CUBE.triangles.slice();
  triangles.set([0, 1, 2], 0);
  const is = lookOver({ ...CUBE, triangles });
  assert.deepEqual([is.turned, is.holes.length], [3, 0]);
});

test('a triangle twice: its edges are crowded', () => {
  const is = lookOver({ ...CUBE, triangles: Uint32Array.from([...CUBE.triangles, 0, 2, 1]) });
  assert.equal(is.crowded, 3);
});

test('an arch: one rim of two straights and two half ellipses; area near that of half a tube', () => {
  const is = lookOver(arch(40, 200));
  assert.equal(is.holes.length, 1);
  // half the perimeter of an ellipse of 300 and 250 by Ramanujan's second formula, 864.99 (from memory)
  const h = ((300 - 250) / 550) ** 2;
  const half = (Math.PI * 550 * (1 + (3 * h) / (10 + Math.sqrt(4 - 3 * h)))) / 2;
  near(is.holes[0]!.rim, 2 * 900 + 2 * half, 0.1);
  near(is.area, 900 * half, 40);
});

test('a size tells the unit: a cover is between a hand and a car long', () => {
  assert.deepEqual(possibleUnits(1400), ['mm']);
  assert.deepEqual(possibleUnits(1.4), ['m']);
  assert.deepEqual(possibleUnits(140), ['cm', 'in']);
  assert.deepEqual(possibleUnits(0.0001), []);
});

const quarter = (p: readonly number[]): [number, number, number] => [
  -p[1]! / 1000 - 2,
  p[0]! / 1000,
  p[2]! / 1000 + 0.3,
];
const PLACES = [
  [0, 0, 0],
  [900, 0, 0],
  [0, 300, 0],
  [450, 0, 250],
] as const;
const datums = PLACES.map((onScan, k) => ({ name: `D${k + 1}`, onScan, onCar: quarter(onScan) }));

test('laid in by datum points: a quarter turn and a shift are found again', () => {
  const mesh = arch(3, 4);
  const laid = laidIn(mesh, 'mm', datums);
  assert.ok(laid.ok);
  for (let n = 0; n < mesh.corners.length; n += 3) {
    const is = quarter([...mesh.corners.slice(n, n + 3)]);
    for (const axis of [0, 1, 2]) near(laid.mesh.corners[n + axis]!, is[axis]!, 1e-12);
  }
  assert.ok(laid.rms < 1e-12);
});

test('a wrong unit, a mirror image, points on a line: told before anything is laid', () => {
  const mesh = arch(3, 4);
  const refusal = (unit: 'mm' | 'in' | 'cm', of: typeof datums): string => {
    const laid = laidIn(mesh, unit, of);
    assert.ok(!laid.ok);
    return `${laid.message} ${laid.remedy}`;
  };
  assert.match(refusal('in', datums), /0\.0394 times as far apart.*The scan is in mm/);
  const turned = datums.map((each) => ({
    ...each,
    onScan: [each.onScan[0], -each.onScan[1], each.onScan[2]] as const,
  }));
  assert.match(refusal('mm', turned as typeof datums), /mirror image/);
  assert.match(refusal('mm', datums.slice(0, 2)), /2 datum points; three are needed/);
  assert.match(refusal('mm', [datums[0]!, datums[1]!, datums[0]!]), /on one line/);
});
