/** What must hold for any spring, bar, rubber and damper. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { damper } from '../../src/loadpath/damper.ts';
import { buckling, goodmanFactor, repeatedLoadFactor } from '../../src/loadpath/spring/coil-limits.ts';
import {
  type CoilSpring,
  coilBindMargin,
  coilMass,
  coilRate,
  leastGaps,
  solidForce,
  solidLength,
  solidStress,
  surgeFrequency,
  totalCoils,
} from '../../src/loadpath/spring/coil-spring.ts';
import {
  BarSpring,
  CurveSpring,
  DroopStop,
  HelperInSeries,
  LinearSpring,
  Parallel,
  SolidSpring,
  type SpringElement,
} from '../../src/loadpath/spring/elements.ts';
import {
  BeyondPlasticTorque,
  plasticTorque,
  presetToTorque,
  presetToTwist,
  reversals,
  workingHand,
  yieldTorque,
} from '../../src/loadpath/spring/presetting.ts';
import { nearestSetting, vernierStep } from '../../src/loadpath/spring/spline.ts';
import {
  activeLength,
  barMass,
  barTwist,
  type EndTransition,
  equivalentLength,
  polarSecondMoment,
  skinStress,
  storedEnergy,
  type TorsionBar,
  torsionBarRate,
  transitionLength,
  twistOfSections,
} from '../../src/loadpath/spring/torsion-bar.ts';
import {
  SPRING_MATERIALS,
  shearYield,
  springMaterial,
  springMaterialsLike,
  tensileStrength,
} from '../../src/materials/spring-material.ts';
import { pchip } from '../../src/maths/pchip.ts';
import { integral } from '../../src/maths/quadrature.ts';
import { recheck, Working } from '../../src/working/working.ts';
import { near } from '../near.ts';

const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

const anyEnd = (diameter: number): fc.Arbitrary<EndTransition> =>
  fc.oneof(
    fc.constant<EndTransition>({ kind: 'none' }),
    fc.record({
      kind: fc.constant('taper' as const),
      length: between(0.005, 0.05),
      headDiameter: between(1.05, 1.6).map((ratio) => ratio * diameter),
    }),
    fc.record({
      kind: fc.constant('fillet' as const),
      radius: between(0.01, 0.1),
      headDiameter: between(1.05, 1.6).map((ratio) => ratio * diameter),
    }),
  );

const anyBar: fc.Arbitrary<TorsionBar> = fc
  .record({ diameter: between(0.01, 0.035), boreRatio: fc.oneof(fc.constant(0), between(0.1, 0.8)) })
  .chain(({ diameter, boreRatio }) =>
    fc.record({
      diameter: fc.constant(diameter),
      bore: fc.constant(boreRatio * diameter),
      parallelLength: between(0.15, 0.9),
      ends: fc.tuple(anyEnd(diameter), anyEnd(diameter)),
      splineLength: between(0, 0.01),
      shearModulus: between(40e9, 85e9),
      density: between(4000, 8100),
    }),
  );

const plain = (bar: TorsionBar): TorsionBar => ({
  ...bar,
  ends: [{ kind: 'none' }, { kind: 'none' }],
  splineLength: 0,
});

test('a bored bar is the solid bar less its core', () =>
  fc.assert(
    fc.property(anyBar, (any) => {
      const bar = plain(any);
      const whole = torsionBarRate({ ...bar, bore: 0 });
      const core = torsionBarRate({ ...bar, diameter: bar.bore, bore: 0 });
      near(torsionBarRate(bar) / whole, 1 - core / whole, 1e-12);
    }),
  ));

test('workings of bar and coil stand when worked out again, in numbers and in units', () =>
  fc.assert(
    fc.property(anyBar, between(50, 900), (bar, torque) => {
      const working = new Working();
      torsionBarRate(bar, working);
      skinStress(bar, torque, working);
      storedEnergy(bar, torque, working);
      const yieldShear = skinStress(bar, torque) / 1.2;
      presetToTwist({ ...bar, length: activeLength(bar), yieldShear }, 1.3 * barTwist(bar, torque), working);
      yieldTorque({ ...bar, yieldShear }, working);
      assert.deepEqual(recheck(working.steps), []);
    }),
    { numRuns: 40 },
  ));

const COIL: CoilSpring = {
  wire: 0.0105,
  meanDiameter: 0.068,
  activeCoils: 5.5,
  ends: 'closed and ground',
  freeLength: 0.14,
  shearModulus: 78.5e9,
  youngsModulus: 206e9,
  density: 7850,
};

test('the coil’s whole working stands, and the measured rate rules', () => {
  const working = new Working();
  coilRate(COIL, working);
  solidStress(COIL, 'Wahl', working);
  leastGaps(COIL, 'moving', working);
  surgeFrequency(COIL, working);
  coilMass(COIL, working);
  buckling(COIL, 'both ends hinged', working);
  repeatedLoadFactor(COIL, { low: 500, high: 4000 }, { yieldShear: 8e8, repeatedLimit: 4e8 }, working);
  goodmanFactor(COIL, { low: 500, high: 4000 }, { tensileStrength: 1.8e9, surface: 'peened' }, working);
  assert.deepEqual(recheck(working.steps), []);
  assert.equal(coilRate({ ...COIL, measuredRate: 123e3 }), 123e3);
  assert.equal(solidForce({ ...COIL, measuredRate: 123e3 }), 123e3 * (0.14 - solidLength(COIL)));
});

test('ends rule coils and solid length; the bind margin is what is left', () => {
  assert.equal(totalCoils(COIL), 7.5);
  near(solidLength(COIL), 7.5 * 0.0105, 1e-15);
  near(solidLength({ ...COIL, ends: 'closed' }), 9 * 0.0105, 1e-15);
  near(coilBindMargin(COIL, 0.05), 0.14 - 7.5 * 0.0105 - 0.05, 1e-15);
  assert.equal(solidLength({ ...COIL, measuredSolidLength: 0.08 }), 0.08);
});

test('mass of the coil: the wire pulled straight', () => {
  const wireLength = Math.PI * COIL.meanDiameter * totalCoils(COIL);
  near(coilMass(COIL), (7850 * wireLength * Math.PI * COIL.wire ** 2) / 4, 1e-12);
});

test('energy is half torque times twist, and is the work done: ∫ T dφ', () =>
  fc.assert(
    fc.property(anyBar, between(10, 800), (bar, torque) => {
      const k = torsionBarRate(bar);
      const work = integral((φ) => k * φ, 0, torque / k);
      near(storedEnergy(bar, torque) / work, 1, 1e-12);
    }),
  ));

test('a bar in many thin slices twists as its equivalent lengths say', () =>
  fc.assert(
    fc.property(anyBar, (bar) => {
      const end = bar.ends[0];
      if (end.kind === 'none') return;
      const long = transitionLength(end, bar.diameter);
      const at = (x: number): number => {
        if (end.kind === 'taper') return bar.diameter + ((end.headDiameter - bar.diameter) * x) / end.length;
        return bar.diameter + 2 * (end.radius - Math.sqrt(end.radius ** 2 - x ** 2));
      };
      const slices = 2000;
      const sections = Array.from({ length: slices }, (_, i) => ({
        diameter: at(((i + 0.5) * long) / slices),
        bore: bar.bore,
        length: long / slices,
        torque: 1,
      }));
      const asBar = equivalentLength(end, bar) / (bar.shearModulus * polarSecondMoment(bar));
      // midpoint slices err with the square of their length; a fillet up to its quarter circle is steep
      near(twistOfSections(sections, bar.shearModulus) / asBar, 1, 1e-4);
      assert.ok(equivalentLength(end, bar) < long);
    }),
    { numRuns: 30 },
  ));

test('a hair of bore changes nothing: quadrature and closed form of the cone agree', () => {
  const cone = { kind: 'taper', length: 0.04, headDiameter: 0.03 } as const;
  const closed = equivalentLength(cone, { diameter: 0.02, bore: 0 });
  near(equivalentLength(cone, { diameter: 0.02, bore: 1e-9 }), closed, 1e-15);
});

test('mass of a bar with cones: the frustum of the handbook', () => {
  const bar: TorsionBar = {
    diameter: 0.02,
    bore: 0,
    parallelLength: 0.5,
    ends: [{ kind: 'taper', length: 0.04, headDiameter: 0.03 }, { kind: 'none' }],
    shearModulus: 79e9,
    density: 7850,
    heads: [{ diameter: 0.03, length: 0.03 }],
  };
  const frustum = (Math.PI * 0.04 * (0.03 ** 2 + 0.03 * 0.02 + 0.02 ** 2)) / 12;
  const rest = (Math.PI / 4) * (0.02 ** 2 * 0.5 + 0.03 ** 2 * 0.03);
  near(barMass(bar), 7850 * (frustum + rest), 1e-12);
});

test('presetting: torque rises with twist between first yield and fully plastic; torque and twist agree', () =>
  fc.assert(
    fc.property(anyBar, between(1.01, 5), (any, over) => {
      const bar = { ...any, length: activeLength(any), yieldShear: 9e8 };
      const first = (bar.yieldShear * bar.length * 2) / (bar.shearModulus * bar.diameter);
      const preset = presetToTwist(bar, over * first);
      const more = presetToTwist(bar, 1.01 * over * first);
      // once the whole section has yielded the torque stands still
      assert.ok(more.torque >= preset.torque * (1 - 1e-12));
      assert.ok(preset.torque >= yieldTorque(bar) * (1 - 1e-12));
      assert.ok(preset.torque <= plasticTorque(bar) * (1 + 1e-12));
      assert.ok(preset.residualAtSkin < 0 && preset.permanentTwist > 0);
      if (preset.coreRadius > (bar.bore / 2) * 1.01 && over < 3) {
        // near fully plastic the twist hangs on the last digits of the torque
        near(presetToTorque(bar, preset.torque).twist / preset.twist, 1, 1e-6);
      }
    }),
  ));

test('residual stress left by presetting carries no torque (its moment over the section is nothing)', () => {
  const bar = {
    diameter: 0.02,
    bore: 0.006,
    length: 0.5,
    shearModulus: 79e9,
    yieldShear: 9e8,
  };
  const preset = presetToTwist(bar, 0.9);
  const J = polarSecondMoment(bar);
  const stress = (r: number): number =>
    Math.min(bar.yieldShear, (bar.yieldShear * r) / preset.coreRadius) - (preset.torque * r) / J;
  const moment = (from: number, to: number): number =>
    integral((r) => 2 * Math.PI * r * r * stress(r), from, to);
  const core = preset.coreRadius;
  near((moment(0.003, core) + moment(core, 0.01)) / preset.torque, 0, 1e-12);
  near(stress(0.01), preset.residualAtSkin, 1e-3);
  near(stress(0.003), preset.residualAtBore, 1e-3);
});

test('below yield nothing stays; at the fully plastic torque the twist is not determined', () => {
  const bar = { diameter: 0.02, bore: 0, length: 0.5, shearModulus: 79e9, yieldShear: 9e8 };
  const light = presetToTorque(bar, 0.5 * yieldTorque(bar));
  near(light.permanentTwist, 0, 1e-15);
  near(light.residualAtSkin / bar.yieldShear, 0, 1e-12);
  assert.throws(() => presetToTorque(bar, plasticTorque(bar)), BeyondPlasticTorque);
});

test('the hand: mirror sides work opposite hands; wrong side and reversal are told', () => {
  assert.notEqual(workingHand(1), workingHand(-1));
  const torques = [-40, 200, 500];
  assert.deepEqual(reversals({ presetHand: undefined, workingHand: 'left', torques }), []);
  assert.deepEqual(reversals({ presetHand: 'left', workingHand: 'left', torques: [1, 2] }), []);
  assert.equal(reversals({ presetHand: 'left', workingHand: 'left', torques })[0]!.torque, 40);
  assert.equal(reversals({ presetHand: 'left', workingHand: 'right', torques })[0]!.torque, 500);
});

test('spline vernier: 48 and 47 teeth step 0.16° (common practice, no source), every step can be set', () => {
  const degrees = (angle: number): number => (angle * 180) / Math.PI;
  near(degrees(vernierStep({ first: 48, second: 47 })), 0.16, 0.0005);
  near(degrees(vernierStep({ first: 48, second: 48 })), 7.5, 1e-12);
  fc.assert(
    fc.property(
      fc.integer({ min: 20, max: 60 }),
      fc.integer({ min: 20, max: 60 }),
      between(-1, 1),
      (a, b, wanted) => {
        const splines = { first: a, second: b };
        const setting = nearestSetting(splines, wanted);
        assert.ok(Math.abs(setting.error) <= vernierStep(splines) / 2 + 1e-12);
        near((setting.moveFirst / a + setting.moveSecond / b) * 2 * Math.PI, setting.angle, 1e-12);
      },
    ),
    { numRuns: 60 },
  );
  assert.deepEqual(
    (({ moveFirst, moveSecond }) => [moveFirst, moveSecond])(nearestSetting({ first: 48, second: 47 }, 0)),
    [0, 0],
  );
});

/** Rate is the slope of force between kinks, and force has no jump at them. */
function checkElement(element: SpringElement, low: number, high: number): void {
  const at = element.kinks.map((kink) => kink.at);
  assert.deepEqual(
    at,
    [...at].sort((a, b) => a - b),
  );
  const cuts = [low, ...at.filter((each) => each > low && each < high), high];
  for (let i = 1; i < cuts.length; i += 1) {
    const [from, to] = [cuts[i - 1]!, cuts[i]!];
    const work = integral(element.rate, from, to);
    const rise = element.force(to) - element.force(from);
    // a rubber's curve has joints inside that the quadrature smooths over
    near(work, rise, 2e-2 * Math.max(1, Math.abs(rise)), `${element.kind} from ${from} to ${to}`);
  }
  for (const kink of at) {
    const jump = element.force(kink + 1e-12) - element.force(kink - 1e-12);
    near(jump, 0, 1e-3, `${element.kind} at ${kink}`);
  }
}

