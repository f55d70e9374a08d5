/**
 * Pairs from the stock for target speeds.
 *
 * In    pairs with the gears that their hubs fit, target speed of each gear, how many may be changed
 * Out   the set whose speeds lie nearest to the targets: least sum of the squares of the relative misses
 * Holds exactly: every set that falls from gear to gear and uses each pair once is counted, by taking the gears one
 *       after another and keeping the best for each last pair and number of changes
 *
 * RA-12 of docs/theory/ratios.md.
 */
import type { Teeth } from '../../car/teeth.ts';
import type { MetrePerSecond, Ratio } from '../../units/quantity.ts';

export interface Choice {
  readonly pair: Teeth;
  /** Gears that its hubs fit, from 1; left out, all. */
  readonly gears?: readonly number[];
}

export interface Chosen {
  readonly pairs: readonly Teeth[];
  readonly speeds: readonly MetrePerSecond[];
  /** Root mean square of the relative misses. */
  readonly miss: Ratio;
  /** Gears that differ from those fitted, from 1. */
  readonly changed: readonly number[];
}

export interface ChooseAsked {
  readonly fitted: readonly Teeth[];
  readonly stock: readonly Choice[];
  readonly targets: readonly MetrePerSecond[];
  /** Road speed of a pair at the engine speed that is meant. */
  readonly speedOf: (pair: Teeth) => MetrePerSecond;
  /** Most pairs that may be changed. */
  readonly changes: number;
}

interface State {
  readonly cost: number;
  readonly chain: readonly number[];
}

/** @returns nothing where no set falls from gear to gear */
export function chooseSet(asked: ChooseAsked): Chosen | undefined {
  const { fitted, targets, speedOf, changes } = asked;
  const all = choicesOf(asked)
    .map((choice) => ({ ...choice, speed: speedOf(choice.pair) }))
    .sort((a, b) => a.speed - b.speed);
  const isFitted = (k: number, gear: number): boolean => all[k]!.pair.text === fitted[gear]?.text;
  const fits = (k: number, gear: number): boolean =>
    isFitted(k, gear) || (all[k]!.gears?.includes(gear + 1) ?? true);
  /** Best set that ends in each pair, by the number of changes. */
  let ends = new Map<string, State>([['-1 0', { cost: 0, chain: [] }]]);
  for (const [gear, target] of targets.entries()) {
    const next = new Map<string, State>();
    for (const [key, { cost, chain }] of ends) {
      const [last, changed] = key.split(' ').map(Number) as [number, number];
      for (let k = last + 1; k < all.length; k += 1) {
        const rises = last < 0 || all[k]!.speed > all[last]!.speed;
        const count = changed + Number(!isFitted(k, gear));
        if (!rises || count > changes || !fits(k, gear)) continue;
        const total = cost + ((all[k]!.speed - target) / target) ** 2;
        const here = `${k} ${count}`;
        if (total < (next.get(here)?.cost ?? Number.POSITIVE_INFINITY)) {
          next.set(here, { cost: total, chain: [...chain, k] });
        }
      }
    }
    ends = next;
  }
  const best = [...ends.values()].reduce<State | undefined>(
    (least, each) => (least === undefined || each.cost < least.cost ? each : least),
    undefined,
  );
  if (best === undefined) return undefined;
  const pairs = best.chain.map((k) => all[k]!.pair);
  return {
    pairs,
    speeds: best.chain.map((k) => all[k]!.speed),
    miss: Math.sqrt(best.cost / targets.length),
    changed: pairs.flatMap(({ text }, gear) => (text === fitted[gear]?.text ? [] : [gear + 1])),
  };
}

/** Fitted and stocked, each kind once: a second of the same teeth is no use in another gear. */
function choicesOf({ fitted, stock }: ChooseAsked): Choice[] {
  const byTeeth = new Map<string, Choice>();
  for (const choice of stock) {
    const before = byTeeth.get(choice.pair.text);
    if (before === undefined) byTeeth.set(choice.pair.text, choice);
    else if (before.gears !== undefined) {
      byTeeth.set(
        choice.pair.text,
        choice.gears === undefined ? choice : { ...choice, gears: [...before.gears, ...choice.gears] },
      );
    }
  }
  fitted.forEach((pair, gear) => {
    // a fitted pair fits where it is; where else it would fit only the stock list knows
    if (!byTeeth.has(pair.text)) byTeeth.set(pair.text, { pair, gears: [gear + 1] });
  });
  return [...byTeeth.values()];
}
