/**
 * A way out for a body: drawn off its studs, then straight, with a small turn, or with one shift before them. mm, degrees.
 *
 * In    the body, what stands about it, how it is drawn off first
 * Out   a way on which nothing is touched, or how many were tried and what stopped them
 *
 * A way that was found is a way: between two places that are looked at nothing can be reached, but for the last
 * millimetre and a half beside what it rests against to begin with. That none was found proves nothing.
 * GP-n are the equations of docs/theory/gas-path.md.
 */
import { add, cross, distance, dot, length, scale, sub, turned, unit, type Vec3 } from '../../maths/vec3.ts';
import type { Thing } from '../hand/surroundings.ts';
import type { Body } from './body.ts';

export interface Turn {
  /** Unit; through the middle of the body. */
  readonly axis: Vec3;
  readonly degrees: number;
}

export type Leg =
  | { readonly kind: 'draw' | 'shift' | 'out'; readonly way: Vec3; readonly mm: number }
  | ({ readonly kind: 'turn' } & Turn);

export interface WayOut {
  readonly found: boolean;
  readonly legs: readonly Leg[];
  /** Ways that were tried, this one with them. */
  readonly tried: number;
  /** What stopped most of them, and how many. */
  readonly stops: readonly { readonly name: string; readonly times: number }[];
  /** How far the best of them came, mm. */
  readonly farthest: number;
}

export interface OutAsked {
  readonly body: Body;
  readonly things: readonly Thing[];
  /** Drawn off first; `beyond` stands in the way only behind that: the body's own studs. */
  readonly draw: { readonly way: Vec3; readonly mm: number };
  readonly beyond?: readonly Thing[];
  /** Most ways that are tried. */
  readonly most?: number;
}

/** Air that is kept to everything that is not touched to begin with, mm. */
const PLAY = 1;
/** Out is so far from where it sat, mm. */
export const OUT = 600;
/** Shortest step where something is near, mm. */
const STEP = 1.5;
const TURNS = [8, -8, 16, -16, 25, -25] as const;
const DIRECTIONS = 120;
const MOST_WAYS = 1500;

interface Pose {
  readonly shift: Vec3;
  readonly turn?: Turn;
}

const SEATED: Pose = { shift: [0, 0, 0] };

export function wayOut(of: OutAsked): WayOut {
  const search = new Search(of);
  const { draw } = of;
  const legs: Leg[] = draw.mm > 0 ? [{ kind: 'draw', ...draw }] : [];
  const drawn = search.move(SEATED, draw.way, draw.mm);
  search.tried += 1;
  if (drawn < draw.mm) return search.none(drawn);
  const start: Pose = { shift: scale(draw.way, draw.mm) };
  search.drawnOff(start);
  return search.from(start, legs) ?? search.none(search.farthest);
}

class Search {
  tried = 0;
  farthest = 0;
  private readonly of: OutAsked;
  private things: readonly Thing[];
  /** Distance that each ball keeps to each thing. */
  private needs: readonly Float64Array[];
  private readonly middle: Vec3;
  private readonly reach: number;
  private readonly stops = new Map<string, number>();
  private stoppedBy = '';

  constructor(of: OutAsked) {
    this.of = of;
    const { balls } = of.body;
    this.middle = scale(balls.map(({ at }) => at).reduce(add), 1 / balls.length);
    this.reach = Math.max(...balls.map(({ at, r }) => distance(at, this.middle) + r));
    this.things = of.things;
    this.needs = of.things.map((thing) => this.needsOf(thing, SEATED));
  }

  /** No nearer than it is where it rests, or clear by the play. */
  private needsOf(thing: Thing, pose: Pose): Float64Array {
    const { ball } = thing;
    const far = ball !== undefined && this.apart(ball, pose) > PLAY;
    return Float64Array.from(this.of.body.balls, ({ at, r }) => {
      const needs = r + PLAY;
      return far ? needs : Math.min(needs, thing.from(this.placed(at, pose), needs + 1));
    });
  }

  private apart(ball: NonNullable<Thing['ball']>, { shift }: Pose): number {
    return distance(add(this.middle, shift), ball.middle) - ball.radius - this.reach;
  }

  private placed(at: Vec3, { shift, turn }: Pose): Vec3 {
    if (turn === undefined) return add(at, shift);
    const arm = turned(sub(at, this.middle), turn.axis, (turn.degrees * Math.PI) / 180);
    return add(add(this.middle, arm), shift);
  }

  /** Off its studs: from here on they stand in the way. */
  drawnOff(pose: Pose): void {
    const beyond = this.of.beyond ?? [];
    this.needs = [...this.needs, ...beyond.map((thing) => this.needsOf(thing, pose))];
    this.things = [...this.things, ...beyond];
  }

  /** How much nearer anything may come than it is; below nothing it is touched. At most `most`. */
  private spare(pose: Pose, most: number): number {
    const { balls } = this.of.body;
    const places = balls.map(({ at }) => this.placed(at, pose));
    let least = most;
    this.things.forEach((thing, k) => {
      const { ball, from, name } = thing;
      if (ball !== undefined && this.apart(ball, pose) - PLAY > least) return;
      const needs = this.needs[k]!;
      for (let b = 0; b < places.length; b += 1) {
        const need = needs[b]!;
        const x = places[b]!;
        if (ball !== undefined && distance(x, ball.middle) - ball.radius - need > least) continue;
        const spare = from(x, need + least + 1) - need;
        if (spare < least) {
          least = spare;
          this.stoppedBy = name;
        }
      }
    });
    return least;
  }

