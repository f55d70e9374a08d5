/**
 * Levenberg and Marquardt's descent on the residuals of a rig, steps capped.
 *
 * Source: K. Madsen, H. B. Nielsen, O. Tingleff, Methods for Non-Linear Least Squares Problems, 2nd ed., DTU 2004,
 * algorithm 3.16 (from memory).
 */

import type { Rig } from './rig.ts';
import { MOST_NUMBERS } from './rows.ts';
import { LEVER } from './shape.ts';

/** No number moves farther in one step, mm. */
const LONGEST_STEP = 60;

export type Ending = 'solved' | 'stuck' | 'stopped';

export interface DescentEnds {
  /** Solved when the sum of squares is below this, mm^2. */
  readonly enough: number;
  readonly iterations: number;
  /** Stuck when the cost fell by less than this share in `patience` steps. */
  readonly least: number;
  readonly patience: number;
}

export const USUAL: DescentEnds = { enough: 1e-8, iterations: 60, least: 0.02, patience: 4 };

const step = new Float64Array(MOST_NUMBERS);
const factor = new Float64Array(MOST_NUMBERS * MOST_NUMBERS);
const kept = new Float64Array(MOST_NUMBERS + 9);

/** Times that residuals were added up, for counting work without a clock. */
export const work = { done: 0 };

export function descend(rig: Rig, ends: DescentEnds = USUAL): Ending {
  rig.enter();
  rig.seat();
  rig.layAll(true);
  let cost = rig.weigh(true);
  work.done++;
  let damping = 0.3;
  let growth = 2;
  let mark = cost;
  let since = 0;
  let ending: Ending = 'stopped';
  for (let iteration = 0; iteration < ends.iterations; iteration++) {
    if (cost <= ends.enough) {
      ending = 'solved';
      break;
    }
    if (++since > ends.patience) {
      if (cost > (1 - ends.least) * mark) {
        ending = 'stuck';
        break;
      }
      mark = cost;
      since = 0;
    }
    while (!solve(rig, damping)) damping = 10 * damping + 1e-3;
    const promised = shorten(rig, damping);
    keep(rig);
    move(rig);
    rig.seat();
    layMoving(rig, false);
    const next = rig.weigh(false);
    work.done++;
    const gain = (cost - next) / Math.max(promised, 1e-30);
    if (next < cost) {
      damping *= Math.max(1 / 5, 1 - (2 * gain - 1) ** 3);
      damping = Math.max(damping, 1e-7);
      growth = 2;
      layMoving(rig, true);
      cost = rig.weigh(true);
      work.done++;
    } else {
      restore(rig);
      rig.seat();
      layMoving(rig, true);
      // the normal equations still stand: only a shorter step is tried
      damping *= growth;
      growth *= 2;
      if (damping > 1e8) {
        ending = 'stuck';
        break;
      }
    }
  }
  if (ending !== 'solved') {
    rig.weigh(false);
    if (rig.cost <= ends.enough) ending = 'solved';
  }
  return ending;
}

function layMoving(rig: Rig, divide: boolean): void {
  for (let i = 0; i < rig.pipes.length; i++)
    if (rig.inlets[i]! >= 0 && (rig.moves[i]! || rig.poseMoves)) rig.layOne(i, divide);
}

/** Step from (J'J + damping I) step = -J'r, by Cholesky; false where the matrix is not positive. */
function solve(rig: Rig, damping: number): boolean {
  const n = rig.numbers;
  const { normal, slope } = rig;
  for (let i = 0; i < n; i++) {
    const oi = i * n;
    for (let j = 0; j <= i; j++) {
      const oj = j * n;
      let sum = normal[oi + j]!;
      if (i === j) sum += damping * (1 + 0.05 * sum);
      for (let k = 0; k < j; k++) sum -= factor[oi + k]! * factor[oj + k]!;
      if (i === j) {
        if (!(sum > 0)) return false;
        factor[oi + i] = Math.sqrt(sum);
      } else factor[oi + j] = sum / factor[oj + j]!;
    }
  }
  for (let i = 0; i < n; i++) {
    let sum = -slope[i]!;
    for (let k = 0; k < i; k++) sum -= factor[i * n + k]! * step[k]!;
    step[i] = sum / factor[i * n + i]!;
  }
  for (let i = n - 1; i >= 0; i--) {
    let sum = step[i]!;
    for (let k = i + 1; k < n; k++) sum -= factor[k * n + i]! * step[k]!;
    step[i] = sum / factor[i * n + i]!;
  }
  return true;
}

