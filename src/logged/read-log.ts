/**
 * A log of the car at work, from the text of a CSV: what each column is stands in the car file.
 *
 * In    the text; for each channel the heading of its column, its unit, its sign, and what it reads at rest
 * Out   the channels in SI, row by row, a cell without a number as none; or what is wrong, with line and column
 * Axes  forward, left and up positive
 *
 * Nothing is filled in: a gap stays a gap and is told. Rows before the heading (remarks of a logger) are passed over.
 */
import { type CsvRow, csvRows } from '../measured/csv-rows.ts';
import { nearest, type Problem } from '../measured/problem.ts';
import {
  type DecimalSign,
  type Delimiter,
  decimalSignOf,
  delimiterOf,
  numberIn,
} from '../units/list-numbers.ts';
import { toSI } from '../units/unit.ts';

export const CHANNELS = [
  'time',
  'speed',
  'longitudinal',
  'lateral',
  'vertical',
  'rack',
  'loadFrontLeft',
  'loadFrontRight',
  'loadRearLeft',
  'loadRearRight',
] as const;
export type Channel = (typeof CHANNELS)[number];

export interface ChannelColumn {
  readonly heading: string;
  readonly unit: string;
  readonly reversed?: boolean | undefined;
  /** What it reads at rest, SI, as it stands in the column. */
  readonly rest?: number | undefined;
}

export interface LogOptions {
  readonly file: string;
  readonly columns: { readonly [channel in Channel]?: ChannelColumn | undefined };
  readonly decimal?: DecimalSign;
}

export interface Logged {
  /** Line of the file on which each row stands. */
  readonly lines: readonly number[];
  /** SI; NaN where the cell holds no number. */
  readonly channels: Readonly<Partial<Record<Channel, Float64Array>>>;
  /** Cells of each channel that hold no number, with the first line. */
  readonly empty: readonly { readonly channel: Channel; readonly count: number; readonly line: number }[];
}

export type LogRead =
  | { readonly ok: true; readonly log: Logged }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** A log of fewer columns than this tells nothing. */
const LEAST_COLUMNS = 2;

export function readLog(text: string, options: LogOptions): LogRead {
  const { file, columns } = options;
  const wanted = CHANNELS.filter((channel) => columns[channel] !== undefined);
  const failed = (code: string, message: string, at: { line?: number; remedy?: string } = {}): LogRead => ({
    ok: false,
    problems: [{ code: `log/${code}`, path: '', message, weight: 'error', file, ...at }],
  });
  if (text.trim() === '') return failed('empty', 'The log is empty.');
  const rows = rowsIn(text);
  if ('why' in rows)
    return failed('form', `The log cannot be read: ${rows.why}.`, rows.line ? { line: rows.line } : {});
  const headings = wanted.map((channel) => columns[channel]!.heading.trim());
  const at = rows.is.findIndex(({ cells }) => headings.every((heading) => cells.includes(heading)));
  if (at < 0) return noHeading(rows.is, headings, failed);
  const { cells: head, line } = rows.is[at]!;
  const twice = headings.find((heading) => head.indexOf(heading) !== head.lastIndexOf(heading));
  if (twice !== undefined)
    return failed('heading', `Two columns are headed "${twice}".`, {
      line,
      remedy: 'Rename one in the file.',
    });
  const body = rows.is.slice(at + 1);
  if (body.length === 0) return failed('empty', 'The log has headings and no rows.', { line });
  const places = headings.map((heading) => head.indexOf(heading));
  const decimal =
    options.decimal ??
    decimalSignOf(
      body.slice(0, 200).flatMap(({ cells }) => places.map((place) => cells[place] ?? '')),
      rows.delimiter,
    );
  if (decimal === undefined) {
    return failed(
      'decimal',
      'The commas may part thousands or stand for the decimal sign, and nothing tells which.',
      {
        remedy: 'Say which under decimal.',
      },
    );
  }
  const channels: Partial<Record<Channel, Float64Array>> = {};
  const empty: { channel: Channel; count: number; line: number }[] = [];
  wanted.forEach((channel, k) => {
    const column = columns[channel]!;
    const sign = column.reversed === true ? -1 : 1;
    let [count, first] = [0, 0];
    channels[channel] = Float64Array.from(body, ({ cells, line: here }) => {
      const value = numberIn(cells[places[k]!] ?? '', decimal);
      if (value !== undefined) return sign * (toSI(value, unitOf(column.unit, channel)) - (column.rest ?? 0));
      if (count === 0) first = here;
      count += 1;
      return Number.NaN;
    });
    if (count > 0) empty.push({ channel, count, line: first });
  });
  const blank = empty.find(({ count }) => count === body.length);
  if (blank !== undefined)
    return failed('no-numbers', `Column "${columns[blank.channel]!.heading}" has no number in any row.`, {
      line: blank.line,
    });
  return { ok: true, log: { lines: body.map(({ line: here }) => here), channels, empty } };
}

/** Of an acceleration the trade says g and means that of free fall, not a gram. */
export const unitOf = (unit: string, channel: Channel): string =>
  unit.trim() === 'g' && ['longitudinal', 'lateral', 'vertical'].includes(channel) ? 'gn' : unit.trim();

function noHeading(
  rows: readonly CsvRow[],
  headings: readonly string[],
  failed: (code: string, message: string, at: { line?: number; remedy?: string }) => LogRead,
): LogRead {
  // the row that has most of them is the heading that was meant
  const count = ({ cells }: CsvRow): number => headings.filter((heading) => cells.includes(heading)).length;
  const best = rows.reduce((a, b) => (count(b) > count(a) ? b : a));
  const missing = headings.filter((heading) => !best.cells.includes(heading));
  const near = nearest(missing[0]!, [...best.cells]);
  return failed('heading', `No column is headed ${missing.map((each) => `"${each}"`).join(' or ')}.`, {
    line: best.line,
    remedy: `The columns are: ${best.cells.slice(0, 20).join(', ')}.${near === undefined ? '' : ` Did you mean "${near}"?`}`,
  });
}

type Rows =
  | { readonly is: readonly CsvRow[]; readonly delimiter: Delimiter }
  | { readonly why: string; readonly line?: number };

function rowsIn(text: string): Rows {
  // remarks above the table may hold anything: what parts the last lines parts the table
  const tail = text
    .trimEnd()
    .split(/\r?\n|\r/)
    .slice(-20, -1)
    .join('\n');
  const delimiter = delimiterOf(tail, LEAST_COLUMNS) ?? delimiterOf(text, LEAST_COLUMNS);
  if (delimiter === undefined) return { why: 'no comma, semicolon or tab parts its columns' };
  const read = csvRows(text, delimiter);
  if (!read.ok) return read;
  return {
    is: read.rows.map(({ cells, line }) => ({ cells: cells.map((cell) => cell.trim()), line })),
    delimiter,
  };
}
