/**
 * What a joint of the car is loaded by: the plane of its face, all that acts behind it, and the resultant there.
 *
 * In    the studs' places, the equilibrium of the whole car
 * Out   the face's own axes, forces behind it, their resultant told in those axes
 * Axes  the face's own: n forward, y to the left, z upward along it; pull parts the bodies
 *
 * JT-n are the equations of docs/theory/studs.md.
 */
import { Matrix, SVD } from 'ml-matrix';
import type { CarForm } from '../../car/read.ts';
import { add, along, cross, dot, scale, sub, unit, type Vec3, ZERO } from '../../maths/vec3.ts';
import type { Metre } from '../../units/quantity.ts';
import { STANDARD_GRAVITY } from '../../units/quantity.ts';
import { airOnCase } from '../loads/air-by-part.ts';
import type { CarStanding } from '../loads/car-equilibrium.ts';
import { isThrown, WHEEL_NAMES } from '../loads/doing.ts';
import { type AppliedForce, type Resultant, resultantAt } from '../loads/wrench.ts';
import type { Numbers } from '../numbers.ts';
import type { FacePoint, Parting } from './face.ts';
import type { InPlane } from './shear.ts';

export type JointName = 'caseToEngine' | 'engineToTub';

export interface FaceFrame {
  readonly origin: Vec3;
  readonly forward: Vec3;
  readonly left: Vec3;
  readonly up: Vec3;
  /** Largest distance of a stud from the plane through them all. */
  readonly uneven: Metre;
}

/** The plane through the studs by least squares, and axes in it.  [JT-7] */
export function frameOf(points: readonly Vec3[]): FaceFrame {
  const origin = scale(
    points.reduce((sum, each) => add(sum, each), ZERO),
    1 / points.length,
  );
  const arms = points.map((each) => sub(each, origin));
  const normal: Vec3 =
    points.length < 3
      ? [1, 0, 0]
      : (new SVD(new Matrix(arms.map((each) => [...each]))).rightSingularVectors.getColumn(
          2,
        ) as unknown as Vec3);
  const forward = unit(scale(normal, normal[0] < 0 ? -1 : 1));
  const across: Vec3 = [0, 1, 0];
  const left = unit(along(across, forward, -dot(across, forward)));
  return {
    origin,
    forward,
    left,
    up: cross(forward, left),
    uneven: Math.max(...arms.map((each) => Math.abs(dot(each, forward)))),
  };
}

/** All that acts on the parts behind a face from outside them, at rest upon what the car is doing.  [JT-8] */
export function forcesBehind(
  joint: JointName,
  car: CarForm,
  standing: CarStanding,
  numbers: Numbers,
): readonly (AppliedForce & { readonly name?: string })[] {
  const { masses } = car;
  const rear = WHEEL_NAMES.filter((wheel) => wheel.startsWith('rear'));
  const wheels = rear.flatMap((wheel): AppliedForce[] => {
    const { at, force, unsprung } = standing.wheels[wheel];
    return [{ at, force }, unsprung];
  });
  // the tyre's force with the shaft's torque left in: both ends of the shaft are behind the face
  const carried =
    masses === undefined ? [] : joint === 'caseToEngine' ? [masses.case] : [masses.case, masses.engine];
  const weights = carried.map(({ mass, at }): AppliedForce => {
    const place = numbers.point(at);
    return { at: place, force: scale(weightAt(standing, car, numbers, place), numbers.of(mass)) };
  });
  return [...wheels, ...weights, ...airOnCase(car, standing, numbers)];
}

/** Weight and inertia of each kilogram of the sprung parts at a place of the car, thrown with it in a strike.  [JT-8, JT-9] */
export function weightAt(standing: CarStanding, car: CarForm, numbers: Numbers, place: Vec3): Vec3 {
  const { ground, doing } = standing;
  const falling = add(
    add(scale(ground.forward, -doing.longitudinal), scale(ground.left, -doing.lateral)),
    scale(ground.up, -doing.vertical - STANDARD_GRAVITY),
  );
  return add(falling, thrownAt(standing, car, numbers, place));
}

/** What is left of the balance of the whole car where a strike throws it, about the sprung centre. */
export const unbalanced = (standing: CarStanding): Resultant =>
  resultantAt(standing.sprung.at, [
    ...WHEEL_NAMES.flatMap((wheel): AppliedForce[] => [
      standing.wheels[wheel],
      standing.wheels[wheel].unsprung,
    ]),
    ...standing.airForces,
    standing.sprungForce,
  ]);

/**
 * What a strike adds to the inertia of a part: the car is thrown as one stiff body by what the strike puts on it, less
 * what its own acceleration takes.  [JT-9]
 */
function thrownAt(standing: CarStanding, car: CarForm, numbers: Numbers, place: Vec3): Vec3 {
  const { sprung } = standing;
  if (!isThrown(standing.doing)) return ZERO;
  const { force, moment } = unbalanced(standing);
  const { rollInertia, pitchInertia } = car.body!;
  const spin: Vec3 = [
    rollInertia === undefined ? 0 : moment[0] / numbers.of(rollInertia),
    pitchInertia === undefined ? 0 : moment[1] / numbers.of(pitchInertia),
    0,
  ];
  const throwing = add(scale(force, 1 / sprung.mass), cross(spin, sub(place, sprung.at)));
  return scale(throwing, -1);
}

export interface JointLoad extends Parting, InPlane {}

/** The resultant told in the face's axes.  [JT-10] */
export function loadOn(frame: FaceFrame, { force, moment }: Resultant): JointLoad {
  return {
    pull: -dot(force, frame.forward),
    byY: dot(moment, frame.up),
    byZ: -dot(moment, frame.left),
    y: dot(force, frame.left),
    z: dot(force, frame.up),
    turning: dot(moment, frame.forward),
  };
}

/** Where a place lies in the face, seen along it. */
export function inFace(frame: FaceFrame, place: Vec3): FacePoint {
  const arm = sub(place, frame.origin);
  return { y: dot(arm, frame.left), z: dot(arm, frame.up) };
}
