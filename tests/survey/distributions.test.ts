import assert from 'node:assert/strict';
import { test } from 'node:test';
import {
  chiSquareQuantileUpper,
  chiSquareUpper,
  chiSquareUpperLog,
  detectableNonCentrality,
  incompleteBeta,
  incompleteGamma,
  logGamma,
  nonCentralChiSquareUpper,
  normalQuantileUpper,
  normalTwoSided,
  normalUpper,
  studentQuantileUpper,
  studentUpper,
} from '../../src/maths/distributions.ts';

const near = (got: number, want: number, tolerance: number): void =>
  assert.ok(Math.abs(got - want) <= tolerance, `${got} is not within ${tolerance} of ${want}`);

/**
 * Published: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.4, lower critical values of the
 * chi-square distribution (seen as reprinted from the handbook in a statistics textbook's appendix, table 7b).
 * Rows: degrees of freedom; columns: probability of exceeding 0.90, 0.95, 0.975, 0.99, 0.999.
 */
const NIST_LOWER: readonly (readonly [number, ...number[]])[] = [
  [4, 1.064, 0.711, 0.484, 0.297, 0.091],
  [5, 1.61, 1.145, 0.831, 0.554, 0.21],
  [10, 4.865, 3.94, 3.247, 2.558, 1.479],
  [20, 12.443, 10.851, 9.591, 8.26, 5.921],
  [30, 20.599, 18.493, 16.791, 14.953, 11.588],
  [60, 46.459, 43.188, 40.482, 37.485, 31.738],
  [100, 82.358, 77.929, 74.222, 70.065, 61.918],
];

test('NIST 1.3.6.7.4: lower critical values of chi-square', () => {
  for (const [freedom, ...values] of NIST_LOWER) {
    [0.9, 0.95, 0.975, 0.99, 0.999].forEach((p, k) => {
      near(chiSquareQuantileUpper(p, freedom), values[k]!, 0.0006); // printed to three decimals
    });
  }
});

/**
 * Published: table A6 of M. Baron, Probability and Statistics for Computer Scientists (right tail 0.05, 0.01,
 * 0.001; seen, three figures) with the further digits of the standard tables (from memory).
 */
test('upper critical values of chi-square', () => {
  const rows: readonly (readonly [number, number, number, number])[] = [
    [1, 3.841, 6.635, 10.828],
    [2, 5.991, 9.21, 13.816],
    [3, 7.815, 11.345, 16.266],
    [10, 18.307, 23.209, 29.588],
  ];
  for (const [freedom, five, one, tenth] of rows) {
    near(chiSquareQuantileUpper(0.05, freedom), five, 0.0006); // three decimals
    near(chiSquareQuantileUpper(0.01, freedom), one, 0.0006);
    near(chiSquareQuantileUpper(0.001, freedom), tenth, 0.0006);
  }
});

/** Published: NAG Library Manual, example results of nag_stat_prob_chisq_vector (g01scc) and g01tcc (seen). */
test('NAG g01scc and g01tcc: chi-square with 20, 7.5 and 45 degrees of freedom', () => {
  near(1 - chiSquareUpper(8.26, 20), 0.01, 0.00005); // four decimals
  near(1 - chiSquareUpper(6.2, 7.5), 0.4279, 0.00005);
  near(1 - chiSquareUpper(55.76, 45), 0.8694, 0.00005);
  near(chiSquareQuantileUpper(0.99, 20), 8.2604, 0.00005);
  near(chiSquareQuantileUpper(1 - 0.428, 7.5), 6.2006, 0.00005);
  near(chiSquareQuantileUpper(1 - 0.869, 45), 55.7381, 0.00005);
});

/** Standard tables of the normal and Student distributions (NIST 1.3.6.7.1 and 1.3.6.7.2; from memory). */
test('normal and Student critical values', () => {
  near(normalQuantileUpper(0.025), 1.959963985, 5e-10); // nine decimals
  near(normalQuantileUpper(0.0005), 3.290526731, 5e-10);
  near(normalQuantileUpper(0.8), -0.841621234, 5e-10);
  near(normalUpper(1), 0.158655254, 5e-10);
  near(studentQuantileUpper(0.025, 1), 12.706, 0.0005); // three decimals
  near(studentQuantileUpper(0.025, 10), 2.228, 0.0005);
  near(studentQuantileUpper(0.005, 30), 2.75, 0.0005);
  near(studentQuantileUpper(0.05, 100), 1.66, 0.0005);
});

/** Baarda's δ0 = 4.13, λ0 = 17.07 for α0 = 0.001 and power 0.80: common practice of geodesy, from memory. */
test('the non-centrality of Baarda, 0.001 and 0.80', () => {
  near(detectableNonCentrality(0.001, 0.8, 1), 17.07, 0.01); // two decimals
  near(Math.sqrt(detectableNonCentrality(0.001, 0.8, 1)), 4.13, 0.005);
});

test('closed forms: two degrees of freedom, Cauchy, factorials', () => {
  near(chiSquareUpper(7, 2), Math.exp(-3.5), 1e-15); // rounding
  near(studentUpper(2, 1), 0.5 - Math.atan(2) / Math.PI, 1e-14);
  near(logGamma(11), Math.log(3628800), 1e-13);
  near(logGamma(0.5), 0.5 * Math.log(Math.PI), 1e-14);
  near(incompleteBeta(2, 3, 0.3), 0.3483, 1e-14); // 1 − Σ binomial: 6·0.09·0.49 + 4·0.027·0.7 + 0.0081 = 0.3483
  near(normalTwoSided(3), 2 * normalUpper(3), 1e-17);
  near(incompleteGamma(1, 0.2).lower, 1 - Math.exp(-0.2), 1e-15);
});

test('far tails keep their digits', () => {
  // Q(10) = 7.619853024e-24 (standard tables, from memory)
  near(normalUpper(10) / 7.619853024160527e-24, 1, 1e-11);
});

test('the logarithm goes on where the probability has run out of digits', () => {
  near(chiSquareUpperLog(30, 3), Math.log(chiSquareUpper(30, 3)), 1e-12); // rounding
  near(chiSquareUpperLog(1, 3), Math.log(chiSquareUpper(1, 3)), 1e-15);
  near(chiSquareUpperLog(4000, 2), -2000, 1e-9); // closed form exp(−x/2)
});

test('a non-central chi-square with no shift is the central one', () => {
  near(nonCentralChiSquareUpper(6, 3, 0), chiSquareUpper(6, 3), 1e-15);
});
