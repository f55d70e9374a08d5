import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { chiSquareQuantileUpper } from '../../src/maths/distributions.ts';
import { add, distance, type Vec3 } from '../../src/maths/vec3.ts';
import { type Adjustment, adjustSurvey } from '../../src/survey/adjust.ts';
import type { DatumRule, Survey, SurveyReading } from '../../src/survey/network.ts';
import { DATUM, seeded, surveyOf, trueCar } from './invented-car.ts';

const near = (got: number, want: number, tolerance: number, what = ''): void =>
  assert.ok(Math.abs(got - want) <= tolerance, `${what} ${got} is not within ${tolerance} of ${want}`);

const adjusted = (survey: Survey): Adjustment => {
  const result = adjustSurvey(survey);
  assert.ok(result.ok, JSON.stringify(result));
  return result.is;
};

const problemsOf = (survey: Survey): readonly string[] => {
  const result = adjustSurvey(survey);
  assert.ok(!result.ok, 'expected problems');
  return result.problems.map((p) => p.code);
};

const sameDay = (seed: number): Survey => surveyOf(trueCar(), seeded(seed).normal);

/** Reference: SciPy least_squares (tests/reference/survey_scipy.py; versions recorded in the result). */
test('SciPy gives the same points, uncertainties, covariance and sum of squares', () => {
  const read = (name: string): unknown =>
    JSON.parse(readFileSync(new URL(`../reference/${name}`, import.meta.url), 'utf8'));
  const input = read('survey-input.json') as { readings: SurveyReading[]; datum: DatumRule[] };
  const want = read('survey-scipy.json') as {
    chiSquare: number;
    freedom: number;
    points: Record<string, { at: Vec3; u: Vec3 }>;
    covarianceFirstTwo: number[][];
  };
  const got = adjusted(input);
  near(got.whole.statistic, want.chiSquare, 1e-8); // both settle to about 1e-10 of a standard uncertainty
  assert.equal(got.whole.freedom, want.freedom);
  for (const p of got.points) {
    const reference = want.points[p.name]!;
    assert.ok(distance(p.at, reference.at) < 1e-9, p.name); // a thousandth of a micrometre: SciPy's own xtol
    // 1e-5 of u: SciPy's derivatives are differences
    for (let k = 0; k < 3; k += 1) near(p.u[k]! / reference.u[k]!, 1, 1e-5, p.name);
  }
  const first = Object.keys(want.points)
    .slice(0, 2)
    .flatMap((name) => [0, 1, 2].map((k) => 3 * got.points.findIndex((p) => p.name === name) + k));
  const size = want.covarianceFirstTwo[0]![0]!;
  first.forEach((i, a) => {
    first.forEach((j, b) => {
      near(got.covariance[i]![j]! / size, want.covarianceFirstTwo[a]![b]! / size, 1e-4); // differences again
    });
  });
});

test('the covariance is the gain times the readings’ own variances', () => {
  const got = adjusted(sameDay(4));
  const variance = (i: number, j: number): number =>
    got.gainColumns.reduce((sum, column, m) => sum + got.gain[i]![m]! * column.u ** 2 * got.gain[j]![m]!, 0);
  for (const [i, j] of [
    [0, 0],
    [7, 7],
    [3, 10],
  ] as const) {
    near(variance(i, j) / got.covariance[i]![i]!, got.covariance[i]![j]! / got.covariance[i]![i]!, 1e-7); // rounding
  }
});

test('the gain says where a point goes when one reading changes', () => {
  const survey = sameDay(4);
  const before = adjusted(survey);
  const id = 'right front lower front to left rear lower rear';
  const step = 1e-5; // small against the car, large against rounding
  const after = adjusted({
    ...survey,
    readings: survey.readings.map((r) =>
      r.id === id && r.kind === 'distance' ? { ...r, value: r.value + step } : r,
    ),
  });
  const column = before.gainColumns.findIndex((c) => c.id === id);
  before.points.forEach((p, k) => {
    for (let i = 0; i < 3; i += 1) {
      near((after.points[k]!.at[i]! - p.at[i]!) / step, before.gain[3 * k + i]![column]!, 1e-4); // curvature of a length
    }
  });
});

