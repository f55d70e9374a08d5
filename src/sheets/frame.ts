/**
 * What stands on every sheet: border, title block, cautions at the foot, blanks for name, initials and date.
 *
 * In    the head of the document, number of the page, cautions
 * Out   marks, and the box that is left for the sheet's own matter
 *
 * Border after ISO 5457 (20 mm on the filing edge, 10 mm elsewhere), title block with the fields of ISO 7200:
 * legal owner, title, number, date of issue, sheet n of m, who made and who approved (both from memory).
 */
import type { Speech } from '../units/show.ts';
import { type Box, LINE, line, type Mark, PAPER, type PaperName, rectangle, SIZE, text } from './page.ts';
import { shortened, type TextMeasure, wrapped } from './text-measure.ts';

export interface SheetHead {
  readonly workshop: string;
  readonly car: string;
  readonly chassis?: string;
  readonly spec: string;
  /** What the sheet is: `Corner sheet`. */
  readonly title: string;
  /** What of the car: `front left, 20 mm bump`. */
  readonly of: string;
  readonly invented: boolean;
  /** Handed in: no sheet looks at a clock. */
  readonly date: string;
  readonly version: string;
  /** Version of the car file's text, where a sheet is written on and comes back to it. */
  readonly file?: string;
  readonly paper: PaperName;
  readonly speech: Speech;
  /** `41 of 212 not measured`. */
  readonly readings?: string;
}

const FILING_EDGE = 20;
const EDGE = 10;
const TITLE_ROW = 8.5;
const TITLE_ROWS = 4;
const CAUTION_LINE = 3.3;
const GAP = 2;

export function borderOf(paper: PaperName): Box {
  const size = PAPER[paper];
  return { x: FILING_EDGE, y: EDGE, width: size.width - FILING_EDGE - EDGE, height: size.height - 2 * EDGE };
}

const titleHeight = TITLE_ROW * TITLE_ROWS;

const cautionLines = (cautions: readonly string[], width: number, measure: TextMeasure): string[] =>
  cautions.flatMap((caution) =>
    wrapped(caution, { size: SIZE.small, weight: 'regular', width: width - 6 }, measure).map((each, index) =>
      index === 0 ? `• ${each}` : `   ${each}`,
    ),
  );

const cautionHeight = (lines: number): number => (lines === 0 ? 0 : CAUTION_LINE * (lines + 1) + 3);

/** The box left for the matter of the sheet. */
export function spaceOf(head: SheetHead, cautions: readonly string[], measure: TextMeasure): Box {
  const border = borderOf(head.paper);
  const lines = cautionLines(cautions, border.width, measure).length;
  return {
    x: border.x + GAP,
    y: border.y + GAP + bannerHeight(head),
    width: border.width - 2 * GAP,
    height: border.height - titleHeight - cautionHeight(lines) - bannerHeight(head) - 2 * GAP,
  };
}

const bannerHeight = (head: SheetHead): number => (head.invented ? 6 : 0);

export const INVENTED = 'INVENTED EXAMPLE: no such car exists, and nothing on this sheet belongs on one';

export interface SheetNumber {
  readonly sheet: number;
  readonly of: number;
}

export function frame(
  head: SheetHead,
  cautions: readonly string[],
  number: SheetNumber,
  measure: TextMeasure,
): Mark[] {
  const border = borderOf(head.paper);
  return [
    rectangle(border, { weight: LINE.border }),
    ...centringMarks(head.paper),
    ...banner(head, border, measure),
    ...cautionMarks(cautions, border, measure),
    ...titleBlock(head, number, border, measure),
  ];
}

/** Middle of each side, as ISO 5457 wants for copying. */
function centringMarks(paper: PaperName): Mark[] {
  const { width, height } = PAPER[paper];
  const border = borderOf(paper);
  const [x, y] = [width / 2, height / 2];
  const style = { weight: LINE.thick };
  return [
    line({ x, y: 5 }, { x, y: border.y }, style),
    line({ x, y: border.y + border.height }, { x, y: height - 5 }, style),
    line({ x: 5, y }, { x: border.x, y }, style),
    line({ x: border.x + border.width, y }, { x: width - 5, y }, style),
  ];
}

