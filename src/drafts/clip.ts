/**
 * What of a mark lies in a window.
 *
 * In    a mark, a window
 * Out   its parts inside; a text whole or not at all, by where it begins
 * Axes  the page's
 */
import type { Mark, PaperPoint } from '../sheets/page.ts';

export interface Window {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

/** @throws Error for an arc: templates are clipped as chords */
export function insideOf(mark: Mark, window: Window): readonly Mark[] {
  if (mark.kind === 'text') {
    const { x, y } = mark.at;
    return x >= window.x0 && x <= window.x1 && y >= window.y0 && y <= window.y1 ? [mark] : [];
  }
  if (mark.kind === 'arc') throw new Error('an arc is not clipped');
  const points = mark.closed ? [...mark.points, mark.points[0]!] : mark.points;
  const parts: PaperPoint[][] = [];
  for (let k = 1; k < points.length; k += 1) {
    const part = segmentInside(points[k - 1]!, points[k]!, window);
    if (part === undefined) continue;
    const last = parts.at(-1);
    const end = last?.at(-1);
    if (last !== undefined && end !== undefined && end.x === part[0].x && end.y === part[0].y)
      last.push(part[1]);
    else parts.push([...part]);
  }
  return parts.map((each) => ({ ...mark, closed: false, points: each }));
}

/** Liang and Barsky's way: the part of the segment between where it last comes in and where it first goes out. */
function segmentInside(
  a: PaperPoint,
  b: PaperPoint,
  { x0, y0, x1, y1 }: Window,
): readonly [PaperPoint, PaperPoint] | undefined {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  let [enter, leave] = [0, 1];
  for (const [p, q] of [
    [-dx, a.x - x0],
    [dx, x1 - a.x],
    [-dy, a.y - y0],
    [dy, y1 - a.y],
  ] as const) {
    if (p === 0) {
      if (q < 0) return undefined;
    } else if (p < 0) enter = Math.max(enter, q / p);
    else leave = Math.min(leave, q / p);
  }
  if (enter > leave) return undefined;
  const at = (t: number): PaperPoint => (t === 0 ? a : t === 1 ? b : { x: a.x + t * dx, y: a.y + t * dy });
  return [at(enter), at(leave)];
}
