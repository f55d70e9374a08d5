/**
 * A found set in its car: hot beside cold, the nuts of its flanges, the way it comes off with the engine in.
 *
 * In    a car, a bank of it, its scans as they lie in it, a set that stands
 * Out   statements, each of which says what it could not look at
 */
import type { BankName } from '../car/check-exhaust.ts';
import type { Car } from '../car/read.ts';
import type { RouteSolution } from '../gaspath/route/problem.ts';
import type { Metre } from '../units/quantity.ts';
import { type Holdable, heldByFile } from './primaries-holding.ts';
import { type PrimariesHot, primariesHot } from './primaries-hot.ts';
import { type PrimariesNuts, primariesNuts } from './primaries-nuts.ts';
import { primariesProblem, type ScanInCar } from './primaries-problem.ts';
import { type PrimariesRemoval, primariesRemoval } from './primaries-removal.ts';
import { primariesSet } from './primaries-set.ts';
import { type SlipLack, slipsOf } from './primaries-slip.ts';

export interface PrimariesInCar {
  /** What a set must hold, of this. */
  readonly kinds: readonly Holdable[];
  readonly hot: PrimariesHot;
  readonly nuts: PrimariesNuts;
  readonly removal: PrimariesRemoval;
  /** Where the bank has slip joints of which the file tells enough. */
  readonly slip?: { readonly needs: Metre; readonly lacks: readonly SlipLack[] };
}

/** Undefined where the problem cannot be put: then there is no set either. */
export function primariesInCar(
  car: Car,
  side: BankName,
  scans: readonly ScanInCar[],
  solution: RouteSolution,
  kinds: readonly Holdable[] = heldByFile(car, side),
): PrimariesInCar | undefined {
  const put = primariesProblem(car, side, scans);
  const work = primariesProblem(car, side, scans, 'work');
  if (!put.reached || !work.reached) return undefined;
  const set = primariesSet(put.problem, put.cylinders, solution);
  const hot = primariesHot(car, side, put, { set, solution });
  const slips = slipsOf(car, side, put.problem);
  return {
    kinds,
    hot,
    nuts: primariesNuts(car, work, solution),
    removal: primariesRemoval(car, side, work, solution),
    ...(slips === undefined ? {} : { slip: { needs: slips.least(hot), lacks: slips.lacks(solution, hot) } }),
  };
}
