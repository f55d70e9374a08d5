/**
 * Wheel rate, force and energy belong together (virtual work: the force is the slope of the stored energy, the
 * rate the slope of the force), the scale is carried as surveyed, and the law's kinks lie where they are told.
 *
 * Slopes by Richardson's extrapolation of central differences (two halvings): the other reckoner of the closed
 * derivatives. Energies by the laws of the springs: ½kx² and its like, and quadrature for the rubber.
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { Numbers } from '../../src/loadpath/numbers.ts';
import {
  type SprungCorner,
  sprungCorner,
  travelAtLoad,
  travelMarks,
} from '../../src/loadpath/sprung-corner.ts';
import { integral } from '../../src/maths/quadrature.ts';
import { demo, demoSource, everyDemo, opened, WHEELS } from '../cars/demo.ts';
import { real } from '../draw.ts';
import { near } from '../near.ts';

const corners = everyDemo().flatMap(({ name, car }) =>
  WHEELS.map((wheel) => ({
    name: `${name}, ${wheel.end} ${wheel.side}`,
    of: sprungCorner(car.form[wheel.end], wheel.side, new Numbers(car.values)),
  })),
);

/** Slope by central differences, twice extrapolated: its error goes with the sixth power of the step. */
function slope(f: (x: number) => number, at: number, step: number): number {
  const central = (h: number): number => (f(at + h) - f(at - h)) / (2 * h);
  const [a, b, c] = [central(step), central(step / 2), central(step / 4)];
  const [ab, bc] = [(4 * b - a) / 3, (4 * c - b) / 3];
  return (16 * bc - ab) / 15;
}

/** Compressions at which some law changes, from the elements' own lists. */
const kinksOf = ({ springing }: SprungCorner): number[] =>
  [springing.coil, springing.rubber, springing.droopStop].flatMap(
    (each) => each?.kinks.map(({ at }) => at) ?? [],
  );

const STEP = 2e-4;
/** Half a millimetre of compression at the least between a difference and a kink. */
const clear = (of: SprungCorner, travel: number): boolean => {
  const { compression } = of.wheelAt(travel);
  return kinksOf(of).every((at) => Math.abs(compression - at) > 5e-4);
};

const travels = (from: number, to: number): number[] =>
  Array.from({ length: 13 }, (_, k) => from + (k * (to - from)) / 12);

test('wheel rate is the slope of the force at the wheel, in every corner and spec, from droop to bump', () => {
  let compared = 0;
  for (const { name, of } of corners) {
    for (const travel of travels(-0.03, 0.03)) {
      if (!clear(of, travel)) continue;
      const { elastic, byForce } = of.wheelAt(travel);
      const expected = slope((z) => of.wheelAt(z).force, travel, STEP);
      // forces of 1e4 N are known to 1e-9 N or so (travel found to 1e-12 m); over 1e-4 m that is 1e-4 N/m; the
      // rubber's curve is cubic between its points, its own points are left to the sixth-power term
      near(elastic + byForce, expected, 2e-4 * Math.abs(expected) + 1, `${name} at ${travel}`);
      compared += 1;
    }
  }
  assert.ok(compared > 250, `only ${compared} compared`);
});

test('the force term is there: without it the wheel rate is off by more than the slope allows', () => {
  const worst = corners.map(({ of }) => {
    const { elastic, byForce } = of.wheelAt(0.01);
    return Math.abs(byForce) / elastic;
  });
  // a check that cannot see the second term would pass with it left out
  assert.ok(Math.max(...worst) > 0.01);
});

/** Energy in springs, rubber, gas and bar, from each one's own law. */
function energy(of: SprungCorner, travel: number): number {
  const { springing } = of;
  const { compression: c, ratios } = of.wheelAt(travel);
  const edges = (from: number, to: number): number[] => {
    const inside = kinksOf(of).filter((at) => (at - from) * (at - to) < 0);
    return [from, ...inside.sort((a, b) => (from < to ? a - b : b - a)), to];
  };
  const places = edges(0, c);
  const force = (x: number): number =>
    (springing.coil?.force(x) ?? 0) +
    (springing.rubber?.force(x) ?? 0) +
    (springing.droopStop?.force(x) ?? 0);
  const work = places.slice(1).reduce((sum, to, k) => {
    // the rubber's curve has a joint at each row of its table, so the way is cut short between
    const parts = 24;
    const from = places[k]!;
    const cut = (j: number): number => from + ((to - from) * j) / parts;
    return (
      sum +
      Array.from({ length: parts }, (_, j) => integral(force, cut(j), cut(j + 1))).reduce((a, b) => a + b)
    );
  }, 0);
  const twist = springing.barTwistAtSurvey ?? 0;
  const bar = ((springing.barRate ?? 0) * ((ratios.angle + twist) ** 2 - twist ** 2)) / 2;
  return work + springing.gasForce * c + bar;
}

