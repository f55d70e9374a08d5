/**
 * Is the car bent? Each right-hand point held against its mirrored left-hand partner, and lengths against
 * their partners, as a tested difference.
 *
 * In    an adjusted survey, the pairs, the lengths to compare, the level stated beforehand
 * Out   for each: the difference with its spread, how likely one as large is from the readings alone, and what
 *       difference would have been seen
 * Axes  x forward, y left, z up; a difference is right − mirrored left
 * Not   whether a difference matters, or which side is the bent one: the maker's drawing says where it should be
 *
 * Numbers SU-… are those of docs/theory/survey.md.
 *
 * [Ho]  S. Holm, Scandinavian Journal of Statistics 6 (1979) 65: correction for many tests (from memory)
 */
import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import {
  chiSquareUpper,
  chiSquareUpperLog,
  detectableNonCentrality,
  normalQuantileUpper,
  normalTwoSided,
} from '../maths/distributions.ts';
import { distance, scale, sub, unit, type Vec3 } from '../maths/vec3.ts';
import { nearest, type Problem } from '../measured/problem.ts';
import type { Metre } from '../units/quantity.ts';
import type { Adjustment } from './adjust.ts';
import { centredOnPairs, type PairRow } from './centre-plane.ts';
import { lengthSentence, pairSentence } from './compare-words.ts';
import { AXES, type AxisName } from './network.ts';

export interface SidePair {
  /** What the place is called, without its side: "lower rear pick-up". */
  readonly name: string;
  readonly left: string;
  readonly right: string;
}

export interface LengthPair {
  /** "wheelbase", "diagonal". */
  readonly name: string;
  readonly left: readonly [string, string];
  readonly right: readonly [string, string];
}

export interface CompareOptions {
  readonly pairs: readonly SidePair[];
  readonly lengths?: readonly LengthPair[];
  /** Measured against the datum's centre plane, or against the one that fits the straight pairs best. */
  readonly centrePlane: 'of the datum' | 'best fit';
  /** Chance of accusing a straight car anywhere at all; 0.01 unless stated. */
  readonly level?: number;
  /** Chance of seeing a difference of the size called detectable; 0.80 unless stated. */
  readonly power?: number;
}

interface Tested {
  readonly name: string;
  /** Probability of a difference as large from the readings alone. */
  readonly p: number;
  /** The same after Holm's correction for the number of comparisons. */
  readonly corrected: number;
  readonly differs: boolean;
  /** A difference above this would have been found, with the stated power, whichever way it points. */
  readonly detectable: Metre;
  readonly sentence: string;
}

export interface PairResult extends Tested {
  readonly difference: Vec3;
  readonly u: Vec3;
  /** Each axis by itself, two-sided, not corrected. */
  readonly pByAxis: readonly [number, number, number];
  readonly statistic: number;
  readonly freedom: number;
  /** Axes along which the datum itself sets the pair equal: nothing can be said there. */
  readonly heldByDatum: readonly AxisName[];
}

export interface LengthResult extends Tested {
  /** Left − right. */
  readonly difference: Metre;
  readonly u: Metre;
}

export interface Comparison {
  readonly pairs: readonly PairResult[];
  readonly lengths: readonly LengthResult[];
  readonly level: number;
  readonly differs: boolean;
  /** Pairs that were kept out of the best centre plane because they differ. */
  readonly notInPlane: readonly string[];
  /** Variances were multiplied by this because the readings agree worse than claimed. */
  readonly widenedBy: number;
  readonly sentence: string;
}

export type CompareResult =
  | { readonly ok: true; readonly is: Comparison }
  | { readonly ok: false; readonly problems: readonly Problem[] };

interface Raw {
  readonly p: number;
}

