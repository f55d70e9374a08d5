/**
 * The ladder: a set of bars that steps the wheel rate evenly from one figure to another.
 *
 * In    two wheel rates, how many bars, how a bar of some diameter is made, how its rate comes out at the wheel
 * Out   for each rung the diameter that can be ground, the wheel rate it truly gives, and how far off the step is
 * Not   even diameters: rate goes with the fourth power, so even diameters step unevenly
 *
 * See docs/theory/springs.md, SP-54.
 */
import type { Metre, NewtonMetrePerRadian, NewtonPerMetre, Ratio } from '../../units/quantity.ts';
import { spokenFigures } from '../../units/show.ts';
import { type TorsionBar, torsionBarRate } from './torsion-bar.ts';

export interface LadderWanted {
  readonly softest: NewtonPerMetre;
  readonly stiffest: NewtonPerMetre;
  /** Two or more. */
  readonly count: number;
  readonly steps: 'equal difference' | 'equal ratio';
  readonly barOf: (diameter: Metre) => TorsionBar;
  /** Wheel rate with a bar of this torsional rate, at the height that the caller has chosen. */
  readonly wheelRateOf: (rate: NewtonMetrePerRadian) => NewtonPerMetre;
  readonly diameters: { readonly from: Metre; readonly to: Metre };
  readonly grindingStep: Metre;
}

export interface Rung {
  readonly wanted: NewtonPerMetre;
  /** The diameter that would give it, and the one that is ground. */
  readonly exactDiameter: Metre;
  readonly diameter: Metre;
  readonly bar: TorsionBar;
  readonly rate: NewtonMetrePerRadian;
  readonly wheelRate: NewtonPerMetre;
  readonly error: NewtonPerMetre;
  /** Difference to, or ratio over, the rung below, as was asked for; undefined on the first. */
  readonly step: number | undefined;
}

export interface Ladder {
  readonly rungs: readonly Rung[];
  /** The step that was aimed at, in N/m or as a ratio. */
  readonly evenStep: number;
  /** Greatest distance of a step from the even one, as a part of it (of what it is above 1, for a ratio). */
  readonly unevenness: Ratio;
}

/** A rung that no diameter within the limits gives. */
export class RungOutOfReach extends Error {
  constructor(
    readonly wanted: NewtonPerMetre,
    readonly reach: { readonly softest: NewtonPerMetre; readonly stiffest: NewtonPerMetre },
  ) {
    const shown = (rate: number): string => spokenFigures(rate, 'N/m');
    super(
      `a wheel rate of ${shown(wanted)} cannot be had: these diameters give ${shown(reach.softest)} to ${shown(reach.stiffest)}`,
    );
  }
}

/**
 * Bars whose wheel rates step evenly.  [SP-54]
 *
 * The wheel rate must rise with the diameter; the diameter of a rung is found by halving.
 * @throws RungOutOfReach when a rung lies outside what the diameters give
 */
export function ladder(wanted: LadderWanted): Ladder {
  const { softest, stiffest, count, diameters, grindingStep } = wanted;
  const wheelRate = (diameter: Metre): NewtonPerMetre =>
    wanted.wheelRateOf(torsionBarRate(wanted.barOf(diameter)));
  const reach = { softest: wheelRate(diameters.from), stiffest: wheelRate(diameters.to) };
  const byRatio = wanted.steps === 'equal ratio';
  const evenStep = byRatio ? (stiffest / softest) ** (1 / (count - 1)) : (stiffest - softest) / (count - 1);
  const rungs: Rung[] = [];
  for (let i = 0; i < count; i += 1) {
    const target = byRatio ? softest * evenStep ** i : softest + evenStep * i;
    // the ends of the reach are let in to rounding
    const slack = 1e-9 * target;
    if (target < reach.softest - slack || target > reach.stiffest + slack) {
      throw new RungOutOfReach(target, reach);
    }
    const exactDiameter = halve((diameter) => wheelRate(diameter) - target, diameters);
    const diameter = Math.round(exactDiameter / grindingStep) * grindingStep;
    const bar = wanted.barOf(diameter);
    const rate = torsionBarRate(bar);
    const found = wanted.wheelRateOf(rate);
    const below = rungs.at(-1)?.wheelRate;
    const step = below === undefined ? undefined : byRatio ? found / below : found - below;
    rungs.push({
      wanted: target,
      exactDiameter,
      diameter,
      bar,
      rate,
      wheelRate: found,
      error: found - target,
      step,
    });
  }
  const size = byRatio ? evenStep - 1 : evenStep;
  const unevenness = Math.max(
    ...rungs.map((rung) => (rung.step === undefined ? 0 : Math.abs(rung.step - evenStep) / Math.abs(size))),
  );
  return { rungs, evenStep, unevenness };
}

function halve(f: (x: Metre) => number, within: { readonly from: Metre; readonly to: Metre }): Metre {
  let low = within.from;
  let high = within.to;
  // 60 halvings take any bracket of bar diameters below a picometre
  for (let i = 0; i < 60; i += 1) {
    const middle = (low + high) / 2;
    if (f(middle) < 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
