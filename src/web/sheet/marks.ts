/** Marks of a scale at round figures of its unit. */
import { plain } from '../../units/show.ts';
import { fromSI, toSI } from '../../units/unit.ts';

export interface Mark {
  readonly at: number;
  /** From the low end to the high one, 0 to 1. */
  readonly part: number;
  readonly words: string;
}

interface Scale {
  /** SI. */
  readonly low: number;
  readonly high: number;
  readonly unit: string;
  /** How far apart marks may be, in the unit; the closest that are no more than `most`. */
  readonly every: readonly number[];
  readonly most: number;
}

export function marksOf({ low, high, unit, every: choices, most }: Scale): readonly Mark[] {
  const span = fromSI(high - low, unit);
  const every = choices.find((each) => span / each <= most) ?? choices.at(-1)!;
  const marks: Mark[] = [];
  for (let k = Math.ceil(fromSI(low, unit) / every - 1e-9); k * every <= fromSI(high, unit) + 1e-9; k += 1) {
    const spoken = k * every;
    const at = toSI(spoken, unit);
    const digits = Number.isInteger(every) ? 0 : every === 0.25 ? 2 : 1;
    marks.push({
      at,
      part: (at - low) / (high - low),
      // a sign says something only where there are two
      words: `${spoken > 0 && low < 0 ? '+' : ''}${plain(spoken, digits)}`,
    });
  }
  return marks;
}
