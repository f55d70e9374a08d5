/** Bar for coil and back, the ladder, the bar on the bench: what was put in must come out. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { type BarsToMake, barForCoil, workBarFit } from '../../src/loadpath/spring/bar-for-coil.ts';
import { barLife } from '../../src/loadpath/spring/bar-life.ts';
import { type BenchReading, benchTest, implied } from '../../src/loadpath/spring/bench-test.ts';
import { coilForBar, coilsOfRack, type SeatPoint } from '../../src/loadpath/spring/coil-for-bar.ts';
import { ladder, RungOutOfReach } from '../../src/loadpath/spring/ladder.ts';
import { fitWithin } from '../../src/loadpath/spring/torque-fit.ts';
import { activeLength, type TorsionBar, torsionBarRate } from '../../src/loadpath/spring/torsion-bar.ts';
import { springMaterial } from '../../src/materials/spring-material.ts';
import { recheck, Working } from '../../src/working/working.ts';
import { real } from '../draw.ts';
import { near } from '../near.ts';

const STEEL = springMaterial('300M bar')!;
const ANGLES = Array.from({ length: 21 }, (_, i) => -0.1 + 0.02 * i);

const TO_MAKE: BarsToMake = {
  material: STEEL,
  diameter: { from: 0.012, to: 0.024 },
  boreRatio: 0,
  activeLength: { from: 0.3, to: 0.5 },
  ends: [
    { kind: 'fillet', radius: 0.03, headDiameter: 0.026 },
    { kind: 'fillet', radius: 0.03, headDiameter: 0.026 },
  ],
};

const bar = (diameter: number): TorsionBar => ({
  diameter,
  bore: 0,
  parallelLength: 0.4,
  ends: [{ kind: 'none' }, { kind: 'none' }],
  shearModulus: 79e9,
  density: 7850,
});

test('a straight torque is a bar: it comes out again, with nothing unmatched', () =>
  fc.assert(
    fc.property(real(500, 3500), (rate) => {
      const coil = ANGLES.map((rockerAngle) => ({ rockerAngle, torque: rate * (rockerAngle + 0.25) }));
      const { ideal, fits } = barForCoil({ coil, from: { kind: 'to make', ...TO_MAKE }, overtravel: 0.05 });
      near(ideal.rate / rate, 1, 1e-12);
      near(ideal.slackAt, -0.25, 1e-12);
      const best = fits[0]!;
      near(best.rate / rate, 1, 1e-9);
      near(best.worst.part, 0, 1e-9);
      // ground to the step
      near(best.bar.diameter / 0.05e-3, Math.round(best.bar.diameter / 0.05e-3), 1e-6);
      // among equals the longest has the lowest stress: a step thicker would have to be longer than 500 mm
      const thicker = { ...best.bar, diameter: best.bar.diameter + 0.05e-3 };
      const longest = 0.5 - activeLength(thicker) + thicker.parallelLength;
      assert.ok(torsionBarRate({ ...thicker, parallelLength: longest }) > rate);
      near(best.fullBump.twist, 0.55, 1e-9);
      near(best.overtravel.stress / best.fullBump.stress, 0.6 / 0.55, 1e-9);
      assert.equal(best.reversed, 0);
    }),
    { numRuns: 25 },
  ));

/** A coil of 140 N/mm on a 60 mm arm that stands 15° off square in the middle: its torque is bent. */
const bentCoil = ANGLES.map((rockerAngle) => {
  const arm = 0.06 * Math.cos(rockerAngle - 0.26);
  const compression = 0.06 * (Math.sin(rockerAngle - 0.26) + Math.sin(0.46)) + 0.01;
  return { rockerAngle, torque: 140e3 * compression * arm };
});