test('three hundred invented days scatter as the covariance says, and the sum of squares as chi-square', () => {
  const car = trueCar();
  const days = 300;
  const names = [...car.keys()];
  const sums = new Array<number>(3 * names.length).fill(0);
  let claimed: number[] = [];
  let chi = 0;
  let freedom = 0;
  for (let day = 1; day <= days; day += 1) {
    const approximate = Object.fromEntries([...car].slice(0, 5));
    // no reading is taken out here: the covariance is that of all of them
    const result = adjustSurvey({ ...surveyOf(car, seeded(day).normal), approximate }, { mostOutliers: 0 });
    assert.ok(result.ok);
    chi += result.is.whole.statistic;
    freedom += result.is.whole.freedom;
    names.forEach((name, k) => {
      const p = result.is.points.find((each) => each.name === name)!;
      for (let i = 0; i < 3; i += 1) sums[3 * k + i]! += (p.at[i]! - car.get(name)![i]!) ** 2;
    });
    claimed = names.flatMap((name) => result.is.points.find((p) => p.name === name)!.u.map((u) => u ** 2));
  }
  // a variance from 300 days is itself sure to √(2/300) = 8 %; five of those for the worst of 36
  sums.forEach((sum, k) => {
    near(sum / days / claimed[k]!, 1, 0.41, names[Math.floor(k / 3)]!);
  });
  // mean of all: chi-square with all degrees of freedom together, both ends at 0.001
  assert.ok(chi > chiSquareQuantileUpper(0.999, freedom) && chi < chiSquareQuantileUpper(0.001, freedom));
});

test('a tape misread by 10 mm is found, named and left out; the points are as good as without it', () => {
  const survey = sameDay(6);
  const id = 'left front lower front to right rear lower rear';
  const spoilt = {
    ...survey,
    readings: survey.readings.map((r) =>
      r.id === id && r.kind === 'distance' ? { ...r, value: r.value + 0.01 } : r,
    ),
  };
  const got = adjusted(spoilt);
  assert.deepEqual(
    got.outliers.map((o) => [o.id, o.excluded]),
    [[id, true]],
  );
  near(got.outliers[0]!.misfit, 0.01, 0.002); // tape 0.5 mm and the rest
  const without = adjusted({ ...survey, readings: survey.readings.filter((r) => r.id !== id) });
  got.points.forEach((p, k) => {
    assert.ok(distance(p.at, without.points[k]!.at) < 1e-8); // the same readings, two starts
  });
});

/** A third arm set-up that touches every point again. */
const touchedAgain = (normal: () => number): readonly SurveyReading[] =>
  [...trueCar()].map(([point, p]) => {
    const noise: Vec3 = [normal() * 1e-4, normal() * 1e-4, normal() * 1e-4];
    return { kind: 'point', id: `C: ${point}`, point, set: 'C', xyz: add(p, noise), u: 1e-4 };
  });

const WRONG_HOLE = 'B: right rear lower front';
const wrongHole = (r: SurveyReading): SurveyReading =>
  r.id === WRONG_HOLE && r.kind === 'point'
    ? { ...r, xyz: [r.xyz[0] + 0.012, r.xyz[1] - 0.008, r.xyz[2]] }
    : r;

test('a wrong hole touched by the arm is found as one point, and a misread tape besides', () => {
  const normal = seeded(7).normal;
  const survey = surveyOf(trueCar(), normal);
  const tape = 'left rear lower front to right rear upper front';
  const readings = [...survey.readings, ...touchedAgain(normal)]
    .map(wrongHole)
    .map(
      (r): SurveyReading => (r.id === tape && r.kind === 'distance' ? { ...r, value: r.value - 0.008 } : r),
    );
  const { outliers } = adjusted({ ...survey, readings });
  assert.deepEqual(
    outliers.map((o) => [o.id, o.excluded]),
    [
      [WRONG_HOLE, true],
      [tape, true],
    ],
  );
});

