/**
 * All that acts on the gear case, and the part of it behind a plane across the car.
 *
 * In    the car as it stands
 * Out   forces on the case with their lines of action; their resultant at a plane, about the car's centre line
 * Axes  tub axes: x forward of the front axle, so planes at the rear have a negative x
 * Not   how the case carries it within its walls
 *
 * LL-n are the equations of docs/theory/loads.md.
 */
import type { CarForm } from '../../car/read.ts';
import type { Metre } from '../../units/quantity.ts';
import { crankBehind } from '../joint/crank.ts';
import { forcesBehind } from '../joint/joint-of-car.ts';
import type { Numbers } from '../numbers.ts';
import type { CarStanding } from './car-equilibrium.ts';
import { cornerLoads, type PickUp } from './corner-loads.ts';
import { type AppliedForce, type Resultant, resultantAt } from './wrench.ts';

const REAR = ['rearLeft', 'rearRight'] as const;

/** Pick-ups of both rear corners, weight, air and crank; without the joint to the engine that holds them. */
export function forcesOnCase(
  car: CarForm,
  standing: CarStanding,
  numbers: Numbers,
): readonly (AppliedForce | PickUp)[] {
  // tyres and wheels reach the case through the pick-ups
  const throughWheels = 2 * REAR.length;
  return [
    ...REAR.flatMap((wheel) => cornerLoads(standing, wheel).onTub),
    ...forcesBehind('caseToEngine', car, standing, numbers).slice(throughWheels),
    // the shaft gives its torque to the gears at the axle
    ...crankBehind('caseToEngine', car, standing, numbers).map((each) => ({
      ...each,
      at: standing.wheels.rearLeft.unsprung.at,
    })),
  ];
}

export interface Plane {
  readonly x: Metre;
  /** Of the point on the centre line about which moments are told. */
  readonly height: Metre;
}

/**
 * Resultant of all that acts behind a plane: what the case hands forward through it.  [LL-41]
 * A couple counts where it stands: the crank's at the axle, where its gears are taken to be.
 */
export function throughPlane(forces: readonly AppliedForce[], { x, height }: Plane): Resultant {
  return resultantAt(
    [x, 0, height],
    forces.filter(({ at }) => at[0] < x),
  );
}
