/** The demo car's proposal of stepped primaries: found, listed, and each length by its own size in the car. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import {
  findPrimaries,
  openCar,
  primariesInCar,
  primariesProblem,
  primariesShop,
  primariesTemplates,
  scanForms,
  scanOf,
} from '../../src/questions/index.ts';
import { near } from '../near.ts';

const folder = new URL('../../cars/ashgarth-501/', import.meta.url);
const files = Object.fromEntries(
  ['arm-front.csv', 'arm-rear.csv'].map((name) => [name, readFileSync(new URL(name, folder), 'utf8')]),
);
const read = openCar({
  text: readFileSync(new URL('car.yaml', folder), 'utf8'),
  files,
  spec: 'proposal: stepped primaries',
});
assert.ok(read.ok);
const { car } = read;
const scans = Object.entries(scanForms(car)).map(([name, form]) => {
  const is = scanOf(car, name, readFileSync(new URL(form.file, folder)));
  assert.ok(is.reached);
  return is;
});
const put = primariesProblem(car, 'left', scans);
assert.ok(put.reached);
const finding = findPrimaries(put, { seed: 1 });
for (let k = 0; k < 20_000 && finding.advance() !== 'done'; k += 1);
const set = finding.set()!;
assert.ok(set !== undefined);

test('44.5 mm to 250 ± 8 mm, then 47.6 mm slipped over by 10 mm: 647 mm, and its weight by hand', () => {
  assert.deepEqual(set.breaches, []);
  for (const { tubes, length, mass } of set.pipes) {
    assert.deepEqual(
      tubes.map(({ od }) => Math.round(od * 1e5) / 1e2),
      [44.5, 47.6],
    );
    // the larger tube begins a lap before the step
    const step = tubes[1]!.from + 0.01;
    assert.ok(Math.abs(step - 0.25) <= 0.008 + 1e-6, `${step}`);
    near(length, 0.647, 1e-6);
    // walls of π 43.3 · 1.2 = 163.237 mm² and π 46.1 · 1.5 = 217.241 mm², nickel alloy 625 of 8440 kg/m³
    near(mass, 8440 * (163.237e-6 * step + 217.241e-6 * (0.647 - step + 0.01)), 2e-5);
  }
});

test('the shop cuts each tube from its own stock; strips, bend table and jig are of each size', () => {
  const shop = primariesShop(car, 'left', set);
  const sizeOf = (name: string): number => Number(/4[47]\.\d/.exec(name)![0]);
  for (const { tube, from } of shop.cuts.rows) near(tube.od, sizeOf(from!.stock.name) / 1e3, 1e-9);
  assert.equal(shop.cuts.welds.filter(({ what }) => what === 'step').length, 5);
  for (const { od, radius } of shop.bends) near(radius, od, 1e-9);
  assert.equal(shop.jig.points.filter(({ what }) => what === '47.6 mm tube begins').length, 5);
  const { templates } = primariesTemplates(car, 'left', set, shop);
  // once round the tube under 0.1 mm of paper: π 44.6 = 140.12 and π 47.7 = 149.85 mm; the merge is of the larger
  const round = (name: string): string =>
    templates.find((each) => each.name.includes(name))!.notes.find((note) => note.includes('Once round'))!;
  const first = shop.cuts.rows.find((row) => row.kind === 'bend' && row.tube.od < 0.045)!;
  assert.match(round(`pipe ${first.pipe}, piece ${first.place}`), /140\.12 mm/);
  assert.match(round('merge'), /149\.85 mm/);
});

test('hot, nuts and the way off are looked at with both sizes', () => {
  const is = primariesInCar(car, 'left', scans, finding.solution()!);
  assert.ok(is !== undefined);
  // 14.0e-6 · 0.647 · 700, whatever the size
  for (const { grows } of is.hot.pipes) near(grows, 14.0e-6 * 0.647 * 700, 1e-6);
  assert.ok(is.hot.gaps.some(({ hot, cold }) => hot !== undefined && cold !== undefined && hot !== cold));
  assert.ok(is.nuts.reached && is.removal.reached);
});
