/** Where a corner ends, what it is in the plane, and what is no corner at all. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { attitudeOf, frontViewCentre } from '../../src/loadpath/corner/attitude.ts';
import { geometryProblems } from '../../src/loadpath/corner/check.ts';
import type { CornerGeometry } from '../../src/loadpath/corner/geometry.ts';
import { jointSwings } from '../../src/loadpath/corner/joints.ts';
import { DegenerateCorner, prepareCorner } from '../../src/loadpath/corner/prepare.ts';
import { travelLimits, Unreachable } from '../../src/loadpath/corner/reach.ts';
import { solveCorner } from '../../src/loadpath/corner/solve.ts';
import { add, cross, dot, sub, unit, type Vec3 } from '../../src/maths/vec3.ts';
import { frontLeft } from './anycorner.ts';
import { planarCorner } from './planarcorner.ts';

const near = (a: number, b: number, tolerance: number, what = ''): void =>
  assert.ok(Math.abs(a - b) <= tolerance, `${what} ${a} against ${b}, allowed ${tolerance}`);

/** Equal parallel arms 300 mm long: the wheel moves without turning and rises by 300 mm × sin of the arm's angle. */
const armLength = 0.3;
const height = 0.34; // of the rocker's pivot above the lower inner hinge
const parallelogram = planarCorner({
  lowerInner: { y: 0.3, z: 0.16 },
  lowerOuter: { y: 0.3 + armLength, z: 0.16 },
  upperInner: { y: 0.3, z: 0.36 },
  upperOuter: { y: 0.3 + armLength, z: 0.36 },
  rockerPivot: { y: 0.3, z: 0.16 + height },
  rodInner: { y: 0.37, z: 0.16 + height },
});

test('the end of the travel is where rod and rocker arm come into line, and it is said', () => {
  const corner = prepareCorner(parallelogram);
  const arm = 0.07;
  const rod = Math.hypot(armLength - arm, height);
  // law of cosines in the triangle hinge, rod end, pivot: the distance of pivot and rod end is rod ± arm
  const travelAt = (reach: number): number => (armLength ** 2 + height ** 2 - reach ** 2) / (2 * height);
  const { bump, droop } = travelLimits(corner);
  // 1e-9 m: the end is a square root's, where the angle is known to 1e-8 and the travel to its square
  near(droop.travel, travelAt(rod + arm), 1e-9);
  near(bump.travel, travelAt(rod - arm), 1e-9);
  assert.deepEqual(droop.limit, { travel: droop.travel, binds: 'rod and rocker', how: 'out of reach' });
  assert.deepEqual(bump.limit, { travel: bump.travel, binds: 'rod and rocker', how: 'over-centre' });
  near(solveCorner(corner, { travel: droop.travel + 1e-5 }).travel, droop.travel, 1e-4);
  assert.throws(
    () => solveCorner(corner, { travel: droop.travel - 1e-5 }),
    (e: unknown) =>
      e instanceof Unreachable && e.binds === 'rod and rocker' && Math.abs(e.limit - droop.travel) < 1e-12,
  );
});

test('a corner without a near end reports ±200 mm and no limit', () => {
  const far = prepareCorner({ ...parallelogram, rockerPivot: [0, 0.3, 1.5], rodInner: [0, 0.6, 1.5] });
  const { bump, droop } = travelLimits(far);
  assert.equal(bump.travel, 0.2);
  assert.equal(bump.limit, undefined);
  assert.equal(droop.limit, undefined);
});

test('where the wheel turns back of itself, the end is the lowest place of its path', () => {
  // a short upper arm: in droop the wheel swings under before any link is straight
  const [a, b, c] = [0.3, 0.2, 0.15];
  const corner = prepareCorner(
    planarCorner({
      lowerInner: { y: 0.3, z: 0.16 },
      lowerOuter: { y: 0.6, z: 0.16 },
      upperInner: { y: 0.6 - c, z: 0.36 },
      upperOuter: { y: 0.6, z: 0.36 },
      rockerPivot: { y: 0.3, z: 1.5 },
      rodInner: { y: 0.6, z: 1.5 },
    }),
  );
  /** Height of the contact point by crossing two circles in front view, with the lower arm at an angle. */
  const travelAt = (angle: number): number => {
    const L = { y: 0.3 + a * Math.cos(angle), z: 0.16 + a * Math.sin(angle) };
    const d = Math.hypot(0.45 - L.y, 0.36 - L.z);
    const e = { y: (0.45 - L.y) / d, z: (0.36 - L.z) / d };
    const m = (d * d + b * b - c * c) / (2 * d);
    const h = Math.sqrt(b * b - m * m);
    const k = { y: (m * e.y + h * e.z) / b, z: (m * e.z - h * e.y) / b }; // kingpin, the outboard crossing
    const lean = Math.atan2(-k.y, k.z);
    const centre = {
      y: 0.06 * Math.cos(lean) - 0.14 * Math.sin(lean),
      z: 0.06 * Math.sin(lean) + 0.14 * Math.cos(lean),
    };
    return L.z + centre.z - 0.3 * Math.cos(lean);
  };
  near(travelAt(0), 0, 1e-12);
  let lowest = 0;
  for (let angle = -1e-4; angle > -0.6; angle -= 1e-4) {
    const z = travelAt(angle);
    if (Number.isNaN(z) || z > lowest) break;
    lowest = z;
  }
  const { limit } = travelLimits(corner).droop;
  near(limit?.travel ?? 0, lowest, 1e-7); // the scan's step squared, times the curvature of the path
  assert.equal(limit?.binds, 'wheel');
  assert.equal(limit?.how, 'over-centre');
  assert.equal(limit?.nearest, 'upper wishbone');
});

