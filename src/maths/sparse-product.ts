/** Products of matrices that are mostly zeros: a reading touches two or three points of sixty. */
import { Matrix } from 'ml-matrix';

/** A·B, with the zeros of A (and of B) passed over. Same result as the plain product to rounding. */
export function productSkippingZeros(A: Matrix, B: Matrix): Matrix {
  const filled = Array.from({ length: B.rows }, (_, k) => {
    const entries: (readonly [column: number, value: number])[] = [];
    for (let j = 0; j < B.columns; j += 1) {
      const value = B.get(k, j);
      if (value !== 0) entries.push([j, value]);
    }
    return entries;
  });
  return new Matrix(
    Array.from({ length: A.rows }, (_, i) => {
      const line = new Float64Array(B.columns);
      for (let k = 0; k < A.columns; k += 1) {
        const a = A.get(i, k);
        if (a === 0) continue;
        for (const [j, b] of filled[k]!) line[j] = line[j]! + a * b;
      }
      return [...line];
    }),
  );
}
