/** How far the wheel may be taken on the page, and the words and marks of its scale. */
import type { Speech } from '../../units/show.ts';
import { plain } from '../../units/show.ts';
import { fromSI } from '../../units/unit.ts';
import { type Mark, marksOf } from './marks.ts';

export interface Scale {
  readonly step: number;
  readonly unit: string;
  readonly marks: readonly Mark[];
}

/** The scale of a slider between two SI lengths, marked every 10 mm or half inch (5 or 20 where that suits). */
export function scaleOf(low: number, high: number, speech: Speech, most = 9): Scale {
  const unit = speech === 'mm-N' ? 'mm' : 'in';
  const every = speech === 'mm-N' ? [2, 5, 10, 20, 50] : [0.1, 0.25, 0.5, 1, 2];
  return {
    step: speech === 'mm-N' ? 1e-4 : 0.0254 / 100,
    unit,
    marks: marksOf({ low, high, unit, every, most }),
  };
}

/** A travel as it is spoken: `+12.0 mm in bump`. */
export function travelWords(travel: number, speech: Speech): string {
  const unit = speech === 'mm-N' ? 'mm' : 'in';
  const spoken = fromSI(travel, unit);
  return `${spoken > 0 ? '+' : ''}${plain(spoken, speech === 'mm-N' ? 1 : 2)} ${unit}`;
}
