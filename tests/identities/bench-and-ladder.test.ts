/**
 * Bench test, ladder, coil for bar, bar for coil, knee of a damper and wheel rate from torque, against tables worked by
 * hand, definitions, and the slope of a force along the travel.
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { knee } from '../../src/loadpath/damper.ts';
import { Numbers } from '../../src/loadpath/numbers.ts';
import { barForCoil } from '../../src/loadpath/spring/bar-for-coil.ts';
import { barLife } from '../../src/loadpath/spring/bar-life.ts';
import { benchTest, implied } from '../../src/loadpath/spring/bench-test.ts';
import { coilForBar } from '../../src/loadpath/spring/coil-for-bar.ts';
import { ladder } from '../../src/loadpath/spring/ladder.ts';
import { barMass, type TorsionBar } from '../../src/loadpath/spring/torsion-bar.ts';
import { type Ratios, sprungCorner } from '../../src/loadpath/sprung-corner.ts';
import { torqueSamples, wheelRateOfBar, wheelRateOfCoil } from '../../src/loadpath/torque-curves.ts';
import { springMaterial } from '../../src/materials/spring-material.ts';
import { demo } from '../cars/demo.ts';
import { near } from '../near.ts';

const plainBar = (diameter: number): TorsionBar => ({
  diameter,
  bore: 0,
  parallelLength: 0.4,
  ends: [{ kind: 'none' }, { kind: 'none' }],
  shearModulus: 79e9,
  density: 7850,
});

test('what lever and angle scale share adds by squares: 0.3 % and 0.4 % make 0.5 % of the rate', () => {
  const readings = [0.1, 0.2, 0.3, 0.4].map((twist) => ({ twist, torque: 1500 * twist, way: 'on' as const }));
  const { all } = benchTest(readings, { torque: 0.003, twist: 0.004 });
  near(all.rate, 1500, 1e-9);
  // readings on the line to rounding: the scatter adds nothing
  near(all.u, 7.5, 1e-6);
});

test('bend of six even readings: Student’s t of 3.182 with three degrees of freedom is a chance of 0.05', () => {
  // orthogonal polynomials of six even steps (Fisher and Yates, from memory; they are checked here)
  const line = [-5, -3, -1, 1, 3, 5];
  const square = [5, -1, -4, -4, -1, 5];
  const cube = [-5, 7, 4, -4, -7, 5];
  const sum = (a: readonly number[], b: readonly number[]): number =>
    a.reduce((total, each, i) => total + each * b[i]!, 0);
  assert.deepEqual([sum(line, square), sum(line, cube), sum(square, cube)], [0, 0, 0]);
  assert.deepEqual([sum(square, square), sum(cube, cube)], [84, 180]);
  // six readings less offset, slope and square leave three: s² = 180/3 = 60 when the cube stands for the scatter, and
  // t = c/√(60/84); the table (NIST 1.3.6.7.2, from memory) has t = 3.182 for 0.025 above
  const c = 3.182 * Math.sqrt(60 / 84);
  const readings = line.map((step, i) => ({
    twist: 0.3 + 0.02 * step,
    torque: 400 + 30 * step + c * square[i]! + cube[i]!,
    way: 'on' as const,
  }));
  // half of the table's last digit is 2e-5 of chance: the density of t there is 0.02, on both sides
  near(benchTest(readings).bend!.chance, 0.05, 3e-5);
  // with the rate of 30 in 0.02 rad, as it went in
  near(benchTest(readings).all.rate, 1500, 1e-9);
});

test('spread of what a rate implies: every input moved by its own uncertainty (GUM 5.1.2)', () => {
  // as stated 20 on 10 mm, and a bench rate that says 21 mm; D ± 0.02, d ± 0.05 mm, k 0.5 %, L 0.2 %, G 1 %
  const [G, L, d] = [79e9, 0.4, 0.01];
  const rate = (G * Math.PI * (0.021 ** 4 - d ** 4)) / (32 * L);
  const found = implied(
    { rate, u: 0.005 * rate },
    {
      diameter: { value: 0.02, u: 0.02e-3 },
      bore: { value: d, u: 0.05e-3 },
      activeLength: { value: L, u: 0.002 * L },
      shearModulus: { value: G, u: 0.01 * G },
    },
  );
  // the bar's equation solved for each, and both ways by each u: the cube of the steps is left, 3e-5 at most
  const inputs = { k: rate, D: 0.02, d, L, G };
  const us = { k: 0.005 * rate, D: 0.02e-3, d: 0.05e-3, L: 0.002 * L, G: 0.01 * G };
  const spread = (f: (of: typeof inputs) => number): number =>
    Math.hypot(
      ...(Object.keys(inputs) as (keyof typeof inputs)[]).map((name) => {
        const at = (by: number): number => f({ ...inputs, [name]: inputs[name] + by * us[name] });
        return (at(1) - at(-1)) / 2;
      }),
    );
  const polar = (of: typeof inputs): number => (Math.PI * (of.D ** 4 - of.d ** 4)) / 32;
  const diameter = spread((of) => ((32 * of.k * of.L) / (Math.PI * of.G) + of.d ** 4) ** 0.25);
  near(found.diameter.u / diameter, 1, 1e-4);
  near(found.activeLength.u / spread((of) => (of.G * polar(of)) / of.k), 1, 1e-4);
  near(found.shearModulus.u / spread((of) => (of.k * of.L) / polar(of)), 1, 1e-4);
  // by hand: u_J/J = 4·√((20³·0.02)² + (10³·0.05)²)/(20⁴ − 10⁴) = 4·167.6/150000 = 0.00447
  // length √(0.005² + 0.00447² + 0.01²), modulus √(0.005² + 0.00447² + 0.002²); last printed digit
  near(found.activeLength.u / found.activeLength.value, 0.01204, 5e-6);
  near(found.shearModulus.u / found.shearModulus.value, 0.007, 5e-6);
  // 21⁴ − 10⁴ = 184481, × 0.011358 = 2095.3; with 4·10³·0.05 = 200: 2104.8/(4·21³) = 0.0568 mm
  near(found.diameter.u * 1e3, 0.0568, 5e-5);
});

test('a ladder of equal ratio, 20 to 40 N/mm in three rungs ground to half a millimetre, by hand', () => {
  // rate goes with D⁴, and a bar of 20 mm is to give 20 N/mm: √2 in rate is 2^⅛ in diameter
  const wheelRateAt = (diameter: number): number => 20e3 * (diameter / 20e-3) ** 4;
  const barRate = (79e9 * Math.PI * 20e-3 ** 4) / (32 * 0.4);
  const found = ladder({
    softest: 20e3,
    stiffest: 40e3,
    count: 3,
    steps: 'equal ratio',
    barOf: plainBar,
    wheelRateOf: (rate) => (20e3 * rate) / barRate,
    diameters: { from: 18e-3, to: 25e-3 },
    grindingStep: 0.5e-3,
  });
  near(found.evenStep, Math.SQRT2, 1e-12);
  const exact = [20, 20 * 2 ** 0.125, 20 * 2 ** 0.25]; // 20, 21.81, 23.78 mm
  found.rungs.forEach((rung, i) => {
    near(rung.exactDiameter * 1e3, exact[i]!, 1e-9);
  });
  assert.deepEqual(
    found.rungs.map((rung) => Math.round(rung.diameter * 2e3) / 2),
    [20, 22, 24],
  );
  // 22⁴/20⁴ = 1.4641, and 24⁴/22⁴ = 1.41630 over the rung below
  assert.equal(found.rungs[0]!.step, undefined);
  near(found.rungs[1]!.step!, 1.4641, 1e-9);
  near(found.rungs[2]!.step!, wheelRateAt(24e-3) / wheelRateAt(22e-3), 1e-9);
  // the first step is off by 0.0499 of the 0.4142 that an even step is above 1
  near(found.unevenness, (1.4641 - Math.SQRT2) / (Math.SQRT2 - 1), 1e-9);
});

test('coil for bar: three points of unequal weight, by hand', () => {
  // seats that come together 50 mm a radian all along. With weights 1, 4, 1 the least-squares line through −120, −9,
  // 120 N·m at −20, 0, 20 mm: mean (−120 − 36 + 120)/6 = −6, slope 0.02·240/(2·0.02²) = 6000 N·m/m
  const found = coilForBar(
    [
      { rockerAngle: -0.4, compression: -0.02, torque: -120 },
      { rockerAngle: 0, compression: 0, torque: -9, weight: 4 },
      { rockerAngle: 0.4, compression: 0.02, torque: 120 },
    ].map((point) => ({ ...point, compressionPerAngle: 0.05 })),
    0.2,
  );
  // torque = R·(q − q_0)·dq/dθ: R = 6000/0.05, and it is free where −6 + 6000·q_0 = 0
  near(found.rate, 120e3, 1e-6);
  near(found.freeAt, 0.001, 1e-12);
  near(found.freeLength, 0.199, 1e-12);
  // coil less bar: −126 + 120, −6 + 9, 114 − 120
  found.points.forEach((point, i) => {
    near(point.difference, [-6, 3, -6][i]!, 1e-9);
    near(point.coil - point.bar, point.difference, 1e-12);
  });
  near(Math.abs(found.worst.difference), 6, 1e-9);
  // of the 120 N·m that the bar gives at most
  near(found.worst.part, -0.05, 1e-12);
  near(found.rms, Math.sqrt((36 + 4 * 9 + 36) / 6), 1e-9);
  // 1 mm short of touching in the middle, 21 mm below: it would pull at both, and is loose up to the middle
  assert.equal(found.unseatsBelow, 0);
});

test('bar for coil: stresses by G·r·φ/L, life at the low end of the strength, mass over the coil’s', () => {
  const bar = plainBar(0.018);
  const rate = (79e9 * Math.PI * 0.018 ** 4) / (32 * 0.4);
  const coil = [-0.1, 0, 0.1, 0.2, 0.3].map((rockerAngle) => ({
    rockerAngle,
    torque: rate * (rockerAngle + 0.2),
  }));
  const material = springMaterial('300M bar')!;
  const { fits } = barForCoil({
    coil,
    from: { kind: 'rack', bars: [{ name: '18 mm', bar, material }] },
    overtravel: 0.05,
    coilMass: 2,
    duty: {
      surface: 'ground',
      residualAtSkin: 0,
      blocks: [{ what: 'lap', low: 0.2, high: 0.9, cycles: 30 }],
    },
  });
  const fit = fits[0]!;
  // half a radian at full bump: 79 GPa·9 mm·0.5/400 mm
  const full = (79e9 * 0.009 * 0.5) / 0.4;
  near(fit.fullBump.stress / full, 1, 1e-9);
  // and 0.05 rad past it k_t·Δθ·D/2J more, 88.9 MPa
  near((fit.overtravel.stress - fit.fullBump.stress) / 1e6, (79e3 * 9 * 0.05) / 400, 1e-6);
  near(fit.overtravel.twist, 0.55, 1e-12);
  // 270 ksi, and parts of the stress at full bump: the overtravel is no part of the duty
  const life = barLife({
    tensileStrength: 1862e6,
    diameter: 0.018,
    surface: 'ground',
    residualAtSkin: 0,
    duty: [{ what: 'lap', low: 0.2 * full, high: 0.9 * full, cycles: 30 }],
  });
  // the slope of the line lifts the rounding of the stress by seven
  near(fit.life!.repeats.middle / life.repeats.middle, 1, 1e-9);
  near(fit.massOverCoil!, (7850 * (Math.PI / 4) * 0.018 ** 2 * 0.4) / 2, 1e-12);
});

test('a bored head is a tube: 24 × 20 mm with a 10 mm bore weighs 59 g', () => {
  const without = { ...plainBar(0.02), bore: 0.01 };
  const head = { diameter: 0.024, length: 0.02 };
  const mass = barMass({ ...without, heads: [head] }) - barMass(without);
  // 7.85 g/cm³ over π/4·(2.4² − 1.0²)·2 cm³ = 7.477 cm³
  near(mass * 1e3, 7.85 * (Math.PI / 4) * (2.4 ** 2 - 1) * 2, 1e-9);
  near(mass, 0.0587, 5e-5);
});

/** 8000 N·s/m up to 50 mm/s, 2000 above: 400 N at the knee. */
const kneed = [0.01, 0.02, 0.03, 0.04, 0.1, 0.15, 0.2, 0.3].map((velocity) => ({
  velocity,
  force: velocity <= 0.05 ? 8000 * velocity : 400 + 2000 * (velocity - 0.05),
}));

