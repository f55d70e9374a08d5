/**
 * Whole moves: of the choices that each column has, those that bring all rows within their ranges with the fewest
 * columns moved, and of these the least effort.
 *
 * In    rows d + A x in units of their own tolerance, for each column the places that it may take
 * Out   one place a column; whether it is proved that there is nothing better
 *
 * Branch and bound: places that no answer takes are left out first (narrowed-places.ts), then the linear program of
 * least weighted |x| bounds how many columns must move, and how much effort.
 * Where nothing brings every row within ± 1, those that cannot be are given the room that they lack (least-room.ts).
 *
 * [W] Wolsey, Integer Programming, 2nd ed., ch. 7: branch and bound (from memory)
 */
import { leastRoom, roomInPlaces } from './least-room.ts';
import { narrowedPlaces } from './narrowed-places.ts';
import { leastCost, type RangeProgram } from './range-program.ts';

export interface Place {
  readonly x: number;
  readonly effort: number;
}

export interface MovesProblem {
  readonly a: readonly Float64Array[];
  readonly d: Float64Array;
  /** For each column its places, sorted by x; one of them is nothing. */
  readonly places: readonly (readonly Place[])[];
  /** What places may not be taken together; left out, all may. */
  readonly together?: (chosen: readonly Place[]) => boolean;
  /** Nodes looked at before the search ends without proof. */
  readonly mostNodes?: number;
}

export interface Moves {
  readonly chosen: readonly Place[];
  readonly moved: number;
  readonly effort: number;
  /** Largest row afterwards, in tolerances. */
  readonly worst: number;
  readonly proved: boolean;
}

const HAIR = 1e-9;
const LOOSE = 1e-6;
const USUAL_NODES = 150;
const FEW_NODES = 80;
/** That nothing brings every row home is looked into so many times longer than how it is done best. */
const FIRST = 10;
/** Nodes looked at for the room that rows need. */
const ROOM_NODES = 400;

/** The fewest moves; never fails, since nothing moved is an answer too. */
export function fewestMoves(problem: MovesProblem): Moves {
  const nothing = problem.places.map((places) => places.find(({ x }) => x === 0)!);
  const none: Moves = {
    chosen: nothing,
    moved: 0,
    effort: 0,
    worst: worstRow(problem, nothing),
    proved: true,
  };
  if (none.worst <= 1) return none;
  const home = begin(problem, 1, FIRST * nodesOf(problem));
  const found = home.start === undefined ? withRoom(problem, nothing) : finished(home, 1);
  return {
    ...found,
    worst: worstRow(problem, found.chosen),
    // where it is not known that none brings every row home, this is not known to be the best
    proved: found.proved && home.ended,
  };
}

/** By how much more than the least room between whole places rows are let go, until whole places are found. */
const MORE_ROOM = [1, 1.05, 1.1, 1.2, 1.35, 1.5, 2, 3];

/** Rows that cannot be brought home are given the room that they lack; the others stay as they are asked. */
function withRoom(problem: MovesProblem, nothing: readonly Place[]): Moves {
  const { low, high } = programOf(problem);
  const between = leastRoom({ ...problem, low, high });
  if (between.some((each) => each > LOOSE)) {
    let known = true;
    for (const more of MORE_ROOM) {
      const room = between.map((each) => (each > LOOSE ? (1 + each) * more - 1 : 0));
      const begun = begin(eased(problem, room), 1, nodesOf(problem));
      if (begun.start !== undefined) {
        const is = finished(begun, 1);
        return { ...is, proved: is.proved && known };
      }
      known = known && begun.ended;
    }
  }
  // whole places need room where places between would not
  const { chosen, room, ended } = roomInPlaces(problem, nothing, ROOM_NODES);
  const given = eased(problem, room);
  const within = 1 + HAIR;
  const known = {
    chosen,
    moved: chosen.filter(({ x }) => x !== 0).length,
    effort: chosen.reduce((sum, { effort }) => sum + effort, 0),
    worst: worstRow(given, chosen),
    proved: false,
  };
  const begun = begin(given, within, 0);
  const start = begun.start !== undefined && fewer(begun.start, known) ? begun.start : known;
  return finished({ start, left: begun.left, ended }, within);
}

