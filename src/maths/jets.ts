/**
 * Numbers that carry their derivatives: first by all variables, second in the rows of a few.
 *
 * In    values, and which of them are variables
 * Out   what is made of them by sums, products, roots and angles, with derivatives exact to rounding
 *
 * A jet stands in one flat store and is known by its number, so that thousands are worked without allocating. The
 * first `rows` variables are those whose row of the second derivative is kept: ∂²f/∂v_r ∂v_i for every i. A store
 * with no rows carries first derivatives alone.
 *
 * [G] Griewank & Walther, Evaluating Derivatives, 2nd ed., ch. 13: arithmetic of truncated Taylor series (from memory)
 */

/** Number of a jet within its store. */
export type Jet = number;
export type JetVec = readonly [Jet, Jet, Jet];

/** Jets for which there is room before the store grows. */
const FIRST_SIZE = 1 << 8;

export class Jets {
  readonly variables: number;
  readonly rows: number;
  readonly #size: number;
  #store: Float64Array;
  #used = 0;

  constructor(variables: number, rows: number) {
    this.variables = variables;
    this.rows = rows;
    this.#size = 1 + variables + rows * variables;
    this.#store = new Float64Array(FIRST_SIZE * this.#size);
  }

  /** Forgets every jet; the store is written anew. */
  clear(): void {
    this.#used = 0;
  }

