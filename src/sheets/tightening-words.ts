/** What both halves of a tightening card say in the same words. */
import type { TightenedSort, TighteningReached } from '../questions/tightening.ts';
import type { Speech } from '../units/show.ts';
import type { TextMeasure } from './text-measure.ts';
import { fixedLength } from './words.ts';

export interface Card {
  readonly of: TighteningReached;
  readonly speech: Speech;
  readonly width: number;
  readonly measure: TextMeasure;
}

/** `1, 2` of the studs of a sort. */
export const numbersOf = ({ of }: Card, sort: TightenedSort): string =>
  of.studs
    .filter((stud) => stud.sort === sort.name)
    .map(({ number }) => number)
    .join(', ');

/** `24.0 mm [0.945 in]`. */
export const lengthBoth = (value: number, { speech }: Card): string => fixedLength(value, 1, speech);
