/**
 * Bearings in pairs against what is in print: push induced in an angular bearing (a bearing maker's technical report on
 * the load inside a bearing, seen: 1.216 and 1.260; Harris, Rolling Bearing Analysis, ch. 7, from memory: 0.8225 and
 * 0.7939; and Sjövall's integrals summed here), Budynas & Nisbett, Shigley's Mechanical Engineering Design, 10th ed.,
 * Prob. 11-43 (inputs seen; rule of eq. 11-18 and 11-19 from memory), factors of ISO 76 as makers reproduce them
 * (15, 25, 40 degrees and deep groove seen; the others from memory), and shafts by moments written out.
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import {
  axialForces,
  equivalentLoad,
  INDUCED,
  type PairHeld,
  pressureCentres,
  radialForces,
  staticFactors,
} from '../../src/loadpath/loads/bearing-pair.ts';
import { caliperForce } from '../../src/loadpath/loads/wheel-bearings.ts';
import { length, type Vec3 } from '../../src/maths/vec3.ts';
import { near } from '../near.ts';

const DEG = Math.PI / 180;

const pair = (of: Partial<PairHeld>): PairHeld => ({
  kind: 'angular contact',
  backToBack: true,
  innerRingsTurn: true,
  locating: 0,
  preload: 0,
  contactAngle: [25 * DEG, 25 * DEG],
  pitchDiameter: [0.0775, 0.0775],
  ...of,
});

test('a helical gear 3980/1770/1690 N between two bearings 150 and 200 mm away, moments about each', () => {
  // x along the shaft: bearing A at 0, gear at 150 mm, bearing B at 350 mm; pitch radius 98 mm
  const r = 0.098;
  const force: Vec3 = [1690, -1770, 3980];
  // moment about A of the force at (0.15, r, 0)
  const moment: Vec3 = [r * 3980, -0.15 * 3980, 0.15 * -1770 - r * 1690];
  const [A, B] = radialForces([1, 0, 0], [0, 0.35], { force, moment });
  near(A[2], (-3980 * 200) / 350, 1e-9 * 3980);
  near(B[2], (-3980 * 150) / 350, 1e-9 * 3980);
  near(A[1], (1770 * 200 - 1690 * 98) / 350, 1e-9 * 3980);
  near(B[1], (1770 * 150 + 1690 * 98) / 350, 1e-9 * 3980);
  near(A[0] + B[0], 0, 1e-9);
});

test('Shigley Prob. 11-43: a hub on two taper rollers, 12 and 25 kN across, 5 kN along, K 1.5', () => {
  // eq. 11-18: induced 0.47 F/K = 3.76 and 7.83 kN; the upper one takes what the lower brings about and the 5 kN
  const K = 1.5;
  const alpha = Math.atan(0.389 / K);
  const of = pair({ kind: 'taper roller', innerRingsTurn: false, contactAngle: [alpha, alpha] });
  const down = -5000;
  // upper bearing 100 mm above the lower one; back to back on a shaft that stands, the lower one stops a hub that sinks
  const [upper, lower] = axialForces(of, [0.1, 0], [12_000, 25_000], down);
  const induced = [(0.47 * 12_000) / K, (0.47 * 25_000) / K] as const;
  // 5 %: the maker's 0.47/0.389 is 1.208, line contact over half the ring 1.260
  near(lower, Math.max(induced[1], induced[0] + 5000), 0.05 * induced[0]);
  near(lower - upper, 5000, 1e-9);
  const [taken, other] = axialForces({ ...of, backToBack: false }, [0.1, 0], [12_000, 25_000], down);
  near(taken, induced[1] + 5000, 0.05 * induced[1]);
  near(other, induced[1], 0.05 * induced[1]);
});

test('induced push: half the ring carries, each ball or roller along its line of contact, summed', () => {
  const whole = (power: number): number => {
    let [radial, axial] = [0, 0];
    const n = 20_000;
    for (let k = 0; k < n; k += 1) {
      const psi = -Math.PI / 2 + (Math.PI * (k + 0.5)) / n;
      const load = Math.cos(psi) ** power;
      radial += load * Math.cos(psi);
      axial += load;
    }
    return axial / radial;
  };
  // balls give with the power 3/2, lines with 1.1
  near(INDUCED.point, whole(1.5), 2e-4);
  near(INDUCED.line, whole(1.1), 2e-4);
  near(INDUCED.point, 1.216, 5e-4);
  near(INDUCED.line, 1.26, 5e-4);
  near(1 / INDUCED.point, 0.8225, 1e-4);
  near(1 / INDUCED.line, 0.7939, 1e-4);
});

test('ISO 76: factors of one row', () => {
  const seen = { 15: 0.46, 25: 0.38, 40: 0.26 };
  for (const [angle, Y0] of Object.entries(seen)) {
    const found = staticFactors('angular contact', Number(angle) * DEG);
    near(found.X0, 0.5, 0);
    near(found.Y0, Y0, 1e-12);
  }
  near(staticFactors('angular contact', 22.5 * DEG).Y0, 0.4, 1e-12);
  near(staticFactors('angular contact', 5 * DEG).Y0, 0.52, 1e-12);
  near(staticFactors('angular contact', 45 * DEG).Y0, 0.22, 1e-12);
  near(staticFactors('taper roller', Math.atan(0.389 / 1.5)).Y0, 0.22 * (1.5 / 0.389), 1e-12);
  const { X0, Y0 } = staticFactors('deep groove', 0);
  // 4 kN across, 5 kN along: 0.6·4 + 0.5·5 = 4.9 kN; 4 and 2 kN: 3.4 kN would be less than the radial force alone
  near(equivalentLoad({ X_0: X0, F_r: 4000, Y_0: Y0, F_a: 5000 }), 4900, 1e-9);
  near(equivalentLoad({ X_0: X0, F_r: 4000, Y_0: Y0, F_a: 2000 }), 4000, 0);
});

test('which bearing takes the push: spindle or hub, back to back or face to face, worked from the lines of contact', () => {
  const at = [0.1, 0] as const;
  const takes = (of: Partial<PairHeld>, push: number): number => {
    const [first, second] = axialForces(pair(of), at, [0, 0], push);
    near(Math.max(first, second), 1000, 1e-9);
    near(Math.min(first, second), 0, 1e-9);
    return first > second ? 0 : 1;
  };
  // first one ahead along the axis. A ball's line of contact runs from the outer ring's track, in the housing, to the
  // inner ring's; back to back those lines meet the axis beyond each bearing, so the bearing ahead stops an inner
  // ring from going back, and the one behind from going ahead
  assert.equal(takes({}, 1000), 1);
  assert.equal(takes({}, -1000), 0);
  assert.equal(takes({ innerRingsTurn: false }, 1000), 0);
  assert.equal(takes({ backToBack: false }, 1000), 0);
  assert.equal(takes({ backToBack: false, innerRingsTurn: false }, 1000), 1);
  assert.equal(takes({ kind: 'deep groove', locating: 1 }, 1000), 1);
  assert.deepEqual(axialForces(pair({ kind: 'needle roller' }), at, [500, 500], 1000), [0, 0]);
});

test('preload: half of the push is added to it until the other bearing is free, at twice the preload', () => {
  const of = pair({ preload: 800 });
  const at = [0.1, 0] as const;
  assert.deepEqual(axialForces(of, at, [0, 0], 0), [800, 800]);
  assert.deepEqual(axialForces(of, at, [0, 0], 600), [500, 1100]);
  assert.deepEqual(axialForces(of, at, [0, 0], 1600), [0, 1600]);
  assert.deepEqual(axialForces(of, at, [0, 0], 3000), [0, 3000]);
});

test('pressure centres: back to back part by the mean diameter times the tangent, face to face close by it', () => {
  const shift = (0.0775 / 2) * Math.tan(25 * DEG);
  const [outer, inner] = pressureCentres([-0.02, -0.075], pair({}));
  near(outer, -0.02 + shift, 1e-12);
  near(inner, -0.075 - shift, 1e-12);
  const [o, i] = pressureCentres([-0.02, -0.075], pair({ backToBack: false }));
  near(o, -0.02 - shift, 1e-12);
  near(i, -0.075 + shift, 1e-12);
  assert.deepEqual(pressureCentres([-0.02, -0.075], pair({ kind: 'deep groove' })), [-0.02, -0.075]);
});

test('an overhung wheel: 3000 N up in the middle plane, bearings 20 and 80 mm inboard: 4000 down and 1000 up', () => {
  // axle to the left, moments about each bearing in turn: 3000·80/60 and 3000·20/60
  const [outer, inner] = radialForces([0, 1, 0], [-0.02, -0.08], { force: [0, 0, 3000], moment: [0, 0, 0] });
  near(outer[2], -4000, 1e-9);
  near(inner[2], 1000, 1e-9);
  // a side force of 1000 N inboard at the ground, 300 mm below: a couple of 300 N m over 60 mm is 5000 N on each
  const side = radialForces([0, 1, 0], [-0.02, -0.08], { force: [0, -1000, 0], moment: [-300, 0, 0] });
  near(length(side[0]), 5000, 1e-9);
  // it turns the bottom of the wheel inboard, so the spindle up at its inner end: the inner bearing holds it down
  near(side[0][2], 5000, 1e-9);
  near(side[1][2], -5000, 1e-9);
});

test('a calliper behind the axle presses the disc down under braking and so relieves the bearings, one ahead lifts it (common practice, no source)', () => {
  // left wheel rolling forward turns about +y; the brake holds it with a torque about −y
  const place = (angle: number) => ({ inboard: 0.05, radius: 0.12, angle });
  const behind = caliperForce([0, 0.8, 0.3], [0, 1, 0], place(Math.PI), -600);
  near(behind.force[2], -600 / 0.12, 1e-9);
  near(behind.at[0], -0.12, 1e-12);
  near(behind.at[1], 0.75, 1e-12);
  const ahead = caliperForce([0, 0.8, 0.3], [0, 1, 0], place(0), -600);
  near(ahead.force[2], 600 / 0.12, 1e-9);
  const above = caliperForce([0, 0.8, 0.3], [0, 1, 0], place(Math.PI / 2), -600);
  near(above.at[2], 0.42, 1e-12);
  near(above.force[0], -600 / 0.12, 1e-9);
  // the right wheel's axle points the other way, the torque too; the car sees the same force
  const right = caliperForce([0, -0.8, 0.3], [0, -1, 0], place(Math.PI), 600);
  near(right.force[2], behind.force[2], 1e-9);
});
