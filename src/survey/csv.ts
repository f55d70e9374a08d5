/**
 * Points from a list of text: name, x, y, z and perhaps the uncertainty, as an arm or a spreadsheet writes it.
 *
 * In    the text; what is known of it (unit, delimiter, decimal sign, uncertainty, name of the arm set)
 * Out   readings, and sentences that say how the list was understood; or problems with line and column
 *
 * The unit is never guessed: it stands in the heading ("x mm", "y [in]") or is given. Delimiter and decimal
 * sign are found from the text only where one reading of it is possible, and what was found is said.
 */
import { type CsvRow, csvRows } from '../measured/csv-rows.ts';
import type { Problem } from '../measured/problem.ts';
import {
  DELIMITER_NAMES,
  type DecimalSign,
  type Delimiter,
  decimalSignOf,
  delimiterOf,
  numberIn,
} from '../units/list-numbers.ts';
import type { Metre } from '../units/quantity.ts';
import { toSI, unitNamed, unitsLike } from '../units/unit.ts';
import type { SurveyReading } from './network.ts';

export interface CsvOptions {
  /** Arm set the points belong to, or 'car'. */
  readonly set: string;
  /** Unit of all columns, where the heading names none. */
  readonly unit?: string;
  readonly delimiter?: Delimiter;
  readonly decimal?: DecimalSign;
  /** Standard uncertainty of a co-ordinate, where the list has no column u. */
  readonly u?: Metre;
  readonly file?: string;
}

