/**
 * The spring sheet: coil or torsion bar of one corner, dimensions as read, rate, stress, margins over the travel.
 *
 * In    the corner's answer with spread, its curves, the dimensions as the car file has them
 * Out   the laid-out document
 */
import { type Reading, spreadWords } from '../measured/reading.ts';
import type { CornerReached } from '../questions/corner.ts';
import { barDrawing } from './bar-drawing.ts';
import type { BarShape } from './bar-order.ts';
import { BAR_SKIN } from './cautions.ts';
import { type CoilShape, coilDrawing } from './coil-drawing.ts';
import { SPREAD_WORDS, travelEnds } from './corner-sheet.ts';
import { curveGrid } from './curve.ts';
import { figureTables } from './figure-table.ts';
import { borderOf, type SheetHead } from './frame.ts';
import { type Block, gap, heading, layOut, paragraph } from './lay-out.ts';
import { type SheetDocument, SIZE } from './page.ts';
import { type Row, table } from './table.ts';
import type { TextMeasure } from './text-measure.ts';
import { type TravelColumns, travelCurves } from './travel-curves.ts';
import { otherWords, ownWords, travelWords, wheelWords } from './words.ts';

export interface SpringSheetMatter {
  readonly answer: CornerReached;
  readonly curves?: TravelColumns;
  readonly bar?: BarShape;
  readonly coil?: CoilShape;
  /** Dimensions as they were read, in the order of the file. */
  readonly readings: readonly Reading[];
  /** What the file says in words: material, ends, surface, hand. */
  readonly words: readonly { readonly what: string; readonly is: string }[];
}

const CURVES = [
  'barTorque',
  'barStress',
  'barTwist',
  'springForce',
  'coilStress',
  'solidMargin',
  'wheelRate',
];
const MOST_CURVES = 4;

export function springSheet(
  matter: SpringSheetMatter,
  head: Omit<SheetHead, 'title' | 'of'>,
  measure: TextMeasure,
): SheetDocument {
  const { answer, curves, bar, coil } = matter;
  const { speech } = head;
  const width = borderOf(head.paper).width - 4;
  const full: SheetHead = {
    ...head,
    title:
      bar === undefined ? 'Spring sheet' : coil === undefined ? 'Torsion bar sheet' : 'Spring and bar sheet',
    of: `${wheelWords(answer.wheel)} · ${travelWords(answer.at.travel, speech)}`,
  };
  const name = wheelWords(answer.wheel);
  const small =
    curves === undefined ? [] : travelCurves(curves, CURVES, answer.at.travel, speech).slice(0, MOST_CURVES);
  const springing = answer.figures.filter((figure) => figure.stop === 'spring' || figure.stop === 'rocker');
  const blocks: Block[] = [
    ...(bar === undefined
      ? []
      : [barDrawing({ shape: bar, name, toleranced: false }, speech, width, measure)]),
    ...(coil === undefined ? [] : [coilDrawing(coil, name, speech, width, measure)]),
    gap(2),
    ...dimensionsAsRead(matter, head, width, measure),
    gap(2),
    ...curveGrid(small, width),
    ...figureTables(springing, speech, width, measure),
    gap(2),
    ...travelEnds(answer, head, width, measure),
    ...(answer.notes.length === 0 ? [] : [heading('Notes')]),
    ...answer.notes.flatMap((note) => paragraph(note, { width, size: SIZE.small }, measure)),
    ...paragraph(SPREAD_WORDS, { width, size: SIZE.small }, measure),
  ];
  const cautions =
    bar === undefined
      ? answer.cautions
      : [...answer.cautions.slice(0, 1), BAR_SKIN, ...answer.cautions.slice(1)];
  return layOut({ head: full, cautions, blocks }, measure);
}

/** Both ends of a bar have the same dimensions by name: the path says which end is meant. */
function placed({ means, path }: Reading): string {
  if (path.includes('.rockerEnd.')) return `rocker end: ${means}`;
  return path.includes('.anchorEnd.') ? `anchor end: ${means}` : means;
}

function dimensionsAsRead(
  { readings, words }: SpringSheetMatter,
  head: Pick<SheetHead, 'speech'>,
  width: number,
  measure: TextMeasure,
): Block[] {
  const columns = [
    { title: 'As read', part: 2.8 },
    { title: 'Value ± spread', part: 1.8, align: 'right' as const },
    { title: 'Other units', part: 1.8, align: 'right' as const },
    { title: 'Where the spread comes from', part: 3 },
    { title: 'Read again', part: 1.2, blank: true },
  ];
  const rows: Row[] = [
    ...words.map(({ what, is }) => ({ cells: [what, is, '', '', ''] })),
    ...readings.map((reading) => ({
      cells: [
        placed(reading),
        ownWords(reading, head.speech),
        otherWords(reading, head.speech),
        spreadWords(reading),
        '',
      ],
    })),
  ];
  return [heading('Dimensions as read'), ...table(columns, rows, width, measure)];
}
