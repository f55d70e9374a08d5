/**
 * The joint sheet: one bolted joint under one case, its face to scale, each stud, dowels, and the joint over all
 * cases.
 *
 * In    the joint's answer with spread, the same joint over all cases
 * Out   the laid-out document
 */
import type { NamedDoing } from '../questions/doing-words.ts';
import { JOINT_WORDS, type JointReached } from '../questions/joint.ts';
import { type JointCases, type JointInCase, shareLeft } from '../questions/joint-cases.ts';
import { type Speech, spokenAmount } from '../units/show.ts';
import { SPREAD_WORDS } from './corner-sheet.ts';
import { chosenFigures, largeFigures } from './figure-table.ts';
import { borderOf, type SheetHead } from './frame.ts';
import { faceDrawing } from './joint-face.ts';
import { type Block, beside, gap, heading, layOut, paragraph, stack } from './lay-out.ts';
import { type SheetDocument, SIZE } from './page.ts';
import { type Column, type Row, table } from './table.ts';
import type { TextMeasure } from './text-measure.ts';
import { ownWords } from './words.ts';

export interface JointSheetMatter {
  readonly doing: NamedDoing;
  readonly is: JointReached;
  readonly cases: JointCases;
}

const LARGE = ['openedLow', 'slipMargin', 'pull', 'bending', 'sideways', 'shear', 'turning'];
/** Where a column beside the drawing is too narrow for the whole sentence. */
const SHORT: Readonly<Record<string, string>> = {
  openedLow: 'open part of the face, low end of the preload',
  slipMargin: 'friction over need, without dowels, low end',
};
const DRAWING_PART = 0.64;
const DRAWING_HEIGHT = 101;

interface Sheet {
  readonly of: JointSheetMatter;
  readonly speech: Speech;
  readonly width: number;
  readonly measure: TextMeasure;
}

export function jointSheet(
  of: JointSheetMatter,
  head: Omit<SheetHead, 'title' | 'of'>,
  measure: TextMeasure,
): SheetDocument {
  const { speech } = head;
  const width = borderOf(head.paper).width - 4;
  const sheet: Sheet = { of, speech, width, measure };
  const small = (words: string): Block[] => paragraph(words, { width, size: SIZE.small }, measure);
  const blocks: Block[] = [
    ...paragraph(`${JOINT_WORDS[of.is.joint]}: ${of.doing.means}`, { width, weight: 'bold' }, measure),
    gap(1),
    faceAndResultant(sheet),
    gap(2),
    ...studTable(sheet),
    gap(2),
    ...dowelTable(sheet),
    heading('Notes'),
    ...of.is.notes.flatMap(small),
    gap(2),
    ...overCases(sheet),
    gap(1),
    ...studsOverCases(sheet),
    gap(1),
    ...of.cases.without.flatMap(({ doing, message }) => small(`No answer for ${doing.means}: ${message}`)),
    ...small(SCOPE),
    ...small(SPREAD_WORDS.replace('load-path.md', 'studs.md')),
  ];
  const full = { ...head, title: 'Joint sheet', of: `${JOINT_WORDS[of.is.joint]} · ${of.doing.name}` };
  return layOut({ head: full, cautions: of.is.cautions, blocks }, measure);
}

const SCOPE =
  'Both bodies are taken as stiff and flat, in contact only where they are pressed; bending of flanges and prying are not in it. Low end of the preload: low end of the torque with the high end of friction, settled. What stands under a pad is what is left on it there, and the part of it that was pressed before the load.';

/** Whole newtons or pounds where there is no spread to tell how many digits are worth saying. */
const force = (value: number, { speech }: Sheet, u?: number): string =>
  u === undefined ? spokenAmount(value, 'N', 0, speech) : ownWords({ value, unit: 'N', u }, speech);

const share = (value: number, { speech }: Sheet): string => ownWords({ value, unit: 'share' }, speech);

/** A share without more digits than are worth saying on paper. */
const percent = (value: number): string => `${Math.round(100 * value)} %`;

function faceAndResultant(sheet: Sheet): Block {
  const { of, speech, width, measure } = sheet;
  const drawing = width * DRAWING_PART;
  const { face, worst, figures } = of.is;
  const studs = face.studs.map((stud) => {
    const kept = stud.pressed === 0 ? 0 : stud.left / stud.pressed;
    return {
      ...stud,
      filled: Math.min(1, Math.max(0, kept)),
      chief: stud.name === worst,
      below: [stud.name, `${force(stud.left, sheet)}, ${percent(kept)}`],
    };
  });
  return beside([
    {
      block: faceDrawing({ studs, dowels: face.dowels, height: DRAWING_HEIGHT }, drawing, measure),
      x: 0,
      width: drawing,
    },
    {
      block: largeFigures(
        chosenFigures(figures, LARGE, LARGE.length).map((figure) => ({
          ...figure,
          means: SHORT[figure.id] ?? figure.means,
        })),
        speech,
        measure,
      ),
      x: drawing + 4,
      width: width - drawing - 4,
    },
  ]);
}

