/**
 * Whole moves: of the choices that each column has, those that bring all rows within their ranges with the fewest
 * columns moved, and of these the least effort.
 *
 * In    rows d + A x in units of their own tolerance, for each column the places that it may take
 * Out   one place a column; whether it is proved that nothing moves fewer, and nothing as few with less effort
 *
 * First how far each column can be moved at all (place-ranges.ts); then branch and bound over which columns are moved,
 * bounded by the linear program of least |x| over its range; where the columns are settled, over their places
 * (whole-places.ts). Fewest first, least effort among those after. Where nothing brings every row within ± 1, those that
 * cannot be are given the room that they lack (least-room.ts).
 *
 * [W] Wolsey, Integer Programming, 2nd ed., ch. 7: branch and bound (from memory)
 */
import { leastRoom, roomInPlaces } from './least-room.ts';
import { effortPerX, type Ranged, rangesOf, tightened } from './place-ranges.ts';
import { leastCost } from './range-program.ts';
import { leastEffort } from './whole-places.ts';

export interface Place {
  readonly x: number;
  readonly effort: number;
}

export interface MovesProblem {
  readonly a: readonly Float64Array[];
  readonly d: Float64Array;
  /** For each column its places, sorted by x; one of them is nothing, with no effort. */
  readonly places: readonly (readonly Place[])[];
  /** What places may not be taken together; left out, all may. */
  readonly together?: (chosen: readonly Place[]) => boolean;
  /** An answer that may do, from a problem much like this one. */
  readonly start?: readonly Place[];
  /** Linear programs worked out before the search ends without proof. */
  readonly mostPrograms?: number;
}

export interface Moves {
  readonly chosen: readonly Place[];
  readonly moved: number;
  readonly effort: number;
  /** Largest row afterwards, in tolerances. */
  readonly worst: number;
  /** That nothing moves fewer. */
  readonly proved: boolean;
  /** That nothing which moves as few takes less effort. */
  readonly leastEffort: boolean;
}

const HAIR = 1e-9;
const USUAL_PROGRAMS = 6000;
/** Where not every row can be brought home. */
const LOOK_PROGRAMS = 1500;
/** Nodes looked at for the room that rows need in whole places. */
const ROOM_NODES = 400;
/** By how much more than the least room between whole places rows are let go, until whole places are found. */
const MORE_ROOM = [1, 1.05, 1.1, 1.2, 1.35, 1.5, 2, 3];
const LOOSE = 1e-6;

/** The fewest moves; never fails, since nothing moved is an answer too. */
export function fewestMoves(problem: MovesProblem): Moves {
  const none = movesOf(
    problem,
    problem.places.map((places) => places.find(({ x }) => x === 0)!),
  );
  if (none.worst <= 1) return { ...none, proved: true, leastEffort: true };
  const most = problem.mostPrograms ?? USUAL_PROGRAMS;
  const whole = new Search(problem, 1, most);
  whole.fewest();
  if (whole.best !== undefined) return whole.finished();
  const is = withRoom(problem, none.chosen, Math.min(most, LOOK_PROGRAMS));
  // where it is not known that none brings every row home, this is not known to be the best
  return {
    ...is,
    worst: movesOf(problem, is.chosen).worst,
    proved: is.proved && whole.proved,
    leastEffort: is.leastEffort && whole.proved,
  };
}

/** Rows that cannot be brought home are given the room that they lack; the others stay as they are asked. */
function withRoom(problem: MovesProblem, nothing: readonly Place[], most: number): Moves {
  const { low, high } = rangesOf(problem.places);
  const between = leastRoom({ ...problem, low, high });
  if (between.some((each) => each > LOOSE)) {
    for (const more of MORE_ROOM) {
      const room = between.map((each) => (each > LOOSE ? (1 + each) * more - 1 : 0));
      const given = eased(problem, room);
      const look = new Search(given, 1, most / 4);
      look.any();
      if (look.best !== undefined) return best({ ...given, start: look.best.chosen }, 1, most);
    }
  }
  // whole places need room where places between would not
  const { chosen, room, ended } = roomInPlaces(problem, nothing, ROOM_NODES);
  const is = best({ ...eased(problem, room), start: chosen }, 1 + HAIR, most);
  // with less room there may be others
  return { ...is, proved: is.proved && ended, leastEffort: is.leastEffort && ended };
}

function best(problem: MovesProblem, within: number, most: number): Moves {
  const search = new Search(problem, within, most);
  search.fewest();
  return search.finished();
}

const eased = (problem: MovesProblem, room: Float64Array): MovesProblem => ({
  ...problem,
  a: problem.a.map((row, i) => row.map((each) => each / (1 + room[i]!))),
  d: problem.d.map((each, i) => each / (1 + room[i]!)),
});

function movesOf({ a, d }: MovesProblem, chosen: readonly Place[]): Moves {
  return {
    chosen,
    moved: chosen.reduce((count, { x }) => count + (x === 0 ? 0 : 1), 0),
    effort: chosen.reduce((sum, { effort }) => sum + effort, 0),
    worst: a.reduce((worst, row, i) => {
      const at = chosen.reduce((sum, { x }, j) => sum + row[j]! * x, d[i]!);
      return Math.max(worst, Math.abs(at));
    }, 0),
    proved: false,
    leastEffort: false,
  };
}

/** What is settled of a column: nothing yet, that it may be moved, that it stays. */
const OPEN = 0;
const MOVED = 1;
const STAYS = 2;

type Aim = 'any' | 'fewest' | 'least effort';

/** Thrown through the search when no linear program is left to it. */
class Spent extends Error {}

