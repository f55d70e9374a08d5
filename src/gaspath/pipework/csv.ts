/**
 * Tables as text that a spreadsheet reads: comma, point, quotes where they are needed, CRLF (RFC 4180).
 *
 * In    columns with their units and rows
 * Out   text; a number is written to the digits that its column asks for, in the unit that stands in its head
 */
import { fromSI } from '../../units/unit.ts';

export interface Column<R> {
  readonly head: string;
  /** The trade's unit; with it the cell is a number in SI. */
  readonly unit?: string;
  readonly digits?: number;
  readonly of: (row: R) => string | number | undefined;
}

/** A cell that is not known stays empty. */
export function csvOf<R>(columns: readonly Column<R>[], rows: readonly R[]): string {
  const head = columns.map(({ head: name, unit }) => quoted(unit === undefined ? name : `${name} (${unit})`));
  const lines = rows.map((row) => columns.map((column) => cell(column, row)).join(','));
  return [head.join(','), ...lines].map((line) => `${line}\r\n`).join('');
}

function cell<R>({ unit, digits, of }: Column<R>, row: R): string {
  const value = of(row);
  if (value === undefined) return '';
  if (typeof value === 'string') return quoted(value);
  const number = unit === undefined ? value : fromSI(value, unit);
  if (!Number.isFinite(number)) return '';
  const text = number.toFixed(digits ?? 0);
  return Number(text) === 0 ? text.replace('-', '') : text;
}

const quoted = (text: string): string =>
  /[",\r\n]|^\s|\s$/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