const STUD_COLUMNS: readonly (Column & { readonly id?: string })[] = [
  { title: 'Stud', part: 1.2 },
  { title: 'Preload, low', part: 1.4, align: 'right', id: 'preloadLow' },
  { title: 'Preload, middle', part: 1.4, align: 'right', id: 'preload' },
  { title: 'Preload, high', part: 1.4, align: 'right', id: 'preloadHigh' },
  { title: 'Tension under the load', part: 1.4, align: 'right', id: 'force' },
  { title: 'Left on its pad, low end', part: 1.4, align: 'right', id: 'pad' },
  { title: 'Stress over yield, tightening', part: 1.2, align: 'right', id: 'yieldShare' },
  { title: 'Change when warm', part: 1.3, align: 'right', id: 'heat' },
];

function studTable(sheet: Sheet): Block[] {
  const { of, speech, width, measure } = sheet;
  const rows: Row[] = of.is.face.studs.map(({ name }) => ({
    bold: name === of.is.worst,
    cells: STUD_COLUMNS.map(({ id }) => {
      if (id === undefined) return name;
      const figure = of.is.figures.find((each) => each.id === `stud.${name}.${id}`);
      return figure === undefined
        ? ''
        : ownWords(
            {
              value: figure.value,
              unit: figure.unit,
              ...(figure.spread === undefined ? {} : { u: figure.spread.u }),
            },
            speech,
          );
    }),
  }));
  return [
    heading('Studs; the one that keeps least in bold'),
    ...table(STUD_COLUMNS, rows, width, measure, SIZE.label),
  ];
}

function dowelTable(sheet: Sheet): Block[] {
  const { of, width, measure } = sheet;
  const dowels = of.is.figures.filter(({ id }) => id.startsWith('dowel.'));
  if (dowels.length === 0) return [];
  const columns: Column[] = [
    { title: 'Dowel', part: 1 },
    { title: 'Carries, if friction held nothing', part: 1, align: 'right' },
    { title: '', part: 2 },
  ];
  const rows = dowels.map(({ id, value, spread }) => ({
    cells: [id.slice('dowel.'.length), force(value, sheet, spread?.u), ''],
  }));
  return [...table(columns, rows, width, measure), gap(2)];
}

function overCases(sheet: Sheet): Block[] {
  const { of, width, measure } = sheet;
  const columns: Column[] = [
    { title: 'Case', part: 3.6 },
    { title: 'Keeps least', part: 1.3 },
    { title: 'Left there', part: 1.2, align: 'right' },
    { title: 'of its pad', part: 0.8, align: 'right' },
    { title: 'Face open, low end', part: 1, align: 'right' },
    { title: 'Friction over need', part: 0.9, align: 'right' },
    { title: 'Dowel', part: 1, align: 'right' },
  ];
  const row = (each: JointInCase): Row => {
    const stud = each.studs.find(({ stud: name }) => name === each.worst)!;
    return {
      bold: each === of.cases.hardest,
      cells: [
        each.doing.means,
        each.worst,
        force(stud.left, sheet),
        percent(shareLeft(stud)),
        share(each.opened, sheet),
        Number.isFinite(each.slip) ? each.slip.toFixed(each.slip < 10 ? 2 : 0) : '—',
        each.dowel === undefined ? 'none' : force(each.dowel, sheet),
      ],
    };
  };
  return [
    heading('Over all cases, without spread; the hardest in bold'),
    stack(table(columns, of.cases.cases.map(row), width, measure, SIZE.label)),
  ];
}

function studsOverCases(sheet: Sheet): Block[] {
  const { of, width, measure } = sheet;
  const columns: Column[] = [
    { title: 'Stud', part: 1.3 },
    { title: 'Least left on its pad', part: 1.4, align: 'right' },
    { title: 'of its pad', part: 0.8, align: 'right' },
    { title: 'in', part: 1.4 },
    { title: 'Greatest tension', part: 1.3, align: 'right' },
    { title: 'in', part: 1.4 },
  ];
  const rows = of.is.face.studs.map(({ name }) => {
    const all = of.cases.cases.map(({ doing, studs }) => ({
      doing,
      ...studs.find(({ stud }) => stud === name)!,
    }));
    const least = all.reduce((a, b) => (b.left < a.left ? b : a));
    const most = all.reduce((a, b) => (b.tension > a.tension ? b : a));
    return {
      cells: [
        name,
        force(least.left, sheet),
        percent(shareLeft(least)),
        least.doing.name,
        force(most.tension, sheet),
        most.doing.name,
      ],
    };
  });
  return [heading('Each stud over them'), ...table(columns, rows, width, measure)];
}
