/**
 * A template: lines in true size that are printed, cut out and laid on tube or plate.
 *
 * Metres, y upwards. What the lines are for tells a printer how to draw them and a cutter which to follow.
 */
import type { Metre, Radian } from '../../units/quantity.ts';

export interface Point2 {
  readonly x: Metre;
  readonly y: Metre;
}

/** `cut`: the line to cut along; `edge`: where the paper ends; `mark`: a line to look at. */
export type LineUse = 'cut' | 'edge' | 'mark';

export interface TemplatePolyline {
  readonly kind: 'polyline';
  readonly use: LineUse;
  readonly points: readonly Point2[];
  readonly closed: boolean;
}

/** Anticlockwise from `from` to `to`, `to` above `from`; a full circle is 2π apart. */
export interface TemplateArc {
  readonly kind: 'arc';
  readonly use: LineUse;
  readonly centre: Point2;
  readonly radius: Metre;
  readonly from: Radian;
  readonly to: Radian;
}

export type TemplateLine = TemplatePolyline | TemplateArc;

export interface TemplateLabel {
  readonly at: Point2;
  readonly text: string;
}

export interface Template {
  readonly name: string;
  /** What it is for and how it is laid on, a sentence each. */
  readonly notes: readonly string[];
  readonly lines: readonly TemplateLine[];
  readonly labels: readonly TemplateLabel[];
}

export interface Box2 {
  readonly min: Point2;
  readonly max: Point2;
}

export function boxOf(template: Pick<Template, 'lines'>): Box2 {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  const take = ({ x, y }: Point2): void => {
    [x0, y0, x1, y1] = [Math.min(x0, x), Math.min(y0, y), Math.max(x1, x), Math.max(y1, y)];
  };
  for (const line of template.lines) {
    if (line.kind === 'polyline') line.points.forEach(take);
    else arcExtremes(line).forEach(take);
  }
  return { min: { x: x0, y: y0 }, max: { x: x1, y: y1 } };
}

export const onArc = (arc: TemplateArc, angle: Radian): Point2 => ({
  x: arc.centre.x + arc.radius * Math.cos(angle),
  y: arc.centre.y + arc.radius * Math.sin(angle),
});

/** Ends of an arc and those of its four outermost points that are on it. */
function arcExtremes(arc: TemplateArc): Point2[] {
  const found = [onArc(arc, arc.from), onArc(arc, arc.to)];
  for (let k = Math.ceil(arc.from / (Math.PI / 2)); k * (Math.PI / 2) < arc.to; k += 1) {
    found.push(onArc(arc, (k * Math.PI) / 2));
  }
  return found;
}
