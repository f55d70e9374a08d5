/**
 * The least work that brings rows within their ranges: a small linear program, by the dual simplex method.
 *
 * In    rows d + A x that must lie within ± t, columns with ranges and a cost per |x|, or per way from elsewhere
 * Out   the x of least cost, or that there is none
 *
 * Each column is its nearest place to where it is from plus a way up and a way down, both from nothing on and both of
 * no less than no cost: so the slack basis is dual feasible, and the method begins at once.
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
  /** Per |x − from|, not negative. */
  readonly cost: Float64Array;
  /** Left out: nothing. */
  readonly from?: Float64Array;
}

export interface RangeSolution {
  readonly x: Float64Array;
  readonly cost: number;
}

const NOTHING = 1e-9;
const MOST_PIVOTS = 600;

/** @returns undefined where no x within its ranges brings every row within ± within */
export function leastCost(of: RangeProgram, within: number): RangeSolution | undefined {
  const { a, d, low, high, cost, from = new Float64Array(low.length) } = of;
  const rows = d.length;
  const n = low.length;
  const rest = Float64Array.from(low, (value, j) => Math.max(value, Math.min(high[j]!, from[j]!)));
  // a column up and one down for each x that can move, then a slack a row, whose value is the row itself
  const column: number[] = [];
  const sign: number[] = [];
  for (let j = 0; j < n; j += 1) {
    if (low[j]! > high[j]! + NOTHING) return undefined;
    if (high[j]! - rest[j]! > NOTHING) {
      column.push(j);
      sign.push(1);
    }
    if (rest[j]! - low[j]! > NOTHING) {
      column.push(j);
      sign.push(-1);
    }
  }
  const columns = column.length;
  const upper = new Float64Array(columns + rows);
  const lower = new Float64Array(columns + rows);
  const reduced = new Float64Array(columns);
  const tableau = new Float64Array(rows * columns);
  const value = new Float64Array(rows);
  for (let k = 0; k < columns; k += 1) {
    const j = column[k]!;
    upper[k] = sign[k]! > 0 ? high[j]! - rest[j]! : rest[j]! - low[j]!;
    // a hair of difference between costs keeps the method from going round in circles
    reduced[k] = cost[j]! * (1 + 1e-7 * j) + 1e-10;
  }
  for (let i = 0; i < rows; i += 1) {
    const row = a[i]!;
    let at = d[i]!;
    for (let j = 0; j < n; j += 1) at += row[j]! * rest[j]!;
    for (let k = 0; k < columns; k += 1) tableau[i * columns + k] = sign[k]! * row[column[k]!]!;
    value[i] = at;
    lower[columns + i] = -within;
    upper[columns + i] = within;
  }
  const basic = Int32Array.from({ length: rows }, (_, i) => columns + i);
  const nonbasic = Int32Array.from({ length: columns }, (_, k) => k);
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
    if (r < 0) break;
    const raise = value[r]! < lower[basic[r]!]!;
    const q = entering(tableau.subarray(r * columns, (r + 1) * columns), raise, {
      reduced,
      nonbasic,
      atUpper,
      lower,
      upper,
    });
    if (q < 0) return undefined;
    if (pivots === MOST_PIVOTS - 1) throw new Error('the dual simplex went on without an end');
    const bound = raise ? lower[basic[r]!]! : upper[basic[r]!]!;
    const [inside, outside] = [nonbasic[q]!, basic[r]!];
    const left = atUpper[q] === 1 ? upper[inside]! : lower[inside]!;
    const move = (bound - value[r]!) / tableau[r * columns + q]!;
    for (let i = 0; i < rows; i += 1) value[i] = value[i]! + tableau[i * columns + q]! * move;
    value[r] = left + move;
    pivotOn(tableau, reduced, r, q, columns);
    basic[r] = inside;
    nonbasic[q] = outside;
    atUpper[q] = raise ? 0 : 1;
  }
  const x = Float64Array.from(rest);
  const put = (variable: number, amount: number): void => {
    if (variable >= columns) return;
    const j = column[variable]!;
    x[j] = x[j]! + sign[variable]! * amount;
  };
  basic.forEach((variable, i) => {
    put(variable, value[i]!);
  });
  nonbasic.forEach((variable, k) => {
    if (atUpper[k] === 1) put(variable, upper[variable]!);
  });
  return { x, cost: x.reduce((sum, each, j) => sum + cost[j]! * Math.abs(each - from[j]!), 0) };
}

/** The column that enters for a row: of those that move the row the right way, the one that keeps costs from falling. */
function entering(
  row: Float64Array,
  raise: boolean,
  of: {
    readonly reduced: Float64Array;
    readonly nonbasic: Int32Array;
    readonly atUpper: Uint8Array;
    readonly lower: Float64Array;
    readonly upper: Float64Array;
  },
): number {
  const { reduced, nonbasic, atUpper, lower, upper } = of;
  let q = -1;
  let least = Number.POSITIVE_INFINITY;
  for (let k = 0; k < row.length; k += 1) {
    const t = row[k]!;
    if (Math.abs(t) < NOTHING || upper[nonbasic[k]!]! - lower[nonbasic[k]!]! < 1e-15) continue;
    if ((atUpper[k] === 1 ? -t : t) > 0 !== raise) continue;
    const ratio = Math.abs(reduced[k]!) / Math.abs(t);
    if (ratio < least - 1e-15 || (ratio <= least && Math.abs(t) > Math.abs(row[q]!))) {
      least = ratio;
      q = k;
    }
  }
  return q;
}

/** Solves row r for column q and puts it into the other rows and the costs. */
function pivotOn(tableau: Float64Array, reduced: Float64Array, r: number, q: number, columns: number): void {
  const at = r * columns;
  const inverse = 1 / tableau[at + q]!;
  for (let k = 0; k < columns; k += 1) tableau[at + k] = k === q ? inverse : -tableau[at + k]! * inverse;
  for (let row = 0; row < tableau.length; row += columns) {
    if (row === at) continue;
    const by = tableau[row + q]!;
    if (by === 0) continue;
    tableau[row + q] = 0;
    for (let k = 0; k < columns; k += 1) tableau[row + k] = tableau[row + k]! + by * tableau[at + k]!;
  }
  const by = reduced[q]!;
  reduced[q] = 0;
  for (let k = 0; k < columns; k += 1) reduced[k] = reduced[k]! + by * tableau[at + k]!;
}
