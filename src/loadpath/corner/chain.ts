/**
 * The chain of the corner: from the angle of the lower wishbone to wheel, rocker and elements, with the first
 * and second derivatives of everything by that angle. Closed form throughout; nothing here iterates.
 *
 * In    `k`, the constants that `prepareCorner` worked out once; the lower wishbone's angle φ and rack travel
 * Out   `s`, the state (both by layout.ts)
 * Axes  ISO 8855, fixed to the tub
 * Not   the search for a wanted travel (solve.ts), and any check of the geometry (prepare.ts)
 *
 * LP-n are the equations of docs/theory/load-path.md.
 */

import {
  AXIS,
  type CarrierCode,
  CENTRE,
  CLOSED,
  FRAME,
  K_AXIS,
  K_CENTRE,
  K_GROUND,
  K_INNER,
  K_INNER_CLOSE,
  K_KINGPIN,
  K_LOWER,
  K_RADIUS,
  K_ROCKER_POINTS,
  K_ROD,
  K_TOE,
  K_UPPER,
  K_UPPER_CLOSE,
  LOWER,
  LOWER_HINGE,
  ON_LOWER,
  ON_UPPER,
  PHI,
  RACK,
  RESULTS_END,
  RISE,
  ROCKER,
  ROCKER_HINGE,
  ROD_INNER,
  ROD_OPEN,
  ROD_OUTER,
  type RockerLayout,
  SPIN,
  TOE,
  TOE_INNER,
  TOE_OPEN,
  UPPER,
  UPPER_HINGE,
  UPPER_OPEN,
} from './layout.ts';

type Slots = Float64Array;

/** A point turned with its hinge.  LP-2 */
function placeOnHinge(k: Slots, c: number, s: Slots, hinge: number, p: number): void {
  const cos = s[hinge];
  const sin = s[hinge + 1];
  s[p] = k[c] + cos * k[c + 3] + sin * k[c + 6];
  s[p + 1] = k[c + 1] + cos * k[c + 4] + sin * k[c + 7];
  s[p + 2] = k[c + 2] + cos * k[c + 5] + sin * k[c + 8];
}

/** Its derivatives by φ.  LP-3 */
function moveOnHinge(k: Slots, c: number, s: Slots, hinge: number, p: number): void {
  const cos = s[hinge];
  const sin = s[hinge + 1];
  const w = s[hinge + 2];
  const a = s[hinge + 3];
  const ww = w * w;
  for (let i = 0; i < 3; i++) {
    const radius = cos * k[c + 3 + i] + sin * k[c + 6 + i];
    const tangent = cos * k[c + 6 + i] - sin * k[c + 3 + i];
    s[p + 3 + i] = w * tangent;
    s[p + 6 + i] = a * tangent - ww * radius;
  }
}

/**
 * Turns a hinge until its point stands at the fixed distance from point q: A cos + B sin = C.  LP-4
 * The branch is the sign of axis · (r × (q − foot)) at the surveyed position and is never left.
 */
function closeHinge(k: Slots, c: number, close: number, s: Slots, hinge: number, q: number): number {
  const wx = s[q] - k[c];
  const wy = s[q + 1] - k[c + 1];
  const wz = s[q + 2] - k[c + 2];
  const A = wx * k[c + 3] + wy * k[c + 4] + wz * k[c + 5];
  const B = wx * k[c + 6] + wy * k[c + 7] + wz * k[c + 8];
  const C = k[close] + 0.5 * (wx * wx + wy * wy + wz * wz);
  const RR = A * A + B * B;
  const DD = RR - C * C;
  if (!(DD > 0)) return C > 0 ? 1 : -1;
  const D = k[close + 1] * Math.sqrt(DD);
  const inverse = 1 / RR;
  s[hinge] = (A * C + B * D) * inverse;
  s[hinge + 1] = (B * C - A * D) * inverse;
  return CLOSED;
}

