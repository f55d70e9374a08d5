/**
 * Where a handful of points lies and how far it reaches.
 *
 * In    points, m
 * Out   their mean, their root mean square distance from it, the largest distance between two placings of them
 */
import { distance, type Vec3 } from '../maths/vec3.ts';
import type { Metre } from '../units/quantity.ts';

export const meanOf = (points: readonly Vec3[]): Vec3 => {
  const sum = (k: 0 | 1 | 2): number => points.reduce((total, p) => total + p[k], 0) / points.length;
  return [sum(0), sum(1), sum(2)];
};

/** Root mean square distance from the mean. */
export const extentOf = (points: readonly Vec3[]): Metre => {
  const centre = meanOf(points);
  return Math.sqrt(points.reduce((sum, p) => sum + distance(p, centre) ** 2, 0) / points.length);
};

/** Largest distance between two placings of the same points. */
export const apart = (a: readonly Vec3[], b: readonly Vec3[]): Metre =>
  Math.max(...a.map((p, k) => distance(p, b[k]!)));
