/** How far the wheel may be taken on the page, and the words and marks of its scale. */
import type { Speech } from '../../units/show.ts';
import { plain } from '../../units/show.ts';
import { fromSI, toSI } from '../../units/unit.ts';

export interface Scale {
  readonly low: number;
  readonly high: number;
  readonly step: number;
  readonly unit: string;
  readonly marks: readonly { readonly at: number; readonly part: number; readonly words: string }[];
}

/** The scale of a slider between two SI lengths, marked every 10 mm or half inch (5 or 20 where that suits). */
export function scaleOf(low: number, high: number, speech: Speech, most = 9): Scale {
  const unit = speech === 'mm-N' ? 'mm' : 'in';
  const span = fromSI(high - low, unit);
  const choices = speech === 'mm-N' ? [2, 5, 10, 20, 50] : [0.1, 0.25, 0.5, 1, 2];
  const every = choices.find((each) => span / each <= most) ?? choices.at(-1)!;
  const marks: Scale['marks'][number][] = [];
  for (let k = Math.ceil(fromSI(low, unit) / every - 1e-9); k * every <= fromSI(high, unit) + 1e-9; k += 1) {
    const spoken = k * every;
    const at = toSI(spoken, unit);
    const digits = Number.isInteger(every) ? 0 : every === 0.25 ? 2 : 1;
    marks.push({
      at,
      part: (at - low) / (high - low),
      words: `${spoken > 0 ? '+' : ''}${plain(spoken, digits)}`,
    });
  }
  return { low, high, step: speech === 'mm-N' ? 1e-4 : 0.0254 / 100, unit, marks };
}

/** A travel as it is spoken: `+12.0 mm in bump`. */
export function travelWords(travel: number, speech: Speech): string {
  const unit = speech === 'mm-N' ? 'mm' : 'in';
  const spoken = fromSI(travel, unit);
  return `${spoken > 0 ? '+' : ''}${plain(spoken, speech === 'mm-N' ? 1 : 2)} ${unit}`;
}
