/**
 * How far each column of a problem of whole moves can be moved at all while every row stays within its range.
 *
 * In    rows d + A x, for each column the places that it may take
 * Out   the places between the least and the largest x that a linear program reaches, or that there is none
 *
 * A range that leaves nothing out says that the column must be moved; one that is short makes its part of a move large.
 */
import type { MovesProblem, Place } from './fewest-moves.ts';
import { leastCost } from './range-program.ts';

const HAIR = 1e-6;

export interface Ranged {
  readonly places: readonly (readonly Place[])[];
  readonly low: Float64Array;
  readonly high: Float64Array;
}

export const rangesOf = (places: readonly (readonly Place[])[]): Ranged => ({
  places,
  low: Float64Array.from(places, (each) => each[0]!.x),
  high: Float64Array.from(places, (each) => each.at(-1)!.x),
});

/** Effort that a column costs at the least per |x|. */
export const effortPerX = (places: readonly (readonly Place[])[]): Float64Array =>
  Float64Array.from(places, (each) => {
    const least = Math.min(...each.filter(({ x }) => x !== 0).map(({ x, effort }) => effort / Math.abs(x)));
    return Number.isFinite(least) ? least : 0;
  });

/**
 * Undefined where a column has no place left.
 *
 * @param asked  told before each linear program; where it says no, the ranges are left as far as they are found
 */
export function tightened(
  { a, d }: Pick<MovesProblem, 'a' | 'd'>,
  of: Ranged,
  within: number,
  asked: () => boolean,
): Ranged | undefined {
  const places = of.places.slice();
  const [low, high] = [Float64Array.from(of.low), Float64Array.from(of.high)];
  for (let j = 0; j < places.length; j += 1) {
    if (places[j]!.length < 2) continue;
    for (const end of [high, low]) {
      if (!asked()) return { places, low, high };
      // as near to this end as rows let it be
      const cost = new Float64Array(low.length);
      cost[j] = 1;
      const reached = leastCost({ a, d, low, high, cost, from: end }, within);
      if (reached === undefined) return undefined;
      const x = reached.x[j]!;
      const left = places[j]!.filter((place) => (end === high ? place.x <= x + HAIR : place.x >= x - HAIR));
      if (left.length === 0) return undefined;
      places[j] = left;
      low[j] = left[0]!.x;
      high[j] = left.at(-1)!.x;
    }
  }
  return { places, low, high };
}
