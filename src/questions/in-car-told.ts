/**
 * A set in its car as it is told everywhere: what it holds, hot beside cold, the nuts, the way off.
 *
 * Page, terminal and paper lay out these sections; what they say, and its order, stands here alone.
 */
import type { BankName } from '../car/check-exhaust.ts';
import type { Speech } from '../units/show.ts';
import { holdsTold } from './holding-words.ts';
import {
  hotGapWords,
  hotRows,
  hotVerdict,
  hotWords,
  nutsVerdict,
  removalWords,
  ringWords,
  slipWords,
  socketWords,
  spannerWords,
} from './in-car-words.ts';
import { isKeptHot, type PrimariesHot } from './primaries-hot.ts';
import type { PrimariesInCar } from './primaries-in-car.ts';

export interface ToldColumn {
  readonly title: string;
  /** Where there is little room. */
  readonly brief: string;
  /** Of the width, on paper. */
  readonly part: number;
  readonly number?: boolean;
}

export interface ToldTable {
  readonly caption: string;
  readonly columns: readonly ToldColumn[];
  readonly rows: readonly ToldRow[];
}

export interface ToldRow {
  readonly cells: readonly string[];
  /** Less than was asked. */
  readonly lacks: boolean;
}

export interface ToldSection {
  readonly kind: 'holds' | 'hot' | 'nuts' | 'removal';
  readonly title: string;
  /** What counts, first. */
  readonly lead: readonly string[];
  /** The lead says that all is well, or that it is not. */
  readonly holds?: boolean;
  readonly table?: ToldTable;
  readonly after: readonly string[];
}

export interface ToldAsked {
  readonly side: BankName;
  readonly speech: Speech;
  /** What was asked beyond the cold gaps, in words. */
  readonly more?: string | undefined;
  /** Most rows of gaps. */
  readonly most: number;
}

export function inCarTold(is: PrimariesInCar, asked: ToldAsked): readonly ToldSection[] {
  const { hot, nuts, removal, slip } = is;
  const { side, speech, more } = asked;
  const holds = holdsTold(is, speech);
  return [
    {
      kind: 'holds',
      title: 'What it holds in the car',
      lead: holds.map(({ words }) => words),
      holds: holds.every((each) => each.holds || !each.asked),
      after: more === undefined ? [] : [more],
    },
    hotTold(hot, asked, slip === undefined ? [] : [slipWords(slip, speech)]),
    nuts.reached
      ? {
          kind: 'nuts',
          title: 'Nuts of the flanges',
          lead: [nutsVerdict(nuts, speech)],
          table: {
            caption: 'Socket, ring and open spanner on each nut',
            columns: [
              { title: 'Cylinder', brief: 'cyl.', part: 0.8 },
              { title: 'nut', brief: 'nut', part: 1 },
              { title: 'socket', brief: 'socket', part: 2.6 },
              { title: 'ring spanner', brief: 'ring', part: 2.6 },
              { title: 'open spanner', brief: 'open spanner', part: 2.8 },
            ],
            rows: nuts.nuts.map((each) => ({
              cells: [
                String(each.cylinder),
                each.where,
                socketWords(each, speech),
                ringWords(each, speech),
                spannerWords(each, speech),
              ],
              lacks: false,
            })),
          },
          after: ['Left and right as seen from the tube, looking at the head.'],
        }
      : { kind: 'nuts', title: 'Nuts of the flanges', lead: [nuts.message], after: [] },
    {
      kind: 'removal',
      title: 'Taking it off',
      lead: [],
      after: removalWords(removal, side, speech),
    },
  ];
}

/** How a set lies hot. */
export function hotTold(
  hot: PrimariesHot,
  { speech, most }: Pick<ToldAsked, 'speech' | 'most'>,
  more: readonly string[] = [],
): ToldSection {
  return {
    kind: 'hot',
    title: 'Hot',
    lead: [hotVerdict(hot, speech)],
    holds: hot.holds,
    table: {
      caption: 'Gaps hot beside cold',
      columns: [
        { title: 'Cylinder', brief: 'cyl.', part: 0.8 },
        { title: 'to', brief: 'to', part: 2.6 },
        { title: 'asked hot', brief: 'asked', part: 1.1, number: true },
        { title: 'cold', brief: 'cold', part: 1, number: true },
        { title: 'hot', brief: 'hot', part: 1, number: true },
        { title: 'change', brief: 'change', part: 1.5, number: true },
      ],
      rows: hotRows(hot)
        .slice(0, most)
        .map((gap) => {
          const said = hotGapWords(gap, hot, speech);
          return {
            cells: [String(gap.cylinder), gap.against, said.asked, said.cold, said.hot, said.closes],
            lacks: !isKeptHot(gap),
          };
        }),
    },
    after: [...hotWords(hot, speech), ...more],
  };
}
