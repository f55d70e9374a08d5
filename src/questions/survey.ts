/** What the survey says: residuals, outliers, and whether the car is bent. */
import { pointInWords, pointsInWords } from '../car/point-words.ts';
import type { Car } from '../car/read.ts';
import { type Adjustment, outlierSentence } from '../survey/adjust.ts';
import { type Comparison, compareSides, type LengthPair, type SidePair } from '../survey/compare.ts';
import { lengthSentence, pairSentence } from '../survey/compare-words.ts';
import type { Speech } from '../units/show.ts';

export interface SurveyAnswer {
  /** How the lists were understood. */
  readonly said: readonly string[];
  readonly points: Adjustment['points'];
  /** As adjusted, each with what was read in the trade's words. */
  readonly readings: readonly (Adjustment['readings'][number] & { readonly means: string })[];
  readonly outliers: Adjustment['outliers'];
  readonly whole: Adjustment['whole'];
  readonly undetermined: Adjustment['undetermined'];
  /** Left against right; absent where no pair was surveyed. */
  readonly comparison?: Comparison;
  readonly notes: readonly string[];
}

/** Undefined when the car file has no survey. Numbers are in SI; `speech` is that of the sentences. */
export function surveyAnswer(car: Car, speech: Speech = 'mm-N'): SurveyAnswer | undefined {
  if (car.survey === undefined) return undefined;
  const { adjustment, said } = car.survey;
  const { points, readings, outliers, whole, undetermined } = adjustment;
  const pairs = pairsOf(points.map((point) => point.name));
  const compared =
    pairs.length === 0
      ? undefined
      : compareSides(adjustment, { pairs, lengths: lengthsOf(points), centrePlane: 'best fit' });
  return {
    said,
    points,
    readings: readings.map((each) => ({ ...each, means: pointsInWords(each.id) })),
    outliers: outliers.map((each) => ({
      ...each,
      sentence: pointsInWords(outlierSentence(each.id, each.misfit, each.alike, speech)),
    })),
    whole,
    undetermined: undetermined.map(({ point, why }) => ({ point, why: pointsInWords(why) })),
    ...(compared?.ok ? { comparison: worded(compared.is, speech) } : {}),
    notes: compared !== undefined && !compared.ok ? compared.problems.map((problem) => problem.message) : [],
  };
}

const worded = (comparison: Comparison, speech: Speech): Comparison => ({
  ...comparison,
  pairs: comparison.pairs.map((each) => ({
    ...each,
    sentence: pairSentence(each, comparison.level, speech),
  })),
  lengths: comparison.lengths.map((each) => ({ ...each, sentence: lengthSentence(each, speech) })),
});

/** Inner joints and rocker pivots: what belongs to tub and case. Links and uprights move, so they prove nothing. */
const FIXED = [
  'upperFront',
  'upperRear',
  'lowerFront',
  'lowerRear',
  'rockerPivot',
  'rockerAxis',
  'damperTub',
] as const;

function pairsOf(names: readonly string[]): SidePair[] {
  const known = new Set(names);
  return (['front', 'rear'] as const).flatMap((end) =>
    FIXED.flatMap((point) => {
      const [left, right] = [`${end}.left.${point}`, `${end}.right.${point}`];
      return known.has(left) && known.has(right)
        ? [{ name: `${end} ${pointInWords(point)}`, left, right }]
        : [];
    }),
  );
}

function lengthsOf(points: Adjustment['points']): LengthPair[] {
  const known = new Set(points.map((point) => point.name));
  const lengths: LengthPair[] = [
    {
      name: 'wheelbase',
      left: ['front.left.wheelCentre', 'rear.left.wheelCentre'],
      right: ['front.right.wheelCentre', 'rear.right.wheelCentre'],
    },
    {
      name: 'diagonal of the lower inner joints',
      left: ['front.left.lowerFront', 'rear.right.lowerRear'],
      right: ['front.right.lowerFront', 'rear.left.lowerRear'],
    },
  ];
  return lengths.filter(({ left, right }) => [...left, ...right].every((name) => known.has(name)));
}