test('a damper’s knee lies where both lines meet: 50 mm/s and 400 N, nothing left over', () => {
  const found = knee(kneed)!;
  // sixty golden sections of the squares: their floor is flat to the root of rounding
  near(found.velocity, 0.05, 1e-6);
  near(found.force, 400, 8000 * 1e-6);
  near(found.lowSpeed, 8000, 1e-2);
  near(found.highSpeed, 2000, 1e-2);
  near(found.misfit, 0, 1e-6);
});

test('misfit is the root mean square distance from the two lines over the greatest force', () => {
  const rough = kneed.map((point, i) => ({ ...point, force: point.force + [6, -9, 4, 7, -8, 9, -5, 3][i]! }));
  const found = knee(rough)!;
  const squares = rough.map(({ velocity, force }) => {
    const onLine =
      velocity < found.velocity
        ? found.lowSpeed * velocity
        : found.force + found.highSpeed * (velocity - found.velocity);
    return (force - onLine) ** 2;
  });
  const mean = squares.reduce((a, b) => a + b) / 8;
  near(found.misfit, Math.sqrt(mean) / 903, 1e-12); // 900 N at 0.3 m/s, and 3
});

/** A rocker that turns θ and a unit that closes by c, both bent along the travel z: quadratics made by hand. */
const MADE = {
  angle: (z: number): number => 8 * z + 30 * z * z,
  compression: (z: number): number => 0.7 * z - 2 * z * z,
};
const madeRatios = (z: number): Ratios => ({
  angle: MADE.angle(z),
  turn: 8 + 60 * z,
  turnChange: 60,
  unitLength: 0.3 - MADE.compression(z),
  unit: 0.7 - 4 * z,
  unitChange: -4,
});