const RUBBER = [
  { compression: 0, force: 0 },
  { compression: 0.005, force: 300 },
  { compression: 0.01, force: 1000 },
  { compression: 0.015, force: 4000 },
];

test('elements: rate is the slope of force, no jumps at kinks', () => {
  const main = LinearSpring({ rate: 120e3, freeAt: -0.01 });
  const helper = HelperInSeries({ mainRate: 120e3, helperRate: 20e3, helperTravel: 0.03 });
  const rubber = CurveSpring({ table: RUBBER, gap: 0.02, packers: 0.005 });
  const droop = DroopStop({ at: -0.005 });
  const bound = SolidSpring({ spring: main, solidAt: 0.04 });
  for (const each of [main, helper, rubber, droop, bound, Parallel([bound, rubber, droop])]) {
    checkElement(each, -0.02, 0.06);
  }
  assert.equal(main.force(-0.02), 0); // it does not pull
  assert.equal(droop.force(0), 0);
  assert.ok(droop.force(-0.006) < 0);
  assert.equal(rubber.knownUpTo, 0.015 + 0.015);
  assert.equal(Parallel([main, rubber]).knownUpTo, rubber.knownUpTo);
});

test('helper: before it is solid both carry one force, after it the main spring stands alone', () => {
  const helper = HelperInSeries({ mainRate: 100e3, helperRate: 25e3, helperTravel: 0.02 });
  near(helper.rate(0.001), 20e3, 1e-9);
  const solidAt = helper.kinks[1]!.at;
  near(solidAt, 0.02 + (25e3 * 0.02) / 100e3, 1e-15); // helper's travel and the main's under its force
  near(helper.force(solidAt), 500, 1e-9);
  near(helper.rate(solidAt), 100e3, 1e-9);
});