test('what a bar cannot match is the bend: the same for every bar of the ideal rate, and told', () => {
  const { ideal, fits } = barForCoil({
    coil: bentCoil,
    from: { kind: 'to make', ...TO_MAKE },
    overtravel: 0.05,
    coilMass: 1.5,
    duty: {
      surface: 'ground and peened',
      residualAtSkin: -250e6,
      blocks: [{ what: 'lap', low: 0.2, high: 0.9, cycles: 30 }],
    },
  });
  assert.ok(ideal.worst !== 0);
  const best = fits[0]!;
  near(best.rms, ideal.rms, 1e-6 * ideal.rms + 1e-9);
  assert.ok(Math.abs(best.worst.part) > 0.001);
  for (const point of best.points) near(point.bar - point.coil, point.difference, 1e-9);
  // least squares: the differences have no mean and no slope left
  near(
    best.points.reduce((sum, point) => sum + point.difference, 0),
    0,
    1e-6,
  );
  near(
    best.points.reduce((sum, point) => sum + point.difference * point.rockerAngle, 0),
    0,
    1e-6,
  );
  assert.ok(best.life!.repeats.middle > 0);
  near(best.massOverCoil!, best.mass / 1.5, 1e-12);
  const first = fits.map((fit) => fit.overtravel.stress);
  assert.ok(first[0]! <= first[1]!);
});

test('spline vernier: the slack angle is a setting, off by at most half a step, and its torque is told', () => {
  const splines = { first: 48, second: 47 };
  const { fits } = barForCoil({
    coil: bentCoil,
    from: { kind: 'to make', ...TO_MAKE },
    overtravel: 0.05,
    anchor: { splines, slackAtMarks: -0.3 },
  });
  const best = fits[0]!;
  near(best.slackAt, -0.3 + best.setting!.angle, 1e-12);
  assert.ok(Math.abs(best.slackAt - best.slackWanted) <= Math.PI / (48 * 47) + 1e-12);
  near(best.splineError, best.rate * (best.slackWanted - best.slackAt), 1e-12);
});

test('from the rack: the bar of the right rate is found, a measured rate rules', () => {
  const coil = ANGLES.map((rockerAngle) => ({
    rockerAngle,
    torque: torsionBarRate(bar(0.018)) * (rockerAngle + 0.2),
  }));
  const rack = [0.016, 0.017, 0.018, 0.019].map((diameter) => ({
    name: `${diameter * 1e3} mm`,
    bar: bar(diameter),
    material: STEEL,
  }));
  const find = (bars: typeof rack) => barForCoil({ coil, from: { kind: 'rack', bars }, overtravel: 0 });
  assert.equal(find(rack).fits[0]!.name, '18 mm');
  const swapped = rack.map((each, i) => ({
    ...each,
    measuredRate: torsionBarRate(bar(i === 1 ? 0.018 : 0.0155)),
  }));
  assert.equal(find(swapped).fits[0]!.name, '17 mm');
});

test('with the slack angle held the rate is still the best line about the mean', () => {
  const points = [
    { rockerAngle: 0, torque: 0 },
    { rockerAngle: 1, torque: 2, weight: 4 },
    { rockerAngle: 2, torque: 5 },
  ];
  const fit = fitWithin(points);
  for (const factor of [0.999, 1.001]) {
    assert.ok(fitWithin(points, { rate: fit.rate * factor }).rms > fit.rms);
    assert.ok(fitWithin(points, { slackAt: fit.slackAt + (factor - 1), rate: fit.rate }).rms > fit.rms);
  }
});

const seats: readonly SeatPoint[] = ANGLES.map((rockerAngle) => ({
  rockerAngle,
  compression: 0.06 * (Math.sin(rockerAngle - 0.26) + Math.sin(0.26)),
  compressionPerAngle: 0.06 * Math.cos(rockerAngle - 0.26),
  torque: 0,
}));
const withTorque = (rate: number, freeAt: number): readonly SeatPoint[] =>
  seats.map((point) => ({
    ...point,
    torque: rate * (point.compression - freeAt) * point.compressionPerAngle,
  }));

test('coil for bar: a coil’s own torque gives the coil back, rate and free length', () => {
  const fit = coilForBar(withTorque(140e3, -0.012), 0.2);
  near(fit.rate / 140e3, 1, 1e-9);
  near(fit.freeLength, 0.212, 1e-9);
  near(fit.worst.part, 0, 1e-9);
  assert.equal(fit.unseatsBelow, undefined);
});

