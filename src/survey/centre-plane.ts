/**
 * The centre plane that fits the pairs best, in place of the datum's.
 *
 * In    differences right − mirrored left of all pairs and their joint covariance; the pairs to fit
 * Out   the differences against the fitted plane, with the covariance that is left
 * Axes  the plane may shift along y, roll about x and yaw about z
 *
 * Numbers SU-… are those of docs/theory/survey.md.
 */
import { inverse, Matrix, pseudoInverse, SingularValueDecomposition } from 'ml-matrix';
import type { Vec3 } from '../maths/vec3.ts';

export interface PairRow {
  /** Three a pair. */
  readonly difference: readonly number[];
  readonly covariance: Matrix;
  readonly sides: readonly { readonly left: Vec3; readonly right: Vec3 }[];
}

/** The differences against the best plane; undefined when the pairs do not give one.  [SU-20] */
export function centredOnPairs(rows: PairRow, fitted: readonly number[]): PairRow | undefined {
  const A = slopes(rows.sides);
  const lines = fitted.flatMap((k) => [3 * k, 3 * k + 1, 3 * k + 2]);
  const n = rows.difference.length;
  const Au = new Matrix(lines.map((i) => A.getRow(i)));
  const scaleOf = rows.covariance.trace() / n;
  const Cu = new Matrix(lines.map((i) => lines.map((j) => rows.covariance.get(i, j))));
  // adding the plane's own freedom changes no fit and fills in what an exact datum had held [R]
  const W = Cu.add(Au.mmul(Au.transpose()).mul(scaleOf));
  const weight = pseudoInverse(W, 1e-10);
  const AtW = Au.transpose().mmul(weight);
  const normal = AtW.mmul(Au);
  const s = new SingularValueDecomposition(normal).diagonal;
  if (!(s[2]! > 1e-9 * s[0]!)) return undefined;
  const fit = inverse(normal).mmul(AtW).mul(-1);
  const T = Matrix.eye(n, n);
  for (let i = 0; i < n; i += 1) {
    lines.forEach((column, m) => {
      let sum = 0;
      for (let k = 0; k < 3; k += 1) sum += A.get(i, k) * fit.get(k, m);
      T.set(i, column, T.get(i, column) + sum);
    });
  }
  return {
    difference: T.mmul(Matrix.columnVector([...rows.difference])).to1DArray(),
    covariance: T.mmul(rows.covariance).mmul(T.transpose()),
    sides: rows.sides,
  };
}

/** How the differences change with the plane's shift along y, roll about x and yaw about z. */
function slopes(sides: PairRow['sides']): Matrix {
  return new Matrix(
    sides.flatMap(({ left, right }) => [
      [0, 0, left[1] - right[1]],
      [2, -(left[2] + right[2]), left[0] + right[0]],
      [0, right[1] - left[1], 0],
    ]),
  );
}