test('a bar goes through nothing and reverses; a coil comes free', () => {
  const bar = BarSpring({ rate: 2000, freeAt: 0.1 });
  near(bar.torque(0.05), -100, 1e-9);
  assert.match(bar.kinks[0]!.what, /reverse/);
});

test('smooth curve: through its points, never past them, rising where they rise', () =>
  fc.assert(
    fc.property(
      fc.array(fc.tuple(between(0.1, 3), between(0, 5)), { minLength: 1, maxLength: 8 }),
      (steps) => {
        const points = [{ x: 0, y: 0 }];
        for (const [dx, dy] of steps) {
          const last = points.at(-1)!;
          points.push({ x: last.x + dx, y: last.y + dy });
        }
        const curve = pchip(points);
        for (let i = 1; i < points.length; i += 1) {
          const [a, b] = [points[i - 1]!, points[i]!];
          near(curve.value(b.x), b.y, 1e-12 * Math.max(1, b.y));
          let before = a.y;
          for (let t = 0.1; t < 1; t += 0.1) {
            const y = curve.value(a.x + t * (b.x - a.x));
            assert.ok(y >= before - 1e-12 * Math.max(1, b.y) && y <= b.y + 1e-12 * Math.max(1, b.y));
            before = y;
          }
        }
      },
    ),
  ));

