/**
 * Numbers as lists write them: with a point or a comma for the decimal sign.
 *
 * In    cells of text
 * Out   the decimal sign where only one can be meant; a number, or nothing
 */

export type DecimalSign = '.' | ',';

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