/** Rates of a hinge whose point p keeps its distance from the moving point q.  LP-5, LP-6 */
function followHinge(k: Slots, c: number, s: Slots, hinge: number, p: number, q: number): void {
  const cos = s[hinge];
  const sin = s[hinge + 1];
  const ux = s[p] - s[q];
  const uy = s[p + 1] - s[q + 1];
  const uz = s[p + 2] - s[q + 2];
  const rx = cos * k[c + 3] + sin * k[c + 6];
  const ry = cos * k[c + 4] + sin * k[c + 7];
  const rz = cos * k[c + 5] + sin * k[c + 8];
  const ex = cos * k[c + 6] - sin * k[c + 3];
  const ey = cos * k[c + 7] - sin * k[c + 4];
  const ez = cos * k[c + 8] - sin * k[c + 5];
  const inverse = 1 / (ux * ex + uy * ey + uz * ez);
  const w = (ux * s[q + 3] + uy * s[q + 4] + uz * s[q + 5]) * inverse;
  const dx = w * ex - s[q + 3];
  const dy = w * ey - s[q + 4];
  const dz = w * ez - s[q + 5];
  const ww = w * w;
  const a =
    (ux * (s[q + 6] + ww * rx) +
      uy * (s[q + 7] + ww * ry) +
      uz * (s[q + 8] + ww * rz) -
      (dx * dx + dy * dy + dz * dz)) *
    inverse;
  s[hinge + 2] = w;
  s[hinge + 3] = a;
  s[p + 3] = w * ex;
  s[p + 4] = w * ey;
  s[p + 5] = w * ez;
  s[p + 6] = a * ex - ww * rx;
  s[p + 7] = a * ey - ww * ry;
  s[p + 8] = a * ez - ww * rz;
}

/** The toe link closes the upright, which is still free about the kingpin line.  LP-7 */
function closeToe(k: Slots, s: Slots, rack: number): number {
  const kx = (s[UPPER] - s[LOWER]) * k[K_KINGPIN];
  const ky = (s[UPPER + 1] - s[LOWER + 1]) * k[K_KINGPIN];
  const kz = (s[UPPER + 2] - s[LOWER + 2]) * k[K_KINGPIN];
  const h = k[K_TOE];
  const r = k[K_TOE + 1];
  const qx = k[K_TOE + 4] + rack * k[K_TOE + 7];
  const qy = k[K_TOE + 5] + rack * k[K_TOE + 8];
  const qz = k[K_TOE + 6] + rack * k[K_TOE + 9];
  const wx = qx - s[LOWER] - h * kx;
  const wy = qy - s[LOWER + 1] - h * ky;
  const wz = qz - s[LOWER + 2] - h * kz;
  const wk = wx * kx + wy * ky + wz * kz;
  const px = wx - wk * kx;
  const py = wy - wk * ky;
  const pz = wz - wk * kz;
  const RR = px * px + py * py + pz * pz;
  const C = k[K_TOE + 2] + 0.5 * (wx * wx + wy * wy + wz * wz);
  const DD = r * r * RR - C * C;
  if (!(DD > 0)) return C > 0 ? 1 : -1;
  const D = k[K_TOE + 3] * Math.sqrt(DD);
  const inverse = 1 / (RR * r);
  const fx = (C * px + D * (ky * pz - kz * py)) * inverse;
  const fy = (C * py + D * (kz * px - kx * pz)) * inverse;
  const fz = (C * pz + D * (kx * py - ky * px)) * inverse;
  s[TOE_INNER] = qx;
  s[TOE_INNER + 1] = qy;
  s[TOE_INNER + 2] = qz;
  s[FRAME] = kx;
  s[FRAME + 1] = ky;
  s[FRAME + 2] = kz;
  s[FRAME + 3] = fx;
  s[FRAME + 4] = fy;
  s[FRAME + 5] = fz;
  s[FRAME + 6] = ky * fz - kz * fy;
  s[FRAME + 7] = kz * fx - kx * fz;
  s[FRAME + 8] = kx * fy - ky * fx;
  s[TOE] = s[LOWER] + h * kx + r * fx;
  s[TOE + 1] = s[LOWER + 1] + h * ky + r * fy;
  s[TOE + 2] = s[LOWER + 2] + h * kz + r * fz;
  return CLOSED;
}