function banner(head: SheetHead, border: Box, measure: TextMeasure): Mark[] {
  if (!head.invented) return [];
  const height = bannerHeight(head);
  const words = shortened(INVENTED, { size: SIZE.small, weight: 'bold', width: border.width - 4 }, measure);
  return [
    line({ x: border.x, y: border.y + height }, { x: border.x + border.width, y: border.y + height }),
    text({ x: border.x + border.width / 2, y: border.y + height - 2 }, words, {
      size: SIZE.small,
      weight: 'bold',
      align: 'middle',
    }),
  ];
}

function cautionMarks(cautions: readonly string[], border: Box, measure: TextMeasure): Mark[] {
  const lines = cautionLines(cautions, border.width, measure);
  if (lines.length === 0) return [];
  const height = cautionHeight(lines.length);
  const top = border.y + border.height - titleHeight - height;
  return [
    line({ x: border.x, y: top }, { x: border.x + border.width, y: top }, { weight: LINE.thick }),
    text({ x: border.x + GAP, y: top + CAUTION_LINE + 1 }, 'Caution', {
      size: SIZE.small,
      weight: 'bold',
    }),
    ...lines.map((words, index) =>
      text({ x: border.x + GAP, y: top + CAUTION_LINE * (index + 2) + 1 }, words, { size: SIZE.small }),
    ),
  ];
}

interface Cell {
  readonly label: string;
  readonly words: string;
  /** Part of the width of its row. */
  readonly part: number;
  readonly bold?: boolean;
}

function titleBlock(head: SheetHead, number: SheetNumber, border: Box, measure: TextMeasure): Mark[] {
  const units = head.speech === 'mm-N' ? 'mm and N [in and lbf]' : 'in and lbf [mm and N]';
  const rows: Cell[][] = [
    [
      { label: 'Workshop', words: head.workshop, part: 3 },
      { label: 'Title', words: head.title, part: 3, bold: true },
    ],
    [
      {
        label: 'Car',
        words: head.chassis === undefined ? head.car : `${head.car} · ${head.chassis}`,
        part: 3,
      },
      { label: 'Of', words: head.of, part: 3 },
    ],
    [
      { label: 'Spec', words: head.spec, part: head.file === undefined ? 1.6 : 1.3 },
      ...(head.file === undefined ? [] : [{ label: 'Car file', words: head.file, part: 0.8 }]),
      {
        label: 'Readings',
        words: head.readings ?? 'not counted',
        part: head.file === undefined ? 1.4 : 1.65,
      },
      { label: 'Units', words: units, part: 1.4 },
      { label: 'Date', words: head.date, part: 0.8 },
      { label: 'Program', words: head.version, part: 0.8 },
    ],
    [
      { label: 'Worked on by: name', words: '', part: 1.5 },
      { label: 'Initials', words: '', part: 0.5 },
      { label: 'Date', words: '', part: 0.8 },
      { label: 'Approved by: name', words: '', part: 1.5 },
      { label: 'Initials', words: '', part: 0.5 },
      { label: 'Date', words: '', part: 0.8 },
      { label: 'Sheet', words: `${number.sheet} of ${number.of}`, part: 0.6, bold: true },
    ],
  ];
  const top = border.y + border.height - titleHeight;
  return [
    line({ x: border.x, y: top }, { x: border.x + border.width, y: top }, { weight: LINE.border }),
    ...rows.flatMap((cells, row) =>
      titleRow(
        cells,
        { x: border.x, y: top + row * TITLE_ROW, width: border.width, height: TITLE_ROW },
        measure,
      ),
    ),
  ];
}

function titleRow(cells: readonly Cell[], box: Box, measure: TextMeasure): Mark[] {
  const whole = cells.reduce((sum, cell) => sum + cell.part, 0);
  const marks: Mark[] = [line({ x: box.x, y: box.y }, { x: box.x + box.width, y: box.y })];
  let x = box.x;
  cells.forEach((cell, index) => {
    const width = (box.width * cell.part) / whole;
    const weight = cell.bold === true ? 'bold' : 'regular';
    if (index > 0) marks.push(line({ x, y: box.y }, { x, y: box.y + box.height }));
    const label = shortened(cell.label, { size: SIZE.label, weight: 'regular', width: width - 1.6 }, measure);
    marks.push(text({ x: x + 0.8, y: box.y + 2.6 }, label, { size: SIZE.label }));
    if (cell.words !== '') {
      const size = cell.bold === true ? SIZE.figure : SIZE.body;
      const words = shortened(cell.words, { size, weight, width: width - 1.6 }, measure);
      marks.push(text({ x: x + 0.8, y: box.y + box.height - 1.6 }, words, { size, weight }));
    }
    x += width;
  });
  return marks;
}
