/**
 * Figures of a corner and of an axle against sums done by hand from round readings put into a demo car: definitions,
 * handbook formulas, and what must hold where something begins or ends.
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { axleState } from '../../src/loadpath/axle-of-car.ts';
import { Numbers } from '../../src/loadpath/numbers.ts';
import {
  AS_SURVEYED,
  axleFigures,
  type Car,
  cornerFigures,
  type Figure,
  type Wheel,
} from '../../src/questions/index.ts';
import { near } from '../near.ts';
import { demoSource, opened } from './demo.ts';

const DEGREE = Math.PI / 180;
const MM = 1e-3;
/** Standard acceleration of free fall, m/s² (3rd CGPM, 1901). */
const G = 9.80665;
const FRONT_LEFT: Wheel = { end: 'front', side: 'left' };
/** A few operations on numbers near one, in another order. */
const DIGITS = 1e-12;

/** The demo car with other readings; the first place where one stands is the front left, or what comes first. */
const carWith = (name: string, ...readings: readonly (readonly [string | RegExp, string])[]): Car =>
  opened(
    demoSource(name, (text) =>
      readings.reduce((changed, [from, to]) => {
        const next = changed.replace(from, to);
        assert.notEqual(next, changed, `nothing to change: ${from}`);
        return next;
      }, text),
    ),
  );

const valueIn = (figures: readonly Figure[], id: string): number => {
  const found = figures.find((figure) => figure.id === id);
  assert.ok(found, `no ${id}`);
  return found.value;
};

/** The figures of the front left corner at a travel, by name. */
function corner(car: Car, travel = 0): (id: string) => number {
  const answer = cornerFigures(car, FRONT_LEFT, { travel, rack: 0 });
  assert.ok(answer.reached);
  return (id) => valueIn(answer.figures, id);
}

const relative = (found: number, expected: number, tolerance: number, what = ''): void =>
  near(found / expected, 1, tolerance, what);

test('joint: what is left of the limit is less by what it stood at and by what it has turned', () => {
  const car = carWith('fenwold-201', [
    '{ limit: 15 deg, asSurveyed: 2.5 deg }',
    '{ limit: 15 deg, asSurveyed: 4 deg }',
  ]);
  near(corner(car)('jointLeft.upperOuter'), 11 * DEGREE, DIGITS);
  const up = corner(car, 0.02);
  assert.ok(up('jointAngle.upperOuter') > 1 * DEGREE, 'it turns');
  near(up('jointLeft.upperOuter') + up('jointAngle.upperOuter'), 11 * DEGREE, DIGITS);
  // one whose stand was not read is taken as square
  near(corner(car)('jointLeft.toeInner'), 17 * DEGREE, DIGITS);
});

test('thread: 18 mm engaged, of which 12 must stay, at 1.25 mm a turn, leave 6 mm or 4.8 turns', () => {
  const of = corner(
    carWith('fenwold-201', [
      'pitch: 1.0583 mm, visible: 11.2 mm, engaged: 24.6 mm, least: 14.3 mm',
      'pitch: 1.25 mm, visible: 9 mm, engaged: 18 mm, least: 12 mm',
    ]),
  );
  near(of('threadLeft.rod'), 6 * MM, DIGITS);
  near(of('turnsLeft.rod'), 4.8, DIGITS);
  near(of('threadVisible.rod'), 9 * MM, DIGITS);
});

/** Coil of 10 mm wire on 60 mm, n_t 6, ground: 60 mm solid; its rate on the press 200 N/mm. */
const coilOf = (wire: number, mean: number, free: number, material: string) =>
  [
    [
      /wireDiameter: [\s\S]*?(?= {4}damper:)/,
      `wireDiameter: ${wire} mm
      meanDiameter: ${mean} mm
      activeCoils: 4
      totalCoils: 6
      ends: closed and ground
      freeLength: ${free} mm
${material}      rate: 200 N/mm
`,
    ],
  ] as const;
const CHROME_VANADIUM = '      material: chrome-vanadium wire\n';

