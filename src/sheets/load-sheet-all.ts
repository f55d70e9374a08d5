/**
 * The load sheet of all cases: members of the four corners on one sheet, the largest pull and push of each
 * with their cases, tyres, rockers and springs, and what the gear case takes.
 *
 * In    every case at every wheel
 * Out   the laid-out document
 * Not   spreads: those stand on the sheet of each case
 */
import type { Figure, Wheel } from '../questions/figure.ts';
import {
  figureNamed,
  figuresAt,
  type LargestOfMember,
  type LoadCases,
  largestOf,
  MEMBER_WORDS,
  MEMBERS,
  type MemberName,
} from '../questions/load-cases.ts';
import { plain, printedUnit, type Speech, spokenAmount, spokenUnit } from '../units/show.ts';
import { fromSI } from '../units/unit.ts';
import { borderOf, type SheetHead } from './frame.ts';
import { type Block, beside, gap, heading, layOut, paragraph, stack } from './lay-out.ts';
import { memberShort, memberWhole, SIGN_WORDS, WHEELS_ON_SHEET, wheelTitle } from './load-words.ts';
import { type SheetDocument, SIZE } from './page.ts';
import { type Column, type Row, table } from './table.ts';
import type { TextMeasure } from './text-measure.ts';

interface Sheet {
  readonly of: LoadCases;
  readonly speech: Speech;
  readonly width: number;
  readonly measure: TextMeasure;
}

export function allCasesSheet(
  of: LoadCases,
  head: Omit<SheetHead, 'title' | 'of'>,
  measure: TextMeasure,
): SheetDocument {
  const width = borderOf(head.paper).width - 4;
  const sheet: Sheet = { of, speech: head.speech, width, measure };
  const small = (words: string): Block[] => paragraph(words, { width, size: SIZE.small }, measure);
  const blocks: Block[] = [
    ...caseList(sheet),
    ...membersOfCorners(sheet),
    ...WHEELS_ON_SHEET.flatMap((wheel, k) => {
      const blocks = largestTable(sheet, wheel);
      return k === 0 ? [{ ...blocks[0]!, opensSheet: true }, ...blocks.slice(1)] : blocks;
    }),
    ...casesByWheel(sheet),
    ...onGearCase(sheet),
    heading('Notes'),
    ...notesOf(of).flatMap(small),
    ...of.without.flatMap(({ doing, message }) => small(`No answer for ${doing.means}: ${message}`)),
    ...small(
      `${SIGN_WORDS} Moments on the gear case are about the rear axle line on the ground, x forward, y to the left, z up. The default cases are common practice, no source, and none is a limit of the car.`,
    ),
    ...small('Spreads stand on the load sheet of each case.'),
  ];
  const full = { ...head, title: 'Load sheet', of: 'All cases, four corners' };
  const { cautions } = of.cases[0]!.loads;
  return layOut({ head: full, cautions, blocks }, measure);
}

/** Each note once, with the cases that it is of. */
function notesOf({ cases }: LoadCases): string[] {
  const notes = [...new Set(cases.flatMap(({ loads }) => loads.notes))];
  return notes.map((note) => {
    const of = cases.filter(({ loads }) => loads.notes.includes(note)).map(({ doing }) => doing.name);
    return of.length === cases.length ? note : `${of.join(', ')}: ${note}`;
  });
}

/** `2 braking`. */
const caseName = ({ of }: Sheet, name: string): string =>
  `${of.cases.findIndex(({ doing }) => doing.name === name) + 1} ${name}`;

function caseList({ of, width, measure }: Sheet): Block[] {
  const words = of.cases.map(({ doing }, k) => `${k + 1}: ${doing.means}`).join('; ');
  return [...paragraph(`${words}.`, { width, size: SIZE.label }, measure), gap(1)];
}

const SHORT: Readonly<Record<MemberName, string>> = {
  upperFront: 'upper front',
  upperRear: 'upper rear',
  lowerFront: 'lower front',
  lowerRear: 'lower rear',
  toeLink: 'track rod, toe link',
  rod: 'pushrod, pullrod',
};

/** Height of a row, mm: the eye follows it across six members. */
const ROW = 5.2;

/** Two corners beside one another, as the car lies. */
function membersOfCorners(sheet: Sheet): Block[] {
  const { width } = sheet;
  const half = width / 2 - 1.5;
  const corner = (k: number): Block => stack(cornerTable(sheet, WHEELS_ON_SHEET[k]!, half));
  return [0, 2].flatMap((k) => [
    beside([
      { block: corner(k), x: 0, width: half },
      { block: corner(k + 1), x: half + 3, width: half },
    ]),
    gap(2),
  ]);
}

const whole =
  (speech: Speech) =>
  (value: number): string =>
    plain(fromSI(value, spokenUnit('N', speech)), 0);

function cornerTable(sheet: Sheet, wheel: Wheel, width: number): Block[] {
  const { of, speech, measure } = sheet;
  const columns: Column[] = [
    { title: printedUnit(spokenUnit('N', speech)), part: 1.7 },
    ...MEMBERS.map((name) => ({ title: SHORT[name], part: 1, align: 'right' as const })),
  ];
  const short = (figure: Figure | undefined): string =>
    figure === undefined ? '—' : memberShort(figure, whole(speech));
  const largest = largestOf(of, wheel);
  const rows: Row[] = [
    ...of.cases.map(({ doing, loads }) => ({
      height: ROW,
      cells: [
        caseName(sheet, doing.name),
        ...MEMBERS.map((name) => short(figureNamed(figuresAt(loads, wheel), `tension.${name}`))),
      ],
    })),
    { cells: ['largest pull', ...largest.map(({ pull }) => short(pull?.figure))], bold: true, height: ROW },
    { cells: ['largest push', ...largest.map(({ push }) => short(push?.figure))], bold: true, height: ROW },
  ];
  return [heading(wheelTitle(wheel)), ...table(columns, rows, width, measure, SIZE.label)];
}

