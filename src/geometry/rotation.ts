/**
 * Rotations as three rows, and the small turns that correct them.
 *
 * In    a rotation vector (axis times angle, rad), or a rotation
 * Out   turned vectors; a rotation
 * Axes  right-handed; R v turns v, the rows of R are the new axes' directions seen from the old ones
 */
import { cross, dot, length, turned, unit, type Vec3 } from '../maths/vec3.ts';

/** Three rows of an orthonormal right-handed matrix. */
export type Rotation = readonly [Vec3, Vec3, Vec3];

export const NO_TURN: Rotation = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

/** R v. */
export const rotated = (R: Rotation, v: Vec3): Vec3 => [dot(R[0], v), dot(R[1], v), dot(R[2], v)];

/** The rotation the other way: Rᵀ. */
export const inverseOf = (R: Rotation): Rotation => [
  [R[0][0], R[1][0], R[2][0]],
  [R[0][1], R[1][1], R[2][1]],
  [R[0][2], R[1][2], R[2][2]],
];

/** Turn `vector` (axis times angle, rad) applied after R. */
export function turnedBy(R: Rotation, vector: Vec3): Rotation {
  const angle = length(vector);
  if (angle < 1e-150) return R; // its reciprocal would not be a number
  const axis = unit(vector);
  const columns = inverseOf(R);
  return inverseOf([
    turned(columns[0], axis, angle),
    turned(columns[1], axis, angle),
    turned(columns[2], axis, angle),
  ]);
}

/** The 24 rotations that carry the axes onto themselves: starting points when nothing is known of a frame. */
export function squareTurns(): readonly Rotation[] {
  const axes: readonly Vec3[] = [0, 1, 2].flatMap((k) => [1, -1].map((s): Vec3 => unitAlong(k, s)));
  return axes.flatMap((x) => axes.filter((y) => dot(x, y) === 0).map((y): Rotation => [x, y, cross(x, y)]));
}

const unitAlong = (k: number, sign: number): Vec3 => [
  k === 0 ? sign : 0,
  k === 1 ? sign : 0,
  k === 2 ? sign : 0,
];
