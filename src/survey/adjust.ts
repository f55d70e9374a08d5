/**
 * The adjustment: one least-squares balance of every reading, which gives every point with its uncertainty.
 *
 * In    a survey
 * Out   points in car axes with covariance, how each reading bears on each point, each reading's residual and
 *       test, the outliers, and what the readings leave undetermined
 * Axes  car axes after ISO 8855; a residual is adjusted − read, in the axes of the reading
 * Not   readings that share an error (one tape's scale): they are taken as independent of one another
 *
 * Numbers SU-… are those of docs/theory/survey.md.
 *
 * [B]   W. Baarda, A testing procedure for use in geodetic networks, 1968 (from memory)
 * [GW]  Ghilani & Wolf, Adjustment Computations, 4th ed., 2006, ch. 11, 12, 14, 21 (from memory)
 */
import type { RigidMotion } from '../geometry/rigid-fit.ts';
import { chiSquareUpperLog } from '../maths/distributions.ts';
import type { Problem } from '../measured/problem.ts';
import type { Metre } from '../units/quantity.ts';
import { type Speech, show } from '../units/show.ts';
import { type Balance, balance, outlook } from './balance.ts';
import { checkSurvey } from './check.ts';
import type { State } from './equations.ts';
import { equationsOf } from './equations.ts';
import { axesNotFixed, freeMotions } from './lay-on-axes.ts';
import { type AdjustedPoint, CAR_SET, datumId, pointsOf, pointsOfRule, type Survey } from './network.ts';
import { startOf, type Unplaced } from './start.ts';
import { type GlobalTest, globalTest, type ReadingTest, readingTests } from './tests-of-readings.ts';

export interface Outlier {
  readonly id: string;
  /** Read − adjusted, the length of it for a point, m: how far the reading is out. */
  readonly misfit: Metre;
  readonly statistic: number;
  /** Probability of a worse one by chance. */
  readonly p: number;
  /** Readings that a blunder would have disturbed in just the same way: nobody can tell which one it was. */
  readonly alike: readonly string[];
  /** False when it cannot be told from its like: then it stays in and the points near it are not to be trusted. */
  readonly excluded: boolean;
  readonly sentence: string;
}

export interface Adjustment {
  readonly points: readonly AdjustedPoint[];
  /** Of x, y, z of all `points` in their order, m². */
  readonly covariance: readonly (readonly number[])[];
  /** d(co-ordinate)/d(reading): rows as `covariance`, columns as `gainColumns`. */
  readonly gain: readonly (readonly number[])[];
  readonly gainColumns: readonly { readonly id: string; readonly component: string; readonly u: Metre }[];
  /** All readings that took part, and the datum rules with an uncertainty of their own. */
  readonly readings: readonly ReadingTest[];
  readonly outliers: readonly Outlier[];
  readonly whole: GlobalTest;
  readonly undetermined: readonly Unplaced[];
  readonly frames: readonly (RigidMotion & { readonly set: string })[];
  readonly rounds: number;
  /** Chance, stated beforehand, of calling a good reading an outlier. */
  readonly outlierLevel: number;
}

export interface AdjustOptions {
  /** Chance of calling one good reading an outlier; 0.001, critical value 3.29, unless stated. */
  readonly outlierLevel?: number;
  /** Chance of finding an error of the size called detectable; 0.80 unless stated. */
  readonly power?: number;
  /** Level of the test of the whole, both ends together; 0.05 unless stated. */
  readonly wholeLevel?: number;
  /** Largest number of outliers to take out; a tenth of the readings unless stated. */
  readonly mostOutliers?: number;
}

