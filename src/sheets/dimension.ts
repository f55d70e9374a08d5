/**
 * Dimensions in the manner of ISO 129-1 (from memory), and the ruler that proves a scale.
 *
 * In    the two ends on the paper, how far off the dimension line stands, the figure as words
 * Out   extension lines with a small gap, dimension line, filled arrowheads, figure above the line
 */
import { arrowhead, LINE, line, type Mark, type PaperPoint, SIZE, text } from './page.ts';
import type { TextMeasure } from './text-measure.ts';

const BEYOND = 1.5;
const CLEAR = 0.8;
/** Least room between the arrowheads; with less they stand outside and point in. */
const ARROW_ROOM = 6;

export interface LinearDimension {
  readonly from: PaperPoint;
  readonly to: PaperPoint;
  /** `across`: measured from left to right; `up`: measured from top to bottom. */
  readonly runs: 'across' | 'up';
  /** Where the dimension line stands: y of an `across`, x of an `up`. */
  readonly at: number;
  readonly words: string;
  /** A second line below the dimension line: the other way of units. */
  readonly below?: string;
}

export function dimension(of: LinearDimension, measure: TextMeasure): Mark[] {
  return of.runs === 'across' ? across(of, measure) : up(of);
}

function across({ from, to, at, words, below }: LinearDimension, measure: TextMeasure): Mark[] {
  const [left, right] = from.x <= to.x ? [from, to] : [to, from];
  const side = (point: PaperPoint): number => Math.sign(at - point.y) || 1;
  const extension = (point: PaperPoint): Mark =>
    line({ x: point.x, y: point.y + CLEAR * side(point) }, { x: point.x, y: at + BEYOND * side(point) });
  const room = right.x - left.x;
  const inside = room >= ARROW_ROOM;
  const wide = measure.width(words, SIZE.small, 'regular');
  const fits = wide <= room - 1;
  // a figure that does not fit between the extension lines stands to the right on the line carried on
  const x = fits ? (left.x + right.x) / 2 : right.x + 3.5 + wide / 2;
  const start = inside ? left.x : left.x - 4;
  const stop = fits ? (inside ? right.x : right.x + 4) : right.x + 4 + wide;
  return [
    extension(left),
    extension(right),
    line({ x: start, y: at }, { x: stop, y: at }),
    arrowhead({ x: left.x, y: at }, inside ? 180 : 0),
    arrowhead({ x: right.x, y: at }, inside ? 0 : 180),
    text({ x, y: at - 0.8 }, words, { size: SIZE.small, align: 'middle' }),
    ...(below === undefined
      ? []
      : [text({ x, y: at + SIZE.label + 0.3 }, below, { size: SIZE.label, align: 'middle' })]),
  ];
}

/** The figure stands level, outside the dimension line: it is read without turning the sheet. */
function up({ from, to, at, words, below }: LinearDimension): Mark[] {
  const [top, bottom] = from.y <= to.y ? [from, to] : [to, from];
  const side = (point: PaperPoint): number => Math.sign(at - point.x) || 1;
  const extension = (point: PaperPoint): Mark =>
    line({ x: point.x + CLEAR * side(point), y: point.y }, { x: at + BEYOND * side(point), y: point.y });
  const inside = bottom.y - top.y >= ARROW_ROOM;
  const outward = Math.sign(at - top.x) || 1;
  const style = { size: SIZE.small, align: outward > 0 ? 'left' : 'right' } as const;
  const x = at + outward * 1.2;
  const y = (top.y + bottom.y) / 2;
  return [
    extension(top),
    extension(bottom),
    line({ x: at, y: inside ? top.y : top.y - 4 }, { x: at, y: inside ? bottom.y : bottom.y + 4 }),
    arrowhead({ x: at, y: top.y }, inside ? 90 : 270),
    arrowhead({ x: at, y: bottom.y }, inside ? 270 : 90),
    text({ x, y: below === undefined ? y + SIZE.small / 3 : y - 0.5 }, words, style),
    ...(below === undefined ? [] : [text({ x, y: y + SIZE.small }, below, { ...style, size: SIZE.label })]),
  ];
}

/** A leader: an arrow on what is meant, and words on a short level line. */
export function leader(
  of: {
    readonly tip: PaperPoint;
    readonly knee: PaperPoint;
    readonly words: readonly string[];
    readonly to: 'left' | 'right';
  },
  measure: TextMeasure,
): Mark[] {
  const { tip, knee, words, to } = of;
  const sign = to === 'right' ? 1 : -1;
  const wide = Math.max(...words.map((each) => measure.width(each, SIZE.small, 'regular')));
  const direction = (Math.atan2(-(tip.y - knee.y), tip.x - knee.x) * 180) / Math.PI;
  return [
    line(tip, knee),
    arrowhead(tip, direction),
    line(knee, { x: knee.x + sign * (wide + 2), y: knee.y }),
    ...words.map((each, row) =>
      text({ x: knee.x + sign, y: row === 0 ? knee.y - 0.8 : knee.y + row * SIZE.small * 1.2 }, each, {
        size: SIZE.small,
        align: to === 'right' ? 'left' : 'right',
      }),
    ),
  ];
}

export const RULER_LENGTH = 100;

/** A ruler 100 mm long, and 3 in beside it: laid against a steel rule it proves that the print is to scale. */
export function ruler(at: PaperPoint): Mark[] {
  const end = at.x + RULER_LENGTH;
  const tick = (x: number, height: number): Mark => line({ x, y: at.y }, { x, y: at.y - height });
  const inches = at.y + 1;
  return [
    line(at, { x: end, y: at.y }, { weight: LINE.thin }),
    ...Array.from({ length: RULER_LENGTH / 5 + 1 }, (_, k) => tick(at.x + 5 * k, k % 2 === 0 ? 2.6 : 1.6)),
    text({ x: at.x, y: at.y - 3.2 }, '0', { size: SIZE.label, align: 'middle' }),
    text({ x: at.x + 50, y: at.y - 3.2 }, '50', { size: SIZE.label, align: 'middle' }),
    text({ x: end, y: at.y - 3.2 }, '100 mm', { size: SIZE.label, align: 'middle' }),
    line({ x: at.x, y: inches }, { x: at.x + 76.2, y: inches }, { weight: LINE.thin }),
    ...Array.from({ length: 7 }, (_, k): Mark => {
      const x = at.x + 12.7 * k;
      return line({ x, y: inches }, { x, y: inches + (k % 2 === 0 ? 2.6 : 1.6) });
    }),
    text({ x: at.x + 76.2 + 1, y: inches + 2.6 }, '3 in', { size: SIZE.label }),
  ];
}

export const RULER_HEIGHT = 11;

export const RULER_WORDS =
  'Print at 100 %, not "fit to page". The drawing is to scale only where this ruler agrees with a steel rule.';