test('coils of the rack: the right one first, with its seat; one that unseats says where', () => {
  const points = withTorque(140e3, -0.012);
  const fits = coilsOfRack(points, [
    { name: 'soft', rate: 100e3, freeLength: 0.22, solidLength: 0.1 },
    { name: 'right', rate: 140e3, freeLength: 0.2, solidLength: 0.1 },
  ]);
  assert.equal(fits[0]!.name, 'right');
  near(fits[0]!.seatLength, 0.188, 1e-9);
  const shortest = 0.188 - Math.max(...points.map((point) => point.compression));
  near(fits[0]!.bindMargin!, shortest - 0.1, 1e-9);
  const loose = coilForBar(withTorque(140e3, 0.002), 0.2);
  assert.ok(loose.unseatsBelow !== undefined);
});

test('ladder: even in wheel rate, ground to the step, errors told', () => {
  const wanted = {
    softest: 150e3,
    stiffest: 210e3,
    count: 5,
    barOf: bar,
    wheelRateOf: (rate: number) => rate * 70 + 15e3, // ratio squared and a geometric term
    diameters: { from: 0.012, to: 0.024 },
    grindingStep: 1e-9,
  } as const;
  const exact = ladder({ ...wanted, steps: 'equal difference' });
  near(exact.evenStep, 15e3, 1e-9);
  for (const rung of exact.rungs) near(rung.wheelRate / rung.wanted, 1, 1e-6);
  assert.ok(exact.unevenness < 1e-5);
  const ratio = ladder({ ...wanted, steps: 'equal ratio' });
  near(ratio.evenStep ** 4, 210 / 150, 1e-12);
  const ground = ladder({ ...wanted, steps: 'equal difference', grindingStep: 0.05e-3 });
  for (const rung of ground.rungs) {
    near(rung.diameter / 0.05e-3, Math.round(rung.diameter / 0.05e-3), 1e-9);
    // rate goes with D⁴: half a grinding step moves it by 2·step/D, and a little
    assert.ok(Math.abs(rung.error) <= rung.wheelRate * ((2.1 * 0.05e-3) / rung.diameter));
    near(rung.wheelRate - rung.wanted, rung.error, 1e-9);
  }
  assert.throws(() => ladder({ ...wanted, stiffest: 9e6, steps: 'equal ratio' }), RungOutOfReach);
});

/** Readings of a bar of `rate` with friction and a scatter that is made, not drawn. */
const readings = (rate: number, friction: number): readonly BenchReading[] =>
  (['on', 'off'] as const).flatMap((way) =>
    [0.05, 0.1, 0.15, 0.2, 0.25, 0.3].map((twist, i) => ({
      twist,
      torque: rate * twist + 4 + (way === 'on' ? friction : -friction) + (i % 2 === 0 ? 0.2 : -0.2),
      way,
    })),
  );

test('on the bench: rate within its interval, on and off apart, friction told', () => {
  const found = benchTest(readings(1500, 8), { torque: 0.005, twist: 0 });
  assert.ok(found.all.interval[0] < 1500 && 1500 < found.all.interval[1]);
  assert.ok(found.on!.interval[0] < 1500 && 1500 < found.on!.interval[1]);
  near(found.hysteresis!, 16 / 462.2, 1e-3); // greatest reading 1500·0.3 + 4 + 8 + 0.2, less the made scatter
  assert.ok(found.all.u > 0.005 * found.all.rate);
  assert.match(found.told.join(), /on and coming off/);
  assert.deepEqual(benchTest(readings(1500, 0)).told, []);
});

test('on the bench: a bent line is told as bent', () => {
  const bent = readings(1500, 0).map((each) => ({ ...each, torque: each.torque - 900 * each.twist ** 2 }));
  const found = benchTest(bent);
  assert.ok(found.bend!.chance < 1e-6);
  assert.match(found.told.join(), /bent/);
});

