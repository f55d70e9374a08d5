/**
 * The least work that brings rows within their ranges: a small linear program, by the dual simplex method.
 *
 * In    rows d + A x that must lie within ± t, columns with ranges and a cost per |x|
 * Out   the x of least cost, or that there is none
 *
 * Each column is its nearest place to nothing plus a way up and a way down, both from nothing on and both of no less
 * than no cost: so the slack basis is dual feasible, and the method begins at once.
 *
 * [V] Vanderbei, Linear Programming: Foundations and Extensions, 4th ed., ch. 5 and 9 (dual simplex, bounded
 *     variables; from memory)
 */

export interface RangeProgram {
  /** By rows. */
  readonly a: readonly Float64Array[];
  readonly d: Float64Array;
  readonly low: Float64Array;
  readonly high: Float64Array;
  /** Per |x|, not negative. */
  readonly cost: Float64Array;
}

export interface RangeSolution {
  readonly x: Float64Array;
  readonly cost: number;
}

const NOTHING = 1e-9;
const MOST_PIVOTS = 600;

/** @returns undefined where no x within its ranges brings every row within ± within */
export function leastCost(of: RangeProgram, within: number): RangeSolution | undefined {
  const { a, d, low, high, cost } = of;
  const rows = d.length;
  const n = low.length;
  const columns = 2 * n;
  const rest = Float64Array.from(low, (value, j) => Math.max(value, Math.min(high[j]!, 0)));
  for (let j = 0; j < n; j += 1) if (low[j]! > high[j]! + NOTHING) return undefined;
  // variables: columns 0 … 2n − 1 (up, down), then a slack a row, whose value is the row itself
  const lower = new Float64Array(columns + rows);
  const upper = new Float64Array(columns + rows);
  const tableau: Float64Array[] = [];
  const value = new Float64Array(rows);
  const reduced = new Float64Array(columns);
  for (let j = 0; j < n; j += 1) {
    upper[2 * j] = Math.max(0, high[j]! - rest[j]!);
    upper[2 * j + 1] = Math.max(0, rest[j]! - low[j]!);
    // a hair of difference between costs keeps the method from going round in circles
    reduced[2 * j] = cost[j]! * (1 + 1e-7 * j) + 1e-10;
    reduced[2 * j + 1] = reduced[2 * j]!;
  }
  for (let i = 0; i < rows; i += 1) {
    const row = new Float64Array(columns);
    let at = d[i]!;
    for (let j = 0; j < n; j += 1) {
      row[2 * j] = a[i]![j]!;
      row[2 * j + 1] = -a[i]![j]!;
      at += a[i]![j]! * rest[j]!;
    }
    tableau.push(row);
    value[i] = at;
    lower[columns + i] = -within;
    upper[columns + i] = within;
  }
  const basic = Int32Array.from({ length: rows }, (_, i) => columns + i);
  const nonbasic = Int32Array.from({ length: columns }, (_, j) => j);
  const atUpper = new Uint8Array(columns);
  for (let pivots = 0; pivots < MOST_PIVOTS; pivots += 1) {
    let r = -1;
    let worst = NOTHING;
    for (let i = 0; i < rows; i += 1) {
      const b = basic[i]!;
      const over = Math.max(lower[b]! - value[i]!, value[i]! - upper[b]!);
      if (over > worst) {
        worst = over;
        r = i;
      }
    }
    if (r < 0) return solutionOf(of, rest, { basic, nonbasic, atUpper, value, upper });
    const raise = value[r]! < lower[basic[r]!]!;
    const row = tableau[r]!;
    let q = -1;
    let least = Number.POSITIVE_INFINITY;
    for (let j = 0; j < columns; j += 1) {
      const t = row[j]!;
      if (Math.abs(t) < NOTHING || upper[nonbasic[j]!]! - lower[nonbasic[j]!]! < 1e-15) continue;
      const moves = (atUpper[j] === 1 ? -t : t) > 0;
      if (moves !== raise) continue;
      const ratio = Math.abs(reduced[j]!) / Math.abs(t);
      if (ratio < least - 1e-15 || (ratio <= least && Math.abs(t) > Math.abs(row[q]!))) {
        least = ratio;
        q = j;
      }
    }
    if (q < 0) return undefined;
    const b = basic[r]!;
    const bound = raise ? lower[b]! : upper[b]!;
    const entering = nonbasic[q]!;
    const from = atUpper[q] === 1 ? upper[entering]! : lower[entering]!;
    const move = (bound - value[r]!) / row[q]!;
    for (let i = 0; i < rows; i += 1) value[i] = value[i]! + tableau[i]![q]! * move;
    value[r] = from + move;
    const pivot = row[q]!;
    // solve row r for the entering variable, put it into the others
    for (let j = 0; j < columns; j += 1) row[j] = j === q ? 1 / pivot : -row[j]! / pivot;
    for (let i = 0; i < rows; i += 1) {
      if (i === r) continue;
      const other = tableau[i]!;
      const by = other[q]!;
      if (by === 0) continue;
      for (let j = 0; j < columns; j += 1) other[j] = j === q ? by * row[j]! : other[j]! + by * row[j]!;
    }
    const by = reduced[q]!;
    for (let j = 0; j < columns; j += 1)
      reduced[j] = j === q ? by * row[j]! : reduced[j]! + by * row[j]!;
    basic[r] = entering;
    nonbasic[q] = b;
    atUpper[q] = raise ? 0 : 1;
  }
  throw new Error('the dual simplex went on without an end');
}

function solutionOf(
  of: RangeProgram,
  rest: Float64Array,
  at: {
    readonly basic: Int32Array;
    readonly nonbasic: Int32Array;
    readonly atUpper: Uint8Array;
    readonly value: Float64Array;
    readonly upper: Float64Array;
  },
): RangeSolution {
  const x = Float64Array.from(rest);
  const put = (variable: number, amount: number): void => {
    if (variable >= 2 * rest.length) return;
    const j = variable >> 1;
    x[j] = x[j]! + (variable % 2 === 0 ? amount : -amount);
  };
  at.basic.forEach((variable, i) => {
    put(variable, at.value[i]!);
  });
  at.nonbasic.forEach((variable, j) => {
    if (at.atUpper[j] === 1 && variable < 2 * rest.length) put(variable, at.upper[variable]!);
  });
  return { x, cost: x.reduce((sum, each, j) => sum + of.cost[j]! * Math.abs(each), 0) };
}
