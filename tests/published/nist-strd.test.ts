/**
 * NIST Statistical Reference Datasets, linear regression, Norris (36 readings): certified values, read (P).
 * Here the straight line of the bar on the bench.
 */
import { test } from 'node:test';
import { benchTest, straightLine } from '../../src/loadpath/spring/bench-test.ts';
import { near } from '../near.ts';

const NORRIS: readonly (readonly [y: number, x: number])[] = [
  [0.1, 0.2],
  [338.8, 337.4],
  [118.1, 118.2],
  [888.0, 884.6],
  [9.2, 10.1],
  [228.1, 226.5],
  [668.5, 666.3],
  [998.5, 996.3],
  [449.1, 448.6],
  [778.9, 777.0],
  [559.2, 558.2],
  [0.3, 0.4],
  [0.1, 0.6],
  [778.1, 775.5],
  [668.8, 666.9],
  [339.3, 338.0],
  [448.9, 447.5],
  [10.8, 11.6],
  [557.7, 556.0],
  [228.3, 228.1],
  [998.0, 995.8],
  [888.8, 887.6],
  [119.6, 120.2],
  [0.3, 0.3],
  [0.6, 0.3],
  [557.6, 556.8],
  [339.3, 339.1],
  [888.0, 887.2],
  [998.5, 999.0],
  [778.9, 779.0],
  [10.2, 11.1],
  [117.6, 118.3],
  [228.9, 229.2],
  [668.4, 669.1],
  [449.2, 448.9],
  [0.2, 0.5],
];

test('Norris: slope, offset, their standard deviations and the scatter to the certified digits', () => {
  const line = straightLine(NORRIS.map(([y, x]) => ({ x, y, weight: 1 })));
  // certified to 15 figures; 1e-12 and 1e-9 relative are what sums of 36 doubles keep
  near(line.slope, 1.00211681802045, 1e-12);
  near(line.offset, -0.262323073774029, 1e-9);
  near(line.uSlope, 0.429796848199937e-3, 1e-12);
  near(line.uOffset, 0.232818234301152, 1e-9);
  near(line.scatter ** 2 * line.freedom, 26.6173985294224, 1e-9);
});

test('Norris: the 95 % interval is Student’s t at 34 degrees (2.0322, table value) either side', () => {
  const readings = NORRIS.map(([torque, twist]) => ({ torque, twist, way: 'on' as const }));
  const { all } = benchTest(readings);
  // t(0.975; 34) = 2.032 in the NIST/SEMATECH e-Handbook, table 1.3.6.7.2 (from memory): three decimals
  near((all.interval[1] - all.rate) / 0.429796848199937e-3, 2.032, 5e-4);
});