/** A direction fixed in the upright, brought to the tub's axes. */
function inUpright(k: Slots, c: number, s: Slots, p: number): void {
  const a = k[c];
  const b = k[c + 1];
  const d = k[c + 2];
  s[p] = a * s[FRAME] + b * s[FRAME + 3] + d * s[FRAME + 6];
  s[p + 1] = a * s[FRAME + 1] + b * s[FRAME + 4] + d * s[FRAME + 7];
  s[p + 2] = a * s[FRAME + 2] + b * s[FRAME + 5] + d * s[FRAME + 8];
}

/** A point of the upright. */
function placeOnUpright(k: Slots, c: number, s: Slots, p: number): void {
  inUpright(k, c, s, p);
  s[p] += s[LOWER];
  s[p + 1] += s[LOWER + 1];
  s[p + 2] += s[LOWER + 2];
}

/** Rotation of the upright per φ and its derivative; toe link fixed at its inner end.  LP-8, LP-9 */
function turnUpright(k: Slots, s: Slots): void {
  const inverse = k[K_KINGPIN];
  const kx = s[FRAME];
  const ky = s[FRAME + 1];
  const kz = s[FRAME + 2];
  const vx = s[LOWER + 3];
  const vy = s[LOWER + 4];
  const vz = s[LOWER + 5];
  // k̂' and k̂''
  const k1x = (s[UPPER + 3] - vx) * inverse;
  const k1y = (s[UPPER + 4] - vy) * inverse;
  const k1z = (s[UPPER + 5] - vz) * inverse;
  const k2x = (s[UPPER + 6] - s[LOWER + 6]) * inverse;
  const k2y = (s[UPPER + 7] - s[LOWER + 7]) * inverse;
  const k2z = (s[UPPER + 8] - s[LOWER + 8]) * inverse;
  const rx = s[TOE] - s[LOWER];
  const ry = s[TOE + 1] - s[LOWER + 1];
  const rz = s[TOE + 2] - s[LOWER + 2];
  const ux = s[TOE] - s[TOE_INNER];
  const uy = s[TOE + 1] - s[TOE_INNER + 1];
  const uz = s[TOE + 2] - s[TOE_INNER + 2];
  // k̂ × ρ: how the toe joint moves when the upright turns about the kingpin line
  const tx = ky * rz - kz * ry;
  const ty = kz * rx - kx * rz;
  const tz = kx * ry - ky * rx;
  const arm = 1 / (ux * tx + uy * ty + uz * tz);
  let wx = ky * k1z - kz * k1y;
  let wy = kz * k1x - kx * k1z;
  let wz = kx * k1y - ky * k1x;
  const turn =
    -(ux * (vx + wy * rz - wz * ry) + uy * (vy + wz * rx - wx * rz) + uz * (vz + wx * ry - wy * rx)) * arm;
  wx += turn * kx;
  wy += turn * ky;
  wz += turn * kz;
  // ρ' = ω × ρ, and the toe joint's velocity
  const r1x = wy * rz - wz * ry;
  const r1y = wz * rx - wx * rz;
  const r1z = wx * ry - wy * rx;
  const t1x = vx + r1x;
  const t1y = vy + r1y;
  const t1z = vz + r1z;
  let ax = ky * k2z - kz * k2y + turn * k1x;
  let ay = kz * k2x - kx * k2z + turn * k1y;
  let az = kx * k2y - ky * k2x + turn * k1z;
  const turn2 =
    -(
      t1x * t1x +
      t1y * t1y +
      t1z * t1z +
      ux * (s[LOWER + 6] + ay * rz - az * ry + wy * r1z - wz * r1y) +
      uy * (s[LOWER + 7] + az * rx - ax * rz + wz * r1x - wx * r1z) +
      uz * (s[LOWER + 8] + ax * ry - ay * rx + wx * r1y - wy * r1x)
    ) * arm;
  ax += turn2 * kx;
  ay += turn2 * ky;
  az += turn2 * kz;
  s[SPIN] = wx;
  s[SPIN + 1] = wy;
  s[SPIN + 2] = wz;
  s[SPIN + 3] = ax;
  s[SPIN + 4] = ay;
  s[SPIN + 5] = az;
}

