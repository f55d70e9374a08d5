/**
 * The demo cars: they read in every state, say that they are invented, and have the size of the cars whose manner
 * they are of. The bands are those of single-seaters of 1985 to 2005: common practice, no source.
 */
import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { test } from 'node:test';
import { parse } from 'yaml';
import { z } from 'zod';
import { type Car, readCar } from '../../src/car/read.ts';
import { carFileSchema } from '../../src/car/schema.ts';
import { attitudeOf } from '../../src/loadpath/corner/attitude.ts';
import { wheelAxisFrom } from '../../src/loadpath/corner/geometry.ts';
import { type Corner, prepareCorner } from '../../src/loadpath/corner/prepare.ts';
import { travelLimits } from '../../src/loadpath/corner/reach.ts';
import { solveCorner } from '../../src/loadpath/corner/solve.ts';
import { sub, unit } from '../../src/maths/vec3.ts';
import { problemText } from '../../src/measured/problem.ts';

const CARS = new URL('../../cars/', import.meta.url);
const NAMES = readdirSync(CARS, { withFileTypes: true })
  .filter((each) => each.isDirectory())
  .map((each) => each.name);

const text = (car: string): string => readFileSync(new URL(`${car}/car.yaml`, CARS), 'utf8');

function beside(car: string): Record<string, string> {
  const folder = new URL(`${car}/`, CARS);
  const lists = readdirSync(folder).filter((name) => name.endsWith('.csv'));
  return Object.fromEntries(lists.map((name) => [name, readFileSync(new URL(name, folder), 'utf8')]));
}

function read(car: string, spec?: string): Car {
  const result = readCar({
    text: text(car),
    file: 'car.yaml',
    files: beside(car),
    ...(spec === undefined ? {} : { spec }),
  });
  assert.ok(result.ok, result.ok ? '' : result.problems.map(problemText).join('\n'));
  return result.car;
}

const ENDS = ['front', 'rear'] as const;
const SIDES = ['left', 'right'] as const;

/** The linkage of one corner, made by this test from the file's points alone. */
function linkage(car: Car, end: 'front' | 'rear', side: 'left' | 'right'): Corner {
  const { points, wheel, rod } = car.form[end][side];
  const { value: pivot } = points.rockerPivot;
  return prepareCorner({
    side,
    rodOn: rod.on,
    loadedRadius: wheel.loadedRadius.value,
    wheelAxis: wheelAxisFrom({ side, camber: wheel.camber.value, toe: wheel.toe.value }),
    upperFront: points.upperFront.value,
    upperRear: points.upperRear.value,
    upperOuter: points.upperOuter.value,
    lowerFront: points.lowerFront.value,
    lowerRear: points.lowerRear.value,
    lowerOuter: points.lowerOuter.value,
    toeInner: points.toeInner.value,
    toeOuter: points.toeOuter.value,
    ...(end === 'front' ? { rackDirection: [0, 1, 0] as const } : {}),
    rodOuter: points.rodOuter.value,
    rodInner: points.rodInner.value,
    rockerPivot: pivot,
    rockerAxis: unit(sub(points.rockerAxis.value, pivot)),
    wheelCentre: points.wheelCentre.value,
    rockerPoints: { eye: points.damperRocker!.value },
    elements: { damper: { rockerPoint: 'eye', tub: points.damperTub!.value } },
  });
}

const DEG = Math.PI / 180;

function within(value: number, low: number, high: number, what: string): void {
  assert.ok(value >= low && value <= high, `${what}: ${value.toPrecision(4)} is outside ${low} to ${high}`);
}

test('there is a workshop, and it says that it is invented', () => {
  const workshop = parse(readFileSync(new URL('workshop.yaml', CARS), 'utf8')) as Record<string, unknown>;
  assert.equal(workshop.invented, 'yes');
  assert.ok(NAMES.length >= 3);
});

