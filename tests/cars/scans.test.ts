/** The demo's scan as the car file has it, and what is told when file, unit or datum points are wrong. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { type Car, openCar, primariesProblem, scanOf } from '../../src/questions/index.ts';
import { near } from '../near.ts';

const folder = new URL('../../cars/ashgarth-501/', import.meta.url);
const text = readFileSync(new URL('car.yaml', folder), 'utf8');
const files = Object.fromEntries(
  ['arm-front.csv', 'arm-rear.csv'].map((name) => [name, readFileSync(new URL(name, folder), 'utf8')]),
);
const bytes = readFileSync(new URL('cover.stl', folder));

function carWith(change: (text: string) => string = (whole) => whole): Car {
  const read = openCar({ text: change(text), files });
  assert.ok(read.ok, JSON.stringify(read.ok ? '' : read.problems));
  return read.car;
}

const told = (car: Car, name = 'cover', of: Uint8Array | undefined = bytes): string => {
  const is = scanOf(car, name, of);
  assert.ok(!is.reached);
  return is.problems.map(({ code, message, remedy }) => `${code}: ${message} ${remedy}`).join('; ');
};

test('laid in, the cover stands where tools/make-cover.ts had it: 500 mm half wide at x −1340, 880 high', () => {
  const is = scanOf(carWith(), 'cover', bytes);
  assert.ok(is.reached);
  const { corners } = is.mesh;
  const along = (axis: number): number[] => [...corners].filter((_, k) => k % 3 === axis);
  near(Math.max(...along(0)), -1.34, 4e-4);
  near(Math.min(...along(0)), -2.45, 4e-4);
  near(Math.max(...along(1)), 0.5, 6e-4);
  near(Math.min(...along(1)), -0.5, 6e-4);
  near(Math.max(...along(2)), 0.88, 6e-4);
  // the datum points of the file are written to a tenth of a millimetre, each shaken by 0.15 at most
  assert.ok(is.rms < 2e-4);
  assert.equal(is.doubts.length, 1);
  assert.match(is.doubts[0]!, /^A hole with a rim of 502 mm/);
});

test('a wrong unit is told by the size, or by the datum points where the size could be', () => {
  assert.match(
    told(carWith((whole) => whole.replace('      unit: mm', '      unit: m'))),
    /^scan\/unit: In m the scan is 1250 m long.*Written in mm/,
  );
  assert.match(
    told(carWith((whole) => whole.replace('      unit: mm', '      unit: in'))),
    /^scan\/unit: .*Written in mm/,
  );
});

test('datum points: a mirror image, and one that was read elsewhere', () => {
  const mirrored = carWith((whole) =>
    whole.replace(
      /onScan: \[([-\d.]+), ([-\d.]+),/g,
      (_, x: string, y: string) => `onScan: [${x}, ${-Number(y)},`,
    ),
  );
  assert.match(told(mirrored), /^scan\/datums: The scan is the mirror image/);
  const slipped = scanOf(
    carWith((whole) => whole.replace('"-1349.9, 0.1, 876.1 mm"', '"-1349.9, 0.1, 890.1 mm"')),
    'cover',
    bytes,
  );
  assert.ok(slipped.reached);
  assert.ok(
    slipped.doubts.some((each) => /^Datum point spine pin is \d+\.\d mm off the others/.test(each)),
    slipped.doubts.join(),
  );
});

test('a scan that is not named, not there, or cut off', () => {
  assert.match(told(carWith(), 'floor'), /^scan\/unknown: .*It names cover/);
  assert.equal(scanOf(carWith(), 'cover', undefined).reached, false);
  assert.match(
    told(carWith(), 'cover', bytes.subarray(0, 99_999)),
    /^scan\/unreadable: The file says 7150 triangles and holds 1998/,
  );
});

test('the problem of a bank: lengths, order and tube as a hand would put them, links only where they could be met', () => {
  const car = carWith();
  const scan = scanOf(car, 'cover', bytes);
  assert.ok(scan.reached);
  const put = primariesProblem(car, 'right', [scan]);
  assert.ok(put.reached);
  const { problem, cylinders } = put;
  assert.deepEqual(cylinders, [6, 7, 8, 9, 10]);
  // of 1-6-5-10-2-7-3-8-4-9 the right bank fires 6, 10, 7, 8, 9: ports 0, 4, 1, 2, 3
  assert.deepEqual(problem.order, { mode: 'rotation', firing: [0, 4, 1, 2, 3], sense: 'either', passed: 25 });
  near(problem.length.target, 647, 1e-9);
  near(problem.length.tol, 3, 1e-9);
  for (const { d } of problem.ports) {
    near(Math.hypot(...d), 1, 1e-12);
    assert.ok(d[1] < -0.8, 'the right bank leaves to the right');
  }
  // five tubes of 47.6 mm with 1 mm between them touch on a ring of 24.3/sin 36°
  near(problem.collector.ringRadius, 24.3 / Math.sin(Math.PI / 5), 1e-9);
  assert.equal(problem.shell.triangles.length, 3 * 7150);
  assert.deepEqual(
    problem.solids.map(({ name }) => name),
    ['heads', 'crankcase', 'bellhousing and gear case', 'floor'],
  );
});
