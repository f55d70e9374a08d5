/**
 * Where the figures stand on the drawing: in a column to each side, leaders that do not cross one another.
 *
 * In    spots of the drawing that figures belong to, the paper's size, heights of the labels
 * Out   for each a place in the left or the right column
 */
import type { Spot } from '../scene/look.ts';

export interface Wanted {
  readonly id: string;
  readonly spot: Spot;
  readonly height: number;
}

export interface Placed extends Wanted {
  readonly column: 'left' | 'right';
  /** Top edge of the label. */
  readonly top: number;
}

export interface Paper {
  readonly width: number;
  readonly top: number;
  readonly bottom: number;
  /** Where leaders leave the columns, from the left and from the right edge. */
  readonly column: number;
  readonly gap: number;
  /** Which sides of the paper are kept free for figures. */
  readonly sides: Sides;
}

export type Sides = 'left' | 'right' | 'both';

export function layLabels(wanted: readonly Wanted[], paper: Paper): readonly Placed[] {
  const { left, right } = shared(wanted, paper);
  return [...stacked(left, 'left', paper), ...stacked(right, 'right', paper)];
}

/** All to the one side that is kept free for them, or each to the nearer side and no side with more than half. */
function shared(
  wanted: readonly Wanted[],
  { sides, width }: Paper,
): { left: readonly Wanted[]; right: readonly Wanted[] } {
  if (sides === 'left') return { left: wanted, right: [] };
  if (sides === 'right') return { left: [], right: wanted };
  const byX = [...wanted].sort((a, b) => a.spot.x - b.spot.x || a.spot.y - b.spot.y);
  const nearLeft = byX.filter((each) => each.spot.x < width / 2).length;
  const half = Math.ceil(byX.length / 2);
  const count = Math.min(Math.max(nearLeft, byX.length - half), half);
  return { left: byX.slice(0, count), right: byX.slice(count) };
}

function stacked(wanted: readonly Wanted[], column: 'left' | 'right', paper: Paper): readonly Placed[] {
  let order = [...wanted].sort((a, b) => a.spot.y - b.spot.y);
  let placed = spaced(order, column, paper);
  // two leaders that cross are uncrossed by changing places: each change shortens their sum, so this ends
  for (let round = 0; round < 12; round += 1) {
    const pair = crossing(placed, paper);
    if (pair === undefined) break;
    const [i, j] = pair;
    order = order.map((each, k) => (k === i ? order[j]! : k === j ? order[i]! : each));
    placed = spaced(order, column, paper);
  }
  return placed;
}

/** As near to their spots' heights as they go without touching, in this order. */
function spaced(order: readonly Wanted[], column: 'left' | 'right', paper: Paper): readonly Placed[] {
  const tops: number[] = [];
  let least = paper.top;
  for (const each of order) {
    const top = Math.max(least, each.spot.y - each.height / 2);
    tops.push(top);
    least = top + each.height + paper.gap;
  }
  let most = paper.bottom;
  for (let k = order.length - 1; k >= 0; k -= 1) {
    tops[k] = Math.min(tops[k]!, most - order[k]!.height);
    most = tops[k]! - paper.gap;
  }
  return order.map((each, k) => ({ ...each, column, top: tops[k]! }));
}

/** Where the leader leaves the label: at the foot of its figure, on the side of the drawing. */
export const leaderStart = (label: Placed, paper: Paper): Spot => ({
  x: label.column === 'left' ? paper.column : paper.width - paper.column,
  y: label.top + label.height / 2,
});

function crossing(placed: readonly Placed[], paper: Paper): readonly [number, number] | undefined {
  for (let i = 0; i < placed.length; i += 1) {
    for (let j = i + 1; j < placed.length; j += 1) {
      const a = placed[i]!;
      const b = placed[j]!;
      if (cross(leaderStart(a, paper), a.spot, leaderStart(b, paper), b.spot)) return [i, j];
    }
  }
  return undefined;
}

const turn = (a: Spot, b: Spot, c: Spot): number => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);

const cross = (a: Spot, b: Spot, c: Spot, d: Spot): boolean =>
  turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;