test('a wrong hole that only one other set-up has touched: both are named and neither is thrown out', () => {
  const survey = sameDay(7);
  const { outliers } = adjusted({ ...survey, readings: survey.readings.map(wrongHole) });
  assert.equal(outliers.length, 1);
  assert.equal(outliers[0]!.excluded, false);
  assert.deepEqual([outliers[0]!.id, ...outliers[0]!.alike].sort(), [
    'A: right rear lower front',
    WRONG_HOLE,
  ]);
});

test('an error of the size called detectable is found about as often as the power says', () => {
  const id = 'left front lower front to left rear lower rear';
  const size = adjusted(sameDay(1)).readings.find((r) => r.id === id)!.detectable!;
  const car = trueCar();
  let found = 0;
  const days = 120;
  for (let day = 1; day <= days; day += 1) {
    const survey = {
      ...surveyOf(car, seeded(1000 + day).normal),
      approximate: Object.fromEntries([...car].slice(0, 5)),
    };
    const result = adjustSurvey(
      {
        ...survey,
        readings: survey.readings.map((r) =>
          r.id === id && r.kind === 'distance' ? { ...r, value: r.value + size } : r,
        ),
      },
      { mostOutliers: 1 },
    );
    assert.ok(result.ok);
    if ((result.is.outliers[0]?.statistic ?? 0) > 0) found += 1;
  }
  // 0.80 of 120 with a binomial spread of 0.037: three and a half of those
  near(found / days, 0.8, 0.13);
});

test('frame turned anywhere: the answer does not depend on where the arm stood', () => {
  const survey = sameDay(8);
  const moved = {
    ...survey,
    readings: survey.readings.map(
      (r): SurveyReading =>
        // x → y → z → x is a turn, and the shift is a long one
        r.kind === 'point' && r.set === 'A' ? { ...r, xyz: [r.xyz[1] + 7, r.xyz[2] - 3, r.xyz[0] + 2] } : r,
    ),
  };
  const [a, b] = [adjusted(survey), adjusted(moved)];
  a.points.forEach((p, k) => {
    assert.ok(distance(p.at, b.points[k]!.at) < 1e-9); // settled to 1e-10
    for (let i = 0; i < 3; i += 1) near(p.u[i]! / b.points[k]!.u[i]!, 1, 1e-6);
  });
});

test('a point by trammel alone is found; with two lengths only it is told by name, and the rest stands', () => {
  const survey = sameDay(9);
  const car = trueCar();
  const mount: Vec3 = [-1.2, 0.35, 0.5];
  const from = [
    'left front upper front',
    'left front lower front',
    'right front upper rear',
    'left rear lower rear',
  ];
  const lengths = from.map((name): SurveyReading => {
    const value = distance(car.get(name)!, mount);
    return { kind: 'distance', id: `mount to ${name}`, from: name, to: 'mount', value, u: 0.0003 };
  });
  const found = adjusted({ ...survey, readings: [...survey.readings, ...lengths] });
  const place = found.points.find((p) => p.name === 'mount')!;
  assert.ok(distance(place.at, mount) < 4 * Math.hypot(...place.u)); // four standard uncertainties

  const two = adjustSurvey({ ...survey, readings: [...survey.readings, ...lengths.slice(0, 2)] });
  assert.ok(two.ok);
  assert.deepEqual(
    two.is.undetermined.map((each) => each.point),
    ['mount'],
  );
  assert.match(two.is.undetermined[0]!.why, /three that cross are needed/);
  assert.equal(two.is.points.length, 12);

  // with its rough place given, the adjustment itself finds the direction that nothing holds
  const rough = adjustSurvey({
    ...survey,
    readings: [
      ...survey.readings,
      ...lengths.slice(0, 2),
      { ...lengths[0]!, id: 'mount again' } as SurveyReading,
    ],
    approximate: { mount: [-1.21, 0.34, 0.49] },
  });
  assert.ok(rough.ok);
  assert.match(rough.is.undetermined[0]!.why, /No reading holds mount along/);
  assert.equal(rough.is.points.length, 12);
});

