/** What the drawings of adjusters have in common: a thick arrow, and small words under a middle. */
import { arrowhead, LINE, line, type Mark, type PaperPoint, SIZE, text } from './page.ts';

/** Length of its head, mm. */
export const ARROW_HEAD = 3.2;

export const arrow = (from: PaperPoint, to: PaperPoint): Mark[] => [
  line(from, to, { weight: LINE.thick }),
  arrowhead(to, (Math.atan2(from.y - to.y, to.x - from.x) * 180) / Math.PI, ARROW_HEAD),
];

export const label = (at: PaperPoint, words: string): Mark =>
  text(at, words, { size: SIZE.label, align: 'middle' });
