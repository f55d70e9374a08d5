/**
 * Whole places of the columns that are moved, by branch and bound over their ranges.
 *
 * In    rows d + A x, for each column the places left to it
 * Out   answers that do, each offered as it is found, cheaper ones after dearer ones
 */
import type { MovesProblem, Place } from './fewest-moves.ts';
import { effortPerX, type Ranged, tightened } from './place-ranges.ts';
import { leastCost } from './range-program.ts';

export interface PlacesWanted {
  /** Told before each linear program. */
  readonly asked: () => boolean;
  /** Whether answers that take at least so much effort are not wanted. */
  readonly dear: (effort: number) => boolean;
  /** An answer; whether others are wanted. */
  readonly take: (chosen: readonly Place[]) => 'enough' | 'go on';
}

/** First and last place still open of each column. */
interface Node {
  readonly from: Int32Array;
  readonly to: Int32Array;
}

export function leastEffort(
  problem: Pick<MovesProblem, 'a' | 'd'>,
  of: Ranged,
  within: number,
  { asked, dear, take }: PlacesWanted,
): void {
  const found = tightened(problem, of, within, asked);
  if (found === undefined) return;
  const { places } = found;
  const { a, d } = problem;
  const cost = effortPerX(places);
  const stack: Node[] = [
    { from: new Int32Array(places.length), to: Int32Array.from(places, (each) => each.length - 1) },
  ];
  while (stack.length > 0) {
    const node = stack.pop()!;
    const low = Float64Array.from(places, (each, j) => each[node.from[j]!]!.x);
    const high = Float64Array.from(places, (each, j) => each[node.to[j]!]!.x);
    asked();
    const bound = leastCost({ a, d, low, high, cost }, within);
    if (bound === undefined || dear(bound.cost)) continue;
    const between = mostBetween(places, node, bound.x);
    if (between !== undefined) {
      stack.push(...halves(places, node, between, bound.x[between]!));
      continue;
    }
    const chosen = places.map((each, j) => nearestPlace(each, bound.x[j]!));
    if (take(chosen) === 'enough') return;
    if (dear(bound.cost)) continue;
    // it may not be had, or its places may cost more than the straight line has it: the widest column is opened further
    const open = widest(node);
    if (open >= 0) stack.push(...opened(node, open, places[open]!.indexOf(chosen[open]!)));
  }
}

const nearestPlace = (places: readonly Place[], x: number): Place =>
  places.reduce((best, each) => (Math.abs(each.x - x) < Math.abs(best.x - x) ? each : best));

/** The column whose x lies furthest from any of its places, in parts of its first step; none where all lie on one. */
function mostBetween(
  places: readonly (readonly Place[])[],
  { from, to }: Node,
  x: Float64Array,
): number | undefined {
  let at: number | undefined;
  let most = 1e-7;
  x.forEach((value, j) => {
    if (from[j] === to[j]) return;
    const of = places[j]!;
    const off = Math.abs(nearestPlace(of, value).x - value) / (1e-12 + Math.abs(of[1]!.x - of[0]!.x));
    if (off > most) {
      most = off;
      at = j;
    }
  });
  return at;
}

const cut = (node: Node, j: number, from: number, to: number): Node => ({
  from: node.from.map((value, k) => (k === j ? from : value)),
  to: node.to.map((value, k) => (k === j ? to : value)),
});

/** The node below x and above it; the nearer half is looked at first. */
function halves(places: readonly (readonly Place[])[], node: Node, j: number, x: number): Node[] {
  const of = places[j]!;
  const above = of.findIndex((place) => place.x > x);
  const split = Math.max(node.from[j]! + 1, Math.min(above, node.to[j]!));
  const [below, over] = [cut(node, j, node.from[j]!, split - 1), cut(node, j, split, node.to[j]!)];
  return x - of[split - 1]!.x < of[split]!.x - x ? [over, below] : [below, over];
}

function widest({ from, to }: Node): number {
  let at = -1;
  for (let j = 0; j < from.length; j += 1)
    if (to[j]! > from[j]! && (at < 0 || to[j]! - from[j]! > to[at]! - from[at]!)) at = j;
  return at;
}

/** The node with one column below, at, and above a place; the last is looked at first. */
function opened(node: Node, j: number, at: number): Node[] {
  const parts: Node[] = [];
  if (at < node.to[j]!) parts.push(cut(node, j, at + 1, node.to[j]!));
  if (at > node.from[j]!) parts.push(cut(node, j, node.from[j]!, at - 1));
  parts.push(cut(node, j, at, at));
  return parts;
}