/** MPa in 10 mm wire on 60 mm: Bergsträsser's factor at index 6, (4·6 + 2)/(4·6 − 3), times 8 F D/(π d³). */
const stressByHand = (F: number): number => ((26 / 21) * 8 * F * 60) / (Math.PI * 1000);

test('coil: its stress is by its own force; what is left before it is solid is its length less the solid one', () => {
  const car = carWith('fenwold-201', ...coilOf(10, 60, 130, CHROME_VANADIUM));
  for (const travel of [-0.004, 0, 0.015]) {
    const of = corner(car, travel);
    relative(of('coilStress'), stressByHand(of('coilForce')) * 1e6, DIGITS);
    // a coil under F is F/R shorter than free: 130 mm − F/(200 N/mm); its six coils of 10 mm touch at 60 mm
    near(of('solidMargin'), 70 * MM - of('coilForce') / 200e3, DIGITS, `at ${travel}`);
  }
  // where it is solid, nothing is left; the travel is found to 1e-9 m
  near(corner(car, corner(car)('coilSolidTravel'))('solidMargin'), 0, 1e-9);
  // damper closed: shorter than as surveyed by what the damper can still go
  const still = corner(car);
  const shorter = still('springLength') - 219.4 * MM;
  near(still('solidMarginFullBump'), still('solidMargin') - shorter, DIGITS);
});

/** Factor against fatigue of a coil of 10 mm wire on 60 mm, for a force from nothing to F newton. */
function fatigueByHand(F: number): number {
  // Shigley, 10th ed., table 10-4 (from memory): chrome-vanadium wire, 2005/d^0.168 MPa with d in mm; eq. 10-30
  const shear = 0.67 * (2005 / 10 ** 0.168);
  // The line of Goodman falls from Zimmerli's tested point for wire that is not peened (mean 379, amplitude 241 MPa,
  // same chapter, from memory) to no amplitude at the shear strength. A force from nothing has as much mean as
  // amplitude; the line is met where both are:
  const met = (241 * shear) / (shear - 379 + 241);
  return met / (stressByHand(F) / 2);
}

test('coil: the factor against fatigue is for a force from nothing to the damper closed', () => {
  const car = carWith('fenwold-201', ...coilOf(10, 60, 130, CHROME_VANADIUM));
  const of = corner(car);
  const closing = of('springLength') - 219.4 * MM;
  const F = of('coilForce') + 200e3 * closing;
  assert.ok(F < 200e3 * 70 * MM, 'the damper closes before the coil is solid');
  // the tenfold of the last digits of a length of 0.3 m, times the rate, over the force
  relative(of('coilFatigueFactor'), fatigueByHand(F), 1e-10);
});

test('coil: where it is solid before the damper closes, the greatest force is that of the solid coil', () => {
  const car = carWith('fenwold-201', ...coilOf(10, 60, 100, CHROME_VANADIUM));
  assert.ok(corner(car)('solidMarginFullBump') < 0);
  // 100 mm free, 60 mm solid, 200 N/mm
  relative(corner(car)('coilFatigueFactor'), fatigueByHand(8000), 1e-10);
});

test('coil between flat seats bows from a free length of 5.23 mean diameters on', () => {
  // Shigley, 10th ed., eq. 10-12, and EN 13906-1 (both from memory), steel of 79.5 and 206 GPa, ν = 0.5
  const g = 79.5 / 206;
  const critical = ((Math.PI * 40) / 0.5) * Math.sqrt((1 - g) / (0.5 + g));
  near(critical, 2.616 * 40 * 2, 0.1); // mm, as such books print it
  const buckles = (free: number): number =>
    corner(carWith('fenwold-201', ...coilOf(10, 40, free, '')))('coilBucklesAt');
  assert.ok(Number.isNaN(buckles(Math.floor(critical))));
  // just past it the root is that of a difference of nearly nothing: q = 1 − (L_cr/L_0)²
  const free = Math.ceil(critical);
  const part = (0.5 / (1 - g)) * (1 - Math.sqrt(1 - (critical / free) ** 2));
  near(buckles(free), part * free * MM, 1e-9);
});

