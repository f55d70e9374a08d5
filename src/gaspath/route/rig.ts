/**
 * All pipes and the collector's pose as one set of numbers, and what is wrong with them as hinge residuals.
 *
 * Each residual is in millimetres by which something is breached, margin included; the length alone counts both
 * ways. `weigh` adds them up and, where asked, their slopes into the normal equations J'J and J'r. Pipes and the
 * pose that are held (`moves`, `poseMoves`) keep still and are felt by the others.
 *
 * Equations RT-6 to RT-11 of docs/theory/gas-path-routing.md.
 */

import { SELF_SEPARATION, SHELL_EXEMPT } from './problem.ts';
import { LEVER, MOST_SAMPLES, PipeShape } from './shape.ts';
import type { Site } from './site.ts';
import { away, toSolid } from './solids.ts';

export const MOST_NUMBERS = 8 * 20 + 6;
const BLOCK = 6;
const MOST_BLOCKS = Math.ceil(MOST_SAMPLES / BLOCK) + 1;

export type Breach =
  | 'length'
  | 'straight'
  | 'angle'
  | 'shell'
  | 'solid'
  | 'bounds'
  | 'collector body'
  | 'pipe to pipe'
  | 'self'
  | 'pose';

/** What is breached most, for telling. */
export interface Worst {
  by: number;
  what: Breach;
  pipe: number;
  other: number;
}

export class Rig {
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

