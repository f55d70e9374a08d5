/** What two specs differ by at one figure, in words no finer than the figures themselves. */
import { plain, type Speech, show, spokenUnit } from '../units/show.ts';
import { fromSI } from '../units/unit.ts';
import type { ComparedRow } from './compare.ts';
import type { Figure } from './figure.ts';

/** Below this, SI, a figure of this trade is the rounding of a sum and no measure: a tenth of a nanometre, say. */
const NOTHING = 1e-10;

export const SAME = 'same';

/** `+0.4`, `same`, or a dash where one of them has no such figure; in the unit that the figure is spoken in. */
export function differenceWords(
  { a, b, unit }: Pick<ComparedRow, 'a' | 'b' | 'unit'>,
  speech: Speech,
): string {
  const difference = (b?.value ?? Number.NaN) - (a?.value ?? Number.NaN);
  if (!Number.isFinite(difference)) return '—';
  const u = leastSpread(a, b);
  const text =
    u === undefined
      ? coarse(difference, a!, unit, speech)
      : show(Math.abs(difference) < NOTHING ? 0 : difference, unit, speech, u).text;
  if (Number(text.replace('−', '-').replaceAll(/\s/g, '')) === 0) return SAME;
  return difference > 0 ? `+${text}` : text;
}

/** Before the spread is there: to the decimals that the figure is shown with. */
function coarse(difference: number, figure: Figure, unit: string, speech: Speech): string {
  const decimals = show(figure.value, unit, speech).text.split('.')[1]?.length ?? 0;
  return plain(fromSI(difference, spokenUnit(unit, speech)), decimals);
}

/** What both share falls out of a difference, so it is as fine as the surer of the two figures. */
function leastSpread(...figures: readonly (Figure | undefined)[]): number | undefined {
  const known = figures
    .map((figure) => figure?.spread?.u)
    .filter((u): u is number => u !== undefined && u > 0);
  return known.length === 0 ? undefined : Math.min(...known);
}
