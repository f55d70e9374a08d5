/**
 * The corner sheet: one corner of the car at one position, drawn, with every figure and its spread.
 *
 * In    the corner's answer with spread, its curves over the travel, its bodies
 * Out   the laid-out document
 */
import type { CornerReached } from '../questions/corner.ts';
import type { DrawnCorner } from '../questions/drawing-types.ts';
import { cornerView } from './corner-view.ts';
import { curveGrid } from './curve.ts';
import { chosenFigures, figureTables, largeFigures } from './figure-table.ts';
import { borderOf, type SheetHead } from './frame.ts';
import { type Block, beside, gap, heading, layOut, paragraph } from './lay-out.ts';
import { type SheetDocument, SIZE } from './page.ts';
import { table } from './table.ts';
import type { TextMeasure } from './text-measure.ts';
import { type TravelColumns, travelCurves } from './travel-curves.ts';
import { bothWords, travelWords, wheelWords } from './words.ts';

export interface CornerSheetMatter {
  readonly answer: CornerReached;
  readonly curves?: TravelColumns;
  readonly drawn?: DrawnCorner;
}

const LARGE = [
  'wheelRate',
  'wheelLoad',
  'camber',
  'toe',
  'caster',
  'springPerWheel',
  'barTwist',
  'barStress',
  'springForce',
  'rideFrequency',
];
const CURVES = ['wheelRate', 'camber', 'toe', 'barTwist', 'springForce', 'springPerWheel'];
const MOST_CURVES = 4;
const MOST_LARGE = 10;
/** Part of the width that the drawing takes. */
const DRAWING_PART = 0.62;

export function cornerSheet(
  matter: CornerSheetMatter,
  head: Omit<SheetHead, 'title' | 'of'>,
  measure: TextMeasure,
): SheetDocument {
  const { answer, curves, drawn } = matter;
  const { speech } = head;
  const full: SheetHead = {
    ...head,
    title: 'Corner sheet',
    of: `${wheelWords(answer.wheel)} · ${travelWords(answer.at.travel, speech)}${answer.at.rack === 0 ? '' : ` · rack ${bothWords({ value: answer.at.rack, unit: 'm' }, speech)}`}`,
  };
  const width = borderOf(head.paper).width - 4;
  const large = largeFigures(chosenFigures(answer.figures, LARGE, MOST_LARGE), speech, measure);
  const drawing = width * DRAWING_PART;
  const top =
    drawn === undefined
      ? large
      : beside([
          { block: cornerView(drawn, speech, drawing, measure), x: 0, width: drawing },
          { block: large, x: drawing + 4, width: width - drawing - 4 },
        ]);
  const small =
    curves === undefined ? [] : travelCurves(curves, CURVES, answer.at.travel, speech).slice(0, MOST_CURVES);
  const blocks: Block[] = [
    top,
    gap(2),
    ...curveGrid(small, width),
    ...travelEnds(answer, head, width, measure),
    ...figureTables(answer.figures, speech, width, measure),
    gap(2),
    ...(answer.notes.length === 0 ? [] : [heading('Notes')]),
    ...answer.notes.flatMap((note) => paragraph(note, { width, size: SIZE.small }, measure)),
    ...paragraph(SPREAD_WORDS, { width, size: SIZE.small }, measure),
  ];
  return layOut({ head: full, cautions: answer.cautions, blocks }, measure);
}

export const SPREAD_WORDS =
  '± is one standard uncertainty, from the spread of every reading in the car file (JCGM 100:2008); about one value in three lies outside it. Equations, their sources and where they stop holding: docs/theory/load-path.md and docs/sources.md.';

/** Micrometres: what happens within one happens at once. */
const whole = (travel: number): number => Math.round(travel * 1e6);

/** Where the travel ends and what happens on the way. */
export function travelEnds(
  answer: CornerReached,
  head: Pick<SheetHead, 'speech'>,
  width: number,
  measure: TextMeasure,
): Block[] {
  const { range } = answer;
  const words = (travel: number): string => bothWords({ value: travel, unit: 'm' }, head.speech);
  const happenings = [
    { travel: range.droop, what: `end of droop: ${range.droopBy}` },
    ...answer.events,
    { travel: range.bump, what: `end of bump: ${range.bumpBy}` },
  ];
  const travels = [...new Set(happenings.map(({ travel }) => whole(travel)))].sort((a, b) => a - b);
  const rows = travels.map((at) => {
    const here = happenings.filter(({ travel }) => whole(travel) === at);
    return { cells: [words(here[0]!.travel), here.map(({ what }) => what).join('; ')] };
  });
  const columns = [
    { title: 'Wheel travel from the surveyed position', part: 1.6, align: 'right' as const },
    { title: 'What happens', part: 3 },
  ];
  return [heading('Along the travel'), ...table(columns, rows, width, measure), gap(2)];
}
