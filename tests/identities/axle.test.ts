/** What must hold for two corners together: bars, heave element, roll centre, anti-dive and its kin. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { Matrix, solve as solveLinear } from 'ml-matrix';
import { antiDive, antiLift, antiSquat } from '../../src/loadpath/axle/anti.ts';
import {
  BarOpen,
  barRate,
  solveTBar,
  solveUBar,
  type TBarGeometry,
  type UBarGeometry,
} from '../../src/loadpath/axle/anti-roll-bar.ts';
import {
  type Blade,
  bladeSecondMoment,
  bladeSecondMoments,
  bladeTipStiffness,
} from '../../src/loadpath/axle/blade.ts';
import { heaveElement } from '../../src/loadpath/axle/heave.ts';
import { type Pair, pairForces, pairStiffness, wheelRates } from '../../src/loadpath/axle/pair.ts';
import { rollCentre } from '../../src/loadpath/axle/roll-centre.ts';
import type { CornerGeometry } from '../../src/loadpath/corner/geometry.ts';
import { type Corner, prepareCorner } from '../../src/loadpath/corner/prepare.ts';
import { type CornerState, solveCorner, type VecAlong } from '../../src/loadpath/corner/solve.ts';
import { add, along, cross, distance, dot, sub, turnedAbout, unit, type Vec3 } from '../../src/maths/vec3.ts';
import { real } from '../draw.ts';
import { frontLeft, mirroredCorner } from './anycorner.ts';
import { planarCorner } from './planarcorner.ts';

const near = (a: number, b: number, tolerance: number, what = ''): void =>
  assert.ok(Math.abs(a - b) <= tolerance, `${what} ${a} against ${b}, allowed ${tolerance}`);

const bar: Vec3 = [0.03, 0.155, 0.478];
const leftGeometry: CornerGeometry = { ...frontLeft, rockerPoints: { ...frontLeft.rockerPoints, bar } };
const left = prepareCorner(leftGeometry);
const twin = prepareCorner(mirroredCorner(leftGeometry));
/** A right-hand corner that is not the mirror image. */
const other = prepareCorner(
  mirroredCorner({
    ...leftGeometry,
    rodInner: add(leftGeometry.rodInner, [0.002, -0.003, 0.002]),
    upperOuter: add(leftGeometry.upperOuter, [0.001, 0.002, -0.003]),
    rockerPoints: { ...leftGeometry.rockerPoints, bar: add(bar, [0.004, 0.002, -0.003]) },
  }),
);
const at = (corner: Corner, travel: number): CornerState => solveCorner(corner, { travel });
const end = (corner: Corner, travel: number, name: string): VecAlong =>
  at(corner, travel).rockerPoints[name] ?? assert.fail(`no ${name}`);

const uBarFor = (right: Corner): UBarGeometry => ({
  axisPoint: [0.15, 0, 0.42],
  axisDirection: [0, 1, 0],
  left: { rockerEnd: leftGeometry.rockerPoints.bar ?? bar, barEnd: [0.04, 0.16, 0.4] },
  right: { rockerEnd: right.geometry.rockerPoints.bar ?? bar, barEnd: [0.04, -0.16, 0.4] },
});
const tBarFor = (right: Corner): TBarGeometry => ({
  nodPoint: [-0.15, 0, 0.38],
  nodDirection: [0, 1, 0],
  stemPoint: [0.03, 0, 0.38],
  stemDirection: [1, 0, 0],
  left: { rockerEnd: leftGeometry.rockerPoints.bar ?? bar, barEnd: [0.03, 0.13, 0.38] },
  right: { rockerEnd: right.geometry.rockerPoints.bar ?? bar, barEnd: [0.03, -0.13, 0.38] },
});
const uTwist = (right: Corner, zL: number, zR: number): Pair =>
  solveUBar(uBarFor(right), end(left, zL, 'bar'), end(right, zR, 'bar')).twist;
const tBar = (right: Corner, zL: number, zR: number) =>
  solveTBar(tBarFor(right), end(left, zL, 'bar'), end(right, zR, 'bar'));
const heave = (right: Corner, zL: number, zR: number): Pair =>
  heaveElement(end(left, zL, 'heave'), end(right, zR, 'heave'));

const quantities: Record<string, (right: Corner, zL: number, zR: number) => Pair> = {
  'U-bar twist': uTwist,
  'T-bar twist': (right, zL, zR) => tBar(right, zL, zR).twist,
  'T-bar nod': (right, zL, zR) => tBar(right, zL, zR).nod,
  'heave element': heave,
};
const travel = real(-0.03, 0.03);

function richardson(f: (x: number) => number, x: number, h: number): number {
  const central = (k: number): number => (f(x + k) - f(x - k)) / (2 * k);
  return (4 * central(h / 2) - central(h)) / 3;
}

