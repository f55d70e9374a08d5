/**
 * A set in its car on paper: gaps hot beside cold, tools on the nuts, the way it comes off.
 *
 * In    what was found of it, width and letters
 * Out   blocks of a sheet; what is measured after the heat run stays blank
 */
import type { BankName } from '../car/check-exhaust.ts';
import {
  hotGapWords,
  hotRows,
  hotVerdict,
  hotWords,
  nutsVerdict,
  removalWords,
  socketWords,
  spannerWords,
} from '../questions/in-car-words.ts';
import type { PrimariesInCar } from '../questions/primaries-in-car.ts';
import type { Speech } from '../units/show.ts';
import { type Block, gap, heading, paragraph } from './lay-out.ts';
import { SIZE } from './page.ts';
import { type Column, table } from './table.ts';
import type { TextMeasure } from './text-measure.ts';

const GAPS: readonly Column[] = [
  { title: 'Cylinder', part: 0.8 },
  { title: 'To', part: 2.6 },
  { title: 'Asked hot', part: 1.1, align: 'right' },
  { title: 'Cold', part: 1, align: 'right' },
  { title: 'Hot', part: 1, align: 'right' },
  { title: 'Change', part: 1.5, align: 'right' },
  { title: 'Found after heat run', part: 1.6, blank: true },
];

const NUTS: readonly Column[] = [
  { title: 'Cylinder', part: 0.8 },
  { title: 'Nut, seen from the tube', part: 1.4 },
  { title: 'Socket', part: 3.4 },
  { title: 'Open spanner', part: 4 },
];

/** Rows of gaps that leave room for the rest. */
const MOST_ROWS = 14;

export function inCarBlocks(
  { hot, nuts, removal }: PrimariesInCar,
  on: {
    readonly side: BankName;
    readonly width: number;
    readonly measure: TextMeasure;
    readonly speech: Speech;
  },
): Block[] {
  const { width, measure, speech, side } = on;
  const small = (words: string): Block[] => paragraph(words, { width, size: SIZE.small }, measure);
  const gaps = hotRows(hot)
    .slice(0, MOST_ROWS)
    .map((each) => {
      const said = hotGapWords(each, hot, speech);
      return {
        cells: [String(each.cylinder), each.against, said.asked, said.cold, said.hot, said.closes, ''],
      };
    });
  return [
    ...small(hotVerdict(hot, speech)),
    ...(gaps.length === 0 ? [] : table(GAPS, gaps, width, measure, SIZE.label)),
    gap(1),
    ...hotWords(hot, speech).flatMap(small),
    heading('Nuts of the flanges'),
    ...(nuts.reached
      ? [
          ...small(nutsVerdict(nuts, speech)),
          ...table(
            NUTS,
            nuts.nuts.map((each) => ({
              cells: [
                String(each.cylinder),
                each.where,
                socketWords(each, speech),
                spannerWords(each, speech),
              ],
            })),
            width,
            measure,
            SIZE.label,
          ),
        ]
      : small(nuts.message)),
    heading('Taking it off'),
    ...removalWords(removal, side, speech).flatMap(small),
  ];
}