const eased = (problem: MovesProblem, room: Float64Array): MovesProblem => ({
  ...problem,
  a: problem.a.map((row, i) => row.map((each) => each / (1 + room[i]!))),
  d: problem.d.map((each, i) => each / (1 + room[i]!)),
});

const fewer = (one: Moves, other: Moves): boolean =>
  one.moved < other.moved || (one.moved === other.moved && one.effort < other.effort);

function finished({ start, left, ended }: Begun, within: number): Moves {
  const found = branchAndBound(left, within, { ...(start && { known: start }), most: nodesOf(left) });
  return { ...found.best!, proved: found.ended && ended };
}

const nodesOf = ({ mostNodes }: MovesProblem): number => mostNodes ?? USUAL_NODES;

interface Begun {
  readonly start: Moves | undefined;
  /** The problem without the places that no answer takes. */
  readonly left: MovesProblem;
  /** Whether it is known that there is none, where none is found. */
  readonly ended: boolean;
}

/** A first answer within a range. */
function begin(problem: MovesProblem, within: number, most: number): Begun {
  const left = narrowed(problem, within);
  if (left === undefined) return { start: undefined, left: problem, ended: true };
  const few = sparse(left, within);
  if (few === undefined) return { start: undefined, left, ended: true };
  if (few.best !== undefined) return { start: few.best, left, ended: true };
  // no whole moves of few columns do: any that do, whatever they move
  const { best, ended } = branchAndBound(left, within, { most, first: true });
  return { start: best, left, ended: ended || best !== undefined };
}

function narrowed(problem: MovesProblem, within: number): MovesProblem | undefined {
  const places = narrowedPlaces(problem, problem.places, within);
  return places && { ...problem, places };
}

/** Rounds in which what moved little is made dearer, so that few move at all. */
const ROUNDS = 4;

/**
 * Few moves, quickly: columns that are needed least are made dearer and then left out one by one, and what remains
 * is brought to whole moves. Good, not proved best; undefined where not even parts of moves do.
 *
 * [CWB] Candès, Wakin & Boyd, Enhancing sparsity by reweighted ℓ1 minimization, 2008 (from memory)
 */
function sparse(problem: MovesProblem, within: number): Searched | undefined {
  const { places } = problem;
  const whole = programOf(problem);
  const reach = Float64Array.from(whole.low, (x, j) => Math.max(-x, whole.high[j]!, HAIR));
  let cost = Float64Array.from(reach, (x) => 1 / x);
  let x: Float64Array | undefined;
  for (let round = 0; round < ROUNDS; round += 1) {
    const found = leastCost({ ...whole, cost }, within);
    if (found === undefined) return undefined;
    x = found.x;
    cost = Float64Array.from(reach, (most, j) => 1 / (Math.abs(x![j]!) + 0.02 * most));
  }
  const order = Array.from(x!, (_, j) => j).sort(
    (i, j) => Math.abs(x![i]!) / reach[i]! - Math.abs(x![j]!) / reach[j]!,
  );
  const low = Float64Array.from(whole.low);
  const high = Float64Array.from(whole.high);
  const kept = new Set(order);
  for (const j of order) {
    const [before, after] = [low[j]!, high[j]!];
    low[j] = 0;
    high[j] = 0;
    if (leastCost({ ...whole, low, high, cost }, within) === undefined) {
      low[j] = before;
      high[j] = after;
    } else kept.delete(j);
  }
  const few = places.map((each, j) => (kept.has(j) ? each : each.filter((place) => place.x === 0)));
  return branchAndBound({ ...problem, places: few }, within, { most: FEW_NODES });
}