test('toe at the rim: half a degree on 350 mm is 3.054 mm', () => {
  const of = corner(
    carWith(
      'fenwold-201',
      ['toe: -0.10 deg', 'toe: 0.50 deg'],
      ['rimDiameter: 330 mm', 'rimDiameter: 350 mm'],
    ),
  );
  near(of('toeAtRim'), 3.054 * MM, 0.0005 * MM); // as printed
});

test('the wheel centre stands R cos γ above the lowest point of the wheel', () => {
  const car = carWith('fenwold-201', ['loadedRadius: 316 mm', 'loadedRadius: 320 mm']);
  // 3° of camber are enough for the cosine to count: 0.4 mm of 320
  for (const travel of [0, 0.02, 0.04]) {
    const of = corner(car, travel);
    near(of('wheelCentreHeight'), 0.32 * Math.cos(of('camber')), DIGITS, `at ${travel}`);
  }
});

test('wheel hop: the unsprung mass between two springs, tyre and springing, that both hold it', () => {
  const hop = (tyre: number): number => {
    const of = corner(
      carWith(
        'fenwold-201',
        ['unsprung: 16.4 kg', 'unsprung: 18 kg'],
        ['tyreRate: 225 N/mm', `tyreRate: ${tyre} N/mm`],
      ),
    );
    // (2πf)² m is the sum of what holds it; 4e5 N/m to twelve digits
    near((2 * Math.PI * of('hopFrequency')) ** 2 * 18, of('wheelRate') + tyre * 1000, 1e-6);
    return of('hopFrequency');
  };
  // so what 100 N/mm more of tyre adds to (2πf)² is 100 000/18, whatever the springing
  relative((2 * Math.PI) ** 2 * (hop(280) ** 2 - hop(180) ** 2), 100e3 / 18, 1e-10);
});

/** Ashgarth's front left bar as a plain one: 20 mm by 400 mm between shoulders, 48 and 47 splines. */
const PLAIN_BAR = carWith(
  'ashgarth-501',
  ['diameter: { is: 18.52 mm, with: micrometer, by: Vance, on: 2026-04-12 }', 'diameter: 20 mm'],
  [
    'rockerEnd: { form: radius, headDiameter: 23.6 mm, size: 8 mm, splines: 48 }',
    'rockerEnd: { form: square, splines: 48 }',
  ],
  [
    'anchorEnd: { form: radius, headDiameter: 23.6 mm, size: 8 mm, splines: 47 }',
    'anchorEnd: { form: square, splines: 47 }',
  ],
);

test('bar: mass, vernier step, part of its strength, and the twist at which it yields', () => {
  const of = corner(PLAIN_BAR);
  relative(of('barMass'), 7850 * (Math.PI / 4) * 0.02 ** 2 * 0.4, DIGITS); // 0.986 kg, steel of 7850 kg/m³
  // one tooth on at one end and one back at the other: a 47th less a 48th of a turn, 0.1596°
  near(of('barSplineStep'), 2 * Math.PI * (1 / 47 - 1 / 48), DIGITS);
  near(of('barSplineStep') / DEGREE, 0.1596, 0.00005);
  // 300M is sold as of 270 ksi at the least (supplier sheets); a ksi is 6.894757 MPa. The table rounds to 1 MPa
  const strength = 270 * 6.894757e6;
  relative(of('barStressPart') * strength, of('barStress'), 1 / 1861);
  // stress goes with twist: yield in shear at 0.48 of the strength (the material's own row)
  relative((of('barYieldTwist') / of('barTwist')) * of('barStress'), 0.48 * strength, 1 / 1861);
});

test('bar: at full bump its stress is that at the travel where the damper is closed', () => {
  const closed = corner(PLAIN_BAR)('closedTravel');
  // τ = G φ D/2L of a round bar (any handbook, such as Gere, ch. 3, from memory), 300M of 79 GPa
  const byTwist = (79e9 * corner(PLAIN_BAR, closed)('barTwist') * 0.02) / (2 * 0.4);
  relative(corner(PLAIN_BAR)('barStressFullBump'), byTwist, 1e-10);
});

