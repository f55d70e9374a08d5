/**
 * The rows of a CSV with the line on which each begins. Lines that begin with # are remarks, empty lines are passed over.
 *
 * In    the text, what parts its columns
 * Out   rows of cells, or why it is no CSV
 */
import { type CsvError, parse } from 'csv-parse/browser/esm/sync';
import { csvWords, type Delimiter } from '../units/list-numbers.ts';

export interface CsvRow {
  readonly cells: readonly string[];
  readonly line: number;
}

export type CsvRows =
  | { readonly ok: true; readonly rows: readonly CsvRow[] }
  | { readonly ok: false; readonly why: string; readonly line?: number };

export function csvRows(text: string, delimiter: Delimiter): CsvRows {
  try {
    const records = parse(text, {
      bom: true,
      comment: '#',
      comment_no_infix: true,
      delimiter,
      info: true,
      relax_column_count: true,
      skip_empty_lines: true,
      // where tabs part the columns a space at the end may be all that a cell holds
      trim: delimiter !== '\t',
    }) as unknown as { record: string[]; info: { lines: number } }[];
    return { ok: true, rows: records.map(({ record, info }) => ({ cells: record, line: info.lines })) };
  } catch (thrown) {
    const { code, lines } = thrown as CsvError & { lines?: number };
    if (code === undefined) throw thrown;
    return { ok: false, why: csvWords(code), ...(lines === undefined ? {} : { line: lines }) };
  }
}
