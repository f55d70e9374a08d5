/**
 * What is wrong with pipes and the collector's pose, as hinge residuals.
 *
 * Each residual is in millimetres by which something is breached, margin included; the length alone counts both
 * ways. `weigh` adds them up and, where asked, their slopes into the normal equations J'J and J'r. Pipes and the
 * pose that are held (`moves`, `poseMoves`) keep still and are felt by the others.
 *
 * Equations RT-6 to RT-11 and RT-16 of docs/theory/gas-path-routing.md.
 */

import { near, nearestChord } from './chords.ts';
import { SHELL_EXEMPT } from './problem.ts';
import { BLOCK, type Pin, Rows } from './rows.ts';
import { LEVER } from './shape.ts';
import { away, toCylinderOn, toSolid } from './solids.ts';
import { earlyBy, lateBy, shortBy, stretch, stretchOf } from './steps.ts';

/** So much more than it needs a step is given of its straight at either end, mm. */
const KEPT_STEP = 0.01;

export class Rig extends Rows {
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
    if (this.poseMoves) {
      this.weighPose();
      this.weighBodyRoom();
    }
    for (let i = 0; i < this.pipes.length; i++) {
      if (this.inlets[i]! < 0) continue;
      if (this.moves[i]! || this.poseMoves) this.weighOne(i);
      for (let j = i + 1; j < this.pipes.length; j++)
        if (this.inlets[j]! >= 0 && (this.moves[i]! || this.moves[j]! || this.poseMoves))
          this.weighPair(i, j);
    }
    return this.cost;
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
    for (const pin of this.pins) if (pin.pipe === i) this.weighPin(pin);
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
    if (site.steps.length > 0) this.weighSteps(i);
    const { at, arc, count, more } = pipe;
    const { field, solids } = site;
    const shellAtFlange = site.needShell + margin;
    const solidAtFlange = site.needSolid + margin;
    const body = problem.collectorBody.length;
    for (let m = 0; m < count; m++) {
      const x = at[3 * m]!;
      const y = at[3 * m + 1]!;
      const z = at[3 * m + 2]!;
      const needShell = shellAtFlange + more[m]!;
      const needSolid = solidAtFlange + more[m]!;
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
        const exempt = solid.flangeExempt || solid.leaves === i;
        if (exempt && arc[m]! < clearance.flangeZone - this.spacing / 4) continue;
        const d = toSolid(solid, x, y, z);
        if (d < needSolid) this.onSample(needSolid - d, 'solid', i, m, away[0]!, away[1]!, away[2]!);
      }
      if (pipe.length - arc[m]! > site.zone - 0.5) this.weighBody(i, m, x, y, z, body, needSolid);
    }
    this.weighSelf(i);
  }

  /** Each step on the straight that was chosen for it, within what it may be off.  [RT-30] */
  private weighSteps(i: number): void {
    const pipe = this.pipes[i]!;
    const { steps } = this.site;
    for (let j = 0; j < steps.length; j++) {
      const step = steps[j]!;
      stretchOf(pipe, pipe.stepOn[j]!);
      const { first, last } = stretch;
      this.weighStep(i, lateBy(step), first, -1);
      this.weighStep(i, earlyBy(step), -1, last);
      this.weighStep(i, shortBy(step), first, last);
    }
  }

  /** A residual that grows with where straight `low` begins and shrinks with where straight `high` ends; -1 is neither. */
  private weighStep(i: number, lack: number, low: number, high: number): void {
    const r = lack + KEPT_STEP;
    if (r <= 0) return;
    this.note(r, 'step', i, -1);
    if (!this.slopes) return;
    const pipe = this.pipes[i]!;
    this.open(i);
    if (low >= 0) pipe.pullFrom(low, 1);
    if (high >= 0) {
      pipe.pullFrom(high, -1);
      pipe.pullStraight(high, -1);
    }
    this.close(r, i);
  }

  /** RT-16 */
  private weighPin({ pipe: i, corner, at }: Pin): void {
    const pipe = this.pipes[i]!;
    for (let c = 0; c < 3; c++) {
      const off = pipe.vertex[3 * corner + c]! - at[c]!;
      this.note(off, 'kept bend', i, -1);
      if (!this.slopes) continue;
      this.open(i);
      pipe.pullCorner(corner, c === 0 ? 1 : 0, c === 1 ? 1 : 0, c === 2 ? 1 : 0);
      this.close(off, i);
    }
  }

  private weighBody(i: number, m: number, x: number, y: number, z: number, body: number, need: number): void {
    const { origin: o, axis: a } = this;
    const px = x - o[0]!;
    const py = y - o[1]!;
    const pz = z - o[2]!;
    const d = toCylinderOn(px, py, pz, a, body, this.site.bodyRadius, need);
    if (d >= need) return;
    const gx = away[0]!;
    const gy = away[1]!;
    const gz = away[2]!;
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

  private weighPair(i: number, j: number): void {
    const { site, margin } = this;
    const one = this.pipes[i]!;
    const two = this.pipes[j]!;
    const fullAtFlange = site.needPipe + margin;
    const most = fullAtFlange + 2 * site.mostMore;
    const atMouth = site.needInZone + 2 * site.moreAtMouth;
    const zoneAtFlange = site.needInZone + Math.max(0, Math.min(margin, (site.pitch - atMouth) / 2));
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
        const far = br + others[4 * o + 3]! + most;
        if (dx * dx + dy * dy + dz * dz > far * far) continue;
        const kEnd = Math.min(two.count - 1, k0 + BLOCK);
        const within = others[4 * o + 3]! + most;
        for (let m = m0; m < mEnd; m++) {
          const x = one.at[3 * m]!;
          const y = one.at[3 * m + 1]!;
          const z = one.at[3 * m + 2]!;
          const ex = others[4 * o]! - x;
          const ey = others[4 * o + 1]! - y;
          const ez = others[4 * o + 2]! - z;
          if (ex * ex + ey * ey + ez * ez > within * within) continue;
          const k = nearestChord(two.at, k0, kEnd, x, y, z);
          if (near.gap >= most) continue;
          const t = near.share;
          const more = one.more[m]! + two.more[t < 0.5 ? k : k + 1]!;
          const ends = one.length - one.arc[m]! <= zone;
          const there = two.length - (two.arc[k]! + t * (two.arc[k + 1]! - two.arc[k]!)) <= zone;
          const need = (ends && there ? zoneAtFlange : fullAtFlange) + more;
          const r = need - near.gap;
          if (r <= 0) continue;
          this.note(r, 'pipe to pipe', i, j);
          if (!this.slopes) continue;
          const d = Math.max(near.gap, 1e-6);
          const gx = (x - two.at[3 * k]! - t * (two.at[3 * k + 3]! - two.at[3 * k]!)) / d;
          const gy = (y - two.at[3 * k + 1]! - t * (two.at[3 * k + 4]! - two.at[3 * k + 1]!)) / d;
          const gz = (z - two.at[3 * k + 2]! - t * (two.at[3 * k + 5]! - two.at[3 * k + 2]!)) / d;
          this.onPair(r, i, m, j, k, t, gx, gy, gz);
        }
      }
    }
  }

  private weighSelf(i: number): void {
    const pipe = this.pipes[i]!;
    const { at, arc, count, more } = pipe;
    const atFlange = this.site.needSelf + this.margin;
    const most = atFlange + 2 * this.site.mostMore;
    const apart = this.site.selfApart;
    const balls = this.block[i]!;
    for (let b = 0, m0 = 0; m0 < count - 1; b++, m0 += BLOCK) {
      const mEnd = Math.min(count, m0 + BLOCK);
      for (let o = b + 1, k0 = m0 + BLOCK; k0 < count - 1; o++, k0 += BLOCK) {
        const kEnd = Math.min(count - 1, k0 + BLOCK);
        if (arc[kEnd]! - arc[m0]! <= apart) continue;
        const dx = balls[4 * o]! - balls[4 * b]!;
        const dy = balls[4 * o + 1]! - balls[4 * b + 1]!;
        const dz = balls[4 * o + 2]! - balls[4 * b + 2]!;
        const far = balls[4 * b + 3]! + balls[4 * o + 3]! + most;
        if (dx * dx + dy * dy + dz * dz > far * far) continue;
        for (let m = m0; m < mEnd; m++) {
          let k1 = k0;
          while (k1 < kEnd && arc[k1]! - arc[m]! <= apart) k1++;
          if (k1 >= kEnd) continue;
          const x = at[3 * m]!;
          const y = at[3 * m + 1]!;
          const z = at[3 * m + 2]!;
          const k = nearestChord(at, k1, kEnd, x, y, z);
          const r = atFlange + more[m]! + more[near.share < 0.5 ? k : k + 1]! - near.gap;
          if (r <= 0) continue;
          this.note(r, 'self', i, -1);
          if (!this.slopes) continue;
          const t = near.share;
          const d = Math.max(near.gap, 1e-6);
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

  /** The collector's body, as balls along its axis, held off what says so.  [RT-23] */
  private weighBodyRoom(): void {
    const { site, origin, axis, poseRow } = this;
    if (site.problem.collector.mode !== 'free') return;
    const long = site.problem.collectorBody.length;
    const steps = Math.max(1, Math.ceil(long / BODY_STEP));
    for (const solid of site.solids) {
      const need = site.bodyRadius + solid.bodyGap + this.margin;
      if (need === -Infinity) continue;
      for (let m = 0; m <= steps; m++) {
        const s = (m / steps) * long;
        const [x, y, z] = [s * axis[0]!, s * axis[1]!, s * axis[2]!];
        const r = need - toSolid(solid, origin[0]! + x, origin[1]! + y, origin[2]! + z);
        if (r <= 0) continue;
        this.note(r, 'pose', -1, -1);
        if (!this.slopes) continue;
        const [gx, gy, gz] = [away[0]!, away[1]!, away[2]!];
        poseRow[0] = -gx;
        poseRow[1] = -gy;
        poseRow[2] = -gz;
        poseRow[3] = -(y * gz - z * gy) / LEVER;
        poseRow[4] = -(z * gx - x * gz) / LEVER;
        poseRow[5] = -(x * gy - y * gx) / LEVER;
        this.enterRow(r, 0);
      }
    }
  }
}

/** Between balls along the collector's axis, mm. */
const BODY_STEP = 15;
