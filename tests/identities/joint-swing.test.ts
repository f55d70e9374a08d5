/**
 * Swing of the spherical joints against what rigid turns must give: carrier and rod turned together swing nothing, a
 * rod turned about its bolt swings nothing, and one tilted out of square with its bolt swings by just that angle.
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import type { RodCarrier } from '../../src/loadpath/corner/geometry.ts';
import { type JointName, jointSwings } from '../../src/loadpath/corner/joints.ts';
import { type Corner, prepareCorner } from '../../src/loadpath/corner/prepare.ts';
import { type CornerPoint, type CornerState, solveCorner } from '../../src/loadpath/corner/solve.ts';
import { add, cross, dot, sub, turned, turnedAbout, unit, type Vec3 } from '../../src/maths/vec3.ts';
import { near } from '../near.ts';
import { frontLeft } from './anycorner.ts';

const POINTS = ['upperOuter', 'lowerOuter', 'toeInner', 'toeOuter', 'rodOuter', 'rodInner'] as const;
/** An angle between directions of length one, after a handful of turns. */
const DIGITS = 1e-12;
const TURN = 0.3;

/** The invented corner with its rod on another body; how much leverage it has there is no matter. */
const cornerOn = (rodOn: RodCarrier): Corner =>
  prepareCorner(
    rodOn === 'upper wishbone'
      ? { ...frontLeft, rodOn, rodOuter: add(frontLeft.upperOuter, [0.01, -0.04, 0.02]) }
      : { ...frontLeft, rodOn },
  );

interface Hinges {
  readonly lower?: number;
  readonly upper?: number;
  readonly rocker?: number;
}

/** The surveyed position with some points elsewhere and the hinges told to have turned. No linkage closes there. */
function placed(corner: Corner, moved: Partial<Record<CornerPoint, Vec3>>, turns: Hinges = {}): CornerState {
  const at = solveCorner(corner, { travel: 0 });
  const angle = (value = 0) => ({ value, perTravel: 0, perTravel2: 0, perRack: 0 });
  return {
    ...at,
    points: { ...at.points, ...moved },
    lowerAngle: angle(turns.lower),
    upperAngle: angle(turns.upper),
    rockerAngle: angle(turns.rocker),
  };
}

const swingOf = (corner: Corner, at: CornerState, name: JointName): number =>
  jointSwings(corner, at)[name].swing;

/** All joints turned as one body about an axis through a point. */
function allTurned(
  corner: Corner,
  through: Vec3,
  axis: Vec3,
  angle: number,
): Partial<Record<CornerPoint, Vec3>> {
  const { points } = solveCorner(corner, { travel: 0 });
  return Object.fromEntries(POINTS.map((name) => [name, turnedAbout(points[name], through, axis, angle)]));
}

test('track rod and upright turned together, whichever way: nothing at the outer joint, the whole turn at the inner', () => {
  const corner = cornerOn('lower wishbone');
  for (const axis of [unit([1, 0, 0]), unit([0.3, -0.5, 0.8]), unit([-0.6, 0.7, 0.2])]) {
    const at = placed(corner, allTurned(corner, frontLeft.toeOuter, axis, TURN));
    near(swingOf(corner, at, 'toeOuter'), 0, DIGITS);
    // its inner end stands on the tub, which has stayed: the rod's direction has turned against it
    const rod = unit(sub(frontLeft.toeOuter, frontLeft.toeInner));
    const expected = Math.acos(dot(rod, turned(rod, axis, TURN)));
    near(swingOf(corner, at, 'toeInner'), expected, 1e-10); // acos of 0.96 or so loses a digit or two
  }
});

for (const [rodOn, name, outer, turnedBy] of [
  ['lower wishbone', 'lower', 'lowerOuter', (angle: number): Hinges => ({ lower: angle })],
  ['upper wishbone', 'upper', 'upperOuter', (angle: number): Hinges => ({ upper: angle })],
] as const) {
  test(`${rodOn}, its rod and the upright turned together about its hinge: no swing at their joints`, () => {
    const corner = cornerOn(rodOn);
    const [axis, through] =
      name === 'lower' ? [corner.lowerAxis, frontLeft.lowerRear] : [corner.upperAxis, frontLeft.upperRear];
    for (const angle of [TURN, -TURN]) {
      const at = placed(corner, allTurned(corner, through, axis, angle), turnedBy(angle));
      for (const joint of ['rodOuter', outer, 'toeOuter'] as const)
        near(swingOf(corner, at, joint), 0, DIGITS, joint);
      // a bolt told, square to the rod, goes with the wishbone too; across the hinge, so that it does turn
      const rod = sub(corner.geometry.rodInner, corner.geometry.rodOuter);
      const bolt = unit(cross(rod, axis));
      near(jointSwings(corner, at, { rodOuter: bolt }).rodOuter.swing, 0, DIGITS, 'with its bolt');
      // the upright left behind: still nothing at the rod, and at the outer joint the turn of the kingpin's direction
      const { rodOuter, rodInner } = allTurned(corner, through, axis, angle);
      const alone = placed(corner, { rodOuter: rodOuter!, rodInner: rodInner! }, turnedBy(angle));
      near(jointSwings(corner, alone, { rodOuter: bolt }).rodOuter.swing, 0, DIGITS, 'upright left behind');
      const kingpin = unit(sub(frontLeft.upperOuter, frontLeft.lowerOuter));
      // acos of 0.96 or so loses a digit or two
      near(
        swingOf(corner, alone, outer),
        Math.acos(dot(kingpin, turned(kingpin, axis, angle))),
        1e-10,
        outer,
      );
    }
  });
}