test('force at the wheel is the slope of the stored energy', () => {
  for (const { name, of } of corners) {
    for (const travel of [-0.02, -0.008, 0, 0.007, 0.016, 0.024]) {
      if (!clear(of, travel)) continue;
      const expected = slope((z) => energy(of, z), travel, STEP);
      // energies of 100 J are summed to 1e-12 J or so; over 1e-4 m that is 1e-8 N; quadrature across a joint of
      // the rubber's curve costs most: 1e-5 of the force
      near(of.wheelAt(travel).force, expected, 2e-5 * Math.abs(expected) + 0.02, `${name} at ${travel}`);
    }
  }
});

test('as surveyed the springing carries what the scale says less the unsprung mass', () => {
  let followed = 0;
  for (const { name, of } of corners) {
    const { form } = of;
    // a spring measured as fitted carries what it carries, and the car stands where that balances
    if (form.bar?.twist !== undefined || form.coil?.fittedLength !== undefined) continue;
    followed += 1;
    const load = (form.scale.value - form.unsprung.value) * 9.80665;
    const found = of.wheelAt(0).force;
    // rounding of a difference of forces through the ratio, 1e-12 of it
    near(found, load, 1e-9 * load, name);
    // halving ends at 1e-10 m
    near(travelAtLoad(of, load), 0, 1e-9, name);
  }
  assert.ok(followed > 20);
});

test('the travel of a load is where the springing has it, on either side and on a kink', () => {
  for (const { name, of } of corners) {
    for (const travel of [-0.012, 0.009, 0.02]) {
      const { force } = of.wheelAt(travel);
      const found = travelAtLoad(of, force);
      // where the springing is loose, many travels have one load
      if (Math.abs(of.wheelAt(travel).elastic) < 1) continue;
      near(found, travel, 1e-9, `${name} at ${travel}`);
    }
    const { rubber } = travelMarks(of);
    if (Number.isFinite(rubber)) near(travelAtLoad(of, of.wheelAt(rubber).force), rubber, 1e-9, name);
  }
});

test('marks: each lies where its element starts, to the micrometre of compression', () => {
  for (const { name, of } of corners) {
    const marks = travelMarks(of);
    const { springing } = of;
    const at = (travel: number): number => of.wheelAt(travel).compression;
    const pairs = [
      ['droopStop', springing.droopStopAt],
      ['coilFree', springing.coilFreeAt],
      ['rubber', springing.rubberAt],
      ['coilSolid', springing.coilSolidAt],
      ['closed', springing.closedAt],
    ] as const;
    for (const [mark, compression] of pairs) {
      if (compression === undefined || Number.isNaN(marks[mark])) continue;
      // found to a nanometre of travel, with ratios of one or so
      near(at(marks[mark]), compression, 1e-8, `${name}, ${mark}`);
    }
    // just below its mark an element gives nothing, just above it does
    const step = 1e-5;
    const coil = (travel: number): number => of.wheelAt(travel).unit.coil;
    if (Number.isFinite(marks.coilFree)) {
      assert.equal(coil(marks.coilFree - step), 0, name);
      assert.ok(coil(marks.coilFree + step) > 0, name);
    }
    if (Number.isFinite(marks.rubber)) {
      assert.equal(of.wheelAt(marks.rubber - step).unit.rubber, 0, name);
      assert.ok(of.wheelAt(marks.rubber + step).unit.rubber > 0, name);
    }
    if (Number.isFinite(marks.droopStop)) {
      assert.equal(of.wheelAt(marks.droopStop + step).unit.droopStop, 0, name);
      assert.ok(of.wheelAt(marks.droopStop - step).unit.droopStop < 0, name);
    }
    if (Number.isFinite(marks.barSlack)) near(of.wheelAt(marks.barSlack).torque, 0, 1e-5, name);
  }
});