export function compareSides(survey: Adjustment, options: CompareOptions): CompareResult {
  const wrong = checkNames(survey, options);
  if (wrong.length > 0) return { ok: false, problems: wrong };
  const level = options.level ?? 0.01;
  const power = options.power ?? 0.8;
  const widenedBy = survey.whole.verdict === 'worse than claimed' ? survey.whole.varianceFactor : 1;
  const lengths = (options.lengths ?? []).map((each) => rawLength(survey, each, widenedBy));
  const count = options.pairs.length + lengths.length;
  const rows = pairRows(survey, options.pairs, widenedBy);

  let inPlane = options.pairs.map((_, k) => k);
  let pairs: readonly RawPair[] = [];
  let corrected: readonly number[] = [];
  for (;;) {
    const plane = options.centrePlane === 'best fit' ? centredOnPairs(rows, inPlane) : rows;
    if (plane === undefined) return { ok: false, problems: [noPlane()] };
    pairs = options.pairs.map((_, k) => rawPair(plane, k));
    corrected = holm([...pairs, ...lengths].map((each) => each.p));
    if (options.centrePlane !== 'best fit' || inPlane.length <= 3) break;
    const worst = inPlane.reduce((most, k) => (pairs[k]!.logP < pairs[most]!.logP ? k : most), inPlane[0]!);
    if (corrected[worst]! >= level) break;
    inPlane = inPlane.filter((k) => k !== worst);
  }
  const share = level / Math.max(1, count);
  const reach = normalQuantileUpper(share / 2) + normalQuantileUpper(1 - power);
  const pairResults = options.pairs.map((pair, k): PairResult => {
    const { largest, logP: _, ...raw } = pairs[k]!;
    const differs = corrected[k]! < level;
    const need = raw.freedom === 0 ? 0 : detectableNonCentrality(share, power, raw.freedom);
    const result = {
      ...raw,
      name: pair.name,
      corrected: corrected[k]!,
      differs,
      detectable: Math.sqrt(need * largest),
    };
    return { ...result, sentence: pairSentence(result, level) };
  });
  const lengthResults = (options.lengths ?? []).map((each, k): LengthResult => {
    const raw = lengths[k]!;
    const adjusted = corrected[options.pairs.length + k]!;
    const result = {
      ...raw,
      name: each.name,
      corrected: adjusted,
      differs: adjusted < level,
      detectable: reach * raw.u,
    };
    return { ...result, sentence: lengthSentence(result) };
  });
  const found = [...pairResults, ...lengthResults].filter((each) => each.differs);
  return {
    ok: true,
    is: {
      pairs: pairResults,
      lengths: lengthResults,
      level,
      differs: found.length > 0,
      notInPlane:
        options.centrePlane === 'best fit'
          ? options.pairs.filter((_, k) => !inPlane.includes(k)).map((pair) => pair.name)
          : [],
      widenedBy,
      sentence:
        found.length === 0
          ? `No difference between left and right that the readings can show, in ${count} comparisons at ${level} for all together.`
          : `${found.length} of ${count} comparisons differ by more than the readings explain: ${found.map((each) => each.name).join(', ')}.`,
    },
  };
}

/** Differences right − mirrored left of all pairs, with their joint covariance.  [SU-18] */
function pairRows(survey: Adjustment, pairs: readonly SidePair[], widenedBy: number): PairRow {
  const index = new Map(survey.points.map((p, k) => [p.name, 3 * k]));
  const J = Matrix.zeros(3 * pairs.length, 3 * survey.points.length);
  const at = (name: string): Vec3 => survey.points[index.get(name)! / 3]!.at;
  const d: number[] = [];
  pairs.forEach((pair, i) => {
    const [l, r] = [at(pair.left), at(pair.right)];
    d.push(r[0] - l[0], r[1] + l[1], r[2] - l[2]);
    for (let k = 0; k < 3; k += 1) {
      J.set(3 * i + k, index.get(pair.right)! + k, 1);
      J.set(3 * i + k, index.get(pair.left)! + k, k === 1 ? 1 : -1);
    }
  });
  const covariance = J.mmul(new Matrix(survey.covariance as number[][]))
    .mmul(J.transpose())
    .mul(widenedBy);
  const sides = pairs.map((pair) => ({ left: at(pair.left), right: at(pair.right) }));
  return { difference: d, covariance, sides };
}

interface RawPair extends Raw {
  readonly difference: Vec3;
  readonly u: Vec3;
  readonly pByAxis: readonly [number, number, number];
  readonly statistic: number;
  readonly freedom: number;
  readonly heldByDatum: readonly AxisName[];
  /** Largest variance of the difference in any direction. */
  readonly largest: number;
  /** Logarithm of p: ranks pairs whose p is too small for a number. */
  readonly logP: number;
}

/** A variance below this share of the largest is none: the datum or rounding set it. */
const NO_VARIANCE = 1e-8;