const shareWords = ({ value }: Figure, speech: Speech): string => spokenAmount(value, 'share', 1, speech);

const LARGEST: readonly Column[] = [
  { title: 'Member', part: 1.7 },
  { title: 'Largest pull', part: 1.1, align: 'right' },
  { title: 'in', part: 1 },
  { title: 'Largest push', part: 1.1, align: 'right' },
  { title: 'in', part: 1 },
  { title: 'Stress over yield', part: 0.7, align: 'right' },
  { title: 'in', part: 1 },
  { title: 'Push over buckling', part: 0.7, align: 'right' },
  { title: 'in', part: 1 },
];

function largestTable(sheet: Sheet, wheel: Wheel): Block[] {
  const { of, speech, width, measure } = sheet;
  const pair = (
    at: LargestOfMember['pull'],
    words: (figure: Figure, speech: Speech) => string,
  ): [string, string] =>
    at === undefined ? ['—', ''] : [words(at.figure, speech), caseName(sheet, at.doing.name)];
  const some = (at: LargestOfMember['pull']): LargestOfMember['pull'] =>
    at === undefined || at.figure.value === 0 ? undefined : at;
  const rows = largestOf(of, wheel).map(({ member, pull, push, yields, buckles }) => ({
    cells: [
      MEMBER_WORDS[member],
      ...pair(pull, memberWhole),
      ...pair(push, memberWhole),
      ...pair(yields, shareWords),
      ...pair(some(buckles), shareWords),
    ],
  }));
  return [
    heading(`${wheelTitle(wheel)}: the largest of all cases`),
    ...table(LARGEST, rows, width, measure, SIZE.label),
    gap(2),
  ];
}

const BY_WHEEL: readonly (readonly [id: string, words: string])[] = [
  ['tyreLoad', 'Load of the tyre'],
  ['travelUnderLoad', 'Travel, bump positive'],
  ['tyreForward', 'Force of the ground, forward'],
  ['tyreSide', 'Force of the ground, to the left'],
  ['rockerPivotForce', 'Rocker pivot'],
  ['dropLinkForce', 'Drop link'],
  ['unitForceUnderLoad', 'Spring unit, compression positive'],
  ['barTorqueUnderLoad', 'Torque of the torsion bar'],
];

/** Tyres, rockers and springs: two small tables beside one another, a row a case. */
function casesByWheel(sheet: Sheet): Block[] {
  const { of, width } = sheet;
  const half = width / 2 - 1.5;
  const there = BY_WHEEL.filter(([id]) =>
    of.cases.some(({ loads }) => loads.wheels.some(({ figures }) => figureNamed(figures, id) !== undefined)),
  );
  const tables = there.map(([id, words]) => stack(wheelTable(sheet, id, words, half)));
  return Array.from({ length: Math.ceil(tables.length / 2) }, (_, row) => [
    beside(tables.slice(2 * row, 2 * row + 2).map((block, k) => ({ block, x: k * (half + 3), width: half }))),
    gap(2),
  ]).flat();
}

function wheelTable(
  { of, speech, measure, ...sheet }: Sheet,
  id: string,
  words: string,
  width: number,
): Block[] {
  const columns: Column[] = [
    { title: '', part: 1.5 },
    ...WHEELS_ON_SHEET.map((wheel) => ({ title: wheelTitle(wheel), part: 1, align: 'right' as const })),
  ];
  const cell = (figure: Figure | undefined): string => {
    if (figure === undefined) return '';
    if (id === 'dropLinkForce') return memberWhole(figure, speech);
    return spokenAmount(figure.value, figure.unit, figure.unit === 'N' ? 0 : 1, speech);
  };
  const rows = of.cases.map(({ doing, loads }) => ({
    cells: [
      caseName({ of, speech, measure, ...sheet }, doing.name),
      ...WHEELS_ON_SHEET.map((wheel) => cell(figureNamed(figuresAt(loads, wheel), id))),
    ],
  }));
  return [heading(words), ...table(columns, rows, width, measure, SIZE.label)];
}

function onGearCase(sheet: Sheet): Block[] {
  const { of, speech, width, measure } = sheet;
  const columns: Column[] = [
    { title: '', part: 1.5 },
    ...['forward', 'to the left', 'up', 'about x', 'about y', 'about z'].map((title) => ({
      title,
      part: 1,
      align: 'right' as const,
    })),
  ];
  const rows = of.cases.flatMap(({ doing, gearCase }) =>
    gearCase === undefined
      ? []
      : [
          {
            cells: [
              caseName(sheet, doing.name),
              ...gearCase.resultant.force.map((value) => spokenAmount(value, 'N', 0, speech)),
              ...gearCase.resultant.moment.map((value) => spokenAmount(value, 'N m', 0, speech)),
            ],
          },
        ],
  );
  if (rows.length === 0) return [];
  return [
    heading('All forces on the gear case together'),
    ...table(columns, rows, width, measure, SIZE.label),
    gap(2),
  ];
}
