/**
 * Is each reading believable, and do they all together keep to the uncertainties claimed for them?
 *
 * In    a settled balance; the level and the power stated beforehand
 * Out   for each reading: residuals, redundancy, standardised residual, test, the least error that would be seen
 *
 * A reading of three co-ordinates is tested as one thing: a wrong hole touched is wrong in all three.
 *
 * [B]   W. Baarda, A testing procedure for use in geodetic networks, 1968 (from memory)
 */

import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { chiSquareQuantileUpper, chiSquareUpper, detectableNonCentrality } from '../maths/distributions.ts';
import { productSkippingZeros } from '../maths/sparse-product.ts';
import type { Metre, Ratio } from '../units/quantity.ts';
import type { Balance } from './balance.ts';

export interface ComponentTest {
  readonly component: string;
  readonly read: Metre;
  readonly adjusted: Metre;
  /** adjusted − read. */
  readonly residual: Metre;
  readonly u: Metre;
  /** Share of an error of this component that shows in its own residual, 0 to 1. */
  readonly redundancy: Ratio;
  /** Residual over its own standard deviation (w); left out where nothing checks the component. */
  readonly standardised?: number;
}

export interface ReadingTest {
  readonly id: string;
  readonly components: readonly ComponentTest[];
  /** Chi-square of the reading's residuals, with `freedom` degrees; 0 degrees when nothing checks it. */
  readonly statistic: number;
  readonly freedom: number;
  readonly p: number;
  readonly checked: 'wholly' | 'partly' | 'not at all';
  /** Error that is found with the stated power in its least favourable checked direction. */
  readonly detectable?: Metre;
}

export interface GlobalTest {
  readonly statistic: number;
  readonly freedom: number;
  readonly lower: number;
  readonly upper: number;
  readonly level: number;
  readonly verdict: 'as claimed' | 'worse than claimed' | 'better than claimed' | 'no check';
  /** Statistic over degrees of freedom: 1 when the claimed uncertainties are true. */
  readonly varianceFactor: number;
  readonly sentence: string;
}

/** Redundancy below this counts as none: the residual is rounding. */
const NO_CHECK = 1e-6;

export function readingTests(settled: Balance, level: number, power: number): readonly ReadingTest[] {
  const { equations, weighted, fit } = settled;
  const spread = weighted.columns === 0 ? weighted : productSkippingZeros(weighted, fit.cofactor());
  const leverage = (i: number, j: number): number => {
    let sum = 0;
    for (let k = 0; k < weighted.columns; k += 1) sum += spread.get(i, k) * weighted.get(j, k);
    return sum;
  };
  const needed = new Map<number, number>();
  const nonCentrality = (freedom: number): number => {
    if (!needed.has(freedom)) needed.set(freedom, detectableNonCentrality(level, power, freedom));
    return needed.get(freedom)!;
  };
  const groups = new Map<string, number[]>();
  equations.forEach((e, i) => {
    const group = groups.get(e.id);
    if (group === undefined) groups.set(e.id, [i]);
    else group.push(i);
  });
  return [...groups].map(([id, lines]) => {
    // SU-14: cofactors of the weighted residuals
    const S = lines.map((i) => lines.map((j) => (i === j ? 1 : 0) - leverage(i, j)));
    const v = lines.map((i) => (equations[i]!.computed - equations[i]!.read) / equations[i]!.u);
    const { values, statistic } = againstNothing(S, v);
    const freedom = values.length;
    const u = equations[lines[0]!]!.u;
    return {
      id,
      components: lines.map((i, k) => component(settled, i, Math.max(0, S[k]![k]!))),
      statistic,
      freedom,
      p: freedom === 0 ? 1 : chiSquareUpper(statistic, freedom),
      checked: freedom === 0 ? 'not at all' : freedom < lines.length ? 'partly' : 'wholly',
      // SU-15
      ...(freedom === 0 ? {} : { detectable: u * Math.sqrt(nonCentrality(freedom) / Math.min(...values)) }),
    };
  });
}

/** Chi-square of v whose cofactors are S, over the directions in which S is not nothing. */
function againstNothing(
  S: readonly (readonly number[])[],
  v: readonly number[],
): { readonly values: readonly number[]; readonly statistic: number } {
  if (v.length === 1) {
    const s = S[0]![0]!;
    return s > NO_CHECK ? { values: [s], statistic: v[0]! ** 2 / s } : { values: [], statistic: 0 };
  }
  const turned = new EigenvalueDecomposition(new Matrix(S as number[][]), { assumeSymmetric: true });
  const values: number[] = [];
  let statistic = 0;
  turned.realEigenvalues.forEach((s, k) => {
    if (s <= NO_CHECK) return;
    values.push(s);
    const share = v.reduce((sum, value, i) => sum + value * turned.eigenvectorMatrix.get(i, k), 0);
    statistic += share ** 2 / s;
  });
  return { values, statistic };
}

function component(settled: Balance, i: number, redundancy: number): ComponentTest {
  const e = settled.equations[i]!;
  const residual = e.computed - e.read;
  return {
    component: e.component,
    read: e.read,
    adjusted: e.computed,
    residual,
    u: e.u,
    redundancy,
    ...(redundancy > NO_CHECK ? { standardised: residual / (e.u * Math.sqrt(redundancy)) } : {}),
  };
}

/** Chi-square test of the whole against the claimed uncertainties.  [SU-17] */
export function globalTest(settled: Balance, level: number): GlobalTest {
  const { chiSquare: statistic, freedom } = settled;
  if (freedom === 0) {
    const sentence = 'There is no reading to spare: nothing checks anything, and a slip would not be seen.';
    return {
      statistic,
      freedom,
      lower: 0,
      upper: 0,
      level,
      verdict: 'no check',
      varianceFactor: 1,
      sentence,
    };
  }
  const lower = chiSquareQuantileUpper(1 - level / 2, freedom);
  const upper = chiSquareQuantileUpper(level / 2, freedom);
  const verdict =
    statistic > upper ? 'worse than claimed' : statistic < lower ? 'better than claimed' : 'as claimed';
  const range = `weighted squares of the misfits ${statistic.toFixed(1)} with ${freedom} readings to spare; ${lower.toFixed(1)} to ${upper.toFixed(1)} would be usual`;
  const sentence = `The readings agree ${verdict === 'as claimed' ? 'with one another as claimed' : verdict} (${range}).`;
  return { statistic, freedom, lower, upper, level, verdict, varianceFactor: statistic / freedom, sentence };
}
