/**
 * The tightening card of a bolted joint: what the mechanic holds in his hand while he does it.
 *
 * In    order, rounds, figures and hold points as the question answers them
 * Out   the laid-out document: the work on the first sheets in large letters, what stands behind it on the last
 */

import { JOINT_WORDS } from '../questions/joint.ts';
import { figuresToSet, type TightenedSort, type TighteningReached } from '../questions/tightening.ts';
import { bothWrenchWords, wrenchWords } from '../questions/wrench-mark.ts';
import { borderOf, type SheetHead } from './frame.ts';
import { faceDrawing } from './joint-face.ts';
import { type Block, beside, gap, heading, layOut, paragraph, stack } from './lay-out.ts';
import { type SheetDocument, SIZE } from './page.ts';
import { type Row, table } from './table.ts';
import type { TextMeasure } from './text-measure.ts';
import { tighteningBehind } from './tightening-behind.ts';
import { type Card, numbersOf } from './tightening-words.ts';

/** Letters that are read at arm's length, mm. */
const LARGE = { value: 8, chosen: 6, step: 4.2, hold: 3.5 } as const;
/** Rows to write in, mm. */
const ROW = { hold: 6.8, step: 7.8, stud: 9.5 } as const;
const DRAWING_PART = 0.54;
const DRAWING_HEIGHT = 74;

export function tighteningCard(
  of: TighteningReached,
  head: Omit<SheetHead, 'title' | 'of'>,
  measure: TextMeasure,
): SheetDocument {
  const width = borderOf(head.paper).width - 4;
  const card = { of, speech: head.speech, width, measure };
  const full: SheetHead = {
    ...head,
    title: 'Tightening card',
    of: `${JOINT_WORDS[of.joint]} · ${of.studs.length} studs · COLD ONLY`,
  };
  const blocks: Block[] = [
    drawingAndValues(card),
    gap(1),
    ...holdPoints(card),
    gap(1.5),
    ...rounds(card),
    ...studByStud(card),
    ...tighteningBehind(card),
  ];
  return layOut({ head: full, cautions: of.cautions, blocks }, measure);
}

function drawingAndValues(card: Card): Block {
  const { of, width, measure } = card;
  const drawing = width * DRAWING_PART;
  const face = faceDrawing(
    {
      studs: of.studs.map(({ name, ...stud }) => ({ ...stud, below: [name] })),
      dowels: of.dowels,
      height: DRAWING_HEIGHT,
    },
    drawing,
    measure,
  );
  const values = width - drawing - 4;
  return beside([
    { block: face, x: 0, width: drawing },
    {
      block: stack(of.sorts.flatMap((sort) => [...valueBlocks(card, sort, values), gap(2)])),
      x: drawing + 4,
      width: values,
    },
  ]);
}

/** What is set, large; where two figures differ both, each with a field to cross. */
function valueBlocks(card: Card, sort: TightenedSort, width: number): Block[] {
  const { speech, measure } = card;
  const words = (text: string, size: number, weight: 'regular' | 'bold' = 'regular'): Block[] =>
    paragraph(text, { width, size, weight }, measure);
  const figures = figuresToSet(sort);
  const crowfoot = sort.crowfoot === undefined ? '' : ', crowfoot on';
  const pastes = [...new Set(figures.map(({ figure }) => figure.lubricant))];
  const choose = sort.toSet === 'choose';
  return [
    ...words(`Studs ${numbersOf(card, sort)}: ${sort.thread}`, LARGE.step, 'bold'),
    ...figures.flatMap(({ whose, figure }) => [
      ...words(
        bothWrenchWords(figure.setting, speech),
        figures.length > 1 ? LARGE.chosen : LARGE.value,
        'bold',
      ),
      ...words(`${whoseWords(sort, whose)}, set on the wrench${crowfoot}`, SIZE.small),
      ...(pastes.length > 1 ? words(`on ${figure.lubricant}`, LARGE.step, 'bold') : []),
    ]),
    ...(pastes.length === 1 ? words(`on ${pastes[0]}`, LARGE.step, 'bold') : []),
    ...(choose ? words(chooseWords(figures.length), LARGE.hold, 'bold') : []),
  ];
}

const OWNER = { builder: "the builder's", file: "the file's" } as const;