export type AdjustResult =
  | { readonly ok: true; readonly is: Adjustment; readonly warnings: readonly Problem[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/**
 * Adjusts a survey.
 *
 * @throws AdjustmentDidNotSettle when the rounds do not come to rest
 */
export function adjustSurvey(survey: Survey, options: AdjustOptions = {}): AdjustResult {
  const wrong = checkSurvey(survey);
  if (wrong.length > 0) return { ok: false, problems: wrong };
  const start = startOf(survey);
  if (!start.ok) return start;
  const { unplaced, loose, state } = start.is;
  const lost = new Set(unplaced.map((each) => each.point));
  const stranded = survey.datum.filter((rule) => pointsOfRule(rule).some((name) => lost.has(name)));
  if (stranded.length > 0)
    return { ok: false, problems: stranded.map((rule) => strandedRule(datumId(rule), unplaced)) };
  const usable: Survey = {
    ...survey,
    readings: survey.readings.filter(
      (r) =>
        !pointsOf(r).some((name) => lost.has(name)) &&
        (r.kind !== 'point' || r.set === CAR_SET || !loose.includes(r.set)),
    ),
  };
  const motions = freeMotions(usable, state.points);
  if (motions.length > 0) return { ok: false, problems: [axesNotFixed(motions)] };

  const first = balance(usable, state);
  if (first.contradicted.length > 0) return { ok: false, problems: first.contradicted.map(contradictedRule) };
  const level = options.outlierLevel ?? 0.001;
  const { last, outliers } = snooped(usable, first, {
    level,
    power: options.power ?? 0.8,
    most: options.mostOutliers ?? Math.max(1, Math.floor(usable.readings.length / 10)),
  });
  const shaky = last.undetermined.map((each) => ({ point: each.point, why: looseDirection(each) }));
  return {
    ok: true,
    is: {
      ...outlook(last),
      readings: readingTests(last, level, options.power ?? 0.8),
      outliers,
      whole: globalTest(last, options.wholeLevel ?? 0.05),
      undetermined: [...unplaced, ...shaky],
      frames: [...last.state.frames].map(([set, frame]) => ({ set, ...frame })),
      outlierLevel: level,
    },
    warnings: [...unplaced, ...shaky].map(undeterminedWarning).concat(loose.map(looseWarning)),
  };
}

interface Snooping {
  readonly level: number;
  readonly power: number;
  readonly most: number;
}

/** Takes out the worst reading beyond the critical value, one at a time, and balances again.  [SU-16; B] */
function snooped(
  survey: Survey,
  first: Balance,
  rule: Snooping,
): { last: Balance; outliers: readonly Outlier[] } {
  let last = first;
  const found: { test: ReadingTest; alike: readonly string[]; excluded: boolean }[] = [];
  const out = new Set<string>();
  while (found.length < rule.most) {
    const tests = readingTests(last, rule.level, rule.power).filter((test) => test.freedom > 0);
    const worst = tests.reduce<ReadingTest | undefined>(
      (most, test) => (most === undefined || worse(test, most) ? test : most),
      undefined,
    );
    if (worst === undefined || worst.p >= rule.level) break;
    const alike = tests
      .filter((test) => test.id !== worst.id && sameEffect(test, worst))
      .map((test) => test.id);
    found.push({ test: worst, alike, excluded: alike.length === 0 });
    if (alike.length > 0) break;
    out.add(worst.id);
    last = balance(survey, last.state, out);
  }
  const outliers = found.map(({ test, alike, excluded }) => {
    const misfit = misfitOf(survey, test.id, last.state) ?? test.components[0]!.residual;
    const { id, statistic, p } = test;
    return { id, misfit, statistic, p, alike, excluded, sentence: outlierSentence(id, misfit, alike) };
  });
  return { last, outliers };
}

/** Rarer by chance, also where both are too rare for a number. */
const worse = (a: ReadingTest, b: ReadingTest): boolean => rarity(a) < rarity(b);
const rarity = (test: ReadingTest): number => chiSquareUpperLog(test.statistic, test.freedom);

/** 1e-6: statistics of the same blunder agree to rounding, those of different ones do not. */
const sameEffect = (a: ReadingTest, b: ReadingTest): boolean =>
  a.freedom === b.freedom && Math.abs(a.statistic - b.statistic) < 1e-6 * b.statistic;

function misfitOf(survey: Survey, id: string, state: State): number | undefined {
  const reading = survey.readings.find((r) => r.id === id);
  if (reading === undefined) return undefined;
  const off = equationsOf(reading, state).map((e) => e.read - e.computed);
  return off.length === 1 ? off[0]! : Math.hypot(...off);
}

const out = (value: number, speech: Speech): string => {
  const { text, unit } = show(Math.abs(value), 'm', speech, Math.max(Math.abs(value) / 20, 1e-5));
  return `${text} ${unit}`;
};

/** What is to be done about a reading that does not fit. */
export const outlierSentence = (
  id: string,
  misfit: number,
  alike: readonly string[],
  speech: Speech = 'mm-N',
): string =>
  alike.length === 0
    ? `${id} is ${out(misfit, speech)} out against all the others and was left out: read it again.`
    : `One of ${[id, ...alike].join(', ')} is wrong, and the readings cannot tell which: read them again.`;

const strandedRule = (id: string, unplaced: readonly Unplaced[]): Problem => ({
  code: 'survey/datum-point-not-found',
  path: id,
  message: `${id}: its point could not be placed. ${unplaced.map((each) => each.why).join(' ')}`,
  weight: 'error',
});

const contradictedRule = (rule: { readonly id: string; readonly by: number }): Problem => ({
  code: 'survey/datum-contradicts',
  path: rule.id,
  message: `${rule.id} cannot hold together with the other exact rules: it is ${out(rule.by, 'mm-N')} off.`,
  remedy: 'Give one of them an uncertainty, so that it is weighed as a reading, or take it away.',
  weight: 'error',
});

const looseDirection = (each: Balance['undetermined'][number]): string => {
  const [x, y, z] = each.direction.map((v) => v.toFixed(2));
  const company = each.together.length > 0 ? ` It moves together with ${each.together.join(', ')}.` : '';
  return (
    `No reading holds ${each.point} along (${x}, ${y}, ${z}).${company} ` +
    'Take one more length, height or offset that runs along that direction, or touch it with the arm.'
  );
};

const undeterminedWarning = (each: Unplaced): Problem => ({
  code: 'survey/undetermined',
  path: each.point,
  message: each.why,
  weight: 'warning',
});

const looseWarning = (set: string): Problem => ({
  code: 'survey/set-not-joined',
  path: `set ${set}`,
  message: `Set "${set}" does not share three points, not on one line, with the rest; it took no part.`,
  remedy: 'Touch at least three, better five, points of an earlier set again after moving the arm.',
  weight: 'warning',
});
