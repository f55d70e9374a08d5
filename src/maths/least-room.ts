/**
 * Where rows cannot all lie within ± 1: the room that each needs beyond it, least in sum.
 *
 * In    rows d + A x in units of their own tolerance, columns with ranges or with the places that they may take
 * Out   for each row how far beyond ± 1 it has to lie; nothing for all where all can lie within
 *
 * A sum, and not the largest: so that one row out of reach is let go alone, and does not take the others with it.
 * Each row gets a column of its own that makes up for what is missing and costs what it makes up.
 */
import { leastCost } from './range-program.ts';

export interface RoomAsked {
  readonly a: readonly Float64Array[];
  readonly d: Float64Array;
  readonly low: Float64Array;
  readonly high: Float64Array;
}

/** Of two ways with as little room the one that moves less; far below any room that counts. */
const PER_REACH = 1e-6;

export const leastRoom = (asked: RoomAsked): Float64Array => eased(asked).room;

function eased({ a, d, low, high }: RoomAsked): {
  readonly room: Float64Array;
  readonly x: Float64Array;
} {
  const [rows, columns] = [d.length, low.length];
  const reach = Float64Array.from(low, (x, j) => Math.max(Math.abs(x), Math.abs(high[j]!)));
  const wide = Float64Array.from(
    d,
    (at, i) => 1 + Math.abs(at) + a[i]!.reduce((sum, by, j) => sum + Math.abs(by) * reach[j]!, 0),
  );
  const at = (j: number): number => j - columns;
  const all = Array.from({ length: columns + rows }, (_, j) => j);
  const found = leastCost(
    {
      a: a.map((row, i) => Float64Array.from(all, (j) => (j < columns ? row[j]! : at(j) === i ? 1 : 0))),
      d,
      low: Float64Array.from(all, (j) => (j < columns ? low[j]! : -wide[at(j)]!)),
      high: Float64Array.from(all, (j) => (j < columns ? high[j]! : wide[at(j)]!)),
      cost: Float64Array.from(all, (j) => (j < columns ? PER_REACH / Math.max(reach[j]!, PER_REACH) : 1)),
    },
    1,
  )!;
  return {
    room: Float64Array.from(d, (_, i) => Math.abs(found.x[columns + i]!)),
    x: found.x.subarray(0, columns),
  };
}

interface Place {
  readonly x: number;
}

export interface PlacesAsked<P extends Place> {
  readonly a: readonly Float64Array[];
  readonly d: Float64Array;
  readonly places: readonly (readonly P[])[];
  readonly together?: (chosen: readonly P[]) => boolean;
}

export interface RoomInPlaces<P extends Place> {
  readonly chosen: readonly P[];
  /** For each row, with the places that need the least in sum. */
  readonly room: Float64Array;
  /** Whether no places need less. */
  readonly ended: boolean;
}

/** The same in whole places, as far as it is found within so many nodes; `none`: places that are allowed. */
export function roomInPlaces<P extends Place>(
  asked: PlacesAsked<P>,
  none: readonly P[],
  most: number,
): RoomInPlaces<P> {
  const { places } = asked;
  let best = { chosen: none, room: roomOf(asked, none) };
  let least = sum(best.room);
  let descents = 0;
  const stack = [{ from: places.map(() => 0), to: places.map((each) => each.length - 1), bound: 0 }];
  for (let nodes = 0; stack.length > 0; nodes += 1) {
    if (nodes >= most) return { ...best, ended: false };
    const { from, to, bound } = stack.pop()!;
    if (bound >= least - NEARER) continue;
    const low = Float64Array.from(places, (each, j) => each[from[j]!]!.x);
    const high = Float64Array.from(places, (each, j) => each[to[j]!]!.x);
    const { room, x } = eased({ ...asked, low, high });
    const total = sum(room);
    if (total >= least - NEARER) continue;
    // each column on its nearest place, and what steps from there make better, is often as good as all below this node
    const chosen = places.map((each, j) => nearest(each.slice(from[j]!, to[j]! + 1), x[j]!));
    if (descents < MOST_DESCENTS && sum(roomOf(asked, chosen)) < PROMISING * least) {
      descents += 1;
      const stepped = descended(asked, chosen);
      const of = roomOf(asked, stepped);
      if (sum(of) < least && (asked.together?.(stepped) ?? true)) {
        best = { chosen: stepped, room: of };
        least = sum(of);
      }
    }
    const j = widestOff(x, chosen, from, to, places);
    if (j < 0) continue;
    const split = places[j]!.findIndex((each) => each.x > x[j]!);
    const above = Math.max(from[j]! + 1, Math.min(split < 0 ? to[j]! : split, to[j]!));
    const below = { from, to: to.with(j, above - 1), bound: total };
    const over = { from: from.with(j, above), to, bound: total };
    stack.push(...(chosen[j]!.x >= places[j]![above]!.x ? [below, over] : [over, below]));
  }
  return { ...best, ended: true };
}

