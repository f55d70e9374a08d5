/** Two bearings of any kind under any force: with what they push back, nothing is left but a torque about their axis. */
import { test } from 'node:test';
import fc from 'fast-check';
import {
  axialForces,
  type BearingKind,
  type PairHeld,
  pressureCentres,
  radialForces,
} from '../../src/loadpath/loads/bearing-pair.ts';
import { partsOf } from '../../src/loadpath/loads/spherical.ts';
import { type AppliedForce, resultantAt } from '../../src/loadpath/loads/wrench.ts';
import { add, along, cross, dot, length, scale, sub, unit, type Vec3 } from '../../src/maths/vec3.ts';
import { real } from '../draw.ts';
import { near } from '../near.ts';

const vec = (size: number): fc.Arbitrary<Vec3> =>
  fc.tuple(real(-size, size), real(-size, size), real(-size, size));

const anyPair: fc.Arbitrary<PairHeld> = fc.record({
  kind: fc.constantFrom<BearingKind>('deep groove', 'angular contact', 'taper roller', 'needle roller'),
  backToBack: fc.boolean(),
  innerRingsTurn: fc.boolean(),
  locating: fc.constantFrom<0 | 1>(0, 1),
  preload: real(0, 2000),
  contactAngle: fc.tuple(real(0.1, 0.75), real(0.1, 0.75)),
  pitchDiameter: fc.tuple(real(0.02, 0.1), real(0.02, 0.1)),
});

const axisOf = vec(1)
  .filter((each) => length(each) > 0.1)
  .map(unit);

test('any two bearings balance any forces on what turns, but for the torque about the axle, to 1e-9', () => {
  fc.assert(
    fc.property(
      axisOf,
      vec(1),
      fc.array(fc.tuple(vec(0.5), vec(10_000)), { minLength: 1, maxLength: 5 }),
      anyPair,
      real(-0.1, 0.1),
      real(0.01, 0.12),
      (axis, origin, forces, held, first, span) => {
        const outside: AppliedForce[] = forces.map(([at, force]) => ({ at: add(origin, at), force }));
        const middles = [first, first - span] as const;
        const centres = pressureCentres(middles, held);
        fc.pre(Math.abs(centres[0] - centres[1]) > 0.005);
        const load = resultantAt(origin, outside);
        const radial = radialForces(axis, centres, load);
        const push = dot(load.force, axis);
        const across = [length(radial[0]), length(radial[1])] as const;
        const axial = axialForces(held, middles, across, push);
        const places = centres.map((s) => along(origin, axis, s));
        const bearings = radial.map((force, k) => ({ at: places[k]!, force }));
        // along the axis they hold the push between them, one against the other
        const held2 = held.kind === 'needle roller' ? Math.abs(push) : Math.abs(axial[0] - axial[1]);
        const size = Math.max(...across, ...outside.map(({ force }) => length(force)), 1);
        near(held2, Math.abs(push), 1e-9 * (size + Math.max(...axial)), 'push');
        const whole = [...outside, ...bearings, { at: origin, force: scale(axis, -push) }];
        const left = resultantAt(origin, whole);
        near(length(left.force), 0, 1e-9 * size, 'force');
        near(length(cross(axis, left.moment)), 0, 1e-9 * size, 'couple');
        // and by itself: what one bearing carries is the couple of everything about the other, over the span
        for (const k of [0, 1] as const) {
          const about = resultantAt(places[1 - k]!, outside).moment;
          const arm = Math.abs(centres[0] - centres[1]);
          near(across[k], length(cross(axis, about)) / arm, 1e-9 * size, 'moments about the other');
        }
        for (const each of axial) near(Math.min(0, each), 0, 1e-9 * size, 'never negative');
      },
    ),
    { numRuns: 500 },
  );
});

test('a joint is parted by its axis without loss, and a force along the axis is all axial', () => {
  fc.assert(
    fc.property(vec(10_000), axisOf, (force, axis) => {
      const { radial, axial } = partsOf(force, axis);
      near(Math.hypot(radial, axial), length(force), 1e-9 * length(force) + 1e-9);
      const square = sub(force, scale(axis, dot(force, axis)));
      near(radial, length(square), 1e-7 * length(force) + 1e-9);
      near(partsOf(scale(axis, 500), axis).axial, 500, 1e-9);
      near(partsOf(force, undefined).radial, length(force), 0);
    }),
  );
});