test('two readings that nothing else tells apart are both suspected and neither is thrown out', () => {
  const car: Readonly<Record<string, Vec3>> = { a: [0, 0.5, 0], b: [0, -0.5, 0], c: [-2, 0, 0] };
  const readings: SurveyReading[] = [
    ...Object.entries(car).map(
      ([point, xyz]): SurveyReading => ({
        kind: 'point',
        id: `car: ${point}`,
        point,
        set: 'car',
        xyz,
        u: 1e-4,
      }),
    ),
    { kind: 'height', id: 'h1', point: 'd', value: 0.3, u: 1e-4 },
    { kind: 'height', id: 'h2', point: 'd', value: 0.31, u: 1e-4 },
    { kind: 'offset', id: 'x', point: 'd', axis: 'x', value: -1, u: 1e-4 },
    { kind: 'offset', id: 'y', point: 'd', axis: 'y', value: 0, u: 1e-4 },
  ];
  const got = adjusted({ readings, datum: [] });
  assert.equal(got.outliers.length, 1);
  assert.equal(got.outliers[0]!.excluded, false);
  assert.deepEqual([got.outliers[0]!.id, ...got.outliers[0]!.alike].sort(), ['h1', 'h2']);
});

test('problems are told all at once, by name', () => {
  const survey = sameDay(2);
  const height: SurveyReading = {
    kind: 'height',
    id: 'h',
    point: 'left front lower front',
    value: 0.13,
    u: 1e-4,
  };
  const readings = [
    ...survey.readings,
    height,
    height,
    { ...height, id: 'n', value: Number.NaN },
    { ...height, id: 's', u: 0 },
    {
      kind: 'distance',
      id: 'd',
      from: 'left front lower front',
      to: 'right front lower front',
      value: 0,
      u: 1e-4,
    },
  ] as SurveyReading[];
  const result = adjustSurvey({
    readings,
    datum: [...DATUM, { point: 'left front lowr front', axis: 'x', at: 0 }],
  });
  assert.ok(!result.ok);
  assert.deepEqual(result.problems.map((p) => p.code).sort(), [
    'survey/length-of-nothing',
    'survey/no-spread',
    'survey/not-a-number',
    'survey/same-id',
    'survey/unknown-point',
  ]);
  assert.match(
    result.problems.find((p) => p.code === 'survey/unknown-point')!.message,
    /Did you mean "left front lower front"/,
  );
});

test('a datum that leaves the axes free says which way', () => {
  const survey = sameDay(2);
  const result = adjustSurvey({ ...survey, datum: DATUM.slice(0, 2) });
  assert.ok(!result.ok);
  assert.equal(result.problems[0]!.code, 'survey/axes-not-fixed');
  assert.match(result.problems[0]!.message, /shift along x/);
});

test('exact rules that contradict one another are told', () => {
  const survey = sameDay(2);
  const more: DatumRule = {
    pair: ['right front lower front', 'left front lower front'],
    axis: 'x',
    mean: 0.24,
  };
  assert.deepEqual(problemsOf({ ...survey, datum: [...DATUM, more] }), ['survey/datum-contradicts']);
});

test('inches read as millimetres, and a left-handed frame, are told', () => {
  const survey = sameDay(2);
  const set = (name: string, change: (xyz: Vec3) => Vec3): Survey => ({
    ...survey,
    readings: survey.readings.map((r) =>
      r.kind === 'point' && r.set === name ? { ...r, xyz: change(r.xyz) } : r,
    ),
  });
  assert.ok(
    problemsOf(set('B', (p) => [p[0] / 25.4, p[1] / 25.4, p[2] / 25.4])).every(
      (code) => code === 'survey/unit-suspected',
    ),
  );
  assert.deepEqual(problemsOf(set('B', (p) => [p[0], -p[1], p[2]])), ['survey/left-handed']);
});

test('a set that touches too few common points took no part, and its points are told', () => {
  const survey = sameDay(2);
  const stray: SurveyReading[] = ['left front upper front', 'lonely'].map((point, k) => ({
    kind: 'point',
    id: `C: ${point}`,
    point,
    set: 'C',
    xyz: [k, 0, 0],
    u: 1e-4,
  }));
  const result = adjustSurvey({ ...survey, readings: [...survey.readings, ...stray] });
  assert.ok(result.ok);
  assert.deepEqual(result.warnings.map((w) => w.code).sort(), [
    'survey/set-not-joined',
    'survey/undetermined',
  ]);
});