test('the rod on the upright, both turned together: no swing', () => {
  const corner = cornerOn('upright');
  const at = placed(corner, allTurned(corner, frontLeft.lowerOuter, unit([0.3, -0.5, 0.8]), TURN));
  near(swingOf(corner, at, 'rodOuter'), 0, DIGITS);
  // about the rocker's hinge, with the rocker: none at its joint either
  const about = placed(corner, allTurned(corner, frontLeft.rockerPivot, corner.rockerAxis, TURN), {
    rocker: TURN,
  });
  near(swingOf(corner, about, 'rodInner'), 0, DIGITS);
});

/** A rod by its two ends, the joint looked at, the bolt that it nearly always has there. */
const USUAL: readonly (readonly [
  RodCarrier,
  JointName,
  readonly ['toeInner', 'toeOuter'] | readonly ['rodOuter', 'rodInner'],
  (corner: Corner) => Vec3,
])[] = [
  [
    'lower wishbone',
    'rodOuter',
    ['rodOuter', 'rodInner'],
    () => unit(sub(frontLeft.lowerFront, frontLeft.lowerRear)),
  ],
  [
    'upper wishbone',
    'rodOuter',
    ['rodOuter', 'rodInner'],
    () => unit(sub(frontLeft.upperFront, frontLeft.upperRear)),
  ],
  ['lower wishbone', 'rodInner', ['rodOuter', 'rodInner'], () => unit(frontLeft.rockerAxis)],
  ['upright', 'rodInner', ['rodOuter', 'rodInner'], () => unit(frontLeft.rockerAxis)],
  [
    'lower wishbone',
    'toeOuter',
    ['toeInner', 'toeOuter'],
    () => unit(sub(frontLeft.upperOuter, frontLeft.lowerOuter)),
  ],
];

for (const [rodOn, name, [from, to], boltOf] of USUAL) {
  test(`rod on the ${rodOn}, ${name}: about its usual bolt nothing, out of square by the angle of the tilt`, () => {
    const corner = cornerOn(rodOn);
    const bolt = boltOf(corner);
    const { points } = solveCorner(corner, { travel: 0 });
    const rod = sub(points[to], points[from]);
    // the rod alone, everything else as surveyed. Only its direction counts, so its inner end is the one that moves;
    // a point of the upright must not
    const rodAlong = (direction: Vec3): CornerState =>
      placed(
        corner,
        from === 'toeInner'
          ? { toeInner: sub(points.toeOuter, direction) }
          : { rodInner: add(points.rodOuter, direction) },
      );
    for (const angle of [0.4, -0.7])
      near(swingOf(corner, rodAlong(turned(rod, bolt, angle)), name), 0, DIGITS);
    // in the plane of rod and bolt: the angle between them changes by just the tilt
    const across = unit(cross(rod, bolt));
    for (const tilt of [0.15, -0.15])
      near(swingOf(corner, rodAlong(turned(turned(rod, across, tilt), bolt, 0.4)), name), 0.15, DIGITS);
  });
}

test('a steered corner in bump: the track rod’s outer joint swings by what rod and kingpin have come out of square', () => {
  const corner = cornerOn('lower wishbone');
  // the kingpin is the line of the outer joints wherever the upright is, so no turn has to be followed
  const off = ({ points: p }: CornerState): number =>
    Math.asin(dot(unit(sub(p.toeOuter, p.toeInner)), unit(sub(p.upperOuter, p.lowerOuter))));
  const before = off(solveCorner(corner, { travel: 0 }));
  for (const [travel, rack] of [
    [0.04, 0],
    [-0.03, 0.02],
    [0.02, -0.02],
  ] as const) {
    const at = solveCorner(corner, { travel, rack });
    const expected = Math.abs(off(at) - before);
    assert.ok(travel < 0.03 || expected > 0.02, 'there is something to see');
    near(swingOf(corner, at, 'toeOuter'), expected, DIGITS);
  }
});
