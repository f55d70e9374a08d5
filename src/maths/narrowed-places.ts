/**
 * Places that no answer takes: for each column the least and the most that rows within their ranges leave it.
 *
 * In    rows d + A x that must lie within ± t, for each column the places that it may take
 * Out   the places left of each column, or that nothing brings every row within
 *
 * Two linear programs a column; what one column loses narrows the next. A column that is left without nothing among
 * its places has to move: that is most of what a proof of the fewest moves needs.
 */
import { leastCost } from './range-program.ts';

interface Rows {
  readonly a: readonly Float64Array[];
  readonly d: Float64Array;
}

/** How far beyond its range a place may lie, for the rounding of the programs. */
const HAIR = 1e-6;

/** Columns that lose less than this part of their places are not worth another round. */
const WORTH = 0.1;
const MOST_ROUNDS = 3;

/** @returns undefined where no x between the places brings every row within ± within */
export function narrowedPlaces<P extends { readonly x: number }>(
  rows: Rows,
  places: readonly (readonly P[])[],
  within: number,
): readonly (readonly P[])[] | undefined {
  const left = [...places];
  const low = Float64Array.from(places, (each) => each[0]!.x);
  const high = Float64Array.from(places, (each) => each.at(-1)!.x);
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    let worth = false;
    for (let j = 0; j < left.length; j += 1) {
      const before = left[j]!;
      if (before.length === 1 && round > 0) continue;
      const least = endOf(rows, { low, high, j, up: false }, within);
      const most = endOf(rows, { low, high, j, up: true }, within);
      if (least === undefined || most === undefined) return undefined;
      const after = before.filter(({ x }) => x >= least - HAIR && x <= most + HAIR);
      if (after.length === 0) return undefined;
      if (after.length < (1 - WORTH) * before.length) worth = true;
      left[j] = after;
      low[j] = after[0]!.x;
      high[j] = after.at(-1)!.x;
    }
    if (!worth) break;
  }
  return left;
}

/** The least that a column can be, or the most: counted from its far end, so that it costs what it goes back. */
function endOf(
  { a, d }: Rows,
  of: { readonly low: Float64Array; readonly high: Float64Array; readonly j: number; readonly up: boolean },
  within: number,
): number | undefined {
  const { j, up } = of;
  const [low, high] = [Float64Array.from(of.low), Float64Array.from(of.high)];
  const from = up ? high[j]! : low[j]!;
  low[j] = low[j]! - from;
  high[j] = high[j]! - from;
  const cost = new Float64Array(low.length);
  cost[j] = 1;
  const found = leastCost({ a, d: d.map((at, i) => at + a[i]![j]! * from), low, high, cost }, within);
  return found === undefined ? undefined : from + found.x[j]!;
}