/** Steps are tried from places that need at most so many times the least room known. */
const PROMISING = 3;
const MOST_DESCENTS = 25;

/** How many places to either side one step goes. */
const STEP = 3;

/** The places from which no step of one column or of two makes the sum of the room less. */
function descended<P extends Place>({ a, d, places }: PlacesAsked<P>, start: readonly P[]): readonly P[] {
  const at = start.map((place, j) => places[j]!.indexOf(place));
  const rows = d.map((value, i) => start.reduce((all, { x }, j) => all + a[i]![j]! * x, value));
  const still = new Float64Array(rows.length);
  /** Room after two steps, or something of no less than `enough`. */
  const after = (one: Float64Array, other: Float64Array, enough: number): number => {
    let all = 0;
    for (let i = 0; i < rows.length && all < enough; i += 1)
      all += Math.max(0, Math.abs(rows[i]! + one[i]! + other[i]!) - 1);
    return all;
  };
  for (;;) {
    const steps = places.flatMap((each, j) =>
      Array.from({ length: 2 * STEP + 1 }, (_, k) => at[j]! + k - STEP)
        .filter((to) => to !== at[j] && to >= 0 && to < each.length)
        .map((to) => {
          const by = each[to]!.x - each[at[j]!]!.x;
          return { j, to, rows: Float64Array.from(a, (row) => row[j]! * by) };
        }),
    );
    let least = after(still, still, Number.POSITIVE_INFINITY) - NEARER;
    let taken: readonly (typeof steps)[number][] | undefined;
    steps.forEach((one, k) => {
      const alone = after(one.rows, still, least);
      if (alone < least) [least, taken] = [alone, [one]];
      for (let l = k + 1; l < steps.length; l += 1) {
        const other = steps[l]!;
        if (other.j === one.j) continue;
        const both = after(one.rows, other.rows, least);
        if (both < least) [least, taken] = [both, [one, other]];
      }
    });
    if (taken === undefined) return at.map((place, j) => places[j]![place]!);
    for (const { j, to, rows: by } of taken) {
      at[j] = to;
      for (let i = 0; i < rows.length; i += 1) rows[i] = rows[i]! + by[i]!;
    }
  }
}

/** What less room must be to count, in tolerances. */
const NEARER = 1e-3;

const sum = (of: Float64Array): number => of.reduce((all, each) => all + each, 0);

const nearest = <P extends Place>(places: readonly P[], x: number): P =>
  places.reduce((best, each) => (Math.abs(each.x - x) < Math.abs(best.x - x) ? each : best));

const roomOf = ({ a, d }: Pick<RoomAsked, 'a' | 'd'>, chosen: readonly Place[]): Float64Array =>
  d.map((at, i) => Math.max(0, Math.abs(chosen.reduce((all, { x }, j) => all + a[i]![j]! * x, at)) - 1));

/** Of the columns still open the one that lies furthest off its place, or else the widest; −1 where none is open. */
function widestOff(
  x: Float64Array,
  chosen: readonly Place[],
  from: readonly number[],
  to: readonly number[],
  places: readonly (readonly Place[])[],
): number {
  let [j, most] = [-1, -1];
  for (let k = 0; k < places.length; k += 1) {
    if (from[k] === to[k]) continue;
    const wide = places[k]![to[k]!]!.x - places[k]![from[k]!]!.x;
    const off = Math.abs(x[k]! - chosen[k]!.x);
    const counts = off > 1e-7 ? (1e6 * off) / wide + off : wide * 1e-12;
    if (counts > most) [j, most] = [k, counts];
  }
  return j;
}
