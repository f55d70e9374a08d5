/**
 * A set in its car on paper: gaps hot beside cold, tools on the nuts, the way it comes off.
 *
 * In    what was found of it, width and letters
 * Out   blocks of a sheet; what is measured after the heat run stays blank
 */
import type { BankName } from '../car/check-exhaust.ts';
import { type LookedAt, lookedTold } from '../questions/looked-at.ts';
import type { Speech } from '../units/show.ts';
import { type Block, gap, heading, paragraph } from './lay-out.ts';
import { SIZE } from './page.ts';
import { type Column, table } from './table.ts';
import type { TextMeasure } from './text-measure.ts';

const FOUND: Column = { title: 'Found after heat run', part: 1.6, blank: true };

/** Rows of gaps that leave room for the rest. */
const MOST_ROWS = 14;

export function inCarBlocks(
  looked: LookedAt,
  on: {
    readonly side: BankName;
    readonly width: number;
    readonly measure: TextMeasure;
    readonly speech: Speech;
  },
): Block[] {
  const { width, measure } = on;
  const small = (words: string): Block[] => paragraph(words, { width, size: SIZE.small }, measure);
  return lookedTold(looked, { ...on, most: MOST_ROWS }).flatMap(
    ({ kind, title, lead, table: of, after }, k) => [
      ...(k === 0 ? [] : [heading(title)]),
      ...lead.flatMap(small),
      ...(of === undefined || of.rows.length === 0
        ? []
        : [
            ...table(
              [
                ...of.columns.map(
                  ({ title: head, part, number }): Column => ({
                    title: `${head.slice(0, 1).toUpperCase()}${head.slice(1)}`,
                    part,
                    ...(number === true ? { align: 'right' as const } : {}),
                  }),
                ),
                ...(kind === 'hot' ? [FOUND] : []),
              ],
              of.rows.map(({ cells }) => ({ cells: kind === 'hot' ? [...cells, ''] : [...cells] })),
              width,
              measure,
              SIZE.label,
            ),
            gap(1),
          ]),
      ...after.flatMap(small),
    ],
  );
}
