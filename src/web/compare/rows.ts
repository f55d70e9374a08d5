/** The figures of two specs, side by side by what they are. */
import type { Figure, Stop } from '../../questions/figure.ts';
import { type ComparedRow, paired } from '../../questions/index.ts';
import { plain, type Speech, spokenUnit } from '../../units/show.ts';
import { fromSI } from '../../units/unit.ts';
import { spoken } from '../spoken.ts';

export type Row = ComparedRow;

/** Rows of one stop: those of the first spec in their order, then what only the second has. */
export function rowsOf(a: readonly Figure[], b: readonly Figure[], stop: Stop): readonly Row[] {
  const own = (figures: readonly Figure[]) =>
    figures.filter((figure) => figure.stop === stop && figure.rank < 3).map((figure) => ({ figure }));
  return paired(own(a), own(b));
}

/** The difference, spoken no finer than the figures themselves: `+0.4`, `same`, or a dash. */
export function differenceWords({ a, b, unit }: Row, speech: Speech): string {
  const difference = (b?.value ?? Number.NaN) - (a?.value ?? Number.NaN);
  if (!Number.isFinite(difference)) return '—';
  const u = leastSpread(a, b);
  const text =
    u === undefined ? coarse(difference, a!, unit, speech) : spoken(difference, unit, speech, u).text;
  if (Number(text.replace('−', '-').replaceAll(/\s/g, '')) === 0) return 'same';
  return difference > 0 ? `+${text}` : text;
}

/** Before the spread is there: to the decimals that the figure is shown with. */
function coarse(difference: number, figure: Figure, unit: string, speech: Speech): string {
  const decimals = spoken(figure.value, unit, speech).text.split('.')[1]?.length ?? 0;
  return plain(fromSI(difference, spokenUnit(unit, speech)), decimals);
}

/** What both share falls out of a difference, so it is as fine as the surer of the two figures. */
function leastSpread(...figures: readonly (Figure | undefined)[]): number | undefined {
  const known = figures
    .map((figure) => figure?.spread?.u)
    .filter((u): u is number => u !== undefined && u > 0);
  return known.length === 0 ? undefined : Math.min(...known);
}
