/**
 * JCGM 100:2008 (GUM), annex H.1: calibration of an end gauge against a standard of 50 mm (P).
 *
 * Inputs, result and the components of its uncertainty as printed in the documentation of GTC 1.4 (GUM H1),
 * Measurement Standards Laboratory of New Zealand, which works the annex: 50000838(32) nm; standard 25, difference
 * of temperature 16.599, comparator 6.7, 5.8 and 3.9, difference of expansion 2.88679, all others 0.
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { type SpreadInput, spreadOf } from '../../src/measured/spread.ts';
import { formula, recheck, Working } from '../../src/working/working.ts';
import { near } from '../near.ts';

const NM = 1e-9;
/** Standard deviation of an even distribution and of an arcsine one, by half width (GUM 4.3.7 and H.1.3.4). */
const even = (half: number): number => half / Math.sqrt(3);
const arcsine = (half: number): number => half / Math.sqrt(2);

const READINGS = {
  'length of the standard': { value: 50000623 * NM, u: 25 * NM },
  'difference, repeated': { value: 215 * NM, u: 5.8 * NM },
  'comparator, random': { value: 0, u: 3.9 * NM },
  'comparator, systematic': { value: 0, u: 6.7 * NM },
  'expansion of the standard': { value: 11.5e-6, u: even(2e-6) },
  'difference of expansion': { value: 0, u: even(1e-6) },
  'difference of temperature': { value: 0, u: even(0.05) },
  'temperature of the bed': { value: -0.1, u: 0.2 },
  'cycle of the temperature': { value: 0, u: arcsine(0.5) },
} as const;

const length = formula({
  symbol: 'l',
  means: 'length of the end gauge at 20 °C',
  is: 'l_s + d_0 + d_1 + d_2 - l_s*(δ_α*(θ_b + Δ) + α_s*δ_θ)',
  unit: 'm',
  terms: {
    l_s: { unit: 'm', means: 'length of the standard' },
    d_0: { unit: 'm', means: 'difference, mean of the indications' },
    d_1: { unit: 'm', means: 'random error of the comparator' },
    d_2: { unit: 'm', means: 'systematic error of the comparator' },
    δ_α: { unit: '1/K', means: 'difference of expansion' },
    θ_b: { unit: 'K', means: 'mean temperature of the bed, from 20 °C' },
    Δ: { unit: 'K', means: 'cycle of the temperature' },
    α_s: { unit: '1/K', means: 'expansion of the standard' },
    δ_θ: { unit: 'K', means: 'difference of temperature' },
  },
  source: 'JCGM 100:2008, H.1, equation (H.3)',
});

const lengthOf = (v: ArrayLike<number>, working?: Working): number =>
  length(
    {
      l_s: v[0]!,
      d_0: v[1]!,
      d_1: v[2]!,
      d_2: v[3]!,
      α_s: v[4]!,
      δ_α: v[5]!,
      δ_θ: v[6]!,
      θ_b: v[7]!,
      Δ: v[8]!,
    },
    working,
  );

const readings = Object.entries(READINGS);
const values = Float64Array.from(readings, ([, reading]) => reading.value);
const inputs: readonly SpreadInput[] = readings.map(([label, { u }], index) => ({
  label,
  path: label,
  moves: [[index, u]],
}));

test('GUM H.1 (P): 50 000 838 nm with u = 32 nm, the standard the largest share', () => {
  const working = new Working();
  near(lengthOf(values, working) / NM, 50000838, 0.5); // printed to the nanometre
  assert.deepEqual(recheck(working.steps), []);
  const [spread] = spreadOf(
    values,
    inputs,
    (numbers, out) => {
      out[0] = lengthOf(numbers);
    },
    1,
  );
  assert.ok(spread);
  near(spread.u / NM, 32, 0.5); // printed to the nanometre
  assert.deepEqual(spread.unknown, []);
  assert.equal(spread.shares[0]!.path, 'length of the standard');

  // the printed components; ± half of the last printed digit
  const part = (path: string): number =>
    Math.abs(spread.shares.find((share) => share.path === path)?.contribution ?? 0) / NM;
  near(part('length of the standard'), 25, 0.5);
  near(part('difference of temperature'), 16.599, 0.0005);
  near(part('comparator, systematic'), 6.7, 0.05);
  near(part('difference, repeated'), 5.8, 0.05);
  near(part('comparator, random'), 3.9, 0.05);
  near(part('difference of expansion'), 2.88679, 5e-5);
  for (const none of ['expansion of the standard', 'temperature of the bed', 'cycle of the temperature'])
    near(part(none), 0, 1e-6);
  near(
    spread.shares.reduce((sum, { share }) => sum + share, 0),
    1,
    1e-12,
  );
});

test('what all readings of one instrument share adds with its sign: a scale error of 1e-7 of both lengths', () => {
  // by hand: both lengths grow by 1e-7 of themselves, so the gauge does: 5.0000838 nm in all
  const scale = 1e-7;
  const common: SpreadInput = {
    label: 'scale',
    path: 'scale',
    moves: [
      [0, scale * values[0]!],
      [1, scale * values[1]!],
    ],
  };
  const [spread] = spreadOf(
    values,
    [common],
    (numbers, out) => {
      out[0] = lengthOf(numbers);
    },
    1,
  );
  // 1e-6 nm: rounding of a difference of two lengths of 5e7 nm, divided by a step of 5 nm
  near(spread!.u / NM, (50000623 + 215) * scale, 1e-6);
});