const programOf = ({ a, d, places }: MovesProblem): RangeProgram => ({
  a,
  d,
  low: Float64Array.from(places, (each) => each[0]!.x),
  high: Float64Array.from(places, (each) => each.at(-1)!.x),
  cost: Float64Array.from(places, () => 1),
});

function worstRow({ a, d }: MovesProblem, chosen: readonly Place[]): number {
  return a.reduce((worst, row, i) => {
    const at = chosen.reduce((sum, { x }, j) => sum + row[j]! * x, d[i]!);
    return Math.max(worst, Math.abs(at));
  }, 0);
}

interface Node {
  /** First and last place still open of each column. */
  readonly from: Int32Array;
  readonly to: Int32Array;
}

interface Searched {
  readonly best: Moves | undefined;
  /** Whether every place was looked at, or shown to be no better. */
  readonly ended: boolean;
}

/** The best in whole moves, begun with what is known; `first`: the first that does is enough. */
function branchAndBound(
  problem: MovesProblem,
  within: number,
  { known, most, first = false }: { readonly known?: Moves; readonly most: number; readonly first?: boolean },
): Searched {
  const { a, d, places } = problem;
  const n = places.length;
  const zero = places.map((each) => each.findIndex(({ x }) => x === 0));
  const whole = places.every((each) => each.every(({ effort }) => Number.isInteger(effort)));
  let best = known;
  let nodes = 0;
  const stack: Node[] = [{ from: new Int32Array(n), to: Int32Array.from(places, (each) => each.length - 1) }];
  while (stack.length > 0) {
    if (nodes >= most) return { best, ended: false };
    nodes += 1;
    const node = stack.pop()!;
    const low = Float64Array.from(places, (each, j) => each[node.from[j]!]!.x);
    const high = Float64Array.from(places, (each, j) => each[node.to[j]!]!.x);
    const fixed = low.reduce((count, x, j) => count + (x > 0 || high[j]! < 0 ? 1 : 0), 0);
    const reach = Float64Array.from(low, (x, j) => Math.max(Math.abs(x), Math.abs(high[j]!)));
    // a column whose range leaves nothing out counts as a part of one move
    const cost = Float64Array.from(reach, (x, j) => (low[j]! > 0 || high[j]! < 0 || x === 0 ? 1e-6 : 1 / x));
    const loose = leastCost({ a, d, low, high, cost }, within);
    if (loose === undefined) continue;
    const parts = loose.x.reduce(
      (sum, x, j) => sum + (low[j]! > 0 || high[j]! < 0 || reach[j] === 0 ? 0 : Math.abs(x) / reach[j]!),
      0,
    );
    const leastMoved = fixed + Math.ceil(parts - 1e-6);
    if (best !== undefined && leastMoved > best.moved) continue;
    const bound = { x: loose.x, effort: 0 };
    if (best !== undefined && leastMoved === best.moved) {
      const lines = places.map((each, j) => leastEffort(each.slice(node.from[j]!, node.to[j]! + 1)));
      const effort = leastCost({ a, d, low, high, cost: Float64Array.from(lines, (l) => l.perX) }, within);
      if (effort === undefined) continue;
      bound.effort = effort.cost + lines.reduce((sum, l) => sum + l.beside, 0);
      if (whole) bound.effort = Math.ceil(bound.effort - 1e-6);
      bound.x = effort.x;
      if (bound.effort > best.effort - 1e-6) continue;
    }
    const { x } = bound;
    const split = splitOf(places, node, zero, x);
    if (split === undefined) {
      const chosen = places.map((each, j) => nearestPlace(each, x[j]!));
      const worst = worstRow(problem, chosen);
      const moved = chosen.reduce((count, place) => count + (place.x === 0 ? 0 : 1), 0);
      const effort = chosen.reduce((sum, place) => sum + place.effort, 0);
      const allowed = worst <= within + LOOSE && (problem.together?.(chosen) ?? true);
      if (
        allowed &&
        (best === undefined || moved < best.moved || (moved === best.moved && effort < best.effort - 1e-9))
      ) {
        best = { chosen, moved, effort, worst, proved: true };
        if (first) return { best, ended: false };
      }
      // a place found is not the only one of its node: the widest column is opened further
      const open = widest(node);
      if (open >= 0) stack.push(...opened(node, open, places[open]!.indexOf(chosen[open]!)));
      continue;
    }
    stack.push(...split);
  }
  return { best, ended: true };
}