function whoseWords({ toSet, file }: TightenedSort, whose: 'builder' | 'file'): string {
  if (toSet === 'file') return "the file's figure; the builder's: none in the file";
  if (toSet === 'builder')
    return `the builder's figure; ${file === undefined ? 'the file has none' : "the file's is the same"}`;
  return `${OWNER[whose]} figure`;
}

const chooseWords = (figures: number): string =>
  figures > 1
    ? 'TWO FIGURES: cross one out first.'
    : "NOT YET: the builder's figure names no lubricant. Ask him first.";

function holdPoints({ of, width, measure }: Card): Block[] {
  const columns = [
    { title: '', part: 0.9 },
    { title: 'Nothing goes on until this is so', part: 8.6 },
    { title: 'Initials', part: 1.3, blank: true },
  ];
  const rows: Row[] = of.holdPoints.map((words) => ({ cells: ['HOLD', words, ''], height: ROW.hold }));
  return [heading('Before a wrench goes on'), ...table(columns, rows, width, measure, LARGE.hold)];
}

const ROUND_WORDS = [
  'First round',
  'Second round',
  'Third round, full value',
  'Once more round, no nut moves',
];

function rounds(card: Card): Block[] {
  const { of, speech, width, measure } = card;
  // a column for each figure that may be set, so that one of two can be crossed out whole
  const columnsOf = of.sorts.flatMap((sort) =>
    figuresToSet(sort).map(({ whose, figure }, _, all) => ({
      title: `Studs ${numbersOf(card, sort)}${all.length > 1 ? `, ${OWNER[whose]}` : ''}`,
      figure,
    })),
  );
  const columns = [
    { title: '', part: 3.7 },
    ...columnsOf.map(({ title }) => ({ title, part: 5 / columnsOf.length, align: 'right' as const })),
    { title: 'Initials', part: 1.3, blank: true },
  ];
  const rows: Row[] = [
    { cells: ['By hand', ...columnsOf.map(() => 'closed'), ''], height: ROW.step },
    ...of.rounds.map((share, k) => ({
      cells: [
        share < 1 ? `${ROUND_WORDS[k]}, ${Math.round(100 * share)} %` : ROUND_WORDS[k]!,
        ...columnsOf.map(({ figure }) => wrenchWords(figure.rounds[k]!, speech)),
        '',
      ],
      height: ROW.step,
    })),
  ];
  return [
    heading('Each round in the order of the numbers, the wrench set to'),
    // never torn: nobody turns the sheet over between two rounds
    stack(table(columns, rows, width, measure, LARGE.step)),
  ];
}

function studByStud(card: Card): Block[] {
  const { of, speech, width, measure } = card;
  const columns = [
    { title: 'No.', part: 0.6, align: 'right' as const },
    { title: 'Stud', part: 2.2 },
    { title: 'Set to', part: 2.2, align: 'right' as const },
    { title: 'Value done', part: 1.5, blank: true },
    { title: 'Witness mark', part: 1.2, blank: true },
    { title: 'Initials', part: 1.1, blank: true },
    { title: 'After first run, cold', part: 1.6, blank: true },
    { title: 'Initials', part: 1.1, blank: true },
  ];
  const rows: Row[] = of.studs.map(({ number, name, sort }) => {
    const own = of.sorts.find((each) => each.name === sort)!;
    const set = figuresToSet(own).map(({ figure }) => wrenchWords(figure.setting, speech));
    return { cells: [String(number), name, set.join(' or '), '', '', '', '', ''], height: ROW.stud };
  });
  const write = (words: string): Block[] => [
    ...paragraph(words, { width, size: LARGE.hold }, measure),
    gap(5),
  ];
  return [
    { ...heading('Stud by stud'), opensSheet: true },
    ...table(columns, rows, width, measure, LARGE.hold),
    gap(3),
    ...of.afterwards.flatMap((words) =>
      paragraph(words, { width, size: LARGE.hold, weight: 'bold' }, measure),
    ),
    gap(4),
    ...write('Wrench, number: ________________   calibrated on: ______________   crowfoot: ______________'),
    ...write(
      'Lubricant, tin: ________________   nuts new: ________   temperature of engine and case: ________',
    ),
    ...write('Tightened by: __________________   date: ______________   seen by: ______________________'),
    ...write('After the first run, by: __________   date: ______________   seen by: ______________________'),
  ];
}
