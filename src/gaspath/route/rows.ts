/**
 * All pipes and the collector's pose as one set of numbers, and the rows of the normal equations in them.
 *
 * Pipes and the pose that are held (`moves`, `poseMoves`) keep still: their columns are not there.
 */
import { MOST_SAMPLES, PipeShape } from './shape.ts';
import type { Site } from './site.ts';
import { placeSteps, settle, thicken } from './steps.ts';

export const MOST_NUMBERS = 12 * 20 + 6;
export const BLOCK = 6;
/** Where samples are far apart a step in the tube is not felt farther than this from it, mm. */
const STEP_REACH = 4;
const MOST_BLOCKS = Math.ceil(MOST_SAMPLES / BLOCK) + 1;

export type Breach =
  | 'length'
  | 'straight'
  | 'angle'
  | 'step'
  | 'shell'
  | 'solid'
  | 'bounds'
  | 'collector body'
  | 'pipe to pipe'
  | 'self'
  | 'pose'
  | 'kept bend';

/** A corner that is kept where it is. */
export interface Pin {
  readonly pipe: number;
  /** From 1 at the port. */
  readonly corner: number;
  readonly at: readonly number[];
}

/** What is breached most, for telling. */
export interface Worst {
  by: number;
  what: Breach;
  pipe: number;
  other: number;
}

export class Rows {
  readonly site: Site;
  readonly pipes: readonly PipeShape[];
  readonly inlets: number[];
  readonly moves: boolean[];
  poseMoves = false;
  /** Kept beyond every clearance, mm. */
  margin = 1.2;
  /** Between samples of a straight, mm; bends take less. */
  spacing = 16;
  /** Most that the bends of a pipe may turn together, rad; for improving. */
  readonly turnCap: Float64Array;
  pins: readonly Pin[] = [];
  /** Shell by its triangles, not by the grid. */
  exact = false;

  readonly origin = new Float64Array(3);
  readonly axis = new Float64Array(3);
  readonly ref = new Float64Array(3);

  /** How many numbers move, and the normal equations in them. */
  numbers = 0;
  readonly normal = new Float64Array(MOST_NUMBERS * MOST_NUMBERS);
  readonly slope = new Float64Array(MOST_NUMBERS);
  readonly column: number[];
  cost = 0;
  worst: Worst = { by: 0, what: 'length', pipe: -1, other: -1 };
  /** Sum of squares by pipe, for choosing which to take out. */
  readonly blame: Float64Array;

  protected readonly block: Float64Array[];
  protected readonly row = new Float64Array(80);
  protected readonly place = new Int32Array(80);
  protected readonly poseRow = new Float64Array(6);
  protected posed = 0;
  protected slopes = false;

  constructor(site: Site) {
    this.site = site;
    this.pipes = site.problem.ports.map(({ p, d }) => {
      const made = new PipeShape();
      made.port.set(p);
      made.out.set(d);
      return made;
    });
    this.inlets = this.pipes.map(() => -1);
    this.moves = this.pipes.map(() => false);
    this.column = this.pipes.map(() => 0);
    this.block = this.pipes.map(() => new Float64Array(4 * MOST_BLOCKS));
    this.blame = new Float64Array(this.pipes.length);
    this.turnCap = new Float64Array(this.pipes.length).fill(Infinity);
    const { collector } = site.problem;
    if (collector.mode === 'fixed') this.setPose(collector.origin, collector.axis, collector.ref);
  }

  setPose(origin: ArrayLike<number>, axis: ArrayLike<number>, ref: ArrayLike<number>): void {
    this.origin.set(origin);
    this.axis.set(axis);
    this.ref.set(ref);
  }

  /** Puts the mouth of every pipe that has an inlet where the pose says. */
  seat(): void {
    for (let i = 0; i < this.pipes.length; i++) if (this.inlets[i]! >= 0) this.seatOne(i);
  }

  seatOne(i: number): void {
    const { origin: o, axis: a, ref: r, site } = this;
    const k = this.inlets[i]!;
    const c = site.inlets[2 * k]!;
    const s = site.inlets[2 * k + 1]!;
    const pipe = this.pipes[i]!;
    pipe.inlet[0] = o[0]! + c * r[0]! + s * (a[1]! * r[2]! - a[2]! * r[1]!);
    pipe.inlet[1] = o[1]! + c * r[1]! + s * (a[2]! * r[0]! - a[0]! * r[2]!);
    pipe.inlet[2] = o[2]! + c * r[2]! + s * (a[0]! * r[1]! - a[1]! * r[0]!);
    pipe.into.set(a);
  }

  /** Numbers the columns of what moves. */
  enter(): void {
    let n = 0;
    for (let i = 0; i < this.pipes.length; i++) {
      this.column[i] = this.moves[i]! ? n : -1;
      if (this.moves[i]!) n += this.pipes[i]!.numbers;
    }
    this.posed = this.poseMoves ? n : -1;
    this.numbers = this.poseMoves ? n + 6 : n;
  }

  /** Lays and samples what is there, at new divisions or at those of last time. */
  layAll(divide: boolean): void {
    for (let i = 0; i < this.pipes.length; i++) if (this.inlets[i]! >= 0) this.layOne(i, divide);
  }

