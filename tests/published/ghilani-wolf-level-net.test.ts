/**
 * Published: C. D. Ghilani & P. R. Wolf, Adjustment Computations: Spatial Data Analysis, 4th ed., Wiley 2006,
 * section 12.6, Example 12.1: six levelled differences between four points, A held at 437.596 m. The figures
 * were seen as quoted, with the section and example number, in the tests of another open-source adjustment
 * program; the book itself was not seen.
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { adjustSurvey } from '../../src/survey/adjust.ts';
import type { Survey, SurveyReading } from '../../src/survey/network.ts';

const PLACES: Readonly<Record<string, readonly [number, number]>> = {
  A: [0, 0],
  B: [10, 0],
  C: [10, 10],
  D: [0, 10],
};

const RISES: readonly (readonly [string, string, number, number])[] = [
  ['A', 'B', 10.509, 0.006],
  ['B', 'C', 5.36, 0.004],
  ['C', 'D', -8.523, 0.005],
  ['D', 'A', -7.348, 0.003],
  ['B', 'D', -3.167, 0.004],
  ['A', 'C', 15.881, 0.012],
];

/** A level net has no plan: the places in plan are ours, and nothing checks them. */
const levelNet: Survey = {
  readings: [
    ...RISES.map(
      ([from, to, value, u]): SurveyReading => ({ kind: 'rise', id: `${from}${to}`, from, to, value, u }),
    ),
    ...['B', 'C', 'D'].flatMap((point): SurveyReading[] => [
      { kind: 'offset', id: `${point} x`, point, axis: 'x', value: PLACES[point]![0], u: 1 },
      { kind: 'offset', id: `${point} y`, point, axis: 'y', value: PLACES[point]![1], u: 1 },
    ]),
  ],
  datum: [
    { point: 'A', axis: 'x', at: 0 },
    { point: 'A', axis: 'y', at: 0 },
    { point: 'A', axis: 'z', at: 437.596 },
  ],
};

test('Example 12.1: B 448.1087, C 453.4685, D 444.9436 m, weighted squares 1.26976 with 3 to spare', () => {
  const result = adjustSurvey(levelNet);
  assert.ok(result.ok, JSON.stringify(result));
  const height = (name: string): number => result.is.points.find((p) => p.name === name)!.at[2];
  for (const [name, z] of [['B', 448.1087] as const, ['C', 453.4685] as const, ['D', 444.9436] as const]) {
    assert.ok(Math.abs(height(name) - z) < 0.00006, `${name}: ${height(name)}`); // printed to 0.1 mm
  }
  assert.equal(result.is.whole.freedom, 3);
  // printed 1.26976 was worked from residuals rounded to 0.1 mm; unrounded it is 1.2721
  assert.ok(Math.abs(result.is.whole.statistic - 1.26976) < 0.003, String(result.is.whole.statistic));
  assert.equal(result.is.whole.verdict, 'as claimed');
  // redundancies of the readings add up to the number to spare
  const shares = result.is.readings.flatMap((r) => r.components).reduce((sum, c) => sum + c.redundancy, 0);
  assert.ok(Math.abs(shares - 3) < 1e-9); // rounding
});