test('what the rate implies: each of the three gives the others back', () => {
  const known = (value: number, part: number) => ({ value, u: part * value });
  const whole = { ...bar(0.018), bore: 0.006 };
  const rate = torsionBarRate(whole);
  const found = implied(
    { rate, u: 0.01 * rate },
    {
      diameter: known(0.018, 0.001),
      bore: known(0.006, 0.001),
      activeLength: known(0.4, 0.005),
      shearModulus: known(79e9, 0.01),
    },
  );
  near(found.diameter.value, 0.018, 1e-15);
  near(found.activeLength.value, 0.4, 1e-12);
  near(found.shearModulus.value / 79e9, 1, 1e-12);
  // with the fourth power a part of the rate counts a quarter in the diameter (solid part of 1 − (1/3)⁴)
  near(found.diameter.u / 0.018, (Math.hypot(0.01, 0.005, 0.01) * (1 - 1 / 81)) / 4, 1e-4);
  assert.ok(found.shearModulus.u / found.shearModulus.value > Math.hypot(0.01, 0.004, 0.005) * 0.99);
});

test('workings of fit, life and bench stand when worked out again', () => {
  const working = new Working();
  const duty = {
    surface: 'ground' as const,
    residualAtSkin: -200e6,
    blocks: [{ what: 'lap', low: 0.1, high: 0.9, cycles: 20 }],
  };
  const found = barForCoil({ coil: bentCoil, from: { kind: 'to make', ...TO_MAKE }, overtravel: 0.05, duty });
  workBarFit(found, found.fits[0]!, working);
  const { fullBump, bar: best } = found.fits[0]!;
  barLife(
    {
      tensileStrength: 1862e6,
      diameter: best.diameter,
      ...duty,
      duty: [{ what: 'lap', low: 0, high: fullBump.stress, cycles: 1 }],
    },
    working,
  );
  const bench = benchTest(readings(1500, 3), { torque: 0.005, twist: 0.002 }, 0.95, working);
  const exact = (value: number) => ({ value, u: 0 });
  implied(
    bench.all,
    {
      diameter: exact(0.018),
      bore: exact(0),
      activeLength: exact(0.4),
      shearModulus: exact(79e9),
    },
    working,
  );
  assert.deepEqual(recheck(working.steps), []);
  assert.ok(working.steps.length > 15);
});

test('a bar for 673 N·m/rad over 300 mm: 12.72 mm solid at 78.5 GPa, 13.17 mm bored 0.6, 31 % lighter (D)', () => {
  const exact = (value: number) => ({ value, u: 0 });
  const diameter = (modulus: number): number =>
    implied(
      { rate: 673, u: 0 },
      {
        diameter: exact(0.0127),
        bore: exact(0),
        activeLength: exact(0.3),
        shearModulus: exact(modulus),
      },
    ).diameter.value * 1e3;
  // worked by hand to the second decimal
  near(diameter(77e9), 12.78, 0.005);
  near(diameter(78.5e9), 12.72, 0.005);
  near(diameter(80e9), 12.66, 0.005);
  const limits = {
    ...TO_MAKE,
    material: { ...STEEL, shearModulus: { ...STEEL.shearModulus, value: 78.5e9 } },
  };
  const coil = ANGLES.map((rockerAngle) => ({ rockerAngle, torque: 673 * (rockerAngle + 0.2) }));
  const plain = [{ kind: 'none' }, { kind: 'none' }] as const;
  const best = (boreRatio: number) =>
    barForCoil({
      coil,
      from: {
        kind: 'to make',
        ...limits,
        boreRatio,
        ends: plain,
        activeLength: { from: 0.3, to: 0.3 },
        grindingStep: 1e-6,
      },
      overtravel: 0,
    }).fits[0]!;
  near(best(0).bar.diameter * 1e3, 12.72, 0.005);
  near(best(0.6).bar.diameter * 1e3, 13.17, 0.005);
  near(best(0.6).mass / best(0).mass, 1 - 0.31, 0.005);
});
