/**
 * One pipe bent anew with its length held: the least change of its corners that keeps what is asked of its shape.
 *
 * In    a pipe, the numbers of it that are held at a value, the numbers from which the rest changes as little as may be
 * Out   the pipe with its length on the target to 1e-9 mm, no straight below its least and no bend beyond its greatest;
 *       or what stands in the way
 *
 * A step goes down the distance from the rest within what the constraints leave free; then Newton's steps of least
 * size bring the pipe back on the constraints. Straights and bends at their limits join the constraints, and leave them
 * when they pull the other way. Equations RT-13 to RT-15 of docs/theory/gas-path-routing.md.
 *
 * [1]  D. G. Luenberger, Y. Ye, Linear and Nonlinear Programming, 4th ed., ch. 12: the gradient projection method
 *      (from memory)
 */
import type { PipeShape } from './shape.ts';
import type { Site } from './site.ts';
import { earlyBy, lateBy, type ReadyStep, shortBy, stretch, stretchOf } from './steps.ts';

export interface Bar {
  /** Which straight, bend or step of the tube has come to its limit; without it the length alone cannot be held. */
  readonly what: 'length' | 'straight' | 'angle' | 'step';
  /** Straight of this leg, from 0; or bend at this corner, from 1; or step, from 0. */
  readonly at: number;
  /** Its limit: mm or degrees; of a step where it is to stand. */
  readonly limit: number;
}

/** On the constraints within so much, mm. */
const ON = 1e-9;
/** No number moves farther in one step, mm. */
const LONGEST = 40;
/** A millimetre for a radian of a bend's angle, as the search has it. RT-7 */
const PER_RADIAN = 60;
/** What may bar a step: its straight begins too late, ends too early, is too short.  [RT-30] */
const STEP_WAYS = ['late', 'early', 'short'] as const;
type Way = (typeof STEP_WAYS)[number];
const WAYS = STEP_WAYS.length;
const STEPS = 40;
/** Less than this is no change, mm. */
const STILL = 1e-7;

export function holdLength(
  site: Site,
  pipe: PipeShape,
  held: ReadonlyMap<number, number>,
  rest: ArrayLike<number>,
): Bar | undefined {
  return new Holding(site, pipe, held, rest).come();
}

class Holding {
  private readonly site: Site;
  private readonly pipe: PipeShape;
  private readonly rest: ArrayLike<number>;
  private readonly free: readonly number[];
  /** Straights 0 to K, bends K + 1 to 2 K, then both ends of the straight of each step, that stand at their limit. */
  private readonly active: number[] = [];
  private readonly row: Float64Array;
  private readonly nowhere = new Float64Array(6);
  private readonly origin = new Float64Array(3);

  constructor(site: Site, pipe: PipeShape, held: ReadonlyMap<number, number>, rest: ArrayLike<number>) {
    this.site = site;
    this.pipe = pipe;
    this.rest = rest;
    this.row = new Float64Array(pipe.numbers);
    this.free = Array.from({ length: pipe.numbers }, (_, q) => q).filter((q) => !held.has(q));
    for (const [q, value] of held) pipe.x[q] = value;
  }

  come(): Bar | undefined {
    const { pipe, free, active } = this;
    const barred = this.restore();
    if (barred !== undefined) return barred;
    let far = this.far();
    for (let step = 0; step < STEPS; step++) {
      const rows = this.rows();
      const wish = free.map((q) => this.rest[q]! - pipe.x[q]!);
      const force = solved(
        rows,
        rows.map((row) => inner(row, wish)),
      );
      if (force === undefined) return undefined;
      // a limit that holds the pipe back from where it wants to go stays; the one that draws is let go
      const drawn = force.findIndex((f, j) => j > 0 && f > STILL);
      if (drawn > 0 && step < STEPS / 2) {
        active.splice(drawn - 1, 1);
        continue;
      }
      const go = wish.map((w, n) => w - rows.reduce((sum, row, j) => sum + force[j]! * row[n]!, 0));
      const size = Math.max(...go.map(Math.abs), 0);
      if (size < STILL) return undefined;
      if (!this.walk(go, Math.min(1, LONGEST / size), far)) return undefined;
      far = this.far();
    }
    return undefined;
  }

  /** Goes a way and back on the constraints, less far until it comes nearer to the rest; false where it does not. */
  private walk(go: readonly number[], share: number, far: number): boolean {
    const { pipe, free, active } = this;
    const from = pipe.x.slice();
    const stood = [...active];
    for (let k = share; k > share / 300; k /= 2) {
      free.forEach((q, n) => {
        pipe.x[q] = from[q]! + k * go[n]!;
      });
      if (this.restore() === undefined && this.far() < far) return true;
      active.splice(0, active.length, ...stood);
      pipe.x.set(from);
    }
    pipe.lay();
    return false;
  }

  /** Sum of squares of what has changed. RT-13 */
  private far(): number {
    return this.free.reduce((sum, q) => sum + (this.pipe.x[q]! - this.rest[q]!) ** 2, 0);
  }

