/**
 * A sheet of paper as marks in true millimetres.
 *
 * In    what the lay-out of a sheet puts down: texts, lines, arcs
 * Out   pages that a shell turns into PDF or SVG without deciding anything
 * Axes  x to the right, y downwards, from the top left corner of the paper, millimetres
 * Not   which fonts there are: widths come from a TextMeasure that the shell hands in
 *
 * Black and white only. Line widths and letter heights after the series of ISO 128-2 and ISO 3098-1 (from
 * memory): 0.25 and 0.5 mm lines.
 */

/** Millimetres on the paper. Not the unit of the figures, which stay SI. */
export interface PaperPoint {
  readonly x: number;
  readonly y: number;
}

export type PaperName = 'A4' | 'Letter';

export interface PaperSize {
  readonly width: number;
  readonly height: number;
}

/** A4 from ISO 216; Letter 8.5 by 11 inches. */
export const PAPER: Readonly<Record<PaperName, PaperSize>> = {
  A4: { width: 210, height: 297 },
  Letter: { width: 215.9, height: 279.4 },
};

export type FontWeight = 'regular' | 'bold';
export type Align = 'left' | 'middle' | 'right';

export interface TextMark {
  readonly kind: 'text';
  /** On the base line. */
  readonly at: PaperPoint;
  readonly text: string;
  /** Size of the font, millimetres. */
  readonly size: number;
  readonly weight: FontWeight;
  readonly align: Align;
  /** Turned anticlockwise about `at`, degrees. */
  readonly turn: number;
}

export interface PolylineMark {
  readonly kind: 'polyline';
  readonly points: readonly PaperPoint[];
  readonly closed: boolean;
  /** Width of the line, 0 for none. */
  readonly weight: number;
  /** Lengths of dash and gap in turn. */
  readonly dash?: readonly number[];
  /** 0 black to 1 white; left out, not filled. */
  readonly fill?: number;
}

export interface ArcMark {
  readonly kind: 'arc';
  readonly centre: PaperPoint;
  readonly radius: number;
  /** Degrees, anticlockwise from the right, as seen on the paper. */
  readonly from: number;
  readonly to: number;
  readonly weight: number;
  readonly dash?: readonly number[];
}

export type Mark = TextMark | PolylineMark | ArcMark;

export interface Page {
  readonly size: PaperSize;
  readonly marks: readonly Mark[];
}

export interface SheetDocument {
  readonly title: string;
  readonly workshop: string;
  /** As handed in, `2004-05-06`. */
  readonly date: string;
  readonly version: string;
  readonly pages: readonly Page[];
}

/** Line widths, millimetres. */
export const LINE = { hair: 0.13, thin: 0.25, thick: 0.5, border: 0.7 } as const;

/** Dashes for hidden edges and centre lines. */
export const DASH = { hidden: [2, 1], centre: [6, 1, 0.5, 1] } as const;

/** Sizes of the font, millimetres; the capitals are two thirds of it. */
export const SIZE = { label: 2.3, small: 2.7, body: 3.2, figure: 4.2, title: 5.2 } as const;

export interface TextStyle {
  readonly size?: number;
  readonly weight?: FontWeight;
  readonly align?: Align;
  readonly turn?: number;
}

export const text = (at: PaperPoint, words: string, style: TextStyle = {}): TextMark => ({
  kind: 'text',
  at,
  text: words,
  size: style.size ?? SIZE.body,
  weight: style.weight ?? 'regular',
  align: style.align ?? 'left',
  turn: style.turn ?? 0,
});

interface LineStyle {
  readonly weight?: number;
  readonly dash?: readonly number[];
  readonly closed?: boolean;
  readonly fill?: number;
}

export const polyline = (points: readonly PaperPoint[], style: LineStyle = {}): PolylineMark => ({
  kind: 'polyline',
  points,
  closed: style.closed ?? false,
  weight: style.weight ?? LINE.thin,
  ...(style.dash === undefined ? {} : { dash: style.dash }),
  ...(style.fill === undefined ? {} : { fill: style.fill }),
});

export const line = (from: PaperPoint, to: PaperPoint, style: LineStyle = {}): PolylineMark =>
  polyline([from, to], style);

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export const rectangle = (box: Box, style: LineStyle = {}): PolylineMark =>
  polyline(
    [
      { x: box.x, y: box.y },
      { x: box.x + box.width, y: box.y },
      { x: box.x + box.width, y: box.y + box.height },
      { x: box.x, y: box.y + box.height },
    ],
    { ...style, closed: true },
  );

export const circle = (
  centre: PaperPoint,
  radius: number,
  style: { readonly weight?: number; readonly dash?: readonly number[] } = {},
): ArcMark => arc({ centre, radius, from: 0, to: 360 }, style);

export const arc = (
  of: Pick<ArcMark, 'centre' | 'radius' | 'from' | 'to'>,
  style: { readonly weight?: number; readonly dash?: readonly number[] } = {},
): ArcMark => ({
  kind: 'arc',
  ...of,
  weight: style.weight ?? LINE.thin,
  ...(style.dash === undefined ? {} : { dash: style.dash }),
});

/** A filled arrowhead of 2.5 mm with its tip at a point; `direction` in degrees, where it points to. */
export function arrowhead(tip: PaperPoint, direction: number, length = 2.5): PolylineMark {
  const at = (angle: number): PaperPoint => ({
    x: tip.x - length * Math.cos(((direction + angle) * Math.PI) / 180),
    y: tip.y + length * Math.sin(((direction + angle) * Math.PI) / 180),
  });
  return polyline([tip, at(9.5), at(-9.5)], { closed: true, weight: 0, fill: 0 });
}

/** Points of an arc, for shades and outlines that need them. */
export function arcPoints(of: Pick<ArcMark, 'centre' | 'radius' | 'from' | 'to'>, count = 24): PaperPoint[] {
  return Array.from({ length: count + 1 }, (_, k) => {
    const angle = ((of.from + ((of.to - of.from) * k) / count) * Math.PI) / 180;
    return {
      x: of.centre.x + of.radius * Math.cos(angle),
      y: of.centre.y - of.radius * Math.sin(angle),
    };
  });
}