class Search {
  best: Moves | undefined;
  /** That nothing moves fewer than the best, or where there is none, that nothing does. */
  proved = false;
  private effortProved = false;
  private left: number;
  /** Nothing where no x brings every row home. */
  private readonly ranged: Ranged | undefined;
  /** Effort that a column costs at the least per |x|. */
  private readonly perX: Float64Array;
  /** Efforts are multiples of it: what is less than this better is no better. */
  private readonly grain: number;

  constructor(
    private readonly problem: MovesProblem,
    private readonly within: number,
    most: number,
  ) {
    const { places, start } = problem;
    this.left = most;
    this.ranged = tightened(problem, rangesOf(places), within, () => this.left-- > 0);
    this.perX = effortPerX(this.ranged?.places ?? places);
    this.grain = places.every((each) => each.every(({ effort }) => Number.isInteger(effort))) ? 1 : 0;
    if (start !== undefined) this.take(start);
  }

  /** Any answer that does. */
  any(): void {
    if (this.best === undefined) this.walk('any');
  }

  /** The fewest moves, then the least effort, as far as the linear programs last. */
  fewest(): void {
    this.proved = this.walk('fewest');
    if (this.proved && this.best !== undefined) this.effortProved = this.walk('least effort');
  }

  finished(): Moves {
    return { ...this.best!, proved: this.proved, leastEffort: this.effortProved };
  }

  /** @returns whether all was looked at */
  private walk(aim: Aim): boolean {
    if (this.ranged === undefined) return true;
    const { low, high, places } = this.ranged;
    const settled = Uint8Array.from(places, (each, j) =>
      low[j]! > 0 || high[j]! < 0 ? MOVED : each.length === 1 ? STAYS : OPEN,
    );
    try {
      this.columns(settled, aim);
      return true;
    } catch (reason) {
      if (reason instanceof Spent) return false;
      throw reason;
    }
  }

  private spend(): boolean {
    this.left -= 1;
    if (this.left < 0) throw new Spent();
    return true;
  }

  /** Keeps moves that do and are better than what is known. */
  private take(chosen: readonly Place[]): boolean {
    const is = movesOf(this.problem, chosen);
    if (is.worst > this.within + 1e-6 || this.problem.together?.(chosen) === false) return false;
    const { best } = this;
    if (
      best === undefined ||
      is.moved < best.moved ||
      (is.moved === best.moved && is.effort < best.effort - HAIR)
    )
      this.best = is;
    return true;
  }

  /** Most columns that an answer worth having moves. */
  private most(aim: Aim): number {
    if (this.best === undefined) return this.problem.places.length;
    return aim === 'least effort' ? this.best.moved : this.best.moved - 1;
  }

  /** No answer of this bound is worth having. */
  private dear(effort: number): boolean {
    return this.best !== undefined && effort > this.best.effort - (this.grain || HAIR) + 1e-6;
  }

  /** Settles one column after another: whether it is moved at all. */
  private columns(settled: Uint8Array, aim: Aim): void {
    if (aim === 'any' && this.best !== undefined) return;
    const { problem, within } = this;
    const { low, high } = this.ranged!;
    const spare = this.most(aim) - settled.reduce((count, each) => count + (each === MOVED ? 1 : 0), 0);
    if (spare < 0) return;
    const kept = (x: number, j: number): number =>
      settled[j] === STAYS || (spare === 0 && settled[j] === OPEN) ? 0 : x;
    const ranges = { a: problem.a, d: problem.d, low: low.map(kept), high: high.map(kept) };
    // a column that need not move counts as a part of one move
    const part = Float64Array.from(low, (x, j) => 1 / Math.max(-x, high[j]!, HAIR));
    this.spend();
    const loose = leastCost(
      { ...ranges, cost: part.map((each, j) => (settled[j] === MOVED ? 1e-6 : each)) },
      within,
    );
    if (loose === undefined) return;
    const parts = (x: Float64Array, j: number): number =>
      settled[j] === OPEN ? Math.abs(x[j]!) * part[j]! : 0;
    const asked = loose.x.reduce((sum, _, j) => sum + parts(loose.x, j), 0);
    if (Math.ceil(asked - 1e-6) > spare) return;
    let { x } = loose;
    if (aim === 'least effort') {
      this.spend();
      const cheap = leastCost({ ...ranges, cost: this.perX }, within)!;
      if (this.dear(cheap.cost)) return;
      x = cheap.x;
    }
    let next = -1;
    if (spare > 0)
      settled.forEach((each, j) => {
        if (each === OPEN && (next < 0 || parts(x, j) > parts(x, next))) next = j;
      });
    // where no open column is moved, those settled as moved may do by themselves
    if (next < 0 || parts(x, next) < HAIR) this.places(settled, aim);
    if (next < 0) return;
    for (const to of [MOVED, STAYS]) {
      const one = settled.slice();
      one[next] = to;
      this.columns(one, aim);
    }
  }

  /** Whole places of the columns that are moved, all others staying. */
  private places(settled: Uint8Array, aim: Aim): void {
    const { low, high, places } = this.ranged!;
    const stuck = settled.some((each, j) => each !== MOVED && (low[j]! > 0 || high[j]! < 0));
    if (stuck) return;
    const nothing = places.map((each) => each.filter(({ x }) => x === 0));
    const of = rangesOf(places.map((each, j) => (settled[j] === MOVED ? each : nothing[j]!)));
    leastEffort(this.problem, of, this.within, {
      asked: () => this.spend(),
      dear: (effort) => aim === 'least effort' && this.dear(effort),
      take: (chosen) => (this.take(chosen) && aim !== 'least effort' ? 'enough' : 'go on'),
    });
  }
}