  /** How far it goes, up to `mm`: never farther at once than anything is away.  [GP-5] */
  move(from: Pose, way: Vec3, mm: number): number {
    let gone = 0;
    while (gone < mm) {
      const pose = { ...from, shift: add(from.shift, scale(way, gone)) };
      const spare = this.spare(pose, 80);
      if (spare < -1e-6) return Math.max(0, gone - STEP);
      gone += Math.max(STEP, spare);
    }
    const end = { ...from, shift: add(from.shift, scale(way, mm)) };
    return this.spare(end, 1) < -1e-6 ? Math.max(0, mm - STEP) : mm;
  }

  private turns(from: Pose, turn: Turn): boolean {
    let gone = 0;
    const all = Math.abs(turn.degrees);
    const sign = Math.sign(turn.degrees);
    while (gone < all) {
      const spare = this.spare({ ...from, turn: { axis: turn.axis, degrees: sign * gone } }, 40);
      if (spare < -1e-6) return false;
      gone += (Math.max(STEP, spare) / this.reach) * (180 / Math.PI);
    }
    return this.spare({ ...from, turn }, 1) >= -1e-6;
  }

  private count(): void {
    this.stops.set(this.stoppedBy, (this.stops.get(this.stoppedBy) ?? 0) + 1);
  }

  /** Straight out from a pose, by every direction. */
  private straight(pose: Pose, legs: readonly Leg[]): { readonly out?: WayOut; readonly far: Gone[] } {
    const far: Gone[] = [];
    for (const way of this.ways()) {
      if (this.tried >= (this.of.most ?? MOST_WAYS)) break;
      this.tried += 1;
      const gone = this.move(pose, way, OUT);
      this.farthest = Math.max(this.farthest, gone);
      if (gone >= OUT) {
        const out: Leg = { kind: 'out', way, mm: OUT };
        return { out: this.some([...legs, out]), far };
      }
      this.count();
      far.push({ way, mm: gone });
    }
    return { far: far.sort((a, b) => b.mm - a.mm) };
  }

  from(start: Pose, legs: readonly Leg[]): WayOut | undefined {
    const first = this.straight(start, legs);
    if (first.out !== undefined) return first.out;
    const turnings = this.axes().flatMap((axis) => TURNS.map((degrees): Turn => ({ axis, degrees })));
    // a shift first, as far as it went or half of it; none to begin with
    const shifts: (Gone | undefined)[] = [undefined];
    for (const { way, mm } of first.far.slice(0, 6))
      if (mm > 20) shifts.push({ way, mm }, { way, mm: mm / 2 });
    for (const shift of shifts) {
      const pose: Pose =
        shift === undefined ? start : { shift: add(start.shift, scale(shift.way, shift.mm)) };
      const before: Leg[] = shift === undefined ? [] : [{ kind: 'shift', ...shift }];
      for (const turn of turnings) {
        if (this.tried >= (this.of.most ?? MOST_WAYS)) return undefined;
        if (!this.turns(pose, turn)) {
          this.tried += 1;
          this.count();
          continue;
        }
        const { out } = this.straight({ ...pose, turn }, [...legs, ...before, { kind: 'turn', ...turn }]);
        if (out !== undefined) return out;
      }
    }
    return undefined;
  }

  /** Directions all round, those nearest the pull first. */
  private ways(): readonly Vec3[] {
    const pull = unit(this.of.draw.way);
    const golden = Math.PI * (3 - Math.sqrt(5));
    const round = Array.from({ length: DIRECTIONS }, (_, k): Vec3 => {
      const z = 1 - (2 * k + 1) / DIRECTIONS;
      const r = Math.sqrt(1 - z * z);
      return [r * Math.cos(k * golden), r * Math.sin(k * golden), z];
    });
    return [pull, ...round.sort((a, b) => dot(b, pull) - dot(a, pull))];
  }

  private axes(): readonly Vec3[] {
    const pull = unit(this.of.draw.way);
    const up: Vec3 = Math.abs(pull[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0];
    const side = unit(cross(up, pull));
    return [pull, side, cross(pull, side)];
  }

  private some(legs: readonly Leg[]): WayOut {
    return { found: true, legs, tried: this.tried, stops: this.told(), farthest: OUT };
  }

  none(farthest: number): WayOut {
    if (this.stops.size === 0) this.count();
    return { found: false, legs: [], tried: this.tried, stops: this.told(), farthest };
  }

  private told(): WayOut['stops'] {
    return [...this.stops]
      .map(([name, times]) => ({ name, times }))
      .sort((a, b) => b.times - a.times)
      .slice(0, 3);
  }
}

interface Gone {
  readonly way: Vec3;
  readonly mm: number;
}

/** Off the way in which the set is drawn: how far a stud is bent or its hole must give.  [GP-6] */
export const bindOf = (stud: Vec3, way: Vec3, long: number): number =>
  long * length(cross(unit(stud), unit(way)));
