/**
 * The unknowns of an adjustment in a row: three for a point, six for a free arm frame; and the exact datum
 * rules taken out of them.
 *
 * In    names of points and sets; the exact rules
 * Out   column numbers; a basis of what the exact rules leave free
 *
 * Exact rules are linear in the co-ordinates, so the basis is the same in every round.  [SU-9]
 */
import { Matrix } from 'ml-matrix';
import { turnedBy } from '../geometry/rotation.ts';
import { add, type Vec3 } from '../maths/vec3.ts';
import type { Equation, Slope, State } from './equations.ts';

export interface Unknowns {
  readonly count: number;
  readonly pointAt: ReadonlyMap<string, number>;
  readonly frameAt: ReadonlyMap<string, number>;
}

export function unknownsOf(points: readonly string[], sets: readonly string[]): Unknowns {
  return {
    count: 3 * points.length + 6 * sets.length,
    pointAt: new Map(points.map((name, k) => [name, 3 * k])),
    frameAt: new Map(sets.map((name, k) => [name, 3 * points.length + 6 * k])),
  };
}

/** First of the three columns a slope belongs to. */
function columnOf(unknowns: Unknowns, slope: Slope): number {
  const start = slope.of === 'point' ? unknowns.pointAt.get(slope.name) : unknowns.frameAt.get(slope.name);
  if (start === undefined) throw new Error(`no unknowns for ${slope.of} "${slope.name}"`);
  return slope.of === 'turn' ? start + 3 : start;
}

/** Derivatives of the equations by all unknowns, one row an equation. */
export function jacobian(equations: readonly Equation[], unknowns: Unknowns): Matrix {
  const A = Matrix.zeros(equations.length, unknowns.count);
  equations.forEach((equation, i) => {
    for (const slope of equation.slopes) {
      const j = columnOf(unknowns, slope);
      for (let k = 0; k < 3; k += 1) A.set(i, j + k, A.get(i, j + k) + slope.by[k]!);
    }
  });
  return A;
}

/** The state after a step of all unknowns. */
export function stepped(state: State, unknowns: Unknowns, step: readonly number[]): State {
  const three = (j: number): Vec3 => [step[j]!, step[j + 1]!, step[j + 2]!];
  const points = new Map(state.points);
  for (const [name, j] of unknowns.pointAt) points.set(name, add(state.points.get(name)!, three(j)));
  const frames = new Map(state.frames);
  for (const [name, j] of unknowns.frameAt) {
    const frame = state.frames.get(name)!;
    frames.set(name, {
      rotation: turnedBy(frame.rotation, three(j + 3)),
      translation: add(frame.translation, three(j)),
    });
  }
  return { points, frames };
}

export interface ExactRules {
  /** Columns are what the rules leave free: a step is x = particular + basis·y. */
  readonly basis: Matrix;
  /** The step that brings the present state onto the rules. */
  readonly particular: readonly number[];
  /** Ids of rules that the others contradict, with the amount, m. */
  readonly contradicted: readonly { readonly id: string; readonly by: number }[];
}

/** Takes the exact rules out by Gauss–Jordan elimination with the largest pivot of each row. */
export function withoutExactRules(rules: readonly Equation[], unknowns: Unknowns): ExactRules {
  const n = unknowns.count;
  const rows = jacobian(rules, unknowns);
  const right = rules.map((rule) => rule.read - rule.computed);
  const pivots: { row: number; column: number }[] = [];
  const contradicted: { id: string; by: number }[] = [];
  for (let i = 0; i < rules.length; i += 1) {
    for (const pivot of pivots) eliminate(rows, right, i, pivot);
    let column = 0;
    for (let j = 1; j < n; j += 1) if (Math.abs(rows.get(i, j)) > Math.abs(rows.get(i, column))) column = j;
    if (Math.abs(rows.get(i, column)) < 1e-9) {
      // coefficients are 1/2 and 1: what is left below 1e-9 is rounding, so the rule repeats earlier ones
      if (Math.abs(right[i]!) > 1e-9) contradicted.push({ id: rules[i]!.id, by: right[i]! });
      continue;
    }
    const size = rows.get(i, column);
    rows.mulRow(i, 1 / size);
    right[i] = right[i]! / size;
    const pivot = { row: i, column };
    for (const earlier of pivots) eliminate(rows, right, earlier.row, pivot);
    pivots.push(pivot);
  }
  const bound = new Map(pivots.map((pivot) => [pivot.column, pivot.row]));
  const free = Array.from({ length: n }, (_, j) => j).filter((j) => !bound.has(j));
  const basis = Matrix.zeros(n, free.length);
  free.forEach((j, k) => {
    basis.set(j, k, 1);
    for (const [column, row] of bound) basis.set(column, k, -rows.get(row, j));
  });
  const particular = Array.from({ length: n }, (_, j) => (bound.has(j) ? right[bound.get(j)!]! : 0));
  return { basis, particular, contradicted };
}

function eliminate(rows: Matrix, right: number[], i: number, pivot: { row: number; column: number }): void {
  const factor = rows.get(i, pivot.column);
  if (factor === 0) return;
  for (let j = 0; j < rows.columns; j += 1) rows.set(i, j, rows.get(i, j) - factor * rows.get(pivot.row, j));
  right[i] = right[i]! - factor * right[pivot.row]!;
}
