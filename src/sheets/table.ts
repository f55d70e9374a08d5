/**
 * A ruled table whose rows go on over the sheet's edge under a repeated head.
 *
 * In    columns with their parts of the width, rows of words, size of the letters; without any title there is no head
 * Out   one block a row
 */
import type { Block } from './lay-out.ts';
import { type Align, LINE, line, type Mark, type PaperPoint, rectangle, SIZE, text } from './page.ts';
import { shortened, type TextMeasure, wrapped } from './text-measure.ts';

export interface Column {
  readonly title: string;
  /** Part of the width. */
  readonly part: number;
  readonly align?: Align;
  /** A field to be filled in by hand: boxed, and left empty. */
  readonly blank?: boolean;
}

export interface Row {
  readonly cells: readonly string[];
  readonly bold?: boolean;
  /** Higher, to write in. */
  readonly height?: number;
}

const PAD = 0.9;
const LEADING = 1.22;
/** A cell with more is cut, and shows that it is: a row has to fit on a sheet. */
const MOST_LINES = 6;

export function table(
  columns: readonly Column[],
  rows: readonly Row[],
  width: number,
  measure: TextMeasure,
  size: number = SIZE.small,
): Block[] {
  const whole = columns.reduce((sum, column) => sum + column.part, 0);
  const widths = columns.map((column) => (column.part / whole) * width);
  const set = (cells: readonly string[], bold: boolean, size: number): string[][] =>
    cells.map((words, k) => {
      const setting = { size, weight: bold ? 'bold' : 'regular', width: widths[k]! - 2 * PAD } as const;
      const lines = wrapped(words, setting, measure);
      if (lines.length <= MOST_LINES) return lines;
      const last = shortened(lines.slice(MOST_LINES - 1).join(' '), setting, measure);
      return [...lines.slice(0, MOST_LINES - 1), last];
    });
  const heightOf = (lines: readonly string[][], size: number): number =>
    Math.max(1, ...lines.map((each) => each.length)) * size * LEADING + 1.5;

  const cellMarks = (at: PaperPoint, lines: readonly string[][], size: number, bold: boolean): Mark[] => {
    let left = at.x;
    return lines.flatMap((own, k) => {
      const align = columns[k]!.align ?? 'left';
      const x =
        align === 'left' ? left + PAD : align === 'right' ? left + widths[k]! - PAD : left + widths[k]! / 2;
      left += widths[k]!;
      return own.flatMap((words, row) =>
        words === ''
          ? []
          : text({ x, y: at.y + 0.6 + size * (LEADING * row + 0.9) }, words, {
              size,
              align,
              weight: bold ? 'bold' : 'regular',
            }),
      );
    });
  };

  const titles = set(
    columns.map((column) => column.title),
    true,
    SIZE.label,
  );
  const headHeight = heightOf(titles, SIZE.label);
  const head: Block = {
    height: headHeight,
    keepWithNext: true,
    marks: (at) => [
      ...cellMarks(at, titles, SIZE.label, true),
      line(
        { x: at.x, y: at.y + headHeight },
        { x: at.x + width, y: at.y + headHeight },
        { weight: LINE.thick },
      ),
    ],
  };

  const titled = columns.some((column) => column.title !== '');
  const body = rows.map((row, k): Block => {
    const bold = row.bold === true;
    const lines = set(row.cells, bold, size);
    const own = heightOf(lines, size);
    const height = Math.max(row.height ?? 0, own);
    return {
      height,
      keepWithNext: noRowAlone(k, rows.length),
      ...(titled ? { again: head } : {}),
      marks: (at) => [
        ...cellMarks({ x: at.x, y: at.y + (height - own) / 2 }, lines, size, bold),
        ...blanks(columns, widths, at, height),
        line({ x: at.x, y: at.y + height }, { x: at.x + width, y: at.y + height }, { weight: LINE.hair }),
      ],
    };
  });
  return titled ? [head, ...body] : body;
}

/** A sheet never begins or ends with one row of a table whose others are on another sheet. */
const noRowAlone = (row: number, of: number): boolean => row < of - 1 && (row === 0 || row === of - 2);

function blanks(
  columns: readonly Column[],
  widths: readonly number[],
  at: PaperPoint,
  height: number,
): Mark[] {
  let left = at.x;
  return columns.flatMap((column, k) => {
    const x = left;
    left += widths[k]!;
    return column.blank === true
      ? [rectangle({ x: x + 0.4, y: at.y + 0.4, width: widths[k]! - 0.8, height: height - 0.8 })]
      : [];
  });
}
