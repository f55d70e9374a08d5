/**
 * The survey of the demo car of 2001 manner against the points from which it was made.
 *
 * The points are known, since the car is invented: that is the outside fact. Scatter of the size of each
 * instrument was laid over them, and one tape reading was put 10 mm wrong.
 */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { readCar } from '../../src/car/read.ts';
import { makeSurvey, truth, WRONG } from '../../tools/make-survey.ts';

const FOLDER = new URL('../../cars/ashgarth-501/', import.meta.url);
const FILES = ['arm-front.csv', 'arm-rear.csv'] as const;

const text = readFileSync(new URL('car.yaml', FOLDER), 'utf8');
const files = Object.fromEntries(FILES.map((name) => [name, readFileSync(new URL(name, FOLDER), 'utf8')]));
const made = makeSurvey();
const result = readCar({ text, files });
assert.ok(result.ok, JSON.stringify(result.ok ? '' : result.problems));
const { car } = result;
const { adjustment } = car.survey!;

test('the lists and lengths in the folder are those that the generator makes', () => {
  for (const name of FILES) assert.equal(files[name], made.lists[name]);
  for (const line of made.lengths) assert.ok(text.includes(line), line);
});

test('the planted error is found, it alone, and its size is told', () => {
  assert.equal(adjustment.outliers.length, 1);
  const [found] = adjustment.outliers;
  assert.ok(found!.id.includes(WRONG.from) && found!.id.includes(WRONG.to), found!.id);
  assert.ok(found!.excluded);
  // -10 mm, plus what the tape itself scattered (0.7 mm and its scale, 0.9 mm together): three of those
  assert.ok(Math.abs(Math.abs(found!.misfit) - 0.01) < 0.0027, String(found!.misfit));
});

test('with the error left out the readings agree with one another', () => {
  assert.equal(adjustment.whole.verdict, 'as claimed');
  assert.deepEqual(adjustment.undetermined, []);
});

test('every point comes out where it is, within what is claimed for it', () => {
  const known = truth();
  assert.equal(adjustment.points.length, known.size);
  const parts = adjustment.points.flatMap((point) =>
    point.at.map((each, k) => (each - known.get(point.name)![k]! / 1000) / point.u[k]!),
  );
  // 186 co-ordinates of a normal law: one beyond 4 has a chance of about 1 in 85
  assert.ok(Math.max(...parts.map(Math.abs)) < 4, String(Math.max(...parts.map(Math.abs))));
  const meanSquare = parts.reduce((sum, each) => sum + each * each, 0) / parts.length;
  // the axes are common to all points, so the parts hang together and the mean square scatters widely about 1
  assert.ok(meanSquare > 0.3 && meanSquare < 2.5, String(meanSquare));
});

test('the car takes its points from the survey, with the uncertainty of the adjustment', () => {
  const point = car.form.front.left.points.lowerOuter;
  const adjusted = adjustment.points.find((each) => each.name === 'front.left.lowerOuter')!;
  assert.ok(point.surveyed);
  assert.deepEqual(point.value, adjusted.at);
  assert.equal(point.x.u, adjusted.u[0]);
});

test('without its list the survey says which file is missing', () => {
  const lost = readCar({ text, files: { 'arm-front.csv': files['arm-front.csv']! } });
  assert.ok(!lost.ok);
  assert.ok(
    lost.problems.some((each) => each.code === 'survey/no-file' && each.message.includes('arm-rear.csv')),
  );
});

test('a point that the survey has not is told by name', () => {
  const result = readCar({
    text,
    files: {
      ...files,
      'arm-front.csv': files['arm-front.csv']!.replace('front.left.toeOuter', 'front.left.toeOuterr'),
    },
  });
  assert.ok(!result.ok);
  const problem = result.problems.find((each) => each.path.includes('toeOuter'));
  assert.ok(problem, JSON.stringify(result.problems.slice(0, 3)));
  assert.ok(problem.line !== undefined);
});
