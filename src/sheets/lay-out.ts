/**
 * Stacks blocks down the sheet and goes on to a second sheet where they do not fit.
 *
 * In    blocks with their heights, the head, the cautions, a text measure
 * Out   the pages, numbered n of m, each with border, title block, cautions and the invented mark
 */
import { frame, type SheetHead, spaceOf } from './frame.ts';
import {
  LINE,
  line,
  type Mark,
  PAPER,
  type Page,
  type PaperPoint,
  type SheetDocument,
  SIZE,
  text,
} from './page.ts';
import { printable, type TextMeasure, wrapped } from './text-measure.ts';

export interface Block {
  readonly height: number;
  /** Marks of the block with its top left corner at a point. */
  readonly marks: (at: PaperPoint, width: number) => readonly Mark[];
  /** Stays on the sheet of the block that follows: a heading. */
  readonly keepWithNext?: boolean;
  /** Starts a sheet of its own, unless it is on top of one already. */
  readonly opensSheet?: boolean;
  /** Put again on top of a sheet that this block opens: the head of a table that goes on. */
  readonly again?: Block;
}

export interface Composed {
  readonly head: SheetHead;
  readonly cautions: readonly string[];
  readonly blocks: readonly Block[];
}

/** @throws Error when a single block is higher than a sheet: a block must be made of parts that fit */
export function layOut(of: Composed, measure: TextMeasure): SheetDocument {
  const { head, cautions } = of;
  const space = spaceOf(head, cautions, measure);
  const sheets: Mark[][] = [];
  let marks: Mark[] = [];
  let y = space.y;
  const open = (): void => {
    marks = [];
    sheets.push(marks);
    y = space.y;
  };
  const put = (block: Block): void => {
    marks.push(...block.marks({ x: space.x, y }, space.width));
    y += block.height;
  };
  open();
  for (const group of groups(of.blocks)) {
    const height = group.reduce((sum, block) => sum + block.height, 0);
    if (height > space.height)
      throw new Error(`a block of ${height.toFixed(0)} mm does not fit on any sheet`);
    if (group[0]?.opensSheet === true && y > space.y) open();
    if (y + height > space.y + space.height + 1e-6) {
      open();
      const again = group[0]?.again;
      if (again !== undefined) put(again);
    }
    group.forEach(put);
  }
  const pages: Page[] = sheets.map((own, index) => ({
    size: PAPER[head.paper],
    marks: [...frame(head, cautions, { sheet: index + 1, of: sheets.length }, measure), ...own],
  }));
  const { workshop, date, version } = head;
  return {
    title: printable(`${head.title} · ${head.car} · ${head.of}`),
    workshop: printable(workshop),
    date,
    version,
    pages,
  };
}

/** Blocks that may not be torn apart. */
function groups(blocks: readonly Block[]): Block[][] {
  const found: Block[][] = [];
  let open: Block[] | undefined;
  for (const block of blocks) {
    if (open === undefined) {
      open = [];
      found.push(open);
    }
    open.push(block);
    if (block.keepWithNext !== true) open = undefined;
  }
  return found;
}

export const gap = (height: number): Block => ({ height, marks: () => [] });

export const heading = (words: string): Block => ({
  height: 6.6,
  keepWithNext: true,
  marks: (at, width) => [
    text({ x: at.x, y: at.y + 4.6 }, words, { size: SIZE.figure, weight: 'bold' }),
    line({ x: at.x, y: at.y + 5.9 }, { x: at.x + width, y: at.y + 5.9 }, { weight: LINE.thin }),
  ],
});

/** A paragraph: one block a line, so that a long one goes on over the sheet's edge. */
export function paragraph(
  words: string,
  set: { readonly width: number; readonly size?: number; readonly weight?: 'regular' | 'bold' },
  measure: TextMeasure,
): Block[] {
  const size = set.size ?? SIZE.body;
  const weight = set.weight ?? 'regular';
  return wrapped(words, { size, weight, width: set.width }, measure).map((each) => ({
    height: size * 1.3,
    marks: (at: PaperPoint) => [text({ x: at.x, y: at.y + size }, each, { size, weight })],
  }));
}

/** Numbered steps of work, each with a box to tick. */
export function steps(words: readonly string[], width: number, measure: TextMeasure): Block[] {
  const size = SIZE.small;
  return words.flatMap((step, index) =>
    wrapped(step, { size, weight: 'regular', width: width - 12 }, measure).map((each, row) => ({
      height: size * 1.4,
      marks: (at: PaperPoint) => [
        ...(row === 0
          ? [
              ...tickBox(at),
              text({ x: at.x + 5, y: at.y + size }, `${index + 1}`, { size, weight: 'bold' as const }),
            ]
          : []),
        text({ x: at.x + 10, y: at.y + size }, each, { size }),
      ],
    })),
  );
}

const tickBox = (at: PaperPoint): Mark[] => {
  const [x, y, side] = [at.x + 0.3, at.y + 0.3, 2.6];
  const corners = [
    { x, y },
    { x: x + side, y },
    { x: x + side, y: y + side },
    { x, y: y + side },
  ];
  return corners.map((corner, k) => line(corner, corners[(k + 1) % 4]!));
};

/** Blocks side by side; the highest gives the height. */
export function beside(
  columns: readonly { readonly block: Block; readonly x: number; readonly width: number }[],
): Block {
  return {
    height: Math.max(...columns.map((column) => column.block.height)),
    marks: (at) => columns.flatMap(({ block, x, width }) => block.marks({ x: at.x + x, y: at.y }, width)),
  };
}

/** Blocks one below the other as one that is not torn. */
export function stack(blocks: readonly Block[]): Block {
  return {
    height: blocks.reduce((sum, block) => sum + block.height, 0),
    marks: (at, width) => {
      let y = at.y;
      return blocks.flatMap((block) => {
        const marks = block.marks({ x: at.x, y }, width);
        y += block.height;
        return marks;
      });
    },
  };
}
