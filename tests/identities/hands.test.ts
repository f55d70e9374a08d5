/** The hand of a torsion bar by the right-hand rule, and the sign of what a spline setting is off by. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { handOfBar } from '../../src/loadpath/bar-hand.ts';
import { prepareCorner } from '../../src/loadpath/corner/prepare.ts';
import { solveCorner } from '../../src/loadpath/corner/solve.ts';
import { Numbers } from '../../src/loadpath/numbers.ts';
import { type Hand, workingHand } from '../../src/loadpath/spring/presetting.ts';
import { nearestSetting } from '../../src/loadpath/spring/spline.ts';
import { sprungCorner } from '../../src/loadpath/sprung-corner.ts';
import { turnInBump } from '../../src/loadpath/torque-curves.ts';
import { sub, triple, type Vec3 } from '../../src/maths/vec3.ts';
import { demoSource, opened } from '../cars/demo.ts';
import { near } from '../near.ts';
import { anyCorner } from './anycorner.ts';
import { planarCorner } from './planarcorner.ts';

/** A line scribed along a bar from the anchor at z = 0, the far end turned about +z: points at even steps. */
const scribed = (twist: number): Vec3[] =>
  Array.from({ length: 7 }, (_, i) => {
    const part = i / 6;
    return [0.01 * Math.cos(twist * part), 0.01 * Math.sin(twist * part), 0.4 * part];
  });

/** Three chords of a right-hand screw, each after the other, are a right-handed set; it is so from either end. */
function handOfCurve(points: readonly Vec3[]): Hand {
  const chord = (i: number): Vec3 => sub(points[i + 1]!, points[i]!);
  return triple(chord(0), chord(1), chord(2)) > 0 ? 'right' : 'left';
}

test('a rocker end that turns right-handed away from the anchor winds the scribed line like a right-hand screw', () => {
  // the helix of every text-book, (r cos t, r sin t, c t) with c above nothing, is right-handed
  assert.equal(workingHand(1), handOfCurve(scribed(0.5)));
  assert.equal(workingHand(-1), handOfCurve(scribed(-0.5)));
  assert.equal(workingHand(1), 'right');
  // a bar turned end for end keeps its hand
  assert.equal(handOfCurve(scribed(0.5).reverse()), 'right');
});

/** A left front: the pushrod lifts the rocker's arm, which points outboard from its pivot. Every hinge along x. */
const leftFront = planarCorner({
  lowerInner: { y: 0.24, z: 0.17 },
  lowerOuter: { y: 0.69, z: 0.16 },
  upperInner: { y: 0.27, z: 0.37 },
  upperOuter: { y: 0.66, z: 0.39 },
  rodInner: { y: 0.28, z: 0.53 },
  rockerPivot: { y: 0.21, z: 0.53 },
});
const AHEAD: Vec3 = [0.4, 0, 0];
const BEHIND: Vec3 = [-0.4, 0, 0];

test('a hand-made left corner: in bump the arm goes from outboard (y) to up (z), the thumb points ahead (x)', () => {
  // the two points of the hinge may stand in either order
  for (const rockerAxis of [[1, 0, 0] as const, [-1, 0, 0] as const]) {
    const corner = prepareCorner({ ...leftFront, rockerAxis });
    const up = sub(solveCorner(corner, { travel: 0.01 }).points.rodInner, leftFront.rodInner);
    assert.ok(up[2] > 0.005, `the arm goes up: ${up[2]}`);
    // with the anchor behind, one looks ahead from it: right-handed. With the anchor ahead one looks back
    assert.equal(turnInBump(corner.rockerAxis, BEHIND), 1);
    assert.equal(turnInBump(corner.rockerAxis, AHEAD), -1);
  }
});

/** Hand by places alone: how the arm moves about the pivot, looked at from the anchor towards the rocker. */
function handByPlaces(anchor: Vec3, pivot: Vec3, before: Vec3, after: Vec3): Hand {
  return triple(sub(pivot, anchor), sub(before, pivot), sub(after, pivot)) > 0 ? 'right' : 'left';
}

test('any corner, left or right, any rod: the hand is that of the arm’s way about its pivot', () =>
  fc.assert(
    fc.property(anyCorner, fc.constantFrom(1, -1), (geometry, way) => {
      const corner = prepareCorner(geometry);
      const pivot = geometry.rockerPivot;
      // the bar lies along the hinge, whichever way its axis is written
      const [x, y, z] = geometry.rockerAxis;
      const towards: Vec3 = [way * x, way * y, way * z];
      const anchor: Vec3 = [pivot[0] + towards[0], pivot[1] + towards[1], pivot[2] + towards[2]];
      const after = solveCorner(corner, { travel: 0.002 }).points.rodInner;
      assert.equal(
        workingHand(turnInBump(corner.rockerAxis, towards)),
        handByPlaces(anchor, pivot, geometry.rodInner, after),
      );
    }),
    { numRuns: 60 },
  ));

/** A car with bars in front, anchored ahead of the rockers. */
const CAR = 'ashgarth-501';

function frontHand(side: 'left' | 'right', change: (text: string) => string = (text) => text) {
  const car = opened(demoSource(CAR, change));
  const numbers = new Numbers(car.values);
  const of = sprungCorner(car.form.front, side, numbers);
  const { barAnchor } = car.form.front[side].points;
  const { rodInner, rockerPivot } = of.corner.geometry;
  const after = solveCorner(of.corner, { travel: 0.002 }).points.rodInner;
  const expected = handByPlaces(numbers.point(barAnchor!), rockerPivot, rodInner, after);
  return { found: handOfBar(of, numbers)!, expected };
}

test('on a car: both sides by the places of their points, opposite to one another', () => {
  const [left, right] = [frontHand('left'), frontHand('right')];
  assert.equal(left.found.works, left.expected);
  assert.equal(right.found.works, right.expected);
  assert.notEqual(left.found.works, right.found.works);
});

test('a bar preset for its own side has the hand of that corner; one for the other side has that of the other', () => {
  const [left, right] = [frontHand('left').found, frontHand('right').found];
  assert.deepEqual([left.presetFor, left.agrees], [left.works, true]);
  assert.deepEqual([right.presetFor, right.agrees], [right.works, true]);
  // the left bar taken from the right side's shelf
  const mixed = frontHand('left', (text) =>
    text.replace('preset: for the left side', 'preset: for the right side'),
  ).found;
  assert.equal(mixed.works, left.works);
  assert.deepEqual([mixed.presetFor, mixed.agrees], [right.works, false]);
});

test('what a setting is off by is setting less wanted: 48 and 47 teeth, steps of 0.1596°', () => {
  const degree = Math.PI / 180;
  const splines = { first: 48, second: 47 };
  const step = 360 / (48 * 47);
  // a tenth of a degree is nearer to one step than to none: it is set 0.0596° too far
  const over = nearestSetting(splines, 0.1 * degree);
  near(over.angle / degree, step, 1e-9);
  near(over.error / degree, step - 0.1, 1e-9);
  // a twentieth is nearer to none: it is set short, and backwards the signs turn round
  near(nearestSetting(splines, 0.05 * degree).error / degree, -0.05, 1e-9);
  near(nearestSetting(splines, -0.1 * degree).error / degree, 0.1 - step, 1e-9);
});
