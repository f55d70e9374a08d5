import assert from 'node:assert/strict';
import { test } from 'node:test';
import type { Vec3 } from '../../src/maths/vec3.ts';
import { adjustSurvey } from '../../src/survey/adjust.ts';
import {
  type CompareOptions,
  type Comparison,
  compareSides,
  holm,
  type LengthPair,
} from '../../src/survey/compare.ts';
import { DATUM, PAIRS, seeded, surveyOf, trueCar } from './invented-car.ts';

const LENGTHS: readonly LengthPair[] = [
  {
    name: 'wheelbase',
    left: ['left front lower front', 'left rear lower rear'],
    right: ['right front lower front', 'right rear lower rear'],
  },
  {
    name: 'diagonal',
    left: ['left front lower front', 'right rear lower rear'],
    right: ['right front lower front', 'left rear lower rear'],
  },
];

function compared(
  bend: Readonly<Record<string, Vec3>>,
  seed: number,
  options: Partial<CompareOptions> = {},
): Comparison {
  const car = trueCar(bend);
  const approximate = Object.fromEntries([...trueCar()].slice(0, 5));
  const result = adjustSurvey({ ...surveyOf(car, seeded(seed).normal), approximate });
  assert.ok(result.ok);
  const comparison = compareSides(result.is, {
    pairs: PAIRS,
    lengths: LENGTHS,
    centrePlane: 'best fit',
    ...options,
  });
  assert.ok(comparison.ok, JSON.stringify(comparison));
  return comparison.is;
}

const BENT = { 'right rear lower rear': [-0.002, 0, 0] as Vec3 };

/** Published rule: Holm 1979. The case is worked by hand: 3 × 0.01, then 2 × 0.02, then 1 × 0.04. */
test('Holm: step-down corrected probabilities', () => {
  const corrected = holm([0.04, 0.01, 0.02]);
  [0.04, 0.03, 0.04].forEach((want, k) => {
    assert.ok(Math.abs(corrected[k]! - want) < 1e-15); // rounding
  });
  assert.deepEqual(holm([0.5, 0.6]), [1, 1]);
});

test('a pick-up 2 mm too far back is found, its neighbours are not accused, and the sentence says so', () => {
  const found = compared(BENT, 5);
  assert.deepEqual(
    [...found.pairs, ...found.lengths].filter((each) => each.differs).map((each) => each.name),
    ['rear lower rear', 'wheelbase', 'diagonal'],
  );
  const pair = found.pairs.find((each) => each.differs)!;
  assert.ok(Math.abs(pair.difference[0] + 0.002) < 4 * pair.u[0]); // four standard uncertainties
  assert.match(
    pair.sentence,
    /^right rear lower rear stands .* mm further back than the mirrored left one: more than the readings can explain/,
  );
  assert.deepEqual(found.notInPlane, ['rear lower rear']);
});

test('a straight car is told what would have been seen', () => {
  const found = compared({}, 5);
  assert.equal(found.differs, false);
  assert.match(
    found.pairs[0]!.sentence,
    /no difference that the readings can show; a difference above .* mm would have been seen/,
  );
});

test('against the datum: the axis along which the datum sets a pair equal is not tested, and it is said', () => {
  const found = compared({}, 5, { centrePlane: 'of the datum' });
  const pair = found.pairs.find((each) => each.name === 'rear lower front')!;
  assert.deepEqual(pair.heldByDatum, ['y']);
  assert.equal(pair.freedom, 2);
  assert.match(pair.sentence, /nothing is tested there/);
});

test('the best centre plane does not depend on which pairs the datum had held', () => {
  const survey = surveyOf(trueCar(BENT), seeded(11).normal);
  const approximate = Object.fromEntries([...trueCar()].slice(0, 5));
  const other = DATUM.map((rule) =>
    'pair' in rule && rule.axis === 'y'
      ? {
          ...rule,
          pair: rule.pair.map((name) => name.replace('lower front', 'upper front')) as [string, string],
        }
      : rule,
  );
  const [a, b] = [DATUM, other].map((datum) => {
    const adjusted = adjustSurvey({ ...survey, datum, approximate });
    assert.ok(adjusted.ok);
    const comparison = compareSides(adjusted.is, { pairs: PAIRS, lengths: LENGTHS, centrePlane: 'best fit' });
    assert.ok(comparison.ok);
    return comparison.is;
  });
  a!.pairs.forEach((pair, k) => {
    for (let i = 0; i < 3; i += 1) {
      // a micrometre: the small turn of the plane is taken as linear (a millimetre over a metre, squared)
      assert.ok(Math.abs(pair.difference[i]! - b!.pairs[k]!.difference[i]!) < 2e-6, pair.name);
      assert.ok(Math.abs(pair.u[i]! / b!.pairs[k]!.u[i]! - 1) < 2e-3, pair.name);
    }
  });
});

test('three hundred straight cars: no more are accused than the level allows', () => {
  const level = 0.05;
  const cars = 300;
  let accused = 0;
  for (let k = 1; k <= cars; k += 1) if (compared({}, 2000 + k, { level }).differs) accused += 1;
  // 0.05 with a binomial spread of 0.0126: three of those above; Holm may be stricter, never looser
  assert.ok(accused / cars <= level + 0.038, `${accused} of ${cars}`);
  assert.ok(accused > 0, 'a test at 0.05 that never errs in 300 tries is not testing anything');
});

test('a difference of the size called detectable is seen about as often as said, or oftener', () => {
  const name = 'rear lower rear';
  const size = compared({}, 1).pairs.find((pair) => pair.name === name)!.detectable;
  let seen = 0;
  const cars = 100;
  for (let k = 1; k <= cars; k += 1) {
    const found = compared({ 'right rear lower rear': [0, 0, size] }, 3000 + k);
    if (found.pairs.find((pair) => pair.name === name)!.differs) seen += 1;
  }
  // at least 0.80, for the worst direction; binomial spread 0.04, three of those
  assert.ok(seen / cars >= 0.68, `${seen} of ${cars}`);
});

test('names that the survey does not know are told with the nearest', () => {
  const adjusted = adjustSurvey(surveyOf(trueCar(), seeded(1).normal));
  assert.ok(adjusted.ok);
  const result = compareSides(adjusted.is, {
    pairs: [{ name: 'x', left: 'left rear lower frnt', right: 'right rear lower front' }],
    centrePlane: 'of the datum',
  });
  assert.ok(!result.ok);
  assert.match(result.problems[0]!.message, /Did you mean "left rear lower front"/);
});
