/**
 * The normal, chi-square and Student distributions: how likely a reading this far off is by chance alone.
 *
 * In    a statistic and its degrees of freedom; or a probability
 * Out   the probability of a larger one (upper tail); or the value that is exceeded with that probability
 * Not   small-sample corrections or any judgement: the caller states the level it tests at
 *
 * Upper tails are worked directly, not as 1 − lower: 1e-12 stays 1e-12.
 *
 * [AS]  Abramowitz & Stegun, Handbook of Mathematical Functions, 1964, ch. 6 and 26 (from memory):
 *       6.1.41 Stirling's series, 6.5.29 and 6.5.31 incomplete gamma, 26.5.8 incomplete beta,
 *       26.4.25 non-central chi-square as a Poisson mixture
 */

const STIRLING = [1 / 12, -1 / 360, 1 / 1260, -1 / 1680, 1 / 1188, -691 / 360360, 1 / 156];

/** Natural logarithm of the gamma function for x > 0.  [AS 6.1.41, pushed up to x ≥ 10 by the recurrence] */
export function logGamma(x: number): number {
  let shift = 0;
  let z = x;
  for (; z < 10; z += 1) shift -= Math.log(z);
  let series = 0;
  for (let k = STIRLING.length - 1; k >= 0; k -= 1) series = series / (z * z) + STIRLING[k]!;
  return shift + (z - 0.5) * Math.log(z) - z + 0.5 * Math.log(2 * Math.PI) + series / z;
}

const TINY = 1e-300;
const LIMIT = 10000;

/**
 * Value of the continued fraction b0 + a1/(b1 + a2/(b2 + …)) by the modified Lentz recurrence.
 * `term` gives the k-th pair, k = 1, 2, ….
 */
function continuedFraction(b0: number, term: (k: number) => { a: number; b: number }): number {
  let value = b0 === 0 ? TINY : b0;
  let c = value;
  let d = 0;
  for (let k = 1; k < LIMIT; k += 1) {
    const { a, b } = term(k);
    d = b + a * d;
    if (d === 0) d = TINY;
    c = b + a / c;
    if (c === 0) c = TINY;
    d = 1 / d;
    const factor = c * d;
    value *= factor;
    if (Math.abs(factor - 1) < 1e-16) return value;
  }
  return value;
}

/** Regularised incomplete gamma functions: lower P(a, x) and upper Q(a, x), each worked where it is small. */
export function incompleteGamma(a: number, x: number): { readonly lower: number; readonly upper: number } {
  if (x <= 0) return { lower: 0, upper: 1 };
  if (x === Number.POSITIVE_INFINITY) return { lower: 1, upper: 0 };
  const front = Math.exp(a * Math.log(x) - x - logGamma(a));
  if (x < a + 1) {
    let term = 1 / a;
    let sum = term;
    for (let k = 1; k < LIMIT && Math.abs(term) > 1e-17 * Math.abs(sum); k += 1) {
      term *= x / (a + k);
      sum += term;
    }
    const lower = Math.min(1, front * sum);
    return { lower, upper: 1 - lower };
  }
  const upper = Math.min(1, front / upperFraction(a, x));
  return { lower: 1 - upper, upper };
}

/** Continued fraction of the upper incomplete gamma function, x ≥ a + 1.  [AS 6.5.31] */
const upperFraction = (a: number, x: number): number =>
  continuedFraction(x + 1 - a, (k) => ({ a: -k * (k - a), b: x + 2 * k + 1 - a }));

/** Regularised incomplete beta function I_x(a, b).  [AS 26.5.8] */
export function incompleteBeta(a: number, b: number, x: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  if (x > (a + 1) / (a + b + 2)) return 1 - incompleteBeta(b, a, 1 - x);
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x));
  const fraction = continuedFraction(1, (k) => {
    const m = Math.floor(k / 2);
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    return { a: k % 2 === 0 ? even : odd, b: 1 };
  });
  return front / (a * fraction);
}

