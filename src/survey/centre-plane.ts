/**
 * The centre plane that fits the pairs best, in place of the datum's.
 *
 * In    differences right − mirrored left of all pairs and their joint covariance; the pairs to fit
 * Out   the differences against the fitted plane, with the covariance that is left
 * Axes  the plane may shift along y, roll about x and yaw about z
 *
 * Numbers SU-… are those of docs/theory/survey.md.
 */
import { inverse, Matrix, SingularValueDecomposition } from 'ml-matrix';
import type { Vec3 } from '../maths/vec3.ts';

export interface PairRow {
  /** Three a pair. */
  readonly difference: readonly number[];
  readonly covariance: Matrix;
  readonly sides: readonly { readonly left: Vec3; readonly right: Vec3 }[];
}

/**
 * The differences against the best plane; undefined when the pairs do not give one.  [SU-20]
 *
 * Plain least squares first, then once more with each pair weighed by the variance left to it. The full
 * covariance would be no weight: it is zero where the datum holds the axes, and so would only give back the
 * datum's own plane.
 */
export function centredOnPairs(rows: PairRow, fitted: readonly number[]): PairRow | undefined {
  const plain = fittedWith(
    rows,
    fitted,
    fitted.map(() => 1),
  );
  if (plain === undefined) return undefined;
  const variances = fitted.map((k) =>
    [0, 1, 2].reduce((sum, i) => sum + plain.covariance.get(3 * k + i, 3 * k + i), 0),
  );
  // a pair may not count as better than ten times the middle one, or it would hold the plane alone
  const middle = [...variances].sort((a, b) => a - b)[Math.floor(variances.length / 2)]!;
  return fittedWith(
    rows,
    fitted,
    variances.map((variance) => middle / Math.max(variance, middle / 10)),
  );
}

function fittedWith(
  rows: PairRow,
  fitted: readonly number[],
  weights: readonly number[],
): PairRow | undefined {
  const A = slopes(rows.sides);
  const lines = fitted.flatMap((k, m) => [0, 1, 2].map((i) => ({ line: 3 * k + i, weight: weights[m]! })));
  const Au = new Matrix(lines.map(({ line }) => A.getRow(line)));
  const AtP = new Matrix(lines.map(({ line, weight }) => A.getRow(line).map((a) => a * weight))).transpose();
  const normal = AtP.mmul(Au);
  const s = new SingularValueDecomposition(normal).diagonal;
  if (!(s[2]! > 1e-9 * s[0]!)) return undefined;
  const fit = inverse(normal).mmul(AtP).mul(-1);
  const n = rows.difference.length;
  const T = Matrix.eye(n, n);
  const back = A.mmul(fit);
  for (let i = 0; i < n; i += 1) {
    lines.forEach(({ line }, m) => {
      T.set(i, line, T.get(i, line) + back.get(i, m));
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