/** A straight line in |x| that no place of a column lies below in effort: slope, and what stands beside it. */
function leastEffort(places: readonly Place[]): { readonly perX: number; readonly beside: number } {
  const from = places.reduce((least, { x }) => Math.min(least, Math.abs(x)), Number.POSITIVE_INFINITY);
  const least = (of: readonly Place[]): number =>
    of.reduce((lowest, { effort }) => Math.min(lowest, effort), Number.POSITIVE_INFINITY);
  const [start, beyond] = [
    least(places.filter(({ x }) => Math.abs(x) === from)),
    places.filter(({ x }) => Math.abs(x) > from),
  ];
  const perX = beyond.reduce(
    (slope, { x, effort }) => Math.min(slope, (effort - start) / (Math.abs(x) - from)),
    Number.POSITIVE_INFINITY,
  );
  if (perX > 0 && Number.isFinite(perX)) return { perX, beside: start - perX * from };
  return { perX: 0, beside: least(places) };
}

const nearestPlace = (places: readonly Place[], x: number): Place =>
  places.reduce((best, each) => (Math.abs(each.x - x) < Math.abs(best.x - x) ? each : best));

function widest({ from, to }: Node): number {
  let at = -1;
  for (let j = 0; j < from.length; j += 1)
    if (to[j]! > from[j]! && (at < 0 || to[j]! - from[j]! > to[at]! - from[at]!)) at = j;
  return at;
}

const cut = (node: Node, j: number, from: number, to: number): Node => ({
  from: node.from.map((value, k) => (k === j ? from : value)),
  to: node.to.map((value, k) => (k === j ? to : value)),
});

/** The node with one column below, at, and above a place; the last is looked at first. */
function opened(node: Node, j: number, at: number): Node[] {
  const parts: Node[] = [];
  if (at < node.to[j]!) parts.push(cut(node, j, at + 1, node.to[j]!));
  if (at > node.from[j]!) parts.push(cut(node, j, node.from[j]!, at - 1));
  parts.push(cut(node, j, at, at));
  return parts;
}

/** Two or three parts of a node whose linear answer is no answer in whole moves; none where it is one. */
function splitOf(
  places: readonly (readonly Place[])[],
  node: Node,
  zero: readonly number[],
  x: Float64Array,
): Node[] | undefined {
  let j = -1;
  let most = 1e-7;
  let undecided = -1;
  let largest = 1e-9;
  x.forEach((value, k) => {
    if (node.from[k] === node.to[k]) return;
    const z = zero[k]!;
    const open = node.from[k]! <= z && z <= node.to[k]!;
    if (open && Math.abs(value) > largest) {
      largest = Math.abs(value);
      undecided = k;
    }
    const near = nearestPlace(places[k]!, value);
    const off = Math.abs(near.x - value) / (1e-12 + Math.abs(places[k]![1]!.x - places[k]![0]!.x));
    if (off > most) {
      most = off;
      j = k;
    }
  });
  if (j < 0) return undefined;
  // first whether a column moves at all, then by how much
  if (undecided >= 0) return opened(node, undecided, zero[undecided]!);
  const of = places[j]!;
  const above = of.findIndex(({ x: place }) => place > x[j]!);
  const split = Math.max(node.from[j]! + 1, Math.min(above, node.to[j]!));
  const [below, over] = [cut(node, j, node.from[j]!, split - 1), cut(node, j, split, node.to[j]!)];
  return x[j]! - of[split - 1]!.x < of[split]!.x - x[j]! ? [over, below] : [below, over];
}
