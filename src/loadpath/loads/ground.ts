/**
 * The ground as the tub sees it, and what acts along it: forces of the air, and how tyres share fore and aft and side
 * force.
 *
 * In    the plane of the ground in tub axes, loads of the tyres, masses
 * Out   force of each tyre along the ground
 * Axes  tub axes; the ground is the plane z = a + b x + c y in them
 *
 * LL-n are the equations of docs/theory/loads.md.
 */
import type { CarForm } from '../../car/read.ts';
import { add, along, cross, dot, scale, unit, type Vec3, ZERO } from '../../maths/vec3.ts';
import type { Metre, Newton } from '../../units/quantity.ts';
import type { Numbers } from '../numbers.ts';
import {
  type Air,
  type Doing,
  eachWheel,
  endOf,
  type HandedOn,
  WHEEL_NAMES,
  type WheelName,
  type Wheels,
} from './doing.ts';
import { type AppliedForce, resultantAt } from './wrench.ts';

/** The ground as the tub sees it, with the directions of the car's movement along it. */
export interface Ground {
  readonly height: Metre;
  readonly perForward: number;
  readonly perLeft: number;
  readonly forward: Vec3;
  readonly left: Vec3;
  readonly up: Vec3;
}

export function groundOf(height: Metre, perForward: number, perLeft: number): Ground {
  const up = unit([-perForward, -perLeft, 1]);
  const level: Vec3 = [1, 0, 0];
  const forward = unit(along(level, up, -dot(level, up)));
  return { height, perForward, perLeft, forward, left: cross(up, forward), up };
}

/** Downforce on the two axle lines at the ground's height, drag at its own.  [LL-2] */
export function airForcesOf(air: Air, contacts: Wheels<Vec3>, ground: Ground): AppliedForce[] {
  const middle = (a: WheelName, b: WheelName): Vec3 => scale(add(contacts[a], contacts[b]), 0.5);
  const front = middle('frontLeft', 'frontRight');
  const rear = middle('rearLeft', 'rearRight');
  const level = (at: Vec3): Vec3 => [at[0], 0, 0];
  return [
    { at: level(front), force: scale(ground.up, -air.frontDownforce) },
    { at: level(rear), force: scale(ground.up, -air.rearDownforce) },
    { at: [(front[0] + rear[0]) / 2, 0, air.dragHeight], force: scale(ground.forward, -air.drag) },
  ];
}

export interface Along {
  readonly forward: Newton;
  readonly left: Newton;
  /** What takes the torque of the forward force. */
  readonly by: HandedOn;
}

/** Fore and aft and side forces by the sharing rule.  [LL-7, LL-8] */
export function sharedAlong(
  car: CarForm,
  places: Wheels<{ readonly at: Vec3; readonly load: Newton; readonly unsprung: AppliedForce }>,
  on: {
    readonly airForces: readonly AppliedForce[];
    readonly sprungForce: AppliedForce;
    readonly ground: Ground;
    readonly doing: Doing;
  },
  numbers: Numbers,
): Wheels<Along> {
  const { forward, left, up } = on.ground;
  const bodies = [...on.airForces, on.sprungForce, ...WHEEL_NAMES.map((wheel) => places[wheel].unsprung)];
  const needed = -dot(resultantAt(ZERO, bodies).force, forward);
  const braking = needed < 0;
  // without a share in the file both axles brake by their load
  const loadOf = (end: 'front' | 'rear'): number =>
    WHEEL_NAMES.filter((wheel) => endOf(wheel) === end).reduce((sum, wheel) => sum + places[wheel].load, 0);
  const loads = { front: loadOf('front'), rear: loadOf('rear') };
  const frontShare = !braking
    ? 0
    : on.doing.frontBrakes !== undefined
      ? on.doing.frontBrakes
      : car.brakes === undefined
        ? loads.front / (loads.front + loads.rear)
        : numbers.of(car.brakes.frontShare);
  const handedOn = (wheel: WheelName, force: Newton): HandedOn =>
    force > 0 || car.brakes?.[endOf(wheel)] === 'inboard' ? 'shaft' : 'brake';
  const foreAft = eachWheel((wheel) => {
    const share = endOf(wheel) === 'front' ? frontShare : 1 - frontShare;
    return (needed * share) / 2;
  });
  const withThem = resultantAt(ZERO, [
    ...bodies,
    ...WHEEL_NAMES.map((wheel) => ({ at: places[wheel].at, force: scale(forward, foreAft[wheel]) })),
  ]);
  // two axle forces from side force and yaw, each shared by the tyres' loads
  const lever = (end: 'front' | 'rear'): number =>
    WHEEL_NAMES.filter((wheel) => endOf(wheel) === end).reduce(
      (sum, wheel) => sum + (places[wheel].load / (loads[end] || 1)) * dot(up, cross(places[wheel].at, left)),
      0,
    );
  const [f, r] = [lever('front'), lever('rear')];
  const side = -dot(withThem.force, left);
  const yaw = -dot(withThem.moment, up);
  const front = (yaw - r * side) / (f - r);
  const axle = { front, rear: side - front };
  return eachWheel((wheel) => {
    const given = on.doing.contacts[wheel];
    const along = given?.forward ?? foreAft[wheel];
    return {
      forward: along,
      left: given?.left ?? axle[endOf(wheel)] * (places[wheel].load / (loads[endOf(wheel)] || 1)),
      by: given?.by ?? handedOn(wheel, along),
    };
  });
}
