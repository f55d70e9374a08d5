/**
 * Linear least squares with unit weights: the step, the cofactors, and what the rows leave undetermined.
 *
 * In    rows A and right-hand sides l, already divided by their standard uncertainties
 * Out   x that makes |A x − l| least (the shortest one where several do), (AᵀA)⁻¹ or its pseudo-inverse, and a
 *       basis of the directions in which x may move without any row noticing
 *
 * The columns are first brought to unit length. A network with every pivot of the normal equations above 1e-8
 * is solved by Cholesky; any other goes through the singular values, which decide the rank.
 *
 * [GV]  Golub & Van Loan, Matrix Computations, 4th ed., 5.3 and 5.5 (from memory)
 */
import { CholeskyDecomposition, Matrix, SingularValueDecomposition } from 'ml-matrix';
import { productSkippingZeros } from './sparse-product.ts';

export interface LinearFit {
  readonly x: readonly number[];
  /** Worked out when first asked for: most rounds of an adjustment never do. */
  readonly cofactor: () => Matrix;
  readonly rank: number;
  /** Each of unit size in the scaled unknowns; empty when all is determined. */
  readonly undetermined: readonly (readonly number[])[];
}

/** Pivot of the unit-diagonal normal matrix below which the singular values are asked. */
const DOUBTFUL_PIVOT = 1e-8;
/** Share of the largest singular value that counts as nothing. */
const NOTHING = 1e-10;

export function linearFit(A: Matrix, l: readonly number[]): LinearFit {
  const n = A.columns;
  if (n === 0) return { x: [], cofactor: () => Matrix.zeros(0, 0), rank: 0, undetermined: [] };
  const sizes = Array.from({ length: n }, (_, j) => {
    let sum = 0;
    for (let i = 0; i < A.rows; i += 1) sum += A.get(i, j) ** 2;
    return sum > 0 ? Math.sqrt(sum) : 1;
  });
  const scaled = A.clone();
  for (let i = 0; i < A.rows; i += 1) {
    for (let j = 0; j < n; j += 1) scaled.set(i, j, A.get(i, j) / sizes[j]!);
  }
  const solved = byCholesky(scaled, l) ?? bySingularValues(scaled, l);
  const unscaled = (v: readonly number[]): number[] => v.map((value, j) => value / sizes[j]!);
  return {
    ...solved,
    x: unscaled(solved.x),
    cofactor: once(() => {
      const cofactor = solved.cofactor();
      for (let i = 0; i < n; i += 1) {
        for (let j = 0; j < n; j += 1) cofactor.set(i, j, cofactor.get(i, j) / (sizes[i]! * sizes[j]!));
      }
      return cofactor;
    }),
    undetermined: solved.undetermined.map(unscaled),
  };
}

/** A value that is worked out when it is first asked for, and kept. */
function once<T>(work: () => T): () => T {
  let kept: { readonly value: T } | undefined;
  return () => {
    kept ??= { value: work() };
    return kept.value;
  };
}

function byCholesky(A: Matrix, l: readonly number[]): LinearFit | undefined {
  const n = A.columns;
  if (A.rows < n) return undefined;
  const At = A.transpose();
  const decomposition = new CholeskyDecomposition(productSkippingZeros(At, A));
  if (!decomposition.isPositiveDefinite()) return undefined;
  const L = decomposition.lowerTriangularMatrix;
  for (let j = 0; j < n; j += 1) if (!(L.get(j, j) ** 2 > DOUBTFUL_PIVOT)) return undefined;
  const x = decomposition.solve(At.mmul(Matrix.columnVector([...l]))).to1DArray();
  return { x, cofactor: () => decomposition.solve(Matrix.eye(n, n)), rank: n, undetermined: [] };
}

function bySingularValues(A: Matrix, l: readonly number[]): LinearFit {
  const n = A.columns;
  const rows = Math.max(A.rows, n); // empty rows are added so that V comes whole
  const padded = Matrix.zeros(rows, n).setSubMatrix(A, 0, 0);
  const svd = new SingularValueDecomposition(padded);
  const V = svd.rightSingularVectors;
  const U = svd.leftSingularVectors;
  const s = svd.diagonal;
  const kept = s.map((value, k) => ({ value, k })).filter(({ value }) => value > NOTHING * s[0]!);
  const x = new Array<number>(n).fill(0);
  const cofactor = Matrix.zeros(n, n);
  for (const { value, k } of kept) {
    let share = 0;
    for (let i = 0; i < A.rows; i += 1) share += U.get(i, k) * l[i]!;
    for (let i = 0; i < n; i += 1) {
      x[i] = x[i]! + (V.get(i, k) * share) / value;
      for (let j = 0; j < n; j += 1) {
        cofactor.set(i, j, cofactor.get(i, j) + (V.get(i, k) * V.get(j, k)) / value ** 2);
      }
    }
  }
  const used = new Set(kept.map(({ k }) => k));
  const undetermined = Array.from({ length: n }, (_, k) => k)
    .filter((k) => !used.has(k))
    .map((k) => V.getColumn(k));
  return { x, cofactor: () => cofactor, rank: kept.length, undetermined };
}
