/** The exhaust of the car file: the length that is routed, worked by hand, and slips told with their place. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { Numbers } from '../../src/loadpath/numbers.ts';
import { openCar } from '../../src/questions/index.ts';
import { routedLength } from '../../src/questions/routed-length.ts';
import { recheck, Working } from '../../src/working/working.ts';
import { near } from '../near.ts';

const folder = new URL('../../cars/ashgarth-501/', import.meta.url);
const text = readFileSync(new URL('car.yaml', folder), 'utf8');
const files = Object.fromEntries(
  ['arm-front.csv', 'arm-rear.csv'].map((name) => [name, readFileSync(new URL(name, folder), 'utf8')]),
);

const opened = (change: (text: string) => string) => openCar({ text: change(text), files });

function problemsOf(from: string | RegExp, to: string): readonly string[] {
  assert.match(
    text,
    typeof from === 'string' ? new RegExp(from.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')) : from,
  );
  const read = opened((whole) => whole.replace(from, to));
  assert.equal(read.ok, false, 'the slip was not seen');
  return read.ok ? [] : read.problems.map(({ code, path, message }) => `${code} ${path} ${message}`);
}

/** Lengths as a tape would count them, millimetres. */
const LENGTHS = [
  ['flange', 'collector entry', '', 655],
  ['port face', 'collector entry', '', 655 - 8],
  ['valve seat', 'collector entry', ', portLength: 95 mm', 655 - 95 - 8],
  ['valve seat', 'merge point', ', portLength: 95 mm, mergeDepth: 62 mm', 655 - 95 - 8 - 62],
] as const;

for (const [from, to, more, expected] of LENGTHS) {
  test(`counted from ${from} to ${to}: ${expected} mm of pipe`, () => {
    const read = opened((whole) =>
      whole.replace('from: port face, to: collector entry,', `from: ${from}, to: ${to}${more},`),
    );
    assert.ok(read.ok, JSON.stringify(read.ok ? '' : read.problems));
    const working = new Working();
    const numbers = new Numbers(read.car.values);
    near(routedLength(read.car.form.exhaust!, numbers, working), expected / 1000, 1e-12);
    assert.deepEqual(recheck(working.steps), []);
  });
}

test('slips are told with their place', () => {
  const slips: readonly (readonly [string | RegExp, string, RegExp])[] = [
    [
      'material: nickel alloy 625',
      'material: nickle alloy 625',
      /^exhaust\/material.*exhaust\.tube\.material/,
    ],
    ['outside: 47.6 mm, wall: 1.0 mm', 'outside: 15 mm, wall: 3.9 mm', /^exhaust\/wall/],
    ['[47.6 mm, 71.4 mm]', '[23 mm, 71.4 mm]', /^exhaust\/bend-too-tight.*folds into itself/],
    ['from: port face', 'from: valve seat', /^exhaust\/length-ends exhaust\.given\.portLength/],
    ['[1, 6, 5, 10, 2, 7, 3, 8, 4, 9]', '[1, 6, 5, 10, 2, 7, 3, 8, 4, 4]', /Cylinder 4 fires twice/],
    [
      '[1, 6, 5, 10, 2, 7, 3, 8, 4, 9]',
      '[1, 6, 5, 10, 2, 7, 3, 8, 4]',
      /Cylinder 9 has a port and does not fire/,
    ],
    ['cylinders: [6, 7, 8, 9, 10]', 'cylinders: [5, 7, 8, 9, 10]', /Cylinder 5 has two ports/],
    ['cylinders: [1, 2, 3, 4, 5]', 'cylinders: [1, 2, 3, 4]', /^exhaust\/port-count exhaust\.left\.ports/],
    [
      '"-1483.1, 286.2, 293.7 mm"',
      '"-1479.6, 215.8, 329.4 mm"',
      /^exhaust\/port-direction exhaust\.left\.ports\.0/,
    ],
    ['"-1483.1, 286.2, 293.7 mm"', '"-1483.1, 146.2, 293.7 mm"', /^exhaust\/port-inward/],
    ['"-1579.8, 215.1, 330.2 mm"', '"-1483.8, 215.1, 330.2 mm"', /^exhaust\/ports-near.*4\.3 mm apart/],
    ['"-2150, 262, 190 mm"', '"-1950, 262, 179 mm"', /^exhaust\/collector-direction/],
    [
      '      downstream: "-2150',
      '      ring: 30 mm\n      downstream: "-2150',
      /They touch at|^exhaust\/ring-small/,
    ],
    ['"-2600, -560, 78 mm"', '"-2600, -560, 40 mm"', /^exhaust\/box-flat.*floor/],
    ['name: L 47.6,', 'name: U 47.6,', /^exhaust\/rack-twice.*U 47\.6/],
    ['form: box, from: "-1200', 'form: drum, from: "-1200', /^exhaust\/no-diameter.*floor/],
    ['thread: M8x1.25', 'thread: M8x1.2.5', /^exhaust\/stud-thread.*no standard thread/],
    ['thread: M8x1.25', 'thread: M10x1.5', /^exhaust\/stud-hole exhaust\.flange\.bolts\.0\.hole/],
    ['thread: M8x1.25, standsOut: 22 mm, flats: 10 mm', 'thread: M7x1, standsOut: 22 mm', /no nut for M7x1/],
    ['standsOut: 22 mm', 'standsOut: 15 mm', /^exhaust\/stud-short.*flange of 8 mm and a nut of 8 mm/],
    ['pipe: 720 degC', 'pipe: 72 degC', /exhaust\.hot\.pipe.*100 to 1100/],
    ['pipe: 720 degC', 'pipe: 720 mm', /exhaust\.hot\.pipe/],
    ['to: collector entry, within', 'to: collector, within', /given\.to/],
    ['length: 655 mm', 'length: 25.8 mm', /given\.length.*150 to 1500/],
  ];
  for (const [from, to, told] of slips) {
    const found = problemsOf(from, to);
    assert.ok(
      found.some((each) => told.test(each)),
      `${String(from)}: ${found.join('; ')}`,
    );
  }
});

