/** Figures as the page writes them: what is nothing but rounding is written as nothing. */
import { type Shown, type Speech, show } from '../units/show.ts';

/** Below this, SI, a figure of this trade is the rounding of a sum and no measure: a tenth of a nanometre, say. */
const NOTHING = 1e-10;

export const spoken = (value: number, unit: string, speech: Speech, u?: number): Shown =>
  show(Math.abs(value) < NOTHING ? 0 : value, unit, speech, u);