  #next(): Jet {
    const at = this.#used;
    this.#used += this.#size;
    if (this.#used > this.#store.length) {
      const larger = new Float64Array(2 * this.#store.length);
      larger.set(this.#store);
      this.#store = larger;
    }
    return at;
  }

  constant(value: number): Jet {
    const at = this.#next();
    this.#store.fill(0, at, at + this.#size);
    this.#store[at] = value;
    return at;
  }

  variable(value: number, which: number): Jet {
    const at = this.constant(value);
    this.#store[at + 1 + which] = 1;
    return at;
  }

  value(a: Jet): number {
    return this.#store[a]!;
  }

  /** ∂a/∂v_i */
  first(a: Jet, i: number): number {
    return this.#store[a + 1 + i]!;
  }

  /** ∂²a/∂v_r ∂v_i, r below `rows`. */
  second(a: Jet, r: number, i: number): number {
    return this.#store[a + 1 + this.variables * (1 + r) + i]!;
  }

  setFirst(a: Jet, i: number, value: number): void {
    this.#store[a + 1 + i] = value;
  }

  setSecond(a: Jet, r: number, i: number, value: number): void {
    this.#store[a + 1 + this.variables * (1 + r) + i] = value;
  }

  /** k₁ a + k₂ b + c */
  #linear(a: Jet, ka: number, b: Jet, kb: number, c: number): Jet {
    const at = this.#next();
    const s = this.#store;
    for (let i = 0; i < this.#size; i += 1) s[at + i] = ka * s[a + i]! + kb * s[b + i]!;
    s[at] = s[at]! + c;
    return at;
  }

  add(a: Jet, b: Jet): Jet {
    return this.#linear(a, 1, b, 1, 0);
  }

  sub(a: Jet, b: Jet): Jet {
    return this.#linear(a, 1, b, -1, 0);
  }

  /** k a + c, with k and c plain numbers. */
  scale(a: Jet, k: number, c = 0): Jet {
    return this.#linear(a, k, a, 0, c);
  }

  mul(a: Jet, b: Jet): Jet {
    const at = this.#next();
    const s = this.#store;
    const n = this.variables;
    const [x, y] = [s[a]!, s[b]!];
    s[at] = x * y;
    for (let i = 1; i <= n; i += 1) s[at + i] = x * s[b + i]! + y * s[a + i]!;
    for (let r = 0; r < this.rows; r += 1) {
      const row = 1 + n * (1 + r);
      const [xr, yr] = [s[a + 1 + r]!, s[b + 1 + r]!];
      for (let i = 0; i < n; i += 1) {
        s[at + row + i] = x * s[b + row + i]! + y * s[a + row + i]! + xr * s[b + 1 + i]! + yr * s[a + 1 + i]!;
      }
    }
    return at;
  }

  /** f(a), told by f, f′ and f″ at the value of a. */
  of(a: Jet, f: number, f1: number, f2: number): Jet {
    const at = this.#next();
    const s = this.#store;
    const n = this.variables;
    s[at] = f;
    for (let i = 1; i <= n; i += 1) s[at + i] = f1 * s[a + i]!;
    for (let r = 0; r < this.rows; r += 1) {
      const row = 1 + n * (1 + r);
      const ar = f2 * s[a + 1 + r]!;
      for (let i = 0; i < n; i += 1) s[at + row + i] = f1 * s[a + row + i]! + ar * s[a + 1 + i]!;
    }
    return at;
  }

  inverse(a: Jet): Jet {
    const v = 1 / this.value(a);
    return this.of(a, v, -v * v, 2 * v * v * v);
  }

  div(a: Jet, b: Jet): Jet {
    return this.mul(a, this.inverse(b));
  }

  sqrt(a: Jet): Jet {
    const v = Math.sqrt(this.value(a));
    return this.of(a, v, 0.5 / v, -0.25 / (v * v * v));
  }

  sin(a: Jet): Jet {
    const x = this.value(a);
    return this.of(a, Math.sin(x), Math.cos(x), -Math.sin(x));
  }

  cos(a: Jet): Jet {
    const x = this.value(a);
    return this.of(a, Math.cos(x), -Math.sin(x), -Math.cos(x));
  }

  asin(a: Jet): Jet {
    const x = this.value(a);
    const c = 1 / Math.sqrt(1 - x * x);
    return this.of(a, Math.asin(x), c, x * c * c * c);
  }

  /** The angle of (x, y), with derivatives of the arc tangent of the lesser over the greater. */
  atan2(y: Jet, x: Jet): Jet {
    const steep = Math.abs(this.value(y)) > Math.abs(this.value(x));
    const t = steep ? this.div(x, y) : this.div(y, x);
    const v = this.value(t);
    const f1 = (steep ? -1 : 1) / (1 + v * v);
    return this.of(t, Math.atan2(this.value(y), this.value(x)), f1, -2 * v * f1 * (1 / (1 + v * v)));
  }

  constantVec(v: readonly [number, number, number]): JetVec {
    return [this.constant(v[0]), this.constant(v[1]), this.constant(v[2])];
  }

  addVec(a: JetVec, b: JetVec): JetVec {
    return [this.add(a[0], b[0]), this.add(a[1], b[1]), this.add(a[2], b[2])];
  }

  subVec(a: JetVec, b: JetVec): JetVec {
    return [this.sub(a[0], b[0]), this.sub(a[1], b[1]), this.sub(a[2], b[2])];
  }

  /** a + k b */
  along(a: JetVec, b: JetVec, k: Jet): JetVec {
    return this.addVec(a, [this.mul(b[0], k), this.mul(b[1], k), this.mul(b[2], k)]);
  }

  scaleVec(a: JetVec, k: Jet): JetVec {
    return [this.mul(a[0], k), this.mul(a[1], k), this.mul(a[2], k)];
  }

  dot(a: JetVec, b: JetVec): Jet {
    return this.add(this.add(this.mul(a[0], b[0]), this.mul(a[1], b[1])), this.mul(a[2], b[2]));
  }

  cross(a: JetVec, b: JetVec): JetVec {
    const minor = (i: 0 | 1 | 2, j: 0 | 1 | 2): Jet => this.sub(this.mul(a[i], b[j]), this.mul(a[j], b[i]));
    return [minor(1, 2), minor(2, 0), minor(0, 1)];
  }

  length(a: JetVec): Jet {
    return this.sqrt(this.dot(a, a));
  }

  values(a: JetVec): [number, number, number] {
    return [this.value(a[0]), this.value(a[1]), this.value(a[2])];
  }

  /**
   * A jet of another store brought into this one.
   *
   * @param to  for each variable of the other store its number here, or −1 where it is none here
   */
  taken(from: Jets, a: Jet, to: readonly number[]): Jet {
    const at = this.constant(from.value(a));
    to.forEach((here, i) => {
      if (here < 0) return;
      this.setFirst(at, here, from.first(a, i));
      for (let r = 0; r < from.rows; r += 1) {
        const row = to[r]!;
        if (row >= 0 && row < this.rows) this.setSecond(at, row, here, from.second(a, r, i));
      }
    });
    return at;
  }

  /** ∂a/∂v_r of a jet of another store, brought into this one as a jet of its own. */
  slopeTaken(from: Jets, a: Jet, r: number, to: readonly number[]): Jet {
    const at = this.constant(from.first(a, r));
    to.forEach((here, i) => {
      if (here >= 0) this.setFirst(at, here, from.second(a, r, i));
    });
    return at;
  }

  slopeTakenVec(from: Jets, a: JetVec, r: number, to: readonly number[]): JetVec {
    const part = (k: 0 | 1 | 2): Jet => this.slopeTaken(from, a[k], r, to);
    return [part(0), part(1), part(2)];
  }

  takenVec(from: Jets, a: JetVec, to: readonly number[]): JetVec {
    return [this.taken(from, a[0], to), this.taken(from, a[1], to), this.taken(from, a[2], to)];
  }
}