test('the wheel hangs on its droop stop until the preload is reached, and no further', () => {
  for (const { name, of } of corners) {
    const { droopStop } = travelMarks(of);
    if (!Number.isFinite(droopStop)) continue;
    const preload = of.wheelAt(droopStop).force;
    if (preload <= 0) continue;
    // half the preload leaves the wheel where it is: the stop is stiff, not endless (50 kN/mm)
    near(travelAtLoad(of, preload / 2), droopStop, preload / 5e7 + 1e-6, name);
    assert.ok(travelAtLoad(of, preload + 50) > droopStop + 1e-5, name);
  }
});

/** One corner of the 1991 manner with random springs in place of its own. */
const source = demoSource('fenwold-201');
const anySprings = fc.record({
  rate: real(60, 400),
  free: real(128, 165),
  helper: fc.option(fc.record({ rate: real(3, 40), travel: real(4, 18) }), { nil: undefined }),
  gap: real(5, 30),
  gas: real(0, 300),
  scale: real(90, 220),
  bar: fc.option(real(9, 14), { nil: undefined }),
  measured: fc.boolean(),
});

test('random springs, with helper, rubber, bar, measured length or not: rate and force agree, the scale is carried', () =>
  fc.assert(
    fc.property(anySprings, real(-0.02, 0.02), (springs, travel) => {
      const { helper, bar } = springs;
      const spec = `
specs:
  tried:
    changes:
      front:
        left:
          scale: ${springs.scale} kg
          damper: { gasForce: ${springs.gas} N }
          bumpRubber: { gap: ${springs.gap} mm, packers: null }
          coil:
            rate: ${springs.rate} N/mm
            freeLength: ${springs.free} mm
            ${springs.measured && bar !== undefined ? 'fittedLength: 120 mm' : ''}
            ${helper === undefined ? '' : `helper: { rate: ${helper.rate} N/mm, travel: ${helper.travel} mm }`}
${bar === undefined ? '' : `          bar: { diameter: ${bar} mm, parallelLength: 300 mm, rockerEnd: { form: square }, anchorEnd: { form: square }, material: 300M bar, preset: not preset, surface: ground }`}
`;
      const car = opened({ ...source, text: source.text.replace(/\nspecs:[\s\S]*$/, spec) }, 'tried');
      const of = sprungCorner(car.form.front, 'left', new Numbers(car.values));
      const load = (springs.scale - 16.4) * 9.80665;
      const asked = bar === undefined || springs.measured;
      // both scale's share and a loose coil: then gas and rubber alone are more than the scale shows
      if (asked && of.springing.notes.length === 0) near(of.wheelAt(0).force, load, 1e-8 * load + 1e-6);
      if (!clear(of, travel)) return;
      const { elastic, byForce } = of.wheelAt(travel);
      const expected = slope((z) => of.wheelAt(z).force, travel, STEP);
      near(elastic + byForce, expected, 3e-4 * Math.abs(expected) + 1);
    }),
    { numRuns: 40 },
  ));

test('a spring measured as fitted: the car rides where spring and scale balance, not where it was surveyed', () => {
  const at = (fitted: number) => {
    const text = source.text.replace(
      'freeLength: 135.2 mm',
      `freeLength: 135.2 mm\n      fittedLength: ${fitted} mm`,
    );
    const car = opened({ ...source, text });
    const of = sprungCorner(car.form.front, 'left', new Numbers(car.values));
    return { of, stands: travelAtLoad(of, of.springing.sprungLoad) };
  };
  const plain = demo('fenwold-201');
  const own = sprungCorner(plain.form.front, 'left', new Numbers(plain.values));
  const { coil, coilRate } = own.springing;
  // the length that the scale asks for: nothing moves
  const balanced = 135.2 - (coil!.force(0) / coilRate!) * 1e3;
  near(at(balanced).stands, 0, 1e-8); // 1e-9 m of travel, and the length was printed to 1e-13 of it
  // a millimetre shorter: the coil carries its rate more, and the wheel goes down by it over the wheel rate
  const { of, stands } = at(balanced - 1);
  const { ratios, elastic, byForce } = of.wheelAt(stands);
  assert.ok(stands < 0);
  near(-stands, (coilRate! * 1e-3 * ratios.unit) / (elastic + byForce), 0.02 * 1e-3); // second order: 2 %
});