for (const [name, of] of Object.entries(quantities)) {
  test(`${name}: all five derivatives by both travels agree with extrapolated differences`, () => {
    fc.assert(
      fc.property(travel, travel, (zL, zR) => {
        const q = of(other, zL, zR);
        const h = 1e-3; // error h⁴ × fifth derivative (≤ 1e6) / 480, so 2e-9; rounding 1e-13/h
        near(
          q.byLeft,
          richardson((z) => of(other, z, zR).value, zL, h),
          1e-6,
          'left',
        );
        near(
          q.byRight,
          richardson((z) => of(other, zL, z).value, zR, h),
          1e-6,
          'right',
        );
        near(
          q.byLeft2,
          richardson((z) => of(other, z, zR).byLeft, zL, h),
          1e-4,
          'left twice',
        );
        near(
          q.byRight2,
          richardson((z) => of(other, zL, z).byRight, zR, h),
          1e-4,
          'right twice',
        );
        near(
          q.byBoth,
          richardson((z) => of(other, zL, z).byLeft, zR, h),
          1e-4,
          'left then right',
        );
        near(
          q.byBoth,
          richardson((z) => of(other, z, zR).byRight, zL, h),
          1e-4,
          'right then left',
        );
      }),
      { numRuns: 15, includeErrorInReport: true },
    );
  });
}

test('on a mirrored axle, equal travel twists no bar, and opposite travel does', () => {
  for (const z of [-0.03, 0.01, 0.03]) {
    near(uTwist(twin, z, z).value, 0, 1e-11, 'U'); // travel is met to 1e-12 m, times a ratio of some rad/m
    near(tBar(twin, z, z).twist.value, 0, 1e-11, 'T');
    assert.ok(uTwist(twin, z, -z).value * z > 0, 'left in bump twists a U-bar positively');
    assert.ok(tBar(twin, z, -z).twist.value * z > 0, 'and a T-bar');
    assert.ok(tBar(twin, z, z).nod.value * z > 0, 'both in bump nod a T positively');
  }
});

test('the T-bar keeps both drop links and the surveyed position is its zero', () => {
  const rest = tBar(other, 0, 0);
  near(rest.twist.value, 0, 1e-12);
  near(rest.nod.value, 0, 1e-12);
  const geometry = tBarFor(other);
  const s = tBar(other, 0.03, -0.02);
  // the signs of nod and twist are for the reader; place the cross-arm with whichever way round closes the links
  const lengths = [1, -1].flatMap((a) =>
    [1, -1].map((b) => {
      const put = (p: Vec3): Vec3 =>
        turnedAbout(
          turnedAbout(p, geometry.stemPoint, geometry.stemDirection, b * s.twist.value),
          geometry.nodPoint,
          geometry.nodDirection,
          a * s.nod.value,
        );
      const off = (side: 'left' | 'right', p: VecAlong): number =>
        distance(put(geometry[side].barEnd), p.value) -
        distance(geometry[side].barEnd, geometry[side].rockerEnd);
      return Math.abs(off('left', end(left, 0.03, 'bar'))) + Math.abs(off('right', end(other, -0.02, 'bar')));
    }),
  );
  assert.ok(Math.min(...lengths) < 1e-12, `links off by ${Math.min(...lengths)} m`);
});

test('virtual work: bar torque → drop link → rocker → wheel, by moments, gives the force at the wheel', () => {
  const torque = 300;
  const s = at(left, 0.02);
  const p = end(left, 0.02, 'bar');
  const geometry = uBarFor(other);
  const u = solveUBar(geometry, p, end(other, -0.01, 'bar'));
  const a = geometry.axisDirection;
  const sign = Math.sign(dot(cross(a, sub(geometry.left.barEnd, geometry.axisPoint)), p.perTravel));
  const armEnd = turnedAbout(geometry.left.barEnd, geometry.axisPoint, a, sign * u.left.value);
  near(distance(armEnd, p.value), distance(geometry.left.barEnd, geometry.left.rockerEnd), 1e-12, 'link');
  const link = unit(sub(armEnd, p.value));
  // tension in the link, pulling the arm back against a torque that resists bump
  const tension = -torque / (sign * dot(cross(a, sub(armEnd, geometry.axisPoint)), link));
  const onRocker = dot(cross(s.rockerAxis, sub(p.value, left.geometry.rockerPivot)), link) * tension;
  // the rocker's moment, through its ratio, at the wheel: resists bump when it turns the rocker back
  near(pairForces(u.twist, torque).left, -onRocker * s.rockerAngle.perTravel, 1e-6 * torque); // 1e-9 relative
});