const stepped = (steps: string, ring = ''): string =>
  text
    .replace('outside: 47.6 mm, wall: 1.0 mm,', `outside: 44.5 mm, wall: 1.2 mm, steps: [${steps}],`)
    .replace('    collector:\n', `    collector:\n${ring}`);

test('steps of the tube: slips with line and column, doubts as warnings beside the figures', () => {
  const whole = 'from: 250 mm, outside: 47.6 mm, wall: 1.5 mm';
  const slips: readonly (readonly [string, RegExp])[] = [
    [`{ ${whole} }, { from: 258 mm, outside: 50.8 mm, wall: 1.5 mm }`, /step-order .*steps\.1\.from/],
    ['{ from: 21 mm, outside: 47.6 mm, wall: 1.5 mm, joinLength: 20 mm }', /step-order .*steps\.0\.from/],
    ['{ from: 640 mm, outside: 47.6 mm, wall: 1.5 mm }', /step-beyond .*steps\.0\.from/],
    [`{ ${whole}, join: reducer }`, /step-reducer .*steps\.0\.joinLength/],
    [`{ ${whole}, radii: [20 mm] }`, /bend-too-tight .*steps\.0\.radii\.0/],
    ['{ from: 250 mm, outside: 15 mm, wall: 3.9 mm }', /exhaust\/wall .*steps\.0\.wall/],
    [`{ ${whole}, join: glued }`, /join/],
  ];
  const at = (problem: { code: string; path: string }): string => `${problem.code} ${problem.path}`;
  for (const [steps, expected] of slips) {
    const read = openCar({ text: stepped(steps), files });
    assert.ok(!read.ok, `seen: ${steps}`);
    const found = read.problems.find((problem) => expected.test(at(problem)));
    assert.ok(found, `${expected}: ${read.problems.map(at).join('; ')}`);
    // all stands in the line of the tube
    const line =
      stepped(steps)
        .split('\n')
        .findIndex((each) => each.includes('steps: [')) + 1;
    assert.equal(found.line, line);
    assert.ok(found.column! > 20);
  }
  const warned = (steps: string): string => {
    const read = openCar({ text: stepped(steps), files });
    assert.ok(read.ok, read.ok ? '' : read.problems.map(at).join());
    return read.car.warnings.map((problem) => `${at(problem)} ${problem.weight}`).join('\n');
  };
  assert.match(warned('{ from: 250 mm, outside: 41.3 mm, wall: 1.5 mm }'), /step-down .*warning/);
  assert.match(warned('{ from: 250 mm, outside: 50.8 mm, wall: 1.2 mm }'), /step-fit .*warning/);
  assert.match(warned(`{ ${whole}, radii: [60 mm] }`), /step-radius .*steps\.0\.radii\.0 warning/);
  const ring = openCar({
    text: stepped('{ from: 250 mm, outside: 60 mm, wall: 1.5 mm }', '      ring: 41 mm\n'),
    files,
  });
  assert.ok(!ring.ok);
  // five tubes of 60 mm touch on a ring of 30/sin 36° = 51.0 mm; of 44.5 mm on one of 37.9 mm
  assert.ok(
    ring.problems.some(
      ({ code, message, remedy }) =>
        code === 'exhaust/ring-small' && message.includes('60 mm') && remedy!.includes('51 mm'),
    ),
  );
});
