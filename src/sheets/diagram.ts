/**
 * A diagram of several lines over one another: frame, ticks, lines with their name at an end.
 *
 * In    lines in the units that are spoken (the caller has chosen them)
 * Out   one block of the height that is asked for
 */
import { plain } from '../units/show.ts';
import { ticksOver } from './curve.ts';
import type { Block } from './lay-out.ts';
import { LINE, line, type Mark, type PaperPoint, polyline, rectangle, SIZE, text } from './page.ts';

export interface DiagramLine {
  readonly points: readonly { readonly across: number; readonly up: number }[];
  /** Written beside its last point, or its first. */
  readonly name?: string;
  readonly namedAt?: 'first' | 'last';
  readonly weight?: number;
  readonly dash?: readonly number[];
}

export interface Diagram {
  readonly acrossTitle: string;
  readonly upTitle: string;
  readonly lines: readonly DiagramLine[];
  readonly height: number;
}

const LEFT = 14;
const BOTTOM = 10;
const TOP = 6;
const RIGHT = 4;

export const diagram = (of: Diagram): Block => ({
  height: of.height,
  marks: (at, width) => diagramMarks(of, at, width),
});

function diagramMarks(
  { acrossTitle, upTitle, lines, height }: Diagram,
  at: PaperPoint,
  width: number,
): Mark[] {
  const all = lines.flatMap(({ points }) => points);
  const across = ticksOver(0, Math.max(...all.map((each) => each.across)), 10);
  const up = ticksOver(0, Math.max(...all.map((each) => each.up)), 8);
  const box = { x: at.x + LEFT, y: at.y + TOP, width: width - LEFT - RIGHT, height: height - TOP - BOTTOM };
  const x = (value: number): number => box.x + (value / across.high) * box.width;
  const y = (value: number): number => box.y + box.height - (value / up.high) * box.height;
  const label = (where: PaperPoint, words: string, align: 'left' | 'middle' | 'right'): Mark =>
    text(where, words, { size: SIZE.label, align });
  return [
    rectangle(box, { weight: LINE.thin }),
    ...across.ticks.flatMap((tick) => [
      line({ x: x(tick), y: box.y }, { x: x(tick), y: box.y + box.height }, { weight: LINE.hair }),
      label({ x: x(tick), y: box.y + box.height + 3 }, plain(tick, across.digits), 'middle'),
    ]),
    ...up.ticks.flatMap((tick) => [
      line({ x: box.x, y: y(tick) }, { x: box.x + box.width, y: y(tick) }, { weight: LINE.hair }),
      label({ x: box.x - 1, y: y(tick) + 0.8 }, plain(tick, up.digits), 'right'),
    ]),
    label({ x: box.x + box.width / 2, y: box.y + box.height + 7 }, acrossTitle, 'middle'),
    label({ x: box.x, y: at.y + 4 }, upTitle, 'left'),
    ...lines.flatMap((each) => [
      polyline(
        each.points.map((point) => ({ x: x(point.across), y: y(point.up) })),
        { weight: each.weight ?? LINE.thick, ...(each.dash === undefined ? {} : { dash: each.dash }) },
      ),
      ...named(each, x, y, box.y),
    ]),
  ];
}

function named(
  { points, name, namedAt = 'last' }: DiagramLine,
  x: (value: number) => number,
  y: (value: number) => number,
  top: number,
): Mark[] {
  const end = namedAt === 'last' ? points.at(-1) : points[0];
  if (name === undefined || end === undefined) return [];
  // above the end, but never out of the frame
  const at = { x: x(end.across), y: Math.max(top + 3, y(end.up) - 1.2) };
  return [text(at, name, { size: SIZE.small, weight: 'bold', align: namedAt === 'last' ? 'right' : 'left' })];
}
