/**
 * Every default case at every wheel as CSV, for a spreadsheet.
 *
 * In    the cases, which rows, the way of units, what stands between columns
 * Out   lines after RFC 4180, the first with the units; no thousands mark and a point for the decimal sign
 */
import type { Figure } from '../questions/figure.ts';
import { figureNamed, type LoadCases, MEMBER_WORDS, MEMBERS } from '../questions/load-cases.ts';
import { type Speech, spokenUnit } from '../units/show.ts';
import { fromSI } from '../units/unit.ts';
import { wheelWords } from './words.ts';

/** A row a case, wheel and member; or a row a case and wheel with every figure in a column of its own. */
export const CASE_ROWS = ['members', 'wheels'] as const;
export type CaseRows = (typeof CASE_ROWS)[number];

export interface CaseTableAsked {
  readonly rows: CaseRows;
  readonly speech: Speech;
  readonly separator: string;
}

interface Column {
  readonly heading: string;
  readonly unit: string;
}

export function caseTable(of: LoadCases, { rows, speech, separator }: CaseTableAsked): string[] {
  const table = rows === 'members' ? memberRows(of, speech) : wheelRows(of, speech);
  return table.map((row) => row.map((cell) => quoted(cell, separator)).join(separator));
}

const quoted = (cell: string, separator: string): string =>
  cell.includes(separator) || /["\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;

const column = (name: string, si: string, speech: Speech): Column => {
  const unit = spokenUnit(si, speech);
  return { heading: unit === '1' ? name : `${name} (${unit})`, unit };
};

/** Below this, in the spoken unit, a value is what rounding left of nothing. */
const NOTHING = 1e-9;

/** Nine digits: more than any reading supports, few enough that rounding of the machine does not show. */
function number(value: number | undefined, unit: string): string {
  if (value === undefined || !Number.isFinite(value)) return '';
  const spoken = fromSI(value, unit);
  return Math.abs(spoken) < NOTHING ? '0' : String(Number(spoken.toPrecision(9)));
}

const MEMBER_FIGURES = [
  ['tension', 'force', 'N'],
  ['yieldShare', 'stress over yield', 'share'],
  ['bucklingShare', 'push over buckling push', 'share'],
] as const;

const hasSpread = ({ cases }: LoadCases): boolean =>
  cases.some(({ loads }) =>
    loads.wheels.some(({ figures }) => figures.some(({ spread }) => spread !== undefined)),
  );

function memberRows(of: LoadCases, speech: Speech): string[][] {
  const sure = hasSpread(of);
  const columns = MEMBER_FIGURES.map(([id, name, si]) => ({
    id,
    value: column(name, si, speech),
    spread: column(`${name} ±`, si, speech),
  }));
  const sign = (value: number): string => (value > 0 ? 'pull' : value < 0 ? 'push' : '');
  return [
    [
      'case',
      'wheel',
      'member',
      'sign',
      ...columns.flatMap(({ value, spread }) => [value.heading, ...(sure ? [spread.heading] : [])]),
    ],
    ...of.cases.flatMap(({ doing, loads }) =>
      loads.wheels.flatMap(({ wheel, figures }) =>
        MEMBERS.map((member) => {
          const figure = (id: string): Figure | undefined => figureNamed(figures, `${id}.${member}`);
          return [
            doing.name,
            wheelWords(wheel),
            MEMBER_WORDS[member],
            sign(figure('tension')?.value ?? 0),
            ...columns.flatMap(({ id, value: { unit } }) => [
              number(figure(id)?.value, unit),
              ...(sure ? [number(figure(id)?.spread?.u, unit)] : []),
            ]),
          ];
        }),
      ),
    ),
  ];
}

/** A figure that one wheel has and another has not leaves an empty cell there. */
function wheelRows(of: LoadCases, speech: Speech): string[][] {
  const sure = hasSpread(of);
  const units = new Map<string, string>();
  for (const { loads } of of.cases)
    for (const { figures } of loads.wheels) for (const { id, unit } of figures) units.set(id, unit);
  const columns = [...units].map(([id, si]) => ({
    id,
    value: column(id, si, speech),
    spread: column(`${id} ±`, si, speech),
  }));
  return [
    [
      'case',
      'wheel',
      ...columns.flatMap(({ value, spread }) => [value.heading, ...(sure ? [spread.heading] : [])]),
    ],
    ...of.cases.flatMap(({ doing, loads }) =>
      loads.wheels.map(({ wheel, figures }) => [
        doing.name,
        wheelWords(wheel),
        ...columns.flatMap(({ id, value: { unit } }) => {
          const figure = figureNamed(figures, id);
          return [number(figure?.value, unit), ...(sure ? [number(figure?.spread?.u, unit)] : [])];
        }),
      ]),
    ),
  ];
}
