/**
 * Anti-dive, anti-lift and anti-squat: how much of the longitudinal load transfer the links carry.
 *
 * In    a solved corner, the car's wheelbase and height of its centre of mass, the axle's share of the braking
 * Out   the share, 1 for all of it (shown as 100 %), and the side-view slope that it comes from
 * Axes  x forward. Positive: the links hold the axle against dive, lift or squat; negative: they add to it
 * Not   pitch centre, unsprung mass, and wheels that brake against each other
 *
 * Definition. Braking by a force B moves B h/L of load to the front axle; driving by T moves T h/L to the rear.
 * The links of an axle carry (its longitudinal force) × (slope of the point where that force acts). The ratio of
 * the two is the anti of that axle. The force acts at the contact point of a wheel locked to its upright for
 * outboard brakes; for inboard brakes and drive through shafts it acts at the wheel centre, since the torque
 * goes to the case.  LP-25 to LP-27
 */
import type { Metre, Ratio } from '../../units/quantity.ts';
import type { CornerState } from '../corner/solve.ts';

export type TorqueTo = 'upright' | 'case';

export interface CarProportions {
  readonly wheelbase: Metre;
  readonly centreOfMassHeight: Metre;
}

export interface Anti {
  readonly share: Ratio;
  /** Rearward movement of the point where the force acts per metre of travel. */
  readonly slope: Ratio;
  readonly at: 'contact point, wheel locked to the upright' | 'wheel centre';
}

/** Rearward movement per metre of travel of the point at which longitudinal force acts. */
function slopeFor(state: CornerState, torqueTo: TorqueTo): Pick<Anti, 'slope' | 'at'> {
  const { locked, inboard } = state.contactVelocity;
  return torqueTo === 'upright'
    ? { slope: -locked[0], at: 'contact point, wheel locked to the upright' }
    : { slope: -inboard[0], at: 'wheel centre' };
}

const leverage = (car: CarProportions): number => car.wheelbase / car.centreOfMassHeight;

/** Front axle under braking.  LP-25 */
export function antiDive(
  front: CornerState,
  car: CarProportions,
  brakes: { share: Ratio; torqueTo: TorqueTo },
): Anti {
  const found = slopeFor(front, brakes.torqueTo);
  return { ...found, share: -brakes.share * found.slope * leverage(car) };
}

/** Rear axle under braking.  LP-26 */
export function antiLift(
  rear: CornerState,
  car: CarProportions,
  brakes: { share: Ratio; torqueTo: TorqueTo },
): Anti {
  const found = slopeFor(rear, brakes.torqueTo);
  return { ...found, share: brakes.share * found.slope * leverage(car) };
}

/** Rear axle under drive; the whole driving force is at the rear, through shafts unless told.  LP-27 */
export function antiSquat(rear: CornerState, car: CarProportions, torqueTo: TorqueTo = 'case'): Anti {
  const found = slopeFor(rear, torqueTo);
  return { ...found, share: found.slope * leverage(car) };
}