test('equal parallel arms: no camber or toe change, centres at infinity, joints swing as the arm turns', () => {
  const corner = prepareCorner(parallelogram);
  const s = solveCorner(corner, { travel: 0.05 });
  const a = attitudeOf(s);
  near(a.camber.value, 0, 1e-12);
  near(a.toe.value, 0, 1e-12);
  assert.equal(a.frontView.at, undefined);
  const angle = Math.asin(0.05 / armLength);
  near(s.lowerAngle.value, angle, 1e-11);
  near(a.frontView.slope, -Math.tan(angle), 1e-10); // across over up of a circle's tangent
  const swings = jointSwings(corner, s);
  for (const name of ['upperOuter', 'lowerOuter', 'toeInner', 'toeOuter'] as const)
    near(swings[name].swing, angle, 1e-10, name);
});

test('in front view a planar linkage turns about the crossing of its arms', () => {
  // lines (y, z): lower from (0.3, 0.2) to (0.6, 0.14), upper from (0.3, 0.34) to (0.6, 0.38): they cross where
  // 0.2 − 0.2 (y − 0.3) = 0.34 + (2/15)(y − 0.3), at y − 0.3 = −0.42, z = 0.284
  const corner = prepareCorner(
    planarCorner({
      lowerInner: { y: 0.3, z: 0.2 },
      lowerOuter: { y: 0.6, z: 0.14 },
      upperInner: { y: 0.3, z: 0.34 },
      upperOuter: { y: 0.6, z: 0.38 },
      rockerPivot: { y: 0.3, z: 0.5 },
      rodInner: { y: 0.37, z: 0.5 },
    }),
  );
  const centre = frontViewCentre(solveCorner(corner, { travel: 0 }));
  near(centre.at?.across ?? Number.NaN, -0.12, 1e-10);
  near(centre.at?.height ?? Number.NaN, 0.284, 1e-10);
  near(centre.slope, 0.284 / (0.66 + 0.12), 1e-10); // from the contact point at y = 0.66 on the ground
});

test('joints rest at zero where they were measured, and a bolt square to its rod counts from there', () => {
  const corner = prepareCorner(frontLeft);
  const rest = jointSwings(corner, solveCorner(corner, { travel: 0 }));
  for (const [name, { swing }] of Object.entries(rest)) near(swing, 0, 1e-12, name);
  const rod = sub(frontLeft.rodInner, frontLeft.rodOuter);
  const square = unit(cross(rod, [1, 0, 0]));
  const s = solveCorner(corner, { travel: 0.04, rack: 0.02 });
  const withBolt = jointSwings(corner, s, { rodOuter: square }).rodOuter;
  assert.equal(withBolt.from, 'square to the bolt');
  // on the upright no bolt is usual: then the whole turn is told, and that bounds any bolt's swing
  const onUpright = prepareCorner({ ...frontLeft, rodOn: 'upright' });
  const moved = solveCorner(onUpright, { travel: 0.04, rack: 0.02 });
  const bolted = jointSwings(onUpright, moved, { rodOuter: square }).rodOuter;
  const bound = jointSwings(onUpright, moved).rodOuter;
  assert.equal(bound.from, 'the surveyed position');
  assert.ok(bolted.swing <= bound.swing + 1e-12, 'the bound is a bound');
});

test('turning about the usual bolt costs a joint nothing: only what leaves its plane counts', () => {
  const corner = prepareCorner(frontLeft);
  const swings = jointSwings(corner, solveCorner(corner, { travel: 0.04, rack: 0.02 }));
  const now = solveCorner(corner, { travel: 0.04, rack: 0.02 }).points;
  const before = solveCorner(corner, { travel: 0 }).points;
  // a hinge's own axis stands still while the hinge turns, so these two need no carrying
  const off = (p: typeof now, axis: Vec3): number => Math.asin(dot(unit(sub(p.rodInner, p.rodOuter)), axis));
  const rocker = Math.abs(off(now, corner.rockerAxis) - off(before, corner.rockerAxis));
  const wishbone = Math.abs(off(now, corner.lowerAxis) - off(before, corner.lowerAxis));
  near(swings.rodInner.swing, rocker, 1e-12, 'rodInner');
  near(swings.rodOuter.swing, wishbone, 1e-12, 'rodOuter');
  assert.equal(swings.rodInner.from, 'the surveyed position, across the bolt');
});

test('what is no linkage is told, all at once, with its points', () => {
  const broken: CornerGeometry = {
    ...frontLeft,
    upperOuter: frontLeft.upperRear,
    toeInner: frontLeft.toeOuter,
    elements: { unit: { rockerPoint: 'nowhere', tub: [0, 0, 0] } },
  };
  assert.deepEqual(
    geometryProblems(broken).map((p) => p.code),
    ['corner/no-such-rocker-point'],
  );
  const codes = geometryProblems({ ...broken, elements: {} }).map((p) => p.code);
  assert.deepEqual(codes, ['corner/arm-zero', 'corner/toe-link-without-length']);
  const inLine: CornerGeometry = {
    ...frontLeft,
    rodInner: add(
      frontLeft.rodOuter,
      sub(frontLeft.rockerPivot, frontLeft.rodOuter).map((v) => 0.8 * v) as unknown as Vec3,
    ),
  };
  assert.throws(
    () => prepareCorner(inLine),
    (e: unknown) => e instanceof DegenerateCorner && e.problems.some((p) => p.code === 'corner/rod-in-line'),
  );
});
