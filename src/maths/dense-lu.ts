/**
 * A small square system factored once and solved for many right-hand sides, without allocating.
 *
 * [GVL] Golub & Van Loan, Matrix Computations, 4th ed., alg. 3.4.1: Gaussian elimination with partial pivoting
 *       (from memory)
 */
export class DenseLu {
  readonly size: number;
  /** The matrix by rows, to be filled by the caller before `factor`. */
  readonly a: Float64Array;
  readonly #swap: Int32Array;

  constructor(size: number) {
    this.size = size;
    this.a = new Float64Array(size * size);
    this.#swap = new Int32Array(size);
  }

  /** Factors what `a` holds, in its place. False where a pivot is nothing beside the matrix: singular. */
  factor(): boolean {
    const { a, size: n } = this;
    let largest = 0;
    for (const each of a) largest = Math.max(largest, Math.abs(each));
    for (let k = 0; k < n; k += 1) {
      let p = k;
      for (let i = k + 1; i < n; i += 1) if (Math.abs(a[i * n + k]!) > Math.abs(a[p * n + k]!)) p = i;
      this.#swap[k] = p;
      if (!(Math.abs(a[p * n + k]!) > 1e-14 * largest)) return false;
      if (p !== k) {
        for (let j = 0; j < n; j += 1) {
          const kept = a[k * n + j]!;
          a[k * n + j] = a[p * n + j]!;
          a[p * n + j] = kept;
        }
      }
      for (let i = k + 1; i < n; i += 1) {
        const by = a[i * n + k]! / a[k * n + k]!;
        a[i * n + k] = by;
        if (by !== 0) for (let j = k + 1; j < n; j += 1) a[i * n + j] = a[i * n + j]! - by * a[k * n + j]!;
      }
    }
    return true;
  }

  /** Solves for b, in its place. */
  solve(b: Float64Array): Float64Array {
    const { a, size: n } = this;
    for (let k = 0; k < n; k += 1) {
      const p = this.#swap[k]!;
      if (p !== k) {
        const kept = b[k]!;
        b[k] = b[p]!;
        b[p] = kept;
      }
    }
    for (let i = 0; i < n; i += 1) {
      let sum = b[i]!;
      for (let j = 0; j < i; j += 1) sum -= a[i * n + j]! * b[j]!;
      b[i] = sum;
    }
    for (let i = n - 1; i >= 0; i -= 1) {
      let sum = b[i]!;
      for (let j = i + 1; j < n; j += 1) sum -= a[i * n + j]! * b[j]!;
      b[i] = sum / a[i * n + i]!;
    }
    return b;
  }
}
