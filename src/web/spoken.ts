/** Figures as the page writes them: what is nothing but rounding is written as nothing. */
import { type Shown, type Speech, show, showIn } from '../units/show.ts';

/** Below this, SI, a figure of this trade is the rounding of a sum and no measure: a tenth of a nanometre, say. */
const NOTHING = 1e-10;

export const spoken = (value: number, unit: string, speech: Speech, u?: number): Shown =>
  show(Math.abs(value) < NOTHING ? 0 : value, unit, speech, u);

/** A figure that may have units of its own in which the trade says it: a tyre in bar, a road speed in km/h. */
export interface SpokenFigure {
  readonly value: number;
  readonly unit: string;
  readonly spoken?: readonly [metric: string, imperial: string];
  readonly spread?: { readonly u: number };
}

/** A figure in its own units, or in those usual for its SI unit. */
export function spokenOwn({ value, unit, spoken: own, spread }: SpokenFigure, speech: Speech): Shown {
  const u = spread?.u;
  return own === undefined
    ? spoken(value, unit, speech, u)
    : showIn(Math.abs(value) < NOTHING ? 0 : value, own[speech === 'mm-N' ? 0 : 1], u);
}
