/**
 * A table that is read and written in: a name at the left of each row, a figure or an empty box in every other cell.
 *
 * In    columns, rows of cells; a cell that is not there is a box to write in
 * Out   one block, never torn
 */
import type { Block } from './lay-out.ts';
import { LINE, line, type Mark, type PaperPoint, polyline, rectangle, SIZE, text } from './page.ts';
import { shortened, type TextMeasure } from './text-measure.ts';

export interface BoxColumn {
  readonly title: string;
  /** Part of the width of the table. */
  readonly part: number;
  readonly align?: 'left';
}

export interface BoxCell {
  readonly words: string;
  /** Outside the tolerance: shaded, with a mark that says which way. */
  readonly off?: 'high' | 'low' | undefined;
  readonly bold?: boolean;
}

export interface BoxRow {
  readonly name: string;
  /** One for each column behind the name; left out, a box to write in. */
  readonly cells: readonly (BoxCell | undefined)[];
}

export interface BoxTable {
  /** That of the names first. */
  readonly columns: readonly BoxColumn[];
  readonly rows: readonly BoxRow[];
  readonly rowHeight: number;
}

const HEAD = 4;

export const boxTableHeight = ({ rows, rowHeight }: Pick<BoxTable, 'rows' | 'rowHeight'>): number =>
  HEAD + rows.length * rowHeight;

export const boxTable = (of: BoxTable, measure: TextMeasure): Block => ({
  height: boxTableHeight(of),
  marks: (at, width) => boxTableMarks(of, at, width, measure),
});

export function boxTableMarks(of: BoxTable, at: PaperPoint, width: number, measure: TextMeasure): Mark[] {
  const { columns, rows, rowHeight } = of;
  const whole = columns.reduce((sum, { part }) => sum + part, 0);
  const widths = columns.map(({ part }) => (part / whole) * width);
  const lefts = widths.map((_, k) => at.x + widths.slice(0, k).reduce((sum, each) => sum + each, 0));
  const top = at.y + HEAD;
  const fit = (words: string, k: number, size: number, weight: 'regular' | 'bold' = 'regular'): string =>
    shortened(words, { size, weight, width: widths[k]! - 1 }, measure);
  return [
    ...columns.flatMap(({ title, align }, k): Mark[] => {
      if (title === '') return [];
      const left = k === 0 || align === 'left';
      return [
        text(
          { x: left ? lefts[k]! + (k === 0 ? 0 : 0.9) : lefts[k]! + widths[k]! / 2, y: top - 1.1 },
          fit(title, k, SIZE.label, 'bold'),
          { size: SIZE.label, weight: 'bold', align: left ? 'left' : 'middle' },
        ),
      ];
    }),
    line({ x: at.x, y: top }, { x: at.x + width, y: top }, { weight: LINE.thick }),
    ...rows.flatMap(({ name, cells }, row) => {
      const y = top + row * rowHeight;
      const own = fitted(name, 'regular', widths[0]! - 0.6, measure);
      return [
        text({ x: at.x, y: y + rowHeight / 2 + own.size / 3 }, own.words, { size: own.size }),
        ...cells.flatMap((cell, k) =>
          cellMarks(
            cell,
            { x: lefts[k + 1]!, y, width: widths[k + 1]!, height: rowHeight },
            columns[k + 1]!.align === 'left',
            measure,
          ),
        ),
        line({ x: at.x, y: y + rowHeight }, { x: at.x + width, y: y + rowHeight }, { weight: LINE.hair }),
      ];
    }),
  ];
}

/** Below this letters are not read at the car, mm. */
const SMALLEST = 2;

/** A figure that is too wide is set smaller: cut, it would be another figure. */
function fitted(
  words: string,
  weight: 'regular' | 'bold',
  width: number,
  measure: TextMeasure,
): { readonly words: string; readonly size: number } {
  const wide = measure.width(words, SIZE.small, weight);
  const size = wide <= width ? SIZE.small : Math.max(SMALLEST, (SIZE.small * width * 0.999) / wide);
  return { words: shortened(words, { size, weight, width }, measure), size };
}

function cellMarks(
  cell: BoxCell | undefined,
  box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number },
  left: boolean,
  measure: TextMeasure,
): Mark[] {
  const inner = { x: box.x + 0.4, y: box.y + 0.4, width: box.width - 0.8, height: box.height - 0.8 };
  if (cell === undefined) return [rectangle(inner)];
  const weight = cell.bold === true ? 'bold' : 'regular';
  const { words, size } = fitted(cell.words, weight, inner.width, measure);
  const x = left ? inner.x + 0.5 : box.x + box.width / 2;
  return [
    ...(cell.off === undefined
      ? []
      : [
          rectangle(inner, { weight: 0, fill: 0.85 }),
          // in the corner, clear of the figure
          wedge({ x: inner.x + inner.width - 0.8, y: inner.y + 0.9 }, cell.off),
        ]),
    ...(words === ''
      ? []
      : [
          text({ x, y: box.y + box.height / 2 + size / 3 }, words, {
            size,
            weight,
            align: left ? 'left' : 'middle',
          }),
        ]),
  ];
}

/** Points up where it reads too much, down where too little. */
function wedge(at: PaperPoint, off: 'high' | 'low'): Mark {
  const sign = off === 'high' ? 1 : -1;
  return polyline(
    [
      { x: at.x, y: at.y - 0.65 * sign },
      { x: at.x + 0.7, y: at.y + 0.55 * sign },
      { x: at.x - 0.7, y: at.y + 0.55 * sign },
    ],
    { closed: true, weight: 0, fill: 0 },
  );
}
