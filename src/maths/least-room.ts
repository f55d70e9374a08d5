/**
 * Where rows cannot all lie within ± 1: the room that each needs beyond it, least in sum.
 *
 * In    rows d + A x in units of their own tolerance, columns with ranges
 * Out   for each row how far beyond ± 1 it has to lie; nothing for all where all can lie within
 *
 * A sum, and not the largest: so that one row out of reach is let go alone, and does not take the others with it.
 * Each row gets a column of its own that makes up for what is missing and costs what it makes up.
 */
import { leastCost } from './range-program.ts';

export interface RoomAsked {
  readonly a: readonly Float64Array[];
  readonly d: Float64Array;
  readonly low: Float64Array;
  readonly high: Float64Array;
}

/** Of two ways with as little room the one that moves less; far below any room that counts. */
const PER_REACH = 1e-6;

export function leastRoom({ a, d, low, high }: RoomAsked): Float64Array {
  const [rows, columns] = [d.length, low.length];
  const reach = Float64Array.from(low, (x, j) => Math.max(Math.abs(x), Math.abs(high[j]!)));
  const wide = Float64Array.from(
    d,
    (at, i) => 1 + Math.abs(at) + a[i]!.reduce((sum, by, j) => sum + Math.abs(by) * reach[j]!, 0),
  );
  const at = (j: number): number => j - columns;
  const all = Array.from({ length: columns + rows }, (_, j) => j);
  const found = leastCost(
    {
      a: a.map((row, i) => Float64Array.from(all, (j) => (j < columns ? row[j]! : at(j) === i ? 1 : 0))),
      d,
      low: Float64Array.from(all, (j) => (j < columns ? low[j]! : -wide[at(j)]!)),
      high: Float64Array.from(all, (j) => (j < columns ? high[j]! : wide[at(j)]!)),
      cost: Float64Array.from(all, (j) => (j < columns ? PER_REACH / Math.max(reach[j]!, PER_REACH) : 1)),
    },
    1,
  )!;
  return Float64Array.from(d, (_, i) => Math.abs(found.x[columns + i]!));
}
