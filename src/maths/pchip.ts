/**
 * A smooth curve through given points that never swings past them: piecewise cubic Hermite interpolation.
 *
 * In    points with x rising
 * Out   value and slope anywhere; value and slope are continuous, and where the points rise the curve rises
 * Not   a fit: it goes through every point, errors and all. Past the ends it goes on straight by the end slope
 *
 * [FC]  Fritsch & Carlson, Monotone piecewise cubic interpolation, SIAM J. Numer. Anal. 17 (1980) 238–246
 * [FB]  Fritsch & Butland, A method for constructing local monotone piecewise cubic interpolants, SIAM J. Sci.
 *       Stat. Comput. 5 (1984) 300–304: the weighted harmonic mean for the inner slopes (both from memory)
 */
export interface CurvePoint {
  readonly x: number;
  readonly y: number;
}

export interface SmoothCurve {
  value(x: number): number;
  slope(x: number): number;
  readonly first: CurvePoint;
  readonly last: CurvePoint;
}

/** @throws Error with fewer than two points or x that does not rise: the caller has checked the table */
export function pchip(points: readonly CurvePoint[]): SmoothCurve {
  if (points.length < 2) throw new Error('a curve needs two points');
  const steps: number[] = [];
  const secants: number[] = [];
  for (let i = 1; i < points.length; i += 1) {
    const step = points[i]!.x - points[i - 1]!.x;
    if (!(step > 0)) throw new Error('x must rise along a curve');
    steps.push(step);
    secants.push((points[i]!.y - points[i - 1]!.y) / step);
  }
  const slopes = points.map((_, i) => {
    if (points.length === 2) return secants[0]!;
    if (i === 0) return endSlope(steps[0]!, steps[1]!, secants[0]!, secants[1]!);
    const n = secants.length;
    if (i === n) return endSlope(steps[n - 1]!, steps[n - 2]!, secants[n - 1]!, secants[n - 2]!);
    return innerSlope(steps[i - 1]!, steps[i]!, secants[i - 1]!, secants[i]!);
  });
  const first = points[0]!;
  const last = points.at(-1)!;

  const piece = (x: number): number => {
    let low = 0;
    let high = points.length - 1;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (points[middle]!.x <= x) low = middle;
      else high = middle;
    }
    return low;
  };

  const value = (x: number): number => {
    if (x <= first.x) return first.y + slopes[0]! * (x - first.x);
    if (x >= last.x) return last.y + slopes.at(-1)! * (x - last.x);
    const i = piece(x);
    const h = steps[i]!;
    const t = (x - points[i]!.x) / h;
    const u = 1 - t;
    return (
      points[i]!.y * u * u * (1 + 2 * t) +
      points[i + 1]!.y * t * t * (3 - 2 * t) +
      h * t * u * (slopes[i]! * u - slopes[i + 1]! * t)
    );
  };

  const slope = (x: number): number => {
    if (x <= first.x) return slopes[0]!;
    if (x >= last.x) return slopes.at(-1)!;
    const i = piece(x);
    const t = (x - points[i]!.x) / steps[i]!;
    const u = 1 - t;
    return 6 * t * u * secants[i]! + slopes[i]! * u * (1 - 3 * t) + slopes[i + 1]! * t * (3 * t - 2);
  };

  return { value, slope, first, last };
}

function innerSlope(before: number, after: number, left: number, right: number): number {
  if (left * right <= 0) return 0;
  const w1 = 2 * after + before;
  const w2 = after + 2 * before;
  return (w1 + w2) / (w1 / left + w2 / right);
}

/** One-sided three-point slope, held back so that the end piece stays monotone. */
function endSlope(step: number, next: number, secant: number, beyond: number): number {
  const slope = ((2 * step + next) * secant - step * beyond) / (step + next);
  if (slope * secant <= 0) return 0;
  if (secant * beyond <= 0 && Math.abs(slope) > 3 * Math.abs(secant)) return 3 * secant;
  return slope;
}