/** Derivatives of a vector (rx, ry, rz) turning with the upright, added to those of point `base` or of none. */
function moveWithUpright(s: Slots, p: number, base: number): void {
  const wx = s[SPIN];
  const wy = s[SPIN + 1];
  const wz = s[SPIN + 2];
  const free = base < 0;
  const rx = free ? s[p] : s[p] - s[base];
  const ry = free ? s[p + 1] : s[p + 1] - s[base + 1];
  const rz = free ? s[p + 2] : s[p + 2] - s[base + 2];
  const vx = wy * rz - wz * ry;
  const vy = wz * rx - wx * rz;
  const vz = wx * ry - wy * rx;
  const ax = s[SPIN + 4] * rz - s[SPIN + 5] * ry + wy * vz - wz * vy;
  const ay = s[SPIN + 5] * rx - s[SPIN + 3] * rz + wz * vx - wx * vz;
  const az = s[SPIN + 3] * ry - s[SPIN + 4] * rx + wx * vy - wy * vx;
  s[p + 3] = free ? vx : s[base + 3] + vx;
  s[p + 4] = free ? vy : s[base + 4] + vy;
  s[p + 5] = free ? vz : s[base + 5] + vz;
  s[p + 6] = free ? ax : s[base + 6] + ax;
  s[p + 7] = free ? ay : s[base + 7] + ay;
  s[p + 8] = free ? az : s[base + 8] + az;
}

/** Wheel and travel of the contact point at angle φ; says what did not close. */
export function placeWheel(k: Slots, s: Slots, phi: number, rack: number): number {
  s[PHI] = phi;
  s[RACK] = rack;
  s[LOWER_HINGE] = Math.cos(phi);
  s[LOWER_HINGE + 1] = Math.sin(phi);
  placeOnHinge(k, K_LOWER, s, LOWER_HINGE, LOWER);
  const upper = closeHinge(k, K_UPPER, K_UPPER_CLOSE, s, UPPER_HINGE, LOWER);
  if (upper !== CLOSED) return upper * UPPER_OPEN;
  placeOnHinge(k, K_UPPER, s, UPPER_HINGE, UPPER);
  const toe = closeToe(k, s, rack);
  if (toe !== CLOSED) return toe * TOE_OPEN;
  placeOnUpright(k, K_CENTRE, s, CENTRE);
  inUpright(k, K_AXIS, s, AXIS);
  const m = s[AXIS + 2];
  s[RISE] = s[CENTRE + 2] - k[K_RADIUS] * Math.sqrt(1 - m * m) - k[K_GROUND]; // LP-11
  return CLOSED;
}

/** First and second derivatives by φ of everything that `placeWheel` has placed. */
export function moveWheel(k: Slots, s: Slots): void {
  s[LOWER_HINGE + 2] = 1;
  s[LOWER_HINGE + 3] = 0;
  moveOnHinge(k, K_LOWER, s, LOWER_HINGE, LOWER);
  followHinge(k, K_UPPER, s, UPPER_HINGE, UPPER, LOWER);
  turnUpright(k, s);
  moveWithUpright(s, TOE, LOWER);
  moveWithUpright(s, CENTRE, LOWER);
  moveWithUpright(s, AXIS, -1);
  const m = s[AXIS + 2];
  const m1 = s[AXIS + 5];
  const g = Math.sqrt(1 - m * m);
  const g1 = (-m * m1) / g;
  const g2 = -(m1 * m1 + m * s[AXIS + 8] + g1 * g1) / g;
  s[RISE + 1] = s[CENTRE + 5] - k[K_RADIUS] * g1; // LP-12
  s[RISE + 2] = s[CENTRE + 8] - k[K_RADIUS] * g2;
}