test('wheel rate of bar and of coil is the slope of their force at the wheel, the work done over the travel', () => {
  const barLaw = (z: number): number => 2000 * (MADE.angle(z) + 0.15);
  const coilLaw = (z: number): number => 140e3 * (MADE.compression(z) + 0.02);
  // stored energy, and the force at the wheel as its slope: torque·dθ/dz, force·dc/dz
  const barWork = (z: number): number => (2000 * (MADE.angle(z) + 0.15) ** 2) / 2;
  const coilWork = (z: number): number => (140e3 * (MADE.compression(z) + 0.02) ** 2) / 2;
  const h = 1e-3;
  const second = (f: (z: number) => number, z: number): number => (f(z + h) - 2 * f(z) + f(z - h)) / h ** 2;
  for (const z of [-0.02, 0, 0.015]) {
    const ratios = madeRatios(z);
    // both energies are quartics: the second difference is off by h²/12 of the fourth derivative, 2000·30²·12 N·m/m⁴
    // and 140e3·2²·12, below 2 N/m; the energies’ own rounding is 1e-14 J/h²
    near(wheelRateOfBar(ratios, 2000, barLaw(z)), second(barWork, z), 2);
    near(wheelRateOfCoil(ratios, 140e3, coilLaw(z)), second(coilWork, z), 2);
  }
  // and the second term counts: 300 N·m·60/m² and 2800 N·(−4/m) as surveyed
  near(wheelRateOfBar(madeRatios(0), 2000, 300), 2000 * 64 + 18000, 1e-6);
  near(wheelRateOfCoil(madeRatios(0), 140e3, 2800), 140e3 * 0.49 - 11200, 1e-6);
});

test('the coil’s torque at the rocker does the work that its force does: ∫T dθ = ½·R·(c₁² − c₀²)', () => {
  const car = demo('fenwold-201');
  const of = sprungCorner(car.form.front, 'left', new Numbers(car.values));
  const samples = torqueSamples(of, 0, 0.02, 41);
  const work = samples.slice(1).reduce((sum, here, i) => {
    const before = samples[i]!;
    return sum + ((here.coil + before.coil) / 2) * (here.ratios.angle - before.ratios.angle);
  }, 0);
  const { coilRate, coilFreeAt } = of.springing;
  const pressed = (i: number): number => samples.at(i)!.compression - coilFreeAt!;
  // trapezia of 1/40 of the way: a torque that bends by a tenth over it leaves 0.1/12/40², 5e-6
  near(work / ((coilRate! * (pressed(-1) ** 2 - pressed(0) ** 2)) / 2), 1, 2e-5);
});
