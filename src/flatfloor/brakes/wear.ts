/** Wear of a pad or disc against laps: the straight line through its readings, and the laps that are left. */
import { fromReading, type Numbers } from '../../loadpath/numbers.ts';
import type { Reading } from '../../measured/reading.ts';
import type { Metre } from '../../units/quantity.ts';
import { formula, type Working } from '../../working/working.ts';

export interface WearPoint {
  readonly laps: Reading;
  readonly thickness: Reading;
}

const lapsLeft = formula({
  symbol: 'n_l',
  means: 'laps left from the last reading',
  is: '(s_n - s_0)/q',
  unit: '1',
  terms: {
    s_n: { unit: 'm', means: 'thickness at the last reading' },
    s_0: { unit: 'm', means: 'least thickness' },
    q: { unit: 'm', means: 'wear of a lap' },
  },
  source: 'BR-10',
  holds: 'laps like those read: wear grows fast with heat, and a pad wears faster thin',
});

export interface Worn {
  /** Wear of a lap. */
  readonly rate: Metre;
  /** Laps left; not a number where nothing wears or no least thickness is told. */
  readonly left: number;
}

/** [BR-9, BR-10] */
export function wornOf(
  points: readonly WearPoint[],
  least: Reading | undefined,
  numbers: Numbers,
  working?: Working,
): Worn {
  const n = points.length;
  const laps = points.map((each) => numbers.of(each.laps));
  const thickness = points.map((each) => numbers.of(each.thickness));
  const mean = (of: readonly number[]): number => of.reduce((sum, each) => sum + each, 0) / n;
  const [l, s] = [mean(laps), mean(thickness)];
  const square = laps.reduce((sum, each) => sum + (each - l) ** 2, 0);
  const rate = -laps.reduce((sum, each, k) => sum + (each - l) * (thickness[k]! - s), 0) / square;
  working?.add({
    kind: 'solved',
    symbol: 'q',
    means: 'wear of a lap',
    method: 'straight line of least squares through thickness against laps',
    value: rate,
    unit: 'm',
    source: 'BR-9',
    terms: points.map((each, k) => ({
      symbol: `s_${k + 1}`,
      means: `thickness after ${laps[k]} laps`,
      value: thickness[k]!,
      unit: 'm',
      from: fromReading(each.thickness),
    })),
  });
  if (least === undefined || rate <= 0) return { rate, left: Number.NaN };
  const last = points.at(-1)!.thickness;
  const left = lapsLeft({ s_n: thickness.at(-1)!, s_0: numbers.of(least), q: rate }, working, {
    s_n: fromReading(last),
    s_0: fromReading(least),
  });
  return { rate, left };
}
