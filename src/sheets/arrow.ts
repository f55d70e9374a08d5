/** What the drawings of adjusters have in common: a thick arrow, and small words under a middle. */
import { LINE, line, type Mark, type PaperPoint, polyline, SIZE, text } from './page.ts';

/** Length of its head, mm. */
export const ARROW_HEAD = 3.2;

/** Broader than that of a dimension: it is seen at arm's length. @param direction  degrees, where it points to */
export function arrowTip(tip: PaperPoint, direction: number): Mark {
  const back = (angle: number): PaperPoint => ({
    x: tip.x - ARROW_HEAD * Math.cos(((direction + angle) * Math.PI) / 180),
    y: tip.y + ARROW_HEAD * Math.sin(((direction + angle) * Math.PI) / 180),
  });
  return polyline([tip, back(20), back(-20)], { closed: true, weight: 0, fill: 0 });
}

export const arrow = (from: PaperPoint, to: PaperPoint): Mark[] => [
  line(from, to, { weight: LINE.thick }),
  arrowTip(to, (Math.atan2(from.y - to.y, to.x - from.x) * 180) / Math.PI),
];

export const label = (at: PaperPoint, words: string): Mark =>
  text(at, words, { size: SIZE.label, align: 'middle' });