test('the stiffness of a bar at the wheels is the derivative of its forces, effort term included', () => {
  const rate = 900;
  const force = (zL: number, zR: number) => {
    const q = tBar(other, zL, zR).twist;
    return pairForces(q, rate * q.value);
  };
  const [zL, zR] = [0.025, -0.015];
  const q = tBar(other, zL, zR).twist;
  const K = pairStiffness(q, { rate, effort: rate * q.value });
  const h = 1e-3;
  // 1e-7 of the stiffness: Richardson as above
  near(
    K.leftLeft,
    richardson((z) => force(z, zR).left, zL, h),
    1e-6 * K.leftLeft,
  );
  near(
    K.leftRight,
    richardson((z) => force(zL, z).left, zR, h),
    1e-6 * K.leftLeft,
  );
  near(
    K.rightRight,
    richardson((z) => force(zL, z).right, zR, h),
    1e-6 * K.leftLeft,
  );
});

/** Common practice, no source: a bar gives k r² at one wheel alone and 2 k r² a wheel in pure roll. */
test('an untwisted bar gives k r² at one wheel, twice that a wheel in roll, nothing in heave', () => {
  const q = uTwist(twin, 0, 0);
  const rates = wheelRates(pairStiffness(q, { rate: 900, effort: 0 }));
  near(rates.leftAlone, 900 * q.byLeft ** 2, 1e-9);
  near(rates.roll, 2 * 900 * q.byLeft ** 2, 1e-6);
  near(rates.heave, 0, 1e-6);
});

test('a shortened drop link preloads the bar; one that does not reach is told with its side', () => {
  const geometry = uBarFor(twin);
  const short = { ...geometry, left: { ...geometry.left, length: 0.075 } };
  assert.ok(Math.abs(solveUBar(short, end(left, 0, 'bar'), end(twin, 0, 'bar')).twist.value) > 0.01);
  const cut = { ...geometry, left: { ...geometry.left, length: 0.01 } };
  assert.throws(
    () => solveUBar(cut, end(left, 0, 'bar'), end(twin, 0, 'bar')),
    (e: unknown) => e instanceof BarOpen && e.link === 'left',
  );
});

test('bar and arms in series: the angles add up at one torque', () => {
  const k = barRate({
    torsion: 1000,
    arms: [
      { tipStiffness: 4e5, armLength: 0.1 },
      { tipStiffness: 2e5, armLength: 0.1 },
    ],
  });
  const angles = 1 / 1000 + 1 / 4000 + 1 / 2000; // rad per N m of bar and each arm: tip force 1/r, give 1/(r k), angle /r
  near(k, 1 / angles, 1e-9);
});

/** [B] Beer & Johnston, Mechanics of Materials, appendix D (from memory): cantilever with end load, P L³/(3 E I). */
test('a blade: the deflections in its two principal planes, added as vectors, give its stiffness along the load', () => {
  const blade: Blade = { width: 0.022, thickness: 0.006, length: 0.11, youngsModulus: 205e9, tip: 'free' };
  const { stiff, soft } = bladeSecondMoments(blade);
  for (const degrees of [0, 15, 45, 70, 90]) {
    const setting = (degrees * Math.PI) / 180;
    const give = (I: number): number => blade.length ** 3 / (3 * blade.youngsModulus * I);
    const alongStiff = Math.cos(setting) * give(stiff);
    const alongSoft = Math.sin(setting) * give(soft);
    const alongLoad = alongStiff * Math.cos(setting) + alongSoft * Math.sin(setting);
    near(bladeTipStiffness(blade, setting) * alongLoad, 1, 1e-12, `free at ${degrees}°`);
    // held: a side force keeps the tip in the plane of the load; solve both principal planes for it
    const c = Math.cos(setting);
    const s = Math.sin(setting);
    // deflection (along, aside) = A (load, side force); aside = 0
    const A = new Matrix([
      [c * c * give(stiff) + s * s * give(soft), c * s * (give(stiff) - give(soft))],
      [c * s * (give(stiff) - give(soft)), s * s * give(stiff) + c * c * give(soft)],
    ]);
    const [load] = solveLinear(A, Matrix.columnVector([1, 0])).to1DArray();
    near(
      bladeTipStiffness({ ...blade, tip: 'held' }, setting) / (load ?? 0),
      1,
      1e-10,
      `held at ${degrees}°`,
    );
  }
  assert.ok(
    bladeSecondMoment(blade, Math.PI / 4) < 0.3 * bladeSecondMoment({ ...blade, tip: 'held' }, Math.PI / 4),
  );
});

/**
 * The construction of the books (Milliken & Milliken, Race Car Vehicle Dynamics, ch. 17, from memory): the line
 * from the contact point through the instant centre of the wishbones, where it cuts the centre plane.
 */