/** Rod and rocker, places only; says whether the rod closes. */
export function placeRocker(k: Slots, s: Slots, rodOn: CarrierCode): number {
  if (rodOn === ON_LOWER) placeOnHinge(k, K_ROD, s, LOWER_HINGE, ROD_OUTER);
  else if (rodOn === ON_UPPER) placeOnHinge(k, K_ROD, s, UPPER_HINGE, ROD_OUTER);
  else placeOnUpright(k, K_ROD, s, ROD_OUTER);
  const rod = closeHinge(k, K_INNER, K_INNER_CLOSE, s, ROCKER_HINGE, ROD_OUTER);
  if (rod !== CLOSED) return rod * ROD_OPEN;
  placeOnHinge(k, K_INNER, s, ROCKER_HINGE, ROD_INNER);
  return CLOSED;
}

/** Derivatives of rod and rocker by φ; `moveWheel` has been called. */
export function moveRocker(k: Slots, s: Slots, rodOn: CarrierCode): void {
  if (rodOn === ON_LOWER) moveOnHinge(k, K_ROD, s, LOWER_HINGE, ROD_OUTER);
  else if (rodOn === ON_UPPER) moveOnHinge(k, K_ROD, s, UPPER_HINGE, ROD_OUTER);
  else moveWithUpright(s, ROD_OUTER, LOWER);
  followHinge(k, K_INNER, s, ROCKER_HINGE, ROD_INNER, ROD_OUTER);
}

/** Writes value and derivatives by travel of a quantity known by φ.  LP-13 */
function byTravel(s: Slots, at: number, value: number, q1: number, q2: number): void {
  const z1 = s[RISE + 1];
  const inverse = 1 / z1;
  s[at] = value;
  s[at + 1] = q1 * inverse;
  s[at + 2] = (q2 * z1 - q1 * s[RISE + 2]) * inverse * inverse * inverse;
}

/** Rocker angle, rocker points and elements with their derivatives; by travel for angle and lengths. */
export function finishRocker(k: Slots, s: Slots, layout: RockerLayout): void {
  const h = ROCKER_HINGE;
  byTravel(s, ROCKER, Math.atan2(s[h + 1], s[h]), s[h + 2], s[h + 3]);
  const points = layout.pointCount;
  const elements = layout.elementPoint.length;
  const first = RESULTS_END + 3 * elements;
  for (let i = 0; i < points; i++) {
    placeOnHinge(k, K_ROCKER_POINTS + 9 * i, s, h, first + 9 * i);
    moveOnHinge(k, K_ROCKER_POINTS + 9 * i, s, h, first + 9 * i);
  }
  for (let i = 0; i < elements; i++) {
    const p = first + 9 * layout.elementPoint[i];
    const c = K_ROCKER_POINTS + 9 * points + 3 * i;
    const ux = s[p] - k[c];
    const uy = s[p + 1] - k[c + 1];
    const uz = s[p + 2] - k[c + 2];
    const vx = s[p + 3];
    const vy = s[p + 4];
    const vz = s[p + 5];
    const l = Math.sqrt(ux * ux + uy * uy + uz * uz);
    const l1 = (ux * vx + uy * vy + uz * vz) / l; // LP-14
    const bend = vx * vx + vy * vy + vz * vz + ux * s[p + 6] + uy * s[p + 7] + uz * s[p + 8];
    byTravel(s, RESULTS_END + 3 * i, l, l1, (bend - l1 * l1) / l);
  }
}