  private readonly block: Float64Array[];
  private readonly row = new Float64Array(80);
  private readonly place = new Int32Array(80);
  private readonly poseRow = new Float64Array(6);
  private posed = 0;
  private slopes = false;

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
    const { n, ringRadius } = site.problem.collector;
    const turn = (2 * Math.PI * this.inlets[i]!) / n;
    const c = ringRadius * Math.cos(turn);
    const s = ringRadius * Math.sin(turn);
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
    pipe.lay();
    if (divide) pipe.divide(this.spacing);
    pipe.sample();
    this.ballUp(i);
  }

  /** A ball round every few samples, so that most pairs are ruled out at once. */
  private ballUp(i: number): void {
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

  /** Adds up everything that concerns what moves. Shapes are laid beforehand. */
  weigh(slopes: boolean): number {
    this.slopes = slopes;
    this.cost = 0;
    this.blame.fill(0);
    this.worst.by = 0;
    this.worst.pipe = -1;
    if (slopes) {
      this.normal.fill(0, 0, this.numbers * this.numbers);
      this.slope.fill(0, 0, this.numbers);
    }
    if (this.poseMoves) this.weighPose();
    for (let i = 0; i < this.pipes.length; i++) {
      if (this.inlets[i]! < 0) continue;
      if (this.moves[i]! || this.poseMoves) this.weighOne(i);
      for (let j = i + 1; j < this.pipes.length; j++)
        if (this.inlets[j]! >= 0 && (this.moves[i]! || this.moves[j]! || this.poseMoves))
          this.weighPair(i, j);
    }
    return this.cost;
  }

  private note(r: number, what: Breach, pipe: number, other: number): void {
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

  private open(i: number): void {
    this.pipes[i]!.clear();
    if (this.posed >= 0) this.poseRow.fill(0);
  }

  /** A row on one pipe (and the pose through it, and what is in poseRow already). */
  private close(r: number, i: number): void {
    const { row, place, poseRow } = this;
    const pipe = this.pipes[i]!;
    pipe.gather(row, 0, poseRow, 0, this.origin);
    const col = this.column[i]!;
    let n = 0;
    if (col >= 0) for (; n < pipe.numbers; n++) place[n] = col + n;
    this.enterRow(r, n);
  }

  private enterRow(r: number, count: number): void {
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

  private weighOne(i: number): void {
    const { site, margin } = this;
    const { problem } = site;
    const { limits, bounds, clearance } = problem;
    const pipe = this.pipes[i]!;
    const K = pipe.corners;
    const off = pipe.length - problem.length.target;
    this.note(off, 'length', i, -1);
    if (this.slopes) {
      this.open(i);
      pipe.pullLength(1);
      this.close(off, i);
    }
    for (let leg = 0; leg <= K; leg++) {
      const least =
        leg === 0
          ? limits.minStraightFlange
          : leg === K
            ? limits.minStraightCollector
            : limits.minStraightBetween;
      const r = least + 0.02 - pipe.straight(leg);
      if (r <= 0) continue;
      this.note(r, 'straight', i, -1);
      if (!this.slopes) continue;
      this.open(i);
      pipe.pullStraight(leg, -1);
      this.close(r, i);
    }
    for (let k = 1; k <= K; k++) {
      const r = 60 * (pipe.angle[k]! - site.maxBend + 0.002);
      if (r <= 0) continue;
      this.note(r, 'angle', i, -1);
      if (!this.slopes) continue;
      this.open(i);
      pipe.pullAngle(k, 60);
      this.close(r, i);
    }
    let turn = 0;
    for (let k = 1; k <= K; k++) turn += pipe.angle[k]!;
    if (turn > this.turnCap[i]!) {
      const r = 30 * (turn - this.turnCap[i]!);
      this.note(r, 'angle', i, -1);
      if (this.slopes) {
        this.open(i);
        for (let k = 1; k <= K; k++) pipe.pullAngle(k, 30);
        this.close(r, i);
      }
    }
    const { at, arc, count } = pipe;
    const { field, solids } = site;
    const needShell = site.needShell + margin;
    const needSolid = site.needSolid + margin;
    const body = problem.collectorBody.length;
    for (let m = 0; m < count; m++) {
      const x = at[3 * m]!;
      const y = at[3 * m + 1]!;
      const z = at[3 * m + 2]!;
      for (let c = 0; c < 3; c++) {
        const v = at[3 * m + c]!;
        const low = bounds.min[c]! + 0.02 - v;
        const high = v - bounds.max[c]! + 0.02;
        if (low <= 0 && high <= 0) continue;
        const sign = low > 0 ? 1 : -1;
        this.onSample(
          low > 0 ? low : high,
          'bounds',
          i,
          m,
          c === 0 ? sign : 0,
          c === 1 ? sign : 0,
          c === 2 ? sign : 0,
        );
      }
      if (arc[m]! > SHELL_EXEMPT) {
        const d = this.exact ? field.exact(x, y, z, needShell) : field.value(x, y, z);
        if (d < needShell) {
          const g = field.slope;
          this.onSample(needShell - d, 'shell', i, m, g[0]!, g[1]!, g[2]!);
        }
      }
      for (let s = 0; s < solids.length; s++) {
        const solid = solids[s]!;
        const { ball } = solid;
        const dx = x - ball[0]!;
        const dy = y - ball[1]!;
        const dz = z - ball[2]!;
        const far = ball[3]! + needSolid;
        if (dx * dx + dy * dy + dz * dz > far * far) continue;
        if (solid.flangeExempt && arc[m]! < clearance.flangeZone - this.spacing / 4) continue;
        const d = toSolid(solid, x, y, z);
        if (d < needSolid) this.onSample(needSolid - d, 'solid', i, m, away[0]!, away[1]!, away[2]!);
      }
      if (pipe.length - arc[m]! > site.zone - 0.5) this.weighBody(i, m, x, y, z, body, needSolid);
    }
    this.weighSelf(i);
  }

  private weighBody(i: number, m: number, x: number, y: number, z: number, body: number, need: number): void {
    const { origin: o, axis: a } = this;
    const px = x - o[0]!;
    const py = y - o[1]!;
    const pz = z - o[2]!;
    const t = px * a[0]! + py * a[1]! + pz * a[2]!;
    if (t < -need || t > body + need) return;
    const r2 = px * px + py * py + pz * pz - t * t;
    const far = this.site.bodyRadius + need;
    if (r2 > far * far) return;
    const radial = Math.sqrt(Math.max(r2, 1e-12));
    const end = t < body / 2 ? -1 : 1;
    const p = Math.abs(t - body / 2) - body / 2;
    const q = radial - this.site.bodyRadius;
    let d: number;
    let kp = 0;
    let kq = 0;
    if (p <= 0 && q <= 0) {
      d = Math.max(p, q);
      if (p > q) kp = 1;
      else kq = 1;
    } else {
      d = Math.hypot(Math.max(p, 0), Math.max(q, 0));
      kp = Math.max(p, 0) / d;
      kq = Math.max(q, 0) / d;
    }
    if (d >= need) return;
    const gx = end * kp * a[0]! + (kq * (px - t * a[0]!)) / radial;
    const gy = end * kp * a[1]! + (kq * (py - t * a[1]!)) / radial;
    const gz = end * kp * a[2]! + (kq * (pz - t * a[2]!)) / radial;
    this.note(need - d, 'collector body', i, -1);
    if (!this.slopes) return;
    this.open(i);
    if (this.posed >= 0) {
      // the cylinder goes with the pose: what draws the point one way draws it the other
      const w = this.poseRow;
      w[0] = gx;
      w[1] = gy;
      w[2] = gz;
      w[3] = (py * gz - pz * gy) / LEVER;
      w[4] = (pz * gx - px * gz) / LEVER;
      w[5] = (px * gy - py * gx) / LEVER;
    }
    this.pipes[i]!.pullSample(m, -gx, -gy, -gz);
    this.close(need - d, i);
  }

  /** A residual that shrinks as sample m goes along g. */
  private onSample(r: number, what: Breach, i: number, m: number, gx: number, gy: number, gz: number): void {
    this.note(r, what, i, -1);
    if (!this.slopes) return;
    this.open(i);
    this.pipes[i]!.pullSample(m, -gx, -gy, -gz);
    this.close(r, i);
  }

  /** The nearest chord to a point among those of a block: its number, and how far along in `share`. */
  private share = 0;
  private nearestChord(at: Float64Array, from: number, to: number, x: number, y: number, z: number): number {
    let best = Infinity;
    let chord = -1;
    for (let k = from; k < to; k++) {
      const o = 3 * k;
      const ux = at[o + 3]! - at[o]!;
      const uy = at[o + 4]! - at[o + 1]!;
      const uz = at[o + 5]! - at[o + 2]!;
      const px = x - at[o]!;
      const py = y - at[o + 1]!;
      const pz = z - at[o + 2]!;
      const uu = ux * ux + uy * uy + uz * uz;
      let t = uu > 0 ? (px * ux + py * uy + pz * uz) / uu : 0;
      t = t < 0 ? 0 : t > 1 ? 1 : t;
      const dx = px - t * ux;
      const dy = py - t * uy;
      const dz = pz - t * uz;
      const d2 = dx * dx + dy * dy + dz * dz;
      if (d2 < best) {
        best = d2;
        chord = k;
        this.share = t;
      }
    }
    this.gap = Math.sqrt(best);
    return chord;
  }
  private gap = 0;

  private weighPair(i: number, j: number): void {
    const { site, margin } = this;
    const one = this.pipes[i]!;
    const two = this.pipes[j]!;
    const full = site.needPipe + margin;
    const spare = 2 * site.problem.collector.ringRadius * Math.sin(Math.PI / site.problem.collector.n);
    const inZone = site.needInZone + Math.max(0, Math.min(margin, (spare - site.needInZone) / 2));
    const balls = this.block[i]!;
    const others = this.block[j]!;
    // the step in what is needed may lie between two samples
    const zone = site.zone - Math.min(this.spacing, 8) - 0.5;
    for (let b = 0, m0 = 0; m0 < one.count - 1; b++, m0 += BLOCK) {
      const bx = balls[4 * b]!;
      const by = balls[4 * b + 1]!;
      const bz = balls[4 * b + 2]!;
      const br = balls[4 * b + 3]!;
      const mEnd = m0 + BLOCK >= one.count - 1 ? one.count : m0 + BLOCK;
      for (let o = 0, k0 = 0; k0 < two.count - 1; o++, k0 += BLOCK) {
        const dx = others[4 * o]! - bx;
        const dy = others[4 * o + 1]! - by;
        const dz = others[4 * o + 2]! - bz;
        const far = br + others[4 * o + 3]! + full;
        if (dx * dx + dy * dy + dz * dz > far * far) continue;
        const kEnd = Math.min(two.count - 1, k0 + BLOCK);
        for (let m = m0; m < mEnd; m++) {
          const x = one.at[3 * m]!;
          const y = one.at[3 * m + 1]!;
          const z = one.at[3 * m + 2]!;
          const k = this.nearestChord(two.at, k0, kEnd, x, y, z);
          if (this.gap >= full) continue;
          const t = this.share;
          const ends = one.length - one.arc[m]! <= zone;
          const there = two.length - (two.arc[k]! + t * (two.arc[k + 1]! - two.arc[k]!)) <= zone;
          const need = ends && there ? inZone : full;
          const r = need - this.gap;
          if (r <= 0) continue;
          this.note(r, 'pipe to pipe', i, j);
          if (!this.slopes) continue;
          const d = Math.max(this.gap, 1e-6);
          const gx = (x - two.at[3 * k]! - t * (two.at[3 * k + 3]! - two.at[3 * k]!)) / d;
          const gy = (y - two.at[3 * k + 1]! - t * (two.at[3 * k + 4]! - two.at[3 * k + 1]!)) / d;
          const gz = (z - two.at[3 * k + 2]! - t * (two.at[3 * k + 5]! - two.at[3 * k + 2]!)) / d;
          this.onPair(r, i, m, j, k, t, gx, gy, gz);
        }
      }
    }
  }

  private onPair(
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

  private weighSelf(i: number): void {
    const pipe = this.pipes[i]!;
    const { at, arc, count } = pipe;
    const need = this.site.needSelf + this.margin;
    const apart = SELF_SEPARATION * this.site.problem.tube.od;
    const balls = this.block[i]!;
    for (let b = 0, m0 = 0; m0 < count - 1; b++, m0 += BLOCK) {
      const mEnd = Math.min(count, m0 + BLOCK);
      for (let o = b + 1, k0 = m0 + BLOCK; k0 < count - 1; o++, k0 += BLOCK) {
        const kEnd = Math.min(count - 1, k0 + BLOCK);
        if (arc[kEnd]! - arc[m0]! <= apart) continue;
        const dx = balls[4 * o]! - balls[4 * b]!;
        const dy = balls[4 * o + 1]! - balls[4 * b + 1]!;
        const dz = balls[4 * o + 2]! - balls[4 * b + 2]!;
        const far = balls[4 * b + 3]! + balls[4 * o + 3]! + need;
        if (dx * dx + dy * dy + dz * dz > far * far) continue;
        for (let m = m0; m < mEnd; m++) {
          let k1 = k0;
          while (k1 < kEnd && arc[k1]! - arc[m]! <= apart) k1++;
          if (k1 >= kEnd) continue;
          const x = at[3 * m]!;
          const y = at[3 * m + 1]!;
          const z = at[3 * m + 2]!;
          const k = this.nearestChord(at, k1, kEnd, x, y, z);
          const r = need - this.gap;
          if (r <= 0) continue;
          this.note(r, 'self', i, -1);
          if (!this.slopes) continue;
          const t = this.share;
          const d = Math.max(this.gap, 1e-6);
          const gx = (x - at[3 * k]! - t * (at[3 * k + 3]! - at[3 * k]!)) / d;
          const gy = (y - at[3 * k + 1]! - t * (at[3 * k + 4]! - at[3 * k + 1]!)) / d;
          const gz = (z - at[3 * k + 2]! - t * (at[3 * k + 5]! - at[3 * k + 2]!)) / d;
          this.open(i);
          pipe.pullSample(m, -gx, -gy, -gz);
          pipe.pullSample(k, (1 - t) * gx, (1 - t) * gy, (1 - t) * gz);
          pipe.pullSample(k + 1, t * gx, t * gy, t * gz);
          this.close(r, i);
        }
      }
    }
  }

  private weighPose(): void {
    const { collector } = this.site.problem;
    if (collector.mode !== 'free') return;
    const { origin, axis, poseRow } = this;
    for (let c = 0; c < 3; c++) {
      const keep = Math.min(0.02, (collector.boxMax[c]! - collector.boxMin[c]!) / 2);
      const low = collector.boxMin[c]! + keep - origin[c]!;
      const high = origin[c]! - collector.boxMax[c]! + keep;
      const r = Math.max(low, high);
      if (r <= 0) continue;
      this.note(r, 'pose', -1, -1);
      if (!this.slopes) continue;
      poseRow.fill(0);
      poseRow[c] = low > 0 ? -1 : 1;
      this.enterRow(r, 0);
    }
    const n = collector.axis;
    const wx = n[1] * axis[2]! - n[2] * axis[1]!;
    const wy = n[2] * axis[0]! - n[0] * axis[2]!;
    const wz = n[0] * axis[1]! - n[1] * axis[0]!;
    const sine = Math.hypot(wx, wy, wz);
    const tilt = Math.atan2(sine, n[0] * axis[0]! + n[1] * axis[1]! + n[2] * axis[2]!);
    const cone = (collector.coneDeg * Math.PI) / 180;
    const r = LEVER * (tilt - cone + Math.min(0.001, cone / 2));
    if (r <= 0) return;
    this.note(r, 'pose', -1, -1);
    if (!this.slopes) return;
    poseRow.fill(0);
    poseRow[3] = wx / sine;
    poseRow[4] = wy / sine;
    poseRow[5] = wz / sine;
    this.enterRow(r, 0);
  }
}
