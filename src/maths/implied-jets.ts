/**
 * Unknowns that equations tie to variables: found by Newton's steps, and given the derivatives that follow.
 *
 * In    n equations Φ(x, v) = 0 written in jets, a place near the solution
 * Out   the unknowns as jets of the variables, first and second derivatives exact
 *
 * Φ_x x_i = −Φ_i; and differentiated once more, Φ_x x_ri = −(what Φ's second derivative comes to with x_ri left out).
 * Both right-hand sides are read off Φ itself, worked with jets that carry what is known so far.
 */
import { DenseLu } from './dense-lu.ts';
import type { Jet, Jets } from './jets.ts';

/** The equations in jets of whichever store they are handed. */
export type Equations = (jets: Jets, unknowns: readonly Jet[], variables: readonly Jet[]) => readonly Jet[];

/** The unknowns were not found: the search ended with this much left over. */
export class NotTied extends Error {
  readonly left: number;
  constructor(left: number) {
    super('The lengths of the links do not close here.');
    this.name = 'NotTied';
    this.left = left;
  }
}

const MOST_STEPS = 40;

export interface Tied {
  readonly jets: readonly Jet[];
  /** The unknowns' values, to begin the next search from. */
  readonly at: Float64Array;
}

/**
 * @param own  a store with the unknowns as variables and no rows
 * @param values  of the variables
 * @param closed  largest equation left over that counts as none
 * @param stride  longest step of one unknown
 * @throws NotTied
 */
export function tied(
  of: Equations,
  from: Float64Array,
  values: readonly number[],
  stores: { readonly own: Jets; readonly jets: Jets; readonly lu: DenseLu },
  { closed, stride }: { readonly closed: number; readonly stride: number },
): Tied {
  const { own, jets, lu } = stores;
  const n = from.length;
  const at = Float64Array.from(from);
  const step = new Float64Array(n);
  let left = Number.POSITIVE_INFINITY;
  let before = Number.POSITIVE_INFINITY;
  for (let tries = 0; ; tries += 1) {
    own.clear();
    const equations = of(
      own,
      Array.from(at, (x, i) => own.variable(x, i)),
      values.map((v) => own.constant(v)),
    );
    left = 0;
    equations.forEach((equation, i) => {
      step[i] = -own.value(equation);
      left = Math.max(left, Math.abs(step[i]!));
      for (let j = 0; j < n; j += 1) lu.a[i * n + j] = own.first(equation, j);
    });
    if (!lu.factor() || !Number.isFinite(left) || tries > MOST_STEPS) throw new NotTied(left);
    // rounding may hold the last steps above what was wished; the place is then as good as it gets
    if (left <= closed || (left >= before && left <= 1e3 * closed)) break;
    before = left;
    lu.solve(step);
    const longest = step.reduce((most, each) => Math.max(most, Math.abs(each)), 0);
    const part = Math.min(1, stride / longest);
    for (let i = 0; i < n; i += 1) at[i] = at[i]! + part * step[i]!;
  }
  return { jets: derivativesOf(of, at, values, { jets, lu }), at };
}

function derivativesOf(
  of: Equations,
  at: Float64Array,
  values: readonly number[],
  { jets, lu }: { readonly jets: Jets; readonly lu: DenseLu },
): readonly Jet[] {
  const n = at.length;
  const m = jets.variables;
  const right = new Float64Array(n);
  const x = Array.from(at, (value) => jets.constant(value));
  const v = values.map((value, i) => jets.variable(value, i));
  const once = of(jets, x, v);
  for (let i = 0; i < m; i += 1) {
    once.forEach((equation, k) => {
      right[k] = -jets.first(equation, i);
    });
    lu.solve(right);
    for (let k = 0; k < n; k += 1) jets.setFirst(x[k]!, i, right[k]!);
  }
  if (jets.rows === 0) return x;
  const twice = of(jets, x, v);
  for (let r = 0; r < jets.rows; r += 1) {
    for (let i = 0; i < m; i += 1) {
      twice.forEach((equation, k) => {
        right[k] = -jets.second(equation, r, i);
      });
      lu.solve(right);
      for (let k = 0; k < n; k += 1) jets.setSecond(x[k]!, r, i, right[k]!);
    }
  }
  return x;
}
