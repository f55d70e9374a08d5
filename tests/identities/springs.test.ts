/** What must hold for any spring, bar, rubber and damper. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
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
import { integral } from '../../src/maths/quadrature.ts';
import { recheck, Working } from '../../src/working/working.ts';
import { real } from '../draw.ts';
import { near } from '../near.ts';

const anyEnd = (diameter: number): fc.Arbitrary<EndTransition> =>
  fc.oneof(
    fc.constant<EndTransition>({ kind: 'none' }),
    fc.record({
      kind: fc.constant('taper' as const),
      length: real(0.005, 0.05),
      headDiameter: real(1.05, 1.6).map((ratio) => ratio * diameter),
    }),
    fc.record({
      kind: fc.constant('fillet' as const),
      radius: real(0.01, 0.1),
      headDiameter: real(1.05, 1.6).map((ratio) => ratio * diameter),
    }),
  );

const anyBar: fc.Arbitrary<TorsionBar> = fc
  .record({ diameter: real(0.01, 0.035), boreRatio: fc.oneof(fc.constant(0), real(0.1, 0.8)) })
  .chain(({ diameter, boreRatio }) =>
    fc.record({
      diameter: fc.constant(diameter),
      bore: fc.constant(boreRatio * diameter),
      parallelLength: real(0.15, 0.9),
      ends: fc.tuple(anyEnd(diameter), anyEnd(diameter)),
      splineLength: real(0, 0.01),
      shearModulus: real(40e9, 85e9),
      density: real(4000, 8100),
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
    fc.property(anyBar, real(50, 900), (bar, torque) => {
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
    fc.property(anyBar, real(10, 800), (bar, torque) => {
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
    fc.property(anyBar, real(1.01, 5), (any, over) => {
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
      real(-1, 1),
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