test('a symmetric planar axle: the roll centre is where the textbook construction puts it, and so the force height', () => {
  const g = planarCorner({
    lowerInner: { y: 0.3, z: 0.2 },
    lowerOuter: { y: 0.6, z: 0.14 },
    upperInner: { y: 0.3, z: 0.34 },
    upperOuter: { y: 0.6, z: 0.38 },
    rockerPivot: { y: 0.3, z: 0.5 },
    rodInner: { y: 0.37, z: 0.5 },
  });
  const l = at(prepareCorner(g), 0);
  const r = at(prepareCorner(mirroredCorner(g)), 0);
  const found = rollCentre(l, r);
  const height = (0.284 / (0.66 + 0.12)) * 0.66; // instant centre at y = −0.12, z = 0.284; contact at y = 0.66
  near(found.geometric?.height ?? Number.NaN, height, 1e-10);
  near(found.geometric?.offset ?? Number.NaN, 0, 1e-10);
  near(found.forceHeight, height, 1e-10);
  near(found.jacking, 0, 1e-10);
  const cornering = rollCentre(l, r, { left: 0.3, right: 0.7, towards: 1 }); // left-hand turn, right wheel outside
  near(cornering.forceHeight, height, 1e-10);
  assert.ok(cornering.jacking > 0, 'a roll centre above ground lifts the car');
});

test('parallel normals leave the geometric roll centre out and the force height in', () => {
  const g = planarCorner({
    lowerInner: { y: 0.3, z: 0.16 },
    lowerOuter: { y: 0.6, z: 0.16 },
    upperInner: { y: 0.3, z: 0.36 },
    upperOuter: { y: 0.6, z: 0.36 },
    rockerPivot: { y: 0.3, z: 0.5 },
    rodInner: { y: 0.37, z: 0.5 },
  });
  const found = rollCentre(at(prepareCorner(g), 0), at(prepareCorner(mirroredCorner(g)), 0));
  assert.equal(found.geometric, undefined);
  near(found.forceHeight, 0, 1e-12);
});

/** Rod tension from forces on the upright alone: rod on the upright, six two-force members. */
function rodTension(s: CornerState, force: Vec3, where: Vec3): number {
  const p = s.points;
  const wrench = (f: Vec3, x: Vec3): number[] => [...f, ...cross(x, f)];
  const pairs: readonly [Vec3, Vec3][] = [
    [p.upperOuter, p.upperFront],
    [p.upperOuter, p.upperRear],
    [p.lowerOuter, p.lowerFront],
    [p.lowerOuter, p.lowerRear],
    [p.toeOuter, p.toeInner],
    [p.rodOuter, p.rodInner],
  ];
  const columns = pairs.map(([a, b]) => wrench(unit(sub(b, a)), a));
  const x = solveLinear(
    new Matrix(columns).transpose(),
    Matrix.columnVector(wrench(force, where).map((v) => -v)),
  ).to1DArray();
  return x[5] ?? Number.NaN;
}

test('anti-dive, anti-lift and anti-squat: the share that direct equilibrium takes off the rod', () => {
  const corner = prepareCorner({
    ...frontLeft,
    rodOn: 'upright',
    rodOuter: along(frontLeft.lowerOuter, [0.01, -0.03, 0.04], 1),
  });
  const car = { wheelbase: 2.9, centreOfMassHeight: 0.29 };
  for (const z of [-0.03, 0, 0.03]) {
    const s = at(corner, z);
    const perLoad = rodTension(s, [0, 0, 1], s.points.contact);
    const transfer = car.centreOfMassHeight / car.wheelbase; // load per unit of longitudinal force
    const share = 0.58;
    for (const [torqueTo, where] of [
      ['upright', s.points.contact],
      ['case', s.points.wheelCentre],
    ] as const) {
      // vertical load that would press the rod as the longitudinal force does
      const braking = rodTension(s, [-share, 0, 0], where) / perLoad;
      near(antiDive(s, car, { share, torqueTo }).share, -braking / transfer, 1e-9, 'dive'); // 6 × 6, condition 1e4
      near(antiLift(s, car, { share, torqueTo }).share, braking / transfer, 1e-9, 'lift');
      const driving = rodTension(s, [1, 0, 0], where) / perLoad;
      near(antiSquat(s, car, torqueTo).share, -driving / transfer, 1e-9, 'squat');
    }
  }
});

test('the mirrored axle has its roll centre on the other side', () => {
  const g = { ...leftGeometry, upperFront: add(leftGeometry.upperFront, [0, 0, 0.01]) };
  const a = rollCentre(at(prepareCorner(g), 0.01), at(twin, -0.02));
  const b = rollCentre(at(left, -0.02), at(prepareCorner(mirroredCorner(g)), 0.01));
  near(a.forceHeight, b.forceHeight, 1e-10);
  near(a.geometric?.offset ?? 0, -(b.geometric?.offset ?? 1), 1e-7); // crossing of nearly like lines
});
