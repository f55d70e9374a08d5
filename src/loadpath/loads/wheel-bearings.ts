/**
 * What a wheel hands on to its bearings: the ground's force, its own weight and inertia, and an outboard calliper.
 *
 * In    how the wheel stands, what turns with it, where the calliper is
 * Out   force and moment on what turns, about the wheel centre; torques about the axle do not load the bearings
 * Axes  tub axes
 * Not   gyroscopic couples, belts, the drive shaft's own weight
 *
 * LL-n are the equations of docs/theory/loads.md.
 */
import { add, along, cross, dot, length, scale, sub, unit, type Vec3 } from '../../maths/vec3.ts';
import type { Metre, NewtonMetre, Radian, Ratio } from '../../units/quantity.ts';
import type { CarStanding, WheelStanding } from './car-equilibrium.ts';
import type { WheelName } from './doing.ts';
import { endOf, sideOf } from './doing.ts';
import { type AppliedForce, type Resultant, resultantAt } from './wrench.ts';

export interface CaliperPlace {
  /** Middle plane of the disc, inboard of the middle plane of the wheel. */
  readonly inboard: Metre;
  readonly radius: Metre;
  /** About the axle: 0 ahead, a quarter turn above. */
  readonly angle: Radian;
}

/** Torque about the axle that a brake on the upright holds the wheel with; nothing where shaft or spin takes it. */
export function outboardBrakeTorque(standing: CarStanding, wheel: WheelName): NewtonMetre {
  const { at, ground, shaft, unsprung }: WheelStanding = standing.wheels[wheel];
  if (length(shaft) > 0 || unsprung.moment !== undefined) return 0;
  const { state } = standing.axles[endOf(wheel)][sideOf(wheel)];
  const foreAft = scale(standing.ground.forward, ground[0]);
  return -dot(state.wheelAxis.value, cross(sub(at, state.points.wheelCentre), foreAft));
}

/** The calliper's force on the disc, along the disc and square to its radius.  [LL-36] */
export function caliperForce(
  centre: Vec3,
  axle: Vec3,
  place: CaliperPlace,
  torque: NewtonMetre,
): AppliedForce {
  // directions in the plane of the disc: ahead and above as the car has them
  const ahead = unit(along([1, 0, 0], axle, -axle[0]));
  const level = cross(axle, ahead);
  const above = level[2] > 0 ? level : scale(level, -1);
  const out = add(scale(ahead, Math.cos(place.angle)), scale(above, Math.sin(place.angle)));
  const at = along(along(centre, axle, -place.inboard), out, place.radius);
  return { at, force: scale(cross(axle, out), torque / place.radius) };
}

/** All that acts on what turns, about the wheel centre, with its torque about the axle left in.  [LL-36] */
export function onWheelBearings(
  standing: CarStanding,
  wheel: WheelName,
  turningShare: Ratio,
  caliper: CaliperPlace | undefined,
): Resultant {
  const { at, force, unsprung } = standing.wheels[wheel];
  const { state } = standing.axles[endOf(wheel)][sideOf(wheel)];
  const centre = state.points.wheelCentre;
  const torque = outboardBrakeTorque(standing, wheel);
  const byCaliper =
    caliper === undefined || torque === 0
      ? []
      : [caliperForce(centre, state.wheelAxis.value, caliper, torque)];
  return resultantAt(centre, [
    { at, force },
    { at: centre, force: scale(unsprung.force, turningShare) },
    ...byCaliper,
  ]);
}
