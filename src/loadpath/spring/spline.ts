/**
 * The splined ends as a vernier: which anchor angles can be set by re-engaging teeth.
 *
 * In    tooth counts of the two ends; the angle that is wanted
 * Out   the smallest step there is, and the nearest setting with the teeth to move at each end
 * Axes  teeth and angles positive in the direction that adds twist in bump
 * Not   an anchor with an adjusting screw, which needs no vernier
 *
 * Moving the first end by i teeth and the second by j turns the bar's anchorage by i·2π/z₁ + j·2π/z₂; over all i
 * and j that gives every multiple of 2π/lcm(z₁, z₂).  [SP-43, SP-44]
 */
import type { Radian } from '../../units/quantity.ts';

export interface Splines {
  readonly first: number;
  readonly second: number;
}

const divisor = (a: number, b: number): number => (b === 0 ? a : divisor(b, a % b));

/** Smallest angle between two settings: one turn over the least common multiple of the tooth counts.  [SP-43] */
export const vernierStep = ({ first, second }: Splines): Radian =>
  (2 * Math.PI * divisor(first, second)) / (first * second);

export interface SplineSetting {
  /** Teeth to move at each end, signed. */
  readonly moveFirst: number;
  readonly moveSecond: number;
  readonly angle: Radian;
  /** Setting less wanted. */
  readonly error: Radian;
}

/**
 * Nearest setting to a wanted angle, with the fewest teeth to move among those equally near.  [SP-44]
 *
 * Equal counts at both ends give no vernier: whole teeth only.
 */
export function nearestSetting(splines: Splines, wanted: Radian): SplineSetting {
  const pitchFirst = (2 * Math.PI) / splines.first;
  const pitchSecond = (2 * Math.PI) / splines.second;
  const near = 1e-9 * vernierStep(splines);
  let best: SplineSetting | undefined;
  for (let moveFirst = -splines.first; moveFirst <= splines.first; moveFirst += 1) {
    const moveSecond = Math.round((wanted - moveFirst * pitchFirst) / pitchSecond);
    const angle = moveFirst * pitchFirst + moveSecond * pitchSecond;
    const error = angle - wanted;
    const moves = Math.abs(moveFirst) + Math.abs(moveSecond);
    const nearer = best === undefined ? Number.NEGATIVE_INFINITY : Math.abs(error) - Math.abs(best.error);
    const fewer = best !== undefined && moves < Math.abs(best.moveFirst) + Math.abs(best.moveSecond);
    if (nearer < -near || (nearer <= near && fewer)) best = { moveFirst, moveSecond, angle, error };
  }
  return best!;
}
