/**
 * What re-reading after known moves has taught of the car: how stiff its tyres and springs are.
 *
 * In    the fit of several sheets
 * Out   stiffness that the sheets tell clearly better than was known before
 */
import { WHEEL_NAMES, type WheelName } from '../loadpath/loads/doing.ts';
import type { FloorCar } from './floor-car.ts';
import type { Found } from './found.ts';

export interface Learnt {
  readonly wheel: WheelName;
  readonly of: 'tyre' | 'spring';
  /** Stiffer than the file says by this part, and its standard uncertainty. */
  readonly stiffer: number;
  readonly u: number;
}

/** A spread that is no smaller than this part of its prior is nothing learnt. */
const CLEARLY = 0.8;

export function learntFrom(car: FloorCar, found: Found, sheets: number): readonly Learnt[] {
  if (sheets < 2) return [];
  return WHEEL_NAMES.flatMap((wheel) =>
    (['tyre', 'spring'] as const).flatMap((of): Learnt[] => {
      const at = found.hidden.findIndex(({ change }) => change === car.changes.wheel[wheel][of]);
      if (at < 0) return [];
      const u = Math.sqrt(found.covariance[at]![at]!);
      return u < CLEARLY * found.hidden[at]!.prior ? [{ wheel, of, stiffer: found.values[at]!, u }] : [];
    }),
  );
}