for (const name of NAMES) {
  test(`${name}: says in its first line and in its heading that it is invented`, () => {
    assert.match(text(name).split('\n')[0]!, /^# An invented example/);
    assert.equal(read(name).form.car.invented, true);
  });

  test(`${name}: reads in every spec, with no warning but that of the tape reading put wrong`, () => {
    const { specs } = read(name);
    assert.ok(specs.length >= 2);
    const planted = (code: string): boolean => name === 'ashgarth-501' && code === 'survey/does-not-fit';
    for (const spec of specs) {
      const others = read(name, spec).warnings.filter(({ code }) => !planted(code));
      assert.deepEqual(others.map(problemText), [], spec);
    }
  });

  test(`${name}: fits the published schema, and a slip does not`, () => {
    // zod's own converter back from JSON Schema stands for a general validator; the reader does not use it
    const validator = z.fromJSONSchema(carFileSchema() as Parameters<typeof z.fromJSONSchema>[0]);
    const file = parse(text(name)) as {
      front: { left: Record<string, unknown>; right: Record<string, unknown> };
    };
    const found = validator.safeParse(file);
    assert.ok(found.success, JSON.stringify(found.success ? '' : found.error.issues.slice(0, 3)));
    const slip = structuredClone(file);
    slip.front.left.rodd = slip.front.left.rod;
    assert.ok(!validator.safeParse(slip).success, 'an unknown key');
    const lost = structuredClone(file);
    delete lost.front.left.scale;
    assert.ok(!validator.safeParse(lost).success, 'a missing key');
    const kind = structuredClone(file);
    kind.front.left.rod = { kind: 'bell rod', on: 'upright' };
    assert.ok(!validator.safeParse(kind).success, 'a word that is not in the list');
  });

  test(`${name}: masses and readings are those of a car and of a workshop`, () => {
    const car = read(name);
    const scales = ENDS.flatMap((end) => SIDES.map((side) => car.form[end][side].scale.value));
    const total = scales.reduce((sum, each) => sum + each, 0);
    within(total, 600, 680, 'kilograms on the scales');
    within((scales[0]! + scales[1]!) / total, 0.42, 0.46, 'front share');
    const kinds = new Set(car.readings.map((each) => each.spread.kind));
    assert.ok(
      kinds.has('stated') && kinds.has('instrument') && kinds.has('usual'),
      'readings of mixed quality',
    );
    for (const side of SIDES) {
      within(car.form.front[side].unsprung.value, 14, 20, 'front unsprung');
      within(car.form.rear[side].unsprung.value, 18, 26, 'rear unsprung');
    }
  });

  for (const end of ENDS) {
    for (const side of SIDES) {
      test(`${name}, ${end} ${side}: stands and moves as a single-seater does`, () => {
        const car = read(name);
        const corner = linkage(car, end, side);
        const at = (travel: number) => solveCorner(corner, { travel, rack: 0 });
        const state = at(0);
        const attitude = attitudeOf(state);
        const ratio = -state.elements.damper!.perTravel;
        within(attitude.halfTrack.value, 0.68, 0.86, 'half track, m');
        within(attitude.camber.value / DEG, -3.5, -1, 'camber, deg');
        within(attitude.caster.value / DEG, end === 'front' ? 4 : 1, 8, 'caster, deg');
        within(attitude.kingpinInclination.value / DEG, 6, 12, 'kingpin inclination, deg');
        within(attitude.scrubRadius.value, 0.02, 0.06, 'scrub radius, m');
        within(attitude.mechanicalTrail.value, 0.012, 0.03, 'trail, m');
        within(
          attitude.frontView.slope * attitude.halfTrack.value,
          -0.02,
          0.06,
          'roll centre of the corner, m',
        );
        within(ratio, 0.55, 1.1, 'spring per wheel');
        for (const travel of [-0.025, 0.025]) {
          const turned = attitudeOf(at(travel)).toe.value - attitude.toe.value;
          within(Math.abs(turned) / DEG, 0, 0.1, 'bump steer over 25 mm, deg');
        }
        // z is counted from the flat patch: the wheel must stand on it, within what camber and radius are read to
        within(state.points.contact[2], -0.002, 0.002, 'contact point above the patch, m');
        const limits = travelLimits(corner);
        assert.ok(limits.bump.travel >= 0.04 && limits.droop.travel <= -0.04);
        const { damper } = car.form[end][side];
        assert.ok(damper!.closedLength.value < state.elements.damper!.value);
        assert.ok(damper!.openLength.value > state.elements.damper!.value);
      });
    }
  }
}

test('left and right are two sides: no point of a measured right is the left turned over', () => {
  const { form } = read('fenwold-201');
  for (const end of ENDS) {
    const { left, right } = form[end];
    for (const name of ['upperOuter', 'lowerFront', 'rodInner', 'wheelCentre'] as const) {
      const [a, b] = [left.points[name].value, right.points[name].value];
      assert.notDeepEqual([a[0], -a[1], a[2]], [...b], `${end} ${name}`);
    }
  }
});

test('the cars of 1991 and 2001 manner are sprung as their manner has it', () => {
  const old = read('fenwold-201').form;
  for (const end of ENDS) for (const side of SIDES) assert.ok(old[end][side].coil && !old[end][side].bar);
  const late = read('ashgarth-501').form;
  for (const side of SIDES) {
    assert.ok(late.front[side].bar && !late.front[side].coil);
    assert.ok(late.rear[side].coil && !late.rear[side].bar);
  }
  assert.ok(late.front.heave);
  assert.equal(read('pellmoor-7b').form.front.left.rod.kind, 'pullrod');
});