test('smooth curve: slope is that of the value, and a straight line stays straight', () => {
  const curve = pchip(RUBBER.map((row) => ({ x: row.compression, y: row.force })));
  for (const [from, to] of [
    [0, 0.005],
    [0.005, 0.01],
    [0.01, 0.015],
  ] as const) {
    const rise = curve.value(to) - curve.value(from);
    near(integral(curve.slope, from, to), rise, 1e-9 * rise);
  }
  const line = pchip([0, 1, 3, 4].map((x) => ({ x, y: 2 * x + 1 })));
  for (const x of [-1, 0.5, 2, 3.7, 9]) near(line.value(x), 2 * x + 1, 1e-12);
});

test('damper: a knee put in is found; chord and tangent differ above it', () => {
  const force = (v: number): number => 9000 * Math.min(v, 0.08) + 1800 * Math.max(0, v - 0.08);
  const points = [0.025, 0.05, 0.1, 0.15, 0.2, 0.25].map((velocity) => ({
    velocity,
    force: force(velocity),
  }));
  const bench = damper({ bump: points, rebound: points.slice(0, 3) });
  const knee = bench.bumpKnee!;
  near(knee.velocity, 0.08, 1e-9);
  near(knee.lowSpeed, 9000, 1e-3);
  near(knee.highSpeed, 1800, 1e-3);
  near(knee.misfit, 0, 1e-9);
  assert.equal(bench.reboundKnee, undefined);
  near(bench.secant(0.2), force(0.2) / 0.2, 1e-9);
  assert.ok(bench.tangent(0.2) < bench.secant(0.2));
  near(bench.force(-0.05), -450, 1e-9);
  assert.ok(bench.measuredAt(0.25) && !bench.measuredAt(0.3) && !bench.measuredAt(-0.2));
});

