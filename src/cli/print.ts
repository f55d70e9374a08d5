/** Figures as lines of text on a terminal. */
import type { Figure, Stop } from '../questions/figure.ts';
import { type Speech, showIn, spokenUnit, unitAfter } from '../units/show.ts';
import { ownUnit } from '../units/unit.ts';

export interface Manner {
  readonly speech: Speech;
  /** Also print what each spread is made of. */
  readonly shares: boolean;
}

/** Shares printed for each figure, worst first; the others are counted. */
const MOST_SHARES = 6;
/** A share that would be printed as 0.0 % tells nothing. */
const LEAST_SHARE = 0.0005;

/** `131.2 ± 1.4 N/mm`; the dash stands for a figure that does not exist here. */
export const amountText = (value: number | null, unit: string, speech: Speech, u?: number): string =>
  amountIn(value, spokenUnit(unit, speech), u);

/** The same in a unit that is named. */
export function amountIn(value: number | null, unit: string, u?: number): string {
  if (value === null || !Number.isFinite(value)) return '—';
  const shown = showIn(value, unit, u);
  const spread = shown.spread === undefined ? '' : ` ± ${shown.spread}`;
  return plainSpaces(`${shown.text}${spread}${unitAfter(shown.unit)}`);
}

/** Terminals and the programs behind them want common spaces. */
export const plainSpaces = (text: string): string => text.replaceAll('\u2009', ' ');

export const figureText = (figure: Figure, speech: Speech): string =>
  amountText(figure.value, figure.unit, speech, figure.spread?.u);

/** The figures under the stop that they belong to, in the order in which the force passes. */
export function figureLines(figures: readonly Figure[], manner: Manner): string[] {
  const stops = [...new Set(figures.map((each) => each.stop))];
  return stops.flatMap((stop) => [
    '',
    heading(stop),
    ...rows(
      figures.filter((each) => each.stop === stop),
      manner,
    ),
  ]);
}

const heading = (stop: Stop): string => stop.slice(0, 1).toUpperCase() + stop.slice(1);

function rows(figures: readonly Figure[], manner: Manner): string[] {
  const table = figures.map((figure) => [figure.means, figureText(figure, manner.speech)] as const);
  const width = Math.max(...table.map(([means]) => means.length));
  return figures.flatMap((figure, index) => {
    const [means, amount] = table[index]!;
    const say = figure.say === undefined ? '' : `  (${figure.say})`;
    return [
      `  ${means.padEnd(width)}  ${amount}${say}`,
      ...(manner.shares ? shareLines(figure, manner.speech) : []),
    ];
  });
}

const shareLines = (figure: Figure, speech: Speech): string[] =>
  shareLinesIn(figure, spokenUnit(figure.unit, speech));

/** What a spread is made of, worst first, in a unit that is named. */
export function shareLinesIn({ spread }: Pick<Figure, 'spread'>, unit: string): string[] {
  if (spread === undefined) return [];
  const told = spread.shares.filter((each) => each.share >= LEAST_SHARE).slice(0, MOST_SHARES);
  const lines = told.map((share) => {
    const part = `${(100 * share.share).toFixed(share.share < 0.1 ? 1 : 0)} %`.padStart(7);
    return `    ${part}  ${share.label}  [${share.path}], ${amountIn(Math.abs(share.contribution) + shiftOf(unit), unit)}`;
  });
  const rest = spread.shares.length - told.length;
  if (rest > 0) lines.push(`           and ${rest} more with less`);
  for (const path of spread.unknown)
    lines.push(`          not known: moving ${path} by its spread puts the figure out of reach`);
  return lines;
}

/** A contribution is a difference: it has no part in where a scale of temperature begins. */
const shiftOf = (unit: string): number => ownUnit(unit).shift;

/** Columns of words and amounts, each as wide as it needs. */
export function table(rowsOf: readonly (readonly string[])[]): string[] {
  const widths = (rowsOf[0] ?? []).map((_, column) =>
    Math.max(...rowsOf.map((row) => (row[column] ?? '').length)),
  );
  return rowsOf.map((row) =>
    row
      .map((cell, column) => cell.padEnd(widths[column]!))
      .join('  ')
      .trimEnd(),
  );
}

/** Cautions and notes at the end, wrapped for a terminal. */
export function remarkLines(title: string, remarks: readonly string[]): string[] {
  if (remarks.length === 0) return [];
  return [
    '',
    title,
    ...remarks.flatMap((remark) =>
      wrapped(remark, 98).map((line, index) => `${index === 0 ? '  - ' : '    '}${line}`),
    ),
  ];
}

export function wrapped(text: string, width: number): string[] {
  const lines: string[] = [''];
  for (const word of text.split(' ')) {
    const last = lines.at(-1)!;
    if (last !== '' && last.length + 1 + word.length > width) lines.push(word);
    else lines[lines.length - 1] = last === '' ? word : `${last} ${word}`;
  }
  return lines;
}