/** Caps the step, and tells what fall of the cost the linear picture promises for it. */
function shorten(rig: Rig, damping: number): number {
  const n = rig.numbers;
  let most = 0;
  for (let i = 0; i < n; i++) most = Math.max(most, Math.abs(step[i]!));
  const k = most > LONGEST_STEP ? LONGEST_STEP / most : 1;
  let promised = 0;
  for (let i = 0; i < n; i++) {
    const whole = step[i]!;
    step[i] = k * whole;
    promised += whole * (damping * (1 + 0.05 * rig.normal[i * n + i]!) * whole - rig.slope[i]!);
  }
  return k * promised;
}

function keep(rig: Rig): void {
  let n = 0;
  for (let i = 0; i < rig.pipes.length; i++)
    if (rig.moves[i]!) for (let q = 0; q < rig.pipes[i]!.numbers; q++) kept[n++] = rig.pipes[i]!.x[q]!;
  for (let c = 0; c < 3; c++) {
    kept[n + c] = rig.origin[c]!;
    kept[n + 3 + c] = rig.axis[c]!;
    kept[n + 6 + c] = rig.ref[c]!;
  }
}

function restore(rig: Rig): void {
  let n = 0;
  for (let i = 0; i < rig.pipes.length; i++)
    if (rig.moves[i]!) for (let q = 0; q < rig.pipes[i]!.numbers; q++) rig.pipes[i]!.x[q] = kept[n++]!;
  for (let c = 0; c < 3; c++) {
    rig.origin[c] = kept[n + c]!;
    rig.axis[c] = kept[n + 3 + c]!;
    rig.ref[c] = kept[n + 6 + c]!;
  }
}

function move(rig: Rig): void {
  let n = 0;
  for (let i = 0; i < rig.pipes.length; i++)
    if (rig.moves[i]!) for (let q = 0; q < rig.pipes[i]!.numbers; q++) rig.pipes[i]!.x[q]! += step[n++]!;
  if (!rig.poseMoves) return;
  for (let c = 0; c < 3; c++) rig.origin[c]! += step[n + c]!;
  turnPose(rig, step[n + 3]! / LEVER, step[n + 4]! / LEVER, step[n + 5]! / LEVER);
}

/** Turns axis and ref by a rotation vector, and squares them up again. */
export function turnPose(rig: Rig, wx: number, wy: number, wz: number): void {
  const angle = Math.hypot(wx, wy, wz);
  if (angle < 1e-15) return;
  const kx = wx / angle;
  const ky = wy / angle;
  const kz = wz / angle;
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  for (const v of [rig.axis, rig.ref]) {
    const [x, y, z] = [v[0]!, v[1]!, v[2]!];
    const k = (kx * x + ky * y + kz * z) * (1 - c);
    v[0] = x * c + (ky * z - kz * y) * s + kx * k;
    v[1] = y * c + (kz * x - kx * z) * s + ky * k;
    v[2] = z * c + (kx * y - ky * x) * s + kz * k;
  }
  squareUp(rig.axis, rig.ref);
}

export function squareUp(axis: Float64Array, ref: Float64Array): void {
  const a = Math.hypot(axis[0]!, axis[1]!, axis[2]!);
  for (let c = 0; c < 3; c++) axis[c]! /= a;
  const d = axis[0]! * ref[0]! + axis[1]! * ref[1]! + axis[2]! * ref[2]!;
  for (let c = 0; c < 3; c++) ref[c]! -= d * axis[c]!;
  const r = Math.hypot(ref[0]!, ref[1]!, ref[2]!);
  for (let c = 0; c < 3; c++) ref[c]! /= r;
}
