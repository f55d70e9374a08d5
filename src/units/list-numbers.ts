/**
 * Numbers as lists write them: columns parted in one way or another, a point or a comma for the decimal sign.
 *
 * In    the text of a list, or its cells
 * Out   delimiter and decimal sign where only one can be meant; a number, or nothing
 */

export type Delimiter = ',' | ';' | '\t';

export const DELIMITER_NAMES: Readonly<Record<Delimiter, string>> = {
  ',': 'comma',
  ';': 'semicolon',
  '\t': 'tab',
};

/** The one delimiter that parts every line into this many columns or more. Lines that begin with # are remarks. */
export function delimiterOf(text: string, leastColumns: number): Delimiter | undefined {
  const lines = text
    .split(/\r?\n|\r/)
    .map((line) => line.replace(/^\uFEFF/, '').trim())
    .filter((line) => line !== '' && !line.startsWith('#'))
    .map((line) => line.replace(/"[^"]*"/g, ''));
  const parts = (delimiter: Delimiter): boolean =>
    lines.length > 0 && lines.every((line) => line.split(delimiter).length >= leastColumns);
  // a semicolon or tab on every line leaves the comma to be a decimal sign
  return (['\t', ';', ','] as const).find(parts);
}

export type DecimalSign = '.' | ',';

/** Reasons of a CSV parser, by its stable codes, in the workshop's words. */
const CSV_WORDS: Readonly<Partial<Record<string, string>>> = {
  CSV_QUOTE_NOT_CLOSED: 'a quote is opened and not closed',
  CSV_INVALID_CLOSING_QUOTE: 'something stands behind a closing quote',
  INVALID_OPENING_QUOTE: 'a quote stands within a cell that does not begin with one',
};

export const csvWords = (code: string): string => CSV_WORDS[code] ?? 'it is not written as CSV';

/** The decimal sign these cells use; undefined where commas might as well part thousands. */
export function decimalSignOf(cells: readonly string[], delimiter: string): DecimalSign | undefined {
  if (delimiter === ',') return '.';
  const commas = cells.filter((cell) => cell.includes(','));
  if (commas.length === 0) return '.';
  // a comma that is not followed by exactly three figures, or stands after a leading 0, parts no thousands
  const plainly = commas.some((cell) => /,(\d{1,2}|\d{4,})\s*$/.test(cell) || /^\s*[-+−]?0,/.test(cell));
  return plainly && cells.every((cell) => !cell.includes('.')) ? ',' : undefined;
}

/** The number a cell holds, or undefined. No signs between thousands. */
export function numberIn(cell: string, decimal: DecimalSign): number | undefined {
  const plain = cell.trim().replace('−', '-');
  const form =
    decimal === ',' ? /^[-+]?(\d+,?\d*|,\d+)([eE][-+]?\d+)?$/ : /^[-+]?(\d+\.?\d*|\.\d+)([eE][-+]?\d+)?$/;
  if (!form.test(plain)) return undefined;
  const value = Number(plain.replace(',', '.'));
  return Number.isFinite(value) ? value : undefined;
}
