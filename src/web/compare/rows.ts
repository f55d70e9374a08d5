/** The figures of two specs, side by side by what they are. */
import type { Figure, Stop } from '../../questions/figure.ts';
import { type ComparedRow, paired } from '../../questions/index.ts';

export type Row = ComparedRow;

/** Rows of one stop: those of the first spec in their order, then what only the second has. */
export function rowsOf(a: readonly Figure[], b: readonly Figure[], stop: Stop): readonly Row[] {
  const own = (figures: readonly Figure[]) =>
    figures.filter((figure) => figure.stop === stop && figure.rank < 3).map((figure) => ({ figure }));
  return paired(own(a), own(b));
}
