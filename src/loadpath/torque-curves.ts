/**
 * What coil or bar does at the rocker, sampled over the travel of the wheel.
 *
 * In    a sprung corner and the range of travel
 * Out   rocker angle, compression and the torque of the spring alone (rubber, gas and stops are others' work)
 * Axes  angle, compression, torque positive in bump
 */
import type { Metre, NewtonMetre, NewtonPerMetre } from '../units/quantity.ts';
import { barTorque } from './springing.ts';
import type { Ratios, SprungCorner } from './sprung-corner.ts';

export interface TravelSample {
  readonly travel: Metre;
  readonly ratios: Ratios;
  readonly compression: Metre;
  /** Torque of the coil about the rocker axis, and of the bar. */
  readonly coil: NewtonMetre;
  readonly bar: NewtonMetre;
}

/** Evenly spaced samples from one travel to another, both counted. @throws Unreachable */
export function torqueSamples(
  of: SprungCorner,
  from: Metre,
  to: Metre,
  count: number,
): readonly TravelSample[] {
  const asSurveyed = of.hasUnit ? of.ratiosAt(0).unitLength : 0;
  return Array.from({ length: count }, (_, k) => {
    const travel = from + (k * (to - from)) / (count - 1);
    const ratios = of.ratiosAt(travel);
    const compression = of.hasUnit ? asSurveyed - ratios.unitLength : 0;
    // force × dc/dθ, with dc/dθ = (dc/dz)/(dθ/dz)
    const coil = ((of.springing.coil?.force(compression) ?? 0) * ratios.unit) / ratios.turn;
    return { travel, ratios, compression, coil, bar: barTorque(of.springing, ratios.angle) };
  });
}

/** Wheel rate of a bar on the rocker axis: both terms.  LP-45 */
export const wheelRateOfBar = (ratios: Ratios, rate: number, torque: NewtonMetre): NewtonPerMetre =>
  rate * ratios.turn ** 2 + torque * ratios.turnChange;

/** Wheel rate of a coil in the unit: both terms.  LP-45 */
export const wheelRateOfCoil = (ratios: Ratios, rate: NewtonPerMetre, force: number): NewtonPerMetre =>
  rate * ratios.unit ** 2 + force * ratios.unitChange;

/** Sense in which the rocker end of the bar turns in bump, seen from the anchor towards the rocker: +1 right-hand. */
export function turnInBump(rockerAxis: readonly number[], towardsAnchor: readonly number[]): 1 | -1 {
  const along = rockerAxis.reduce((sum, value, k) => sum + value * towardsAnchor[k]!, 0);
  // the hinge's axis is turned so that its angle grows with bump; from the anchor one looks the other way
  return along > 0 ? -1 : 1;
}
