/**
 * Where a wheel stands on the ground: the lowest point of its circle.
 *
 * In    the wheel's axis (unit vector) with its first and second derivative by any one parameter
 * Out   the unit vector from the wheel's centre to the lowest point of the circle, with the same derivatives
 * Axes  ISO 8855: z up
 * Not   a tyre with width: the lowest point then moves along the tread with camber
 */
import { add, along, scale, type Vec3 } from '../../maths/vec3.ts';

export interface Lowest {
  readonly value: Vec3;
  readonly first: Vec3;
  readonly second: Vec3;
}

/** d = −(z − (z·n) n)/g, g = |z − (z·n) n|, and its derivatives.  LP-10, LP-12 */
export function lowestDirection(n: Vec3, n1: Vec3, n2: Vec3): Lowest {
  const m = n[2];
  const m1 = n1[2];
  const m2 = n2[2];
  const g = Math.sqrt(1 - m * m);
  const g1 = (-m * m1) / g;
  const g2 = -(m1 * m1 + m * m2 + g1 * g1) / g;
  // v = −u = (z·n) n − z
  const v: Vec3 = add(scale(n, m), [0, 0, -1]);
  const v1 = along(scale(n, m1), n1, m);
  const v2 = along(along(scale(n, m2), n1, 2 * m1), n2, m);
  const value = scale(v, 1 / g);
  const first = scale(along(v1, value, -g1), 1 / g);
  const second = scale(along(along(v2, first, -2 * g1), value, -g2), 1 / g);
  return { value, first, second };
}