/** Probability that a standard normal variable exceeds z. */
export function normalUpper(z: number): number {
  const tail = 0.5 * incompleteGamma(0.5, (z * z) / 2).upper;
  return z >= 0 ? tail : 1 - tail;
}

/** Probability of a standard normal variable further from zero than z, either way. */
export const normalTwoSided = (z: number): number => incompleteGamma(0.5, (z * z) / 2).upper;

/** Probability that a chi-square variable with `freedom` degrees of freedom exceeds x. */
export const chiSquareUpper = (x: number, freedom: number): number =>
  incompleteGamma(freedom / 2, x / 2).upper;

/** Natural logarithm of `chiSquareUpper`: ranks blunders so gross that the probability itself comes out as 0. */
export function chiSquareUpperLog(x: number, freedom: number): number {
  const a = freedom / 2;
  const half = x / 2;
  if (half < a + 1) return Math.log(chiSquareUpper(x, freedom));
  return a * Math.log(half) - half - logGamma(a) - Math.log(upperFraction(a, half));
}

/** Probability that Student's t with `freedom` degrees of freedom exceeds t. */
export function studentUpper(t: number, freedom: number): number {
  const tail = 0.5 * incompleteBeta(freedom / 2, 0.5, freedom / (freedom + t * t));
  return t >= 0 ? tail : 1 - tail;
}

/**
 * Probability that a non-central chi-square variable exceeds x: the power of a chi-square test against a
 * difference whose square over its variance is `nonCentrality`.  [AS 26.4.25]
 */
export function nonCentralChiSquareUpper(x: number, freedom: number, nonCentrality: number): number {
  const half = nonCentrality / 2;
  let sum = 0;
  for (let j = 0; j < LIMIT; j += 1) {
    const weight = Math.exp(j === 0 ? -half : j * Math.log(half) - half - logGamma(j + 1));
    if (half > 0 || j === 0) sum += weight * incompleteGamma(freedom / 2 + j, x / 2).upper;
    if (half === 0 || (j > half && weight < 1e-17)) break;
  }
  return Math.min(1, sum);
}

/** Where the falling function `upper` meets `p`: bracket by doubling, then halve until the digits are used up. */
function whereTail(upper: (x: number) => number, p: number, from: number): number {
  let low = from;
  let high = from + 1;
  while (upper(high) > p && high < 1e12) {
    low = high;
    high = from + 2 * (high - from);
  }
  for (let step = 0; step < 200 && high - low > 2e-15 * Math.abs(high); step += 1) {
    const middle = 0.5 * (low + high);
    if (upper(middle) > p) low = middle;
    else high = middle;
  }
  return 0.5 * (low + high);
}

const asProbability = (p: number): number => {
  if (!(p > 0 && p < 1)) throw new Error(`a probability lies between 0 and 1, not at ${p}`);
  return p;
};

/** The value a standard normal variable exceeds with probability p. */
export function normalQuantileUpper(p: number): number {
  if (asProbability(p) > 0.5) return -normalQuantileUpper(1 - p);
  return p === 0.5 ? 0 : whereTail(normalUpper, p, 0);
}

/** The value a chi-square variable exceeds with probability p. */
export const chiSquareQuantileUpper = (p: number, freedom: number): number =>
  whereTail((x) => chiSquareUpper(x, freedom), asProbability(p), 0);

/** The value Student's t exceeds with probability p. */
export function studentQuantileUpper(p: number, freedom: number): number {
  if (asProbability(p) > 0.5) return -studentQuantileUpper(1 - p, freedom);
  return p === 0.5 ? 0 : whereTail((t) => studentUpper(t, freedom), p, 0);
}

/**
 * The non-centrality at which a chi-square test at level `alpha` finds a difference with probability `power`.
 * With one degree of freedom, 0.001 and 0.80 it is 17.07, whose root 4.13 is known from geodetic practice.
 */
export function detectableNonCentrality(alpha: number, power: number, freedom: number): number {
  const critical = chiSquareQuantileUpper(alpha, freedom);
  return whereTail(
    (lambda) => 1 - nonCentralChiSquareUpper(critical, freedom, lambda),
    asProbability(1 - power),
    0,
  );
}
