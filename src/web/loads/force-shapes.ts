/** Shapes of the forces on paper: arrows, and figures that do not lie on one another. */
import type { Spot } from '../scene/look.ts';

const HEAD = 9;

/** A line with two barbs at its tip; a short one is only its barbs. */
export function arrowPath(from: Spot, to: Spot): string {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (length < 1) return '';
  const [ux, uy] = [(to.x - from.x) / length, (to.y - from.y) / length];
  const head = Math.min(HEAD, length);
  const barb = (side: 1 | -1): string =>
    `${to.x - head * ux + side * 0.5 * head * uy} ${to.y - head * uy - side * 0.5 * head * ux}`;
  return `M${from.x} ${from.y}L${to.x} ${to.y}M${barb(1)}L${to.x} ${to.y}L${barb(-1)}`;
}

export interface Words {
  readonly id: string;
  readonly text: string;
  readonly at: Spot;
}

/** Of letters 17 px high, as the page's figures are. */
const LETTER = 10.5;
const LINE = 22;

/** Each above its spot, or below where that is taken; left out where both are, or where it would leave the paper. */
export function clearLabels(
  words: readonly Words[],
  { width, height }: { readonly width: number; readonly height: number },
): readonly Words[] {
  const placed: Words[] = [];
  const half = (text: string): number => (text.length * LETTER) / 2;
  for (const each of words) {
    const spots = [-16, LINE + 6].map((dy): Spot => {
      const wide = half(each.text);
      return { x: Math.min(width - wide, Math.max(wide, each.at.x)), y: each.at.y + dy };
    });
    const free = spots.find(
      ({ x, y }) =>
        y > LINE &&
        y < height - 4 &&
        placed.every(
          (other) =>
            Math.abs(other.at.y - y) > LINE ||
            Math.abs(other.at.x - x) > half(other.text) + half(each.text) + 6,
        ),
    );
    if (free !== undefined) placed.push({ ...each, at: free });
  }
  return placed;
}