  /** Back on the constraints by steps of least size; what does not let it. RT-15 */
  private restore(): Bar | undefined {
    const { pipe, free, active } = this;
    for (let step = 0; step < 24; step++) {
      pipe.lay();
      for (const each of this.breached()) if (!active.includes(each)) active.push(each);
      const off = [pipe.length - this.site.problem.length.target, ...active.map((each) => this.room(each))];
      if (Math.max(...off.map(Math.abs)) < ON) return undefined;
      if (active.length >= free.length) return this.bar();
      const rows = this.rows();
      const force = solved(rows, off);
      if (force === undefined) return this.bar();
      const back = free.map((_, n) => rows.reduce((sum, row, j) => sum + force[j]! * row[n]!, 0));
      const size = Math.max(...back.map(Math.abs));
      const share = Math.min(1, LONGEST / size);
      free.forEach((q, n) => {
        pipe.x[q]! -= share * back[n]!;
      });
    }
    return this.bar();
  }

  private breached(): number[] {
    const found: number[] = [];
    const last = 2 * this.pipe.corners + WAYS * this.site.steps.length;
    for (let each = 0; each <= last; each++) if (this.room(each) < -ON) found.push(each);
    return found;
  }

  /** What a straight has beyond its least, a bend to its greatest, or a step to where its straight lets it stand, mm. */
  private room(each: number): number {
    const { corners: K } = this.pipe;
    if (each > 2 * K) {
      const { step, way } = this.onStretch(each);
      if (way === 'late') return -lateBy(step);
      if (way === 'early') return -earlyBy(step);
      // of a step that may not be off at all the other two say the same
      return step.within === 0 ? Infinity : -shortBy(step);
    }
    return each <= K
      ? this.pipe.straight(each) - this.least(each)
      : PER_RADIAN * (this.site.maxBend - this.pipe.angle[each - K]!);
  }

  /** The step that a number beyond the bends stands for, and what may bar it; its straight is put into `stretch`. */
  private onStretch(each: number): { readonly j: number; readonly step: ReadyStep; readonly way: Way } {
    const beyond = each - 2 * this.pipe.corners - 1;
    const j = Math.floor(beyond / WAYS);
    stretchOf(this.pipe, this.pipe.stepOn[j]!);
    return { j, step: this.site.steps[j]!, way: STEP_WAYS[beyond % WAYS]! };
  }

  private pullStep(each: number): void {
    const { pipe } = this;
    const { way } = this.onStretch(each);
    if (way !== 'early') pipe.pullFrom(stretch.first, -1);
    if (way === 'late') return;
    pipe.pullFrom(stretch.last, 1);
    pipe.pullStraight(stretch.last, 1);
  }

  private least(leg: number): number {
    const { limits } = this.site.problem;
    if (leg === 0) return limits.minStraightFlange;
    return leg === this.pipe.corners ? limits.minStraightCollector : limits.minStraightBetween;
  }

  /** Slopes of the length and of what stands at its limit, by what is free. RT-14 */
  private rows(): Float64Array[] {
    const { pipe, free, row } = this;
    const K = pipe.corners;
    const taken = (): Float64Array => {
      pipe.gather(row, 0, this.nowhere, 0, this.origin);
      return Float64Array.from(free, (q) => row[q]!);
    };
    pipe.clear();
    pipe.pullLength(1);
    const rows = [taken()];
    for (const each of this.active) {
      pipe.clear();
      if (each <= K) pipe.pullStraight(each, 1);
      else if (each <= 2 * K) pipe.pullAngle(each - K, -PER_RADIAN);
      else this.pullStep(each);
      rows.push(taken());
    }
    return rows;
  }

  private bar(): Bar {
    const each = this.active.at(-1);
    const K = this.pipe.corners;
    if (each === undefined) return { what: 'length', at: 0, limit: this.site.problem.length.target };
    if (each > 2 * K) {
      const { j, step } = this.onStretch(each);
      return { what: 'step', at: j, limit: step.from };
    }
    return each <= K
      ? { what: 'straight', at: each, limit: this.least(each) }
      : { what: 'angle', at: each - K, limit: this.site.problem.limits.maxBendDeg };
  }
}

const inner = (a: ArrayLike<number>, b: ArrayLike<number>): number => {
  let sum = 0;
  for (let n = 0; n < a.length; n++) sum += a[n]! * b[n]!;
  return sum;
};

/** y of (A A') y = b, by elimination with the largest pivot; undefined where rows depend on each other. */
function solved(rows: readonly Float64Array[], b: readonly number[]): number[] | undefined {
  const m = rows.length;
  const table = rows.map((row, i) => [...rows.map((other) => inner(row, other)), b[i]!]);
  const scale = Math.max(...table.map((line, i) => line[i]!));
  for (let c = 0; c < m; c++) {
    let pick = c;
    for (let r = c + 1; r < m; r++) if (Math.abs(table[r]![c]!) > Math.abs(table[pick]![c]!)) pick = r;
    if (!(Math.abs(table[pick]![c]!) > 1e-9 * scale)) return undefined;
    [table[c], table[pick]] = [table[pick]!, table[c]!];
    for (let r = 0; r < m; r++) {
      if (r === c) continue;
      const k = table[r]![c]! / table[c]![c]!;
      for (let q = c; q <= m; q++) table[r]![q]! -= k * table[c]![q]!;
    }
  }
  return table.map((line, i) => line[m]! / line[i]!);
}