/** Chi-square test of one pair over the directions in which it can differ.  [SU-19] */
function rawPair(rows: PairRow, k: number): RawPair {
  const three = [0, 1, 2].map((i) => 3 * k + i);
  const C = new Matrix(three.map((i) => three.map((j) => rows.covariance.get(i, j))));
  const v = three.map((i) => rows.difference[i]!);
  const turned = new EigenvalueDecomposition(C, { assumeSymmetric: true });
  const largest = Math.max(...turned.realEigenvalues);
  let statistic = 0;
  let freedom = 0;
  turned.realEigenvalues.forEach((value, m) => {
    if (!(value > NO_VARIANCE * largest)) return;
    freedom += 1;
    statistic += v.reduce((sum, x, i) => sum + x * turned.eigenvectorMatrix.get(i, m), 0) ** 2 / value;
  });
  const u = (i: number): number => Math.sqrt(Math.max(0, C.get(i, i)));
  const held = AXES.filter((_, i) => C.get(i, i) <= NO_VARIANCE * largest);
  const p = (i: number): number => (held.includes(AXES[i]!) ? 1 : normalTwoSided(v[i]! / u(i)));
  return {
    difference: [v[0]!, v[1]!, v[2]!],
    u: [u(0), u(1), u(2)],
    pByAxis: [p(0), p(1), p(2)],
    statistic,
    freedom,
    p: freedom === 0 ? 1 : chiSquareUpper(statistic, freedom),
    heldByDatum: held,
    largest,
    logP: freedom === 0 ? 0 : chiSquareUpperLog(statistic, freedom),
  };
}

/** Difference of two lengths, left − right, with its spread from the whole covariance.  [SU-21] */
function rawLength(
  survey: Adjustment,
  pair: LengthPair,
  widenedBy: number,
): Raw & { readonly difference: number; readonly u: number } {
  const index = new Map(survey.points.map((p, k) => [p.name, k]));
  const slope = new Array<number>(3 * survey.points.length).fill(0);
  const measure = ([from, to]: readonly [string, string], sign: number): number => {
    const [a, b] = [survey.points[index.get(from)!]!.at, survey.points[index.get(to)!]!.at];
    const direction = scale(unit(sub(b, a)), sign);
    for (let k = 0; k < 3; k += 1) {
      slope[3 * index.get(to)! + k]! += direction[k]!;
      slope[3 * index.get(from)! + k]! -= direction[k]!;
    }
    return sign * distance(a, b);
  };
  const difference = measure(pair.left, 1) + measure(pair.right, -1);
  let variance = 0;
  slope.forEach((a, i) => {
    if (a === 0) return;
    slope.forEach((b, j) => {
      variance += a * b * survey.covariance[i]![j]!;
    });
  });
  const u = Math.sqrt(Math.max(0, widenedBy * variance));
  return { difference, u, p: u > 0 ? normalTwoSided(difference / u) : 1 };
}

/** Holm's step-down corrected probabilities.  [Ho] */
export function holm(p: readonly number[]): readonly number[] {
  const order = p.map((value, k) => ({ value, k })).sort((a, b) => a.value - b.value);
  const corrected = new Array<number>(p.length).fill(1);
  let most = 0;
  order.forEach(({ value, k }, rank) => {
    most = Math.max(most, Math.min(1, (p.length - rank) * value));
    corrected[k] = most;
  });
  return corrected;
}

function checkNames(survey: Adjustment, options: CompareOptions): readonly Problem[] {
  const known = survey.points.map((p) => p.name);
  const asked = [
    ...options.pairs.map((pair) => ({ path: pair.name, names: [pair.left, pair.right] })),
    ...(options.lengths ?? []).map((pair) => ({ path: pair.name, names: [...pair.left, ...pair.right] })),
  ];
  return asked.flatMap(({ path, names }) =>
    names
      .filter((name) => !known.includes(name))
      .map((name) => {
        const like = nearest(name, known);
        const hint = like === undefined ? '' : ` Did you mean "${like}"?`;
        return {
          code: 'survey/unknown-point',
          path,
          message: `${path}: the survey gives no place for "${name}".${hint}`,
          weight: 'error' as const,
        };
      }),
  );
}

const noPlane = (): Problem => ({
  code: 'survey/no-centre-plane',
  path: 'pairs',
  message: 'The pairs lie too close together to give a centre plane of their own.',
  remedy: 'Add pairs further along the car, or compare against the centre plane of the datum.',
  weight: 'error',
});
