/**
 * Signed distance from a point to a box, a capsule or a flat-ended cylinder, in closed form, with its gradient.
 *
 * Negative inside. The gradient is the unit direction away from the nearest skin.
 */
import type { Vec3 } from '../../maths/vec3.ts';
import type { Solid } from './problem.ts';

/** A solid made ready: numbers only, and a ball around it that rules most points out at once. */
export interface ReadySolid {
  readonly kind: 0 | 1 | 2;
  /** box: centre, half, three axes; round: a, unit axis, length, radius */
  readonly n: Float64Array;
  readonly ball: Float64Array;
  /** Asked more of it than of all solids, mm: it counts for so much nearer. */
  readonly nearer: number;
  readonly flangeExempt: boolean;
  /** Port whose pipe leaves from it; −1 where none does. */
  readonly leaves: number;
  /** Least gap of the collector's body to it, mm; −∞ where it is not held off. */
  readonly bodyGap: number;
  readonly name: string;
}

const AXES: readonly [Vec3, Vec3, Vec3] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

/** @param common  gap that is asked of solids which do not say their own, mm */
export function ready(solid: Solid, index: number, common: number): ReadySolid {
  const nearer = solid.gap === undefined ? 0 : solid.gap - common;
  const name = solid.name ?? `solid ${index + 1}`;
  const flangeExempt = solid.flangeExempt === true;
  if (solid.kind === 'box') {
    const { center, half } = solid;
    return {
      kind: 0,
      n: Float64Array.from([...center, ...half, ...(solid.axes ?? AXES).flat()]),
      ball: Float64Array.from([...center, Math.hypot(...half) + Math.max(0, nearer)]),
      nearer,
      flangeExempt,
      leaves: -1,
      bodyGap: -Infinity,
      name,
    };
  }
  const { a, b, r } = solid;
  const span = [b[0] - a[0], b[1] - a[1], b[2] - a[2]] as const;
  const length = Math.hypot(...span);
  const k = length > 0 ? 1 / length : 0;
  return {
    kind: solid.kind === 'capsule' ? 1 : 2,
    n: Float64Array.from([...a, k * span[0], k * span[1], k * span[2], length, r]),
    ball: Float64Array.from([
      (a[0] + b[0]) / 2,
      (a[1] + b[1]) / 2,
      (a[2] + b[2]) / 2,
      Math.max(0, nearer) + (solid.kind === 'capsule' ? length / 2 + r : Math.hypot(length / 2, r)),
    ]),
    nearer,
    flangeExempt,
    leaves: solid.leaves ?? -1,
    bodyGap: solid.bodyGap ?? -Infinity,
    name,
  };
}

/** Gradient of the distance that was asked last. */
export const away = new Float64Array(3);

const local = new Float64Array(3);

/** As it counts against the gap that is asked of all solids. */
export function toSolid({ kind, n, nearer }: ReadySolid, x: number, y: number, z: number): number {
  const d = kind === 0 ? toBox(n, x, y, z) : kind === 1 ? toCapsule(n, x, y, z) : toCylinder(n, x, y, z);
  return d - nearer;
}

function toBox(n: Float64Array, x: number, y: number, z: number): number {
  const px = x - n[0]!;
  const py = y - n[1]!;
  const pz = z - n[2]!;
  let sum = 0;
  let deepest = -Infinity;
  let face = 0;
  for (let c = 0; c < 3; c++) {
    const o = 6 + 3 * c;
    const q = px * n[o]! + py * n[o + 1]! + pz * n[o + 2]!;
    const over = Math.abs(q) - n[3 + c]!;
    if (over > deepest) {
      deepest = over;
      face = c;
    }
    const out = Math.max(over, 0);
    sum += out * out;
    local[c] = q < 0 ? -out : out;
    if (face === c && deepest <= 0) side = q < 0 ? -1 : 1;
  }
  if (deepest <= 0) {
    const o = 6 + 3 * face;
    for (let c = 0; c < 3; c++) away[c] = side * n[o + c]!;
    return deepest;
  }
  const d = Math.sqrt(sum);
  for (let c = 0; c < 3; c++)
    away[c] = (local[0]! * n[6 + c]! + local[1]! * n[9 + c]! + local[2]! * n[12 + c]!) / d;
  return d;
}
let side = 1;

function toCapsule(n: Float64Array, x: number, y: number, z: number): number {
  const px = x - n[0]!;
  const py = y - n[1]!;
  const pz = z - n[2]!;
  let t = px * n[3]! + py * n[4]! + pz * n[5]!;
  t = t < 0 ? 0 : Math.min(t, n[6]!);
  const dx = px - t * n[3]!;
  const dy = py - t * n[4]!;
  const dz = pz - t * n[5]!;
  const d = Math.sqrt(dx * dx + dy * dy + dz * dz);
  if (d < 1e-9) squareTo(n[3]!, n[4]!, n[5]!);
  else {
    away[0] = dx / d;
    away[1] = dy / d;
    away[2] = dz / d;
  }
  return d - n[7]!;
}

function squareTo(x: number, y: number, z: number): void {
  const [a, b, c] = Math.abs(x) < 0.7 ? [0, z, -y] : [-z, 0, x];
  const k = Math.hypot(a, b, c) || 1;
  away[0] = a / k;
  away[1] = b / k;
  away[2] = c / k;
}

const toCylinder = (n: Float64Array, x: number, y: number, z: number): number =>
  toCylinderOn(x - n[0]!, y - n[1]!, z - n[2]!, n.subarray(3, 6), n[6]!, n[7]!, Infinity);

/**
 * Distance to a cylinder from the origin along the unit `axis`; Infinity where it is plainly not below `matters`.
 */
export function toCylinderOn(
  px: number,
  py: number,
  pz: number,
  axis: Float64Array,
  long: number,
  radius: number,
  matters: number,
): number {
  const ax = axis[0]!;
  const ay = axis[1]!;
  const az = axis[2]!;
  const t = px * ax + py * ay + pz * az;
  if (t < -matters || t > long + matters) return Infinity;
  let rx = px - t * ax;
  let ry = py - t * ay;
  let rz = pz - t * az;
  const radial = Math.sqrt(rx * rx + ry * ry + rz * rz);
  if (radial < 1e-9) {
    squareTo(ax, ay, az);
    rx = away[0]!;
    ry = away[1]!;
    rz = away[2]!;
  } else {
    rx /= radial;
    ry /= radial;
    rz /= radial;
  }
  const half = long / 2;
  const end = t < half ? -1 : 1;
  const p = Math.abs(t - half) - half;
  const q = radial - radius;
  let kp = 0;
  let kq = 0;
  let d: number;
  if (p <= 0 && q <= 0) {
    d = Math.max(p, q);
    if (p > q) kp = 1;
    else kq = 1;
  } else {
    const pp = Math.max(p, 0);
    const qq = Math.max(q, 0);
    d = Math.sqrt(pp * pp + qq * qq);
    kp = pp / d;
    kq = qq / d;
  }
  away[0] = end * kp * ax + kq * rx;
  away[1] = end * kp * ay + kq * ry;
  away[2] = end * kp * az + kq * rz;
  return d;
}