export type CsvResult =
  | { readonly ok: true; readonly is: readonly SurveyReading[]; readonly said: readonly string[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

const COLUMNS = ['name', 'x', 'y', 'z', 'u'] as const;
/** All but the uncertainty. */
const LEAST_COLUMNS = 4;
type Column = (typeof COLUMNS)[number];

export function readPointsCsv(text: string, options: CsvOptions): CsvResult {
  const problems: Problem[] = [];
  const tell = (
    code: string,
    message: string,
    at: { line?: number; column?: number; remedy?: string } = {},
  ): void => {
    const { remedy, ...place } = at;
    const file = options.file === undefined ? {} : { file: options.file };
    const more = remedy === undefined ? {} : { remedy };
    problems.push({
      code: `survey/csv-${code}`,
      path: options.set,
      message,
      weight: 'error',
      ...file,
      ...place,
      ...more,
    });
  };
  const failed = (): CsvResult => ({ ok: false, problems });

  const delimiter = options.delimiter ?? delimiterOf(text, LEAST_COLUMNS);
  if (delimiter === undefined) {
    tell('delimiter', 'No comma, semicolon or tab parts the columns alike on every line.', {
      remedy: 'Say which delimiter the list uses.',
    });
    return failed();
  }
  const read = csvRows(text, delimiter);
  if (!read.ok) {
    tell('form', `The list cannot be read: ${read.why}.`, read.line === undefined ? {} : { line: read.line });
    return failed();
  }
  const { rows } = read;
  const heading = headingOf(rows[0]);
  const body = heading === undefined ? rows : rows.slice(1);
  if (body.length === 0) tell('empty', 'The list has no points.');
  const places: ReadonlyMap<Column, number> = heading?.places ?? new Map(COLUMNS.map((name, k) => [name, k]));
  for (const name of ['name', 'x', 'y', 'z'] as const) {
    if (!places.has(name)) tell('column', `The heading has no column "${name}".`, { line: rows[0]!.line });
  }
  const unitOf = (column: Column): string | undefined =>
    heading?.units.get(column) ?? heading?.common ?? options.unit;
  for (const column of ['x', 'y', 'z'] as const) {
    const unit = unitOf(column);
    const line = rows[0]?.line ?? 1;
    if (unit === undefined) {
      tell('unit', `Column ${column} has no unit.`, {
        line,
        remedy: 'Write it in the heading, such as "x mm", or give it.',
      });
    } else if (!isLength(unit)) {
      tell(
        'unit',
        `Column ${column}: "${unit}" is not a length; write one of ${unitsLike('m').join(', ')}.`,
        { line },
      );
    }
  }
  if (problems.length > 0) return failed();

  const numbers = body.flatMap((row) =>
    (['x', 'y', 'z', 'u'] as const).map((c) => row.cells[places.get(c) ?? -1] ?? ''),
  );
  const decimal = options.decimal ?? decimalSignOf(numbers, delimiter);
  if (decimal === undefined) {
    tell('decimal', 'The commas may part thousands or stand for the decimal sign, and nothing tells which.', {
      remedy: 'Say which decimal sign the list uses.',
    });
    return failed();
  }
  const readings: SurveyReading[] = [];
  const seen = new Map<string, number>();
  for (const { cells, line } of body) {
    const before = problems.length;
    const cell = (column: Column): string => (cells[places.get(column) ?? -1] ?? '').trim();
    const amount = (column: 'x' | 'y' | 'z' | 'u'): number => {
      const value = numberIn(cell(column), decimal);
      if (value !== undefined) return toSI(value, unitOf(column) ?? unitOf('x')!);
      const found = cell(column) === '' ? 'nothing' : `"${cell(column)}"`;
      tell('number', `Column ${column} has ${found} where a number should stand.`, {
        line,
        column: (places.get(column) ?? 0) + 1,
      });
      return Number.NaN;
    };
    const point = cell('name');
    if (point === '') tell('name', 'The point has no name.', { line, column: (places.get('name') ?? 0) + 1 });
    if (seen.has(point)) {
      tell('twice', `Point "${point}" stands twice, first on line ${seen.get(point)}.`, { line, column: 1 });
    }
    seen.set(point, line);
    const xyz = [amount('x'), amount('y'), amount('z')] as const;
    const ownU = places.has('u') && cell('u') !== '' ? amount('u') : options.u;
    if (ownU === undefined || ownU <= 0) {
      tell('spread', `Point "${point}" has no uncertainty above zero.`, {
        line,
        remedy: 'Add a column u, or say how well the instrument repeats.',
      });
    }
    if (problems.length > before || ownU === undefined) continue;
    readings.push({ kind: 'point', id: `${options.set}: ${point}`, point, set: options.set, xyz, u: ownU });
  }
  if (problems.length > 0) return failed();
  const units = (['x', 'y', 'z'] as const).map((c) => unitOf(c)!);
  const said = [
    `${readings.length} points in set "${options.set}".`,
    `Columns are parted by ${DELIMITER_NAMES[delimiter]} (${options.delimiter === undefined ? 'found' : 'stated'}).`,
    `The decimal sign is a ${decimal === ',' ? 'comma' : 'point'} (${options.decimal === undefined ? 'found' : 'stated'}).`,
    `The unit is ${[...new Set(units)].join(', ')} (${heading?.units.has('x') || heading?.common ? 'from the heading' : 'stated'}).`,
    ...(heading === undefined ? ['There is no heading: the columns were taken as name, x, y, z, u.'] : []),
  ];
  return { ok: true, is: readings, said };
}

const isLength = (name: string): boolean => unitNamed(name) !== undefined && unitsLike('m').includes(name);

interface Heading {
  readonly places: ReadonlyMap<Column, number>;
  readonly units: ReadonlyMap<Column, string>;
  /** From a heading such as "name, x, y, z (mm)": the one unit that is named. */
  readonly common: string | undefined;
}

/** The first row, when its second to fourth cells are words. */
function headingOf(row: CsvRow | undefined): Heading | undefined {
  if (row === undefined || row.cells.slice(1, 4).some((cell) => /^[-+−]?[\d.,]+/.test(cell.trim())))
    return undefined;
  const places = new Map<Column, number>();
  const units = new Map<Column, string>();
  row.cells.forEach((cell, k) => {
    const matched = /^(\S+?)\s*(?:[[(]\s*(.+?)\s*[\])]|\s(\S+))?$/.exec(cell.trim());
    const word = matched?.[1]?.toLowerCase();
    const column = word === 'point' ? 'name' : COLUMNS.find((name) => name === word);
    if (column === undefined || places.has(column)) return;
    places.set(column, k);
    const unit = matched?.[2] ?? matched?.[3];
    if (unit !== undefined && column !== 'name') units.set(column, unit);
  });
  const named = [...new Set(units.values())];
  return { places, units, common: named.length === 1 ? named[0] : undefined };
}