test('it stands where the wheel carries what the scale shows', () => {
  const { form } = PLAIN_BAR;
  const stands = corner(PLAIN_BAR)('standsAt');
  assert.ok(Math.abs(stands) > 1e-5, 'not just as surveyed: the twist was measured');
  // found to 1e-10 m, and the wheel rate is near 300 N/mm
  near(corner(PLAIN_BAR, stands)('wheelLoad'), form.front.left.scale.value * G, 1e-4);
});

test('droop stop and slack bar: the preload is the load just above the stop; a slack bar has no torque', () => {
  const car = carWith('fenwold-201', ['gasForce: 165 N', 'gasForce: 0 N']);
  // the coil comes free below the stop, so the wheel is held by the stop until the load is the preload
  const at = corner(car);
  assert.ok(at('coilFreeTravel') < at('droopStopTravel'));
  const stop = corner(car, at('droopStopTravel') + 1e-9);
  // a hair above the stop, so that the stop itself does not pull; the rate there is below 200 N/mm
  near(at('droopPreload'), stop('wheelLoad') - 16.4 * G, 1e-3);
  // places are found to 1e-9 m; the bar gives 2e3 N m/rad at 10 rad/m
  near(corner(PLAIN_BAR, corner(PLAIN_BAR)('barSlackTravel'))('barTorque'), 0, 1e-4);
});

function axle(car: Car, at = 0): (id: string) => number {
  const answer = axleFigures(car, 'front', { ...AS_SURVEYED, front: { left: at, right: at } });
  assert.ok(answer.reached);
  return (id) => valueIn(answer.figures, id);
}

test('an anti-roll bar without modulus and material is taken as of spring steel, 79.5 GPa', () => {
  const { form, values } = carWith('fenwold-201', [
    'bar: { diameter: 16.02 mm, bore: 12.1 mm, activeLength: 302 mm, material: 4340 bar }',
    'bar: { diameter: 20 mm, bore: 10 mm, activeLength: 300 mm, material: 4340 bar }',
  ]);
  // a file that has neither is refused, and a named material brings its modulus: so both go after the file was read
  const { material: _, shearModulus: __, ...bar } = form.front.antiRollBar!.bar;
  const nameless = { ...form.front, antiRollBar: { ...form.front.antiRollBar!, bar } };
  const at = axleState(nameless, { left: 0, right: 0, rack: 0 }, new Numbers(values));
  // EN 13906-1 (from memory); J = π/32 (D⁴ − d⁴)
  relative(at.bar!.rate, ((79.5e9 * Math.PI) / 32) * (0.02 ** 4 - 0.01 ** 4) * (1 / 0.3), DIGITS);
});

test('a helper on the heave spring: both in a row until it is solid, then the spring alone, later by its travel', () => {
  const heave = (helper: string): Car =>
    carWith('ashgarth-501', [
      /heave:\n {4}rate: .*\n {4}gap: 1.4 mm/,
      `heave:\n    rate: 200 N/mm\n    gap: 0 mm${helper}`,
    ]);
  const bare = heave('');
  const helped = heave('\n    helper: { rate: 50 N/mm, travel: 2 mm }');
  // 100 N close the helper; the spring has then given 0.5 mm besides. Both first carry at no compression.
  const little = axle(bare, 0.001)('heaveForce') / 200e3;
  assert.ok(little > 0 && little < 2.5 * MM);
  // springs in a row: 50·200/250 = 40 N/mm
  relative(axle(helped, 0.001)('heaveForce'), 40e3 * little, 1e-10);
  const much = axle(bare, 0.02)('heaveForce');
  assert.ok(much > 500, 'well past it');
  // the spring is 2 mm behind
  near(axle(helped, 0.02)('heaveForce'), much - 400, 1e-9);
});
