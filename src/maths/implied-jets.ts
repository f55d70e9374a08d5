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
import { type Jet, Jets } from './jets.ts';

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

/** What a search works with; kept from one to the next, since the slopes of a place near by still lead there. */
export class TiedStores {
  /** No derivatives: what the equations leave. */
  readonly bare = new Jets(0, 0);
  /** The unknowns as variables. */
  readonly own: Jets;
  readonly jets: Jets;
  readonly lu: DenseLu;
  /** Whether `lu` holds the slopes of an earlier place. */
  sloped = false;

  constructor(unknowns: number, variables: number, rows: number) {
    this.own = new Jets(unknowns, 0);
    this.jets = new Jets(variables, rows);
    this.lu = new DenseLu(unknowns);
  }
}

/**
 * @param values  of the variables
 * @param closed  largest equation left over that counts as none
 * @param stride  longest step of one unknown
 * @throws NotTied
 */
export function tied(
  of: Equations,
  from: Float64Array,
  values: readonly number[],
  stores: TiedStores,
  { closed, stride }: { readonly closed: number; readonly stride: number },
): Tied {
  const at = Float64Array.from(from);
  if (!stores.sloped) slopesAt(of, at, values, stores);
  let before = Number.POSITIVE_INFINITY;
  for (let tries = 0; ; tries += 1) {
    const step = leftAt(of, at, values, stores.bare);
    const left = largest(step);
    // rounding may hold the last steps above what was wished; the place is then as good as it gets
    if (left <= closed || (left >= before && left <= 1e2 * closed)) break;
    if (!(left < Number.POSITIVE_INFINITY) || tries > MOST_STEPS) {
      stores.sloped = false;
      throw new NotTied(left);
    }
    // slopes of another place that no longer lead there quickly are taken anew
    if (left > 0.1 * before) slopesAt(of, at, values, stores);
    before = left;
    stores.lu.solve(step);
    const part = Math.min(1, stride / largest(step));
    for (let i = 0; i < at.length; i += 1) at[i] = at[i]! + part * step[i]!;
  }
  slopesAt(of, at, values, stores);
  return { jets: derivativesOf(of, at, values, stores), at };
}

const largest = (of: Float64Array): number => {
  let most = 0;
  for (const each of of) most = Math.abs(each) > most || Number.isNaN(each) ? Math.abs(each) : most;
  return most;
};

/** What the equations leave, turned round. */
function leftAt(of: Equations, at: Float64Array, values: readonly number[], bare: Jets): Float64Array {
  bare.clear();
  const equations = of(bare, constants(bare, at), constants(bare, values));
  return Float64Array.from(equations, (equation) => -bare.value(equation));
}

const constants = (jets: Jets, values: Iterable<number>): Jet[] =>
  Array.from(values, (value) => jets.constant(value));

/** Factors the slopes of the equations by the unknowns. @throws NotTied where they lead nowhere */
function slopesAt(of: Equations, at: Float64Array, values: readonly number[], stores: TiedStores): void {
  const { own, lu } = stores;
  const n = at.length;
  own.clear();
  const unknowns = Array.from(at, (x, i) => own.variable(x, i));
  of(own, unknowns, constants(own, values)).forEach((equation, i) => {
    for (let j = 0; j < n; j += 1) lu.a[i * n + j] = own.first(equation, j);
  });
  stores.sloped = lu.factor();
  if (!stores.sloped) throw new NotTied(Number.NaN);
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