  layOne(i: number, divide: boolean): void {
    const pipe = this.pipes[i]!;
    const { steps, radiiAtFlange } = this.site;
    pipe.lay();
    if (divide) {
      if (steps.length > 0) settle(pipe, steps, radiiAtFlange);
      pipe.divide(this.spacing);
    }
    pipe.sample();
    if (steps.length > 0) {
      placeSteps(pipe, steps);
      thicken(pipe, steps, Math.min(this.spacing, STEP_REACH));
    }
    this.ballUp(i);
  }

  /** A ball round every few samples, so that most pairs are ruled out at once. */
  protected ballUp(i: number): void {
    const { at, count } = this.pipes[i]!;
    const balls = this.block[i]!;
    for (let b = 0, m = 0; m < count - 1; b++, m += BLOCK) {
      const end = Math.min(count - 1, m + BLOCK);
      const mid = (m + end) >> 1;
      const x = at[3 * mid]!;
      const y = at[3 * mid + 1]!;
      const z = at[3 * mid + 2]!;
      let r2 = 0;
      for (let k = m; k <= end; k++) {
        const dx = at[3 * k]! - x;
        const dy = at[3 * k + 1]! - y;
        const dz = at[3 * k + 2]! - z;
        r2 = Math.max(r2, dx * dx + dy * dy + dz * dz);
      }
      balls[4 * b] = x;
      balls[4 * b + 1] = y;
      balls[4 * b + 2] = z;
      balls[4 * b + 3] = Math.sqrt(r2);
    }
  }

  /** No chord of block b of pipe i is nearer to a point than this, mm. */
  blockGap(i: number, b: number, x: number, y: number, z: number): number {
    const balls = this.block[i]!;
    const dx = balls[4 * b]! - x;
    const dy = balls[4 * b + 1]! - y;
    const dz = balls[4 * b + 2]! - z;
    return Math.sqrt(dx * dx + dy * dy + dz * dz) - balls[4 * b + 3]!;
  }

  protected note(r: number, what: Breach, pipe: number, other: number): void {
    this.cost += r * r;
    if (pipe >= 0) this.blame[pipe]! += r * r;
    if (other >= 0) this.blame[other]! += r * r;
    const by = Math.abs(r);
    if (by > this.worst.by) {
      this.worst.by = by;
      this.worst.what = what;
      this.worst.pipe = pipe;
      this.worst.other = other;
    }
  }

  protected open(i: number): void {
    this.pipes[i]!.clear();
    if (this.posed >= 0) this.poseRow.fill(0);
  }

  /** A row on one pipe (and the pose through it, and what is in poseRow already). */
  protected close(r: number, i: number): void {
    const { row, place, poseRow } = this;
    const pipe = this.pipes[i]!;
    pipe.gather(row, 0, poseRow, 0, this.origin);
    const col = this.column[i]!;
    let n = 0;
    if (col >= 0) for (; n < pipe.numbers; n++) place[n] = col + n;
    this.enterRow(r, n);
  }

  protected enterRow(r: number, count: number): void {
    const { row, place, poseRow, normal, slope, numbers, posed } = this;
    let n = count;
    if (posed >= 0)
      for (let k = 0; k < 6; k++) {
        row[n] = poseRow[k]!;
        place[n++] = posed + k;
      }
    for (let p = 0; p < n; p++) {
      const g = row[p]!;
      if (g === 0) continue;
      const at = place[p]!;
      slope[at]! += g * r;
      const o = at * numbers;
      // columns rise along the row, so this is the lower half
      for (let q = 0; q <= p; q++) normal[o + place[q]!]! += g * row[q]!;
    }
  }

  /** A residual that shrinks as sample m goes along g. */
  protected onSample(
    r: number,
    what: Breach,
    i: number,
    m: number,
    gx: number,
    gy: number,
    gz: number,
  ): void {
    this.note(r, what, i, -1);
    if (!this.slopes) return;
    this.open(i);
    this.pipes[i]!.pullSample(m, -gx, -gy, -gz);
    this.close(r, i);
  }

  protected onPair(
    r: number,
    i: number,
    m: number,
    j: number,
    k: number,
    t: number,
    gx: number,
    gy: number,
    gz: number,
  ): void {
    const { row, place, poseRow, origin } = this;
    const one = this.pipes[i]!;
    const two = this.pipes[j]!;
    this.open(i);
    two.clear();
    one.pullSample(m, -gx, -gy, -gz);
    two.pullSample(k, (1 - t) * gx, (1 - t) * gy, (1 - t) * gz);
    two.pullSample(k + 1, t * gx, t * gy, t * gz);
    let n = 0;
    one.gather(row, 0, poseRow, 0, origin);
    if (this.column[i]! >= 0) for (; n < one.numbers; n++) place[n] = this.column[i]! + n;
    const first = n;
    two.gather(row, first, poseRow, 0, origin);
    if (this.column[j]! >= 0) for (let q = 0; q < two.numbers; q++) place[n++] = this.column[j]! + q;
    this.enterRow(r, n);
  }
}