test('materials: names found and like, strength only where the source goes', () => {
  assert.equal(springMaterial('300m BAR')?.name, '300M bar');
  assert.equal(springMaterial('unobtainium'), undefined);
  assert.equal(springMaterialsLike('300 M')[0], '300M bar');
  assert.equal(springMaterialsLike('musik wire')[0], 'music wire');
  const wire = springMaterial('VDSiCr wire')!;
  assert.deepEqual(tensileStrength(wire, 0.005), { low: 1810e6, high: 1910e6 });
  near(tensileStrength(wire, 0.0045)!.low, 1835e6, 1);
  assert.equal(tensileStrength(wire, 0.012), undefined);
  assert.equal(shearYield(wire, 0.012), undefined);
});

test('materials: every row is plausible and says where it is from', () => {
  for (const row of SPRING_MATERIALS) {
    const { youngsModulus: E, shearModulus: G } = row;
    // Poisson's ratio E/2G − 1 of a metal, with the range the sources leave
    const ν = E.value / (2 * G.value) - 1;
    assert.ok(ν > 0.2 && ν < 0.36, `${row.name}: Poisson's ratio ${ν}`);
    for (const each of [row.density, E, G, row.shearYieldShare, row.hottest]) {
      assert.ok(each.source !== '');
      assert.ok((each.low ?? each.value) <= each.value && each.value <= (each.high ?? each.value));
    }
  }
});
