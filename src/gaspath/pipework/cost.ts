/**
 * What a set costs by the shop's own prices.
 *
 * In    the cut list, prices of a weld and a flange, in the shop's money
 * Out   the sum, its parts, and which prices were not given: these count as nothing and the sum says so
 */
import type { CutList } from './cut-list.ts';

export interface Prices {
  /** Time and gas for one weld round the tube. */
  readonly weld?: number;
  readonly flange?: number;
}

export interface Cost {
  readonly stock: number;
  readonly welds: number;
  readonly flanges: number;
  readonly all: number;
  /** Names of what has no price. */
  readonly unpriced: readonly string[];
}

export function costOf(list: CutList, flanges: number, prices: Prices): Cost {
  const stock = list.stock.reduce((sum, { count, price }) => sum + count * (price ?? 0), 0);
  const welds = list.welds.length * (prices.weld ?? 0);
  const ofFlanges = flanges * (prices.flange ?? 0);
  return {
    stock,
    welds,
    flanges: ofFlanges,
    all: stock + welds + ofFlanges,
    unpriced: [
      ...list.stock.filter(({ price }) => price === undefined).map(({ name }) => name),
      ...(prices.weld === undefined ? ['weld'] : []),
      ...(prices.flange === undefined && flanges > 0 ? ['flange'] : []),
    ],
  };
}
