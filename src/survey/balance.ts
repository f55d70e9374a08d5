/**
 * The balance itself: Gauss–Newton rounds over all points and frames until nothing moves.
 *
 * In    a survey whose points all have a first place; ids of readings left out
 * Out   the settled state, the weighted equations, the cofactors, the directions nothing holds
 *
 * Numbers SU-… are those of docs/theory/survey.md.
 */
import { Matrix } from 'ml-matrix';
import { type LinearFit, linearFit } from '../maths/linear-fit.ts';
import { productSkippingZeros } from '../maths/sparse-product.ts';
import type { Vec3 } from '../maths/vec3.ts';
import { type Equation, equationOfRule, equationsOf, type State } from './equations.ts';
import { type AdjustedPoint, datumId, type Survey } from './network.ts';
import {
  type ExactRules,
  jacobian,
  stepped,
  type Unknowns,
  unknownsOf,
  withoutExactRules,
} from './unknowns.ts';

export interface Undetermined {
  readonly point: string;
  /** Unit vector along which the point is free. */
  readonly direction: Vec3;
  /** Other points that move with it. */
  readonly together: readonly string[];
}

export interface Balance {
  readonly state: State;
  readonly unknowns: Unknowns;
  readonly equations: readonly Equation[];
  /** Rows divided by u, exact rules taken out. */
  readonly weighted: Matrix;
  readonly fit: LinearFit;
  readonly basis: Matrix;
  /** Weighted sum of squared residuals. */
  readonly chiSquare: number;
  readonly freedom: number;
  readonly undetermined: readonly Undetermined[];
  readonly contradicted: ExactRules['contradicted'];
  readonly rounds: number;
}

/** The rounds did not come to rest: the readings fit no arrangement, or the first places were too far off. */
export class AdjustmentDidNotSettle extends Error {
  readonly rounds: number;
  readonly lastStep: number;
  readonly chiSquare: number;
  constructor(facts: { rounds: number; lastStep: number; chiSquare: number }) {
    super(
      `the adjustment did not settle in ${facts.rounds} rounds: last step ${facts.lastStep.toExponential(1)} m, ` +
        `weighted squares ${facts.chiSquare.toExponential(2)}`,
    );
    this.rounds = facts.rounds;
    this.lastStep = facts.lastStep;
    this.chiSquare = facts.chiSquare;
  }
}

const MOST_ROUNDS = 60;
/** A step below this, m and rad, changes no digit anyone reads. */
const SETTLED = 1e-10;

export function balance(survey: Survey, from: State, leftOut: ReadonlySet<string> = new Set()): Balance {
  const unknowns = unknownsOf([...from.points.keys()], [...from.frames.keys()]);
  const exact = survey.datum.filter((rule) => rule.u === undefined);
  const soft = survey.datum.filter((rule) => rule.u !== undefined && !leftOut.has(datumId(rule)));
  const readings = survey.readings.filter((r) => !leftOut.has(r.id));
  const equationsAt = (state: State): readonly Equation[] => [
    ...readings.flatMap((r) => equationsOf(r, state)),
    ...soft.map((rule) => equationOfRule(rule, state)),
  ];
  const rules = withoutExactRules(
    exact.map((rule) => equationOfRule(rule, from)),
    unknowns,
  );
  let state = stepped(from, unknowns, rules.particular);
  let equations = equationsAt(state);
  let chiSquare = squares(equations);
  let lastStep = Number.POSITIVE_INFINITY;
  let rounds = 0;
  let weighted = productSkippingZeros(rows(equations, unknowns), rules.basis);
  let fit = linearFit(weighted, offs(equations));
  while (lastStep > SETTLED) {
    if (rounds >= MOST_ROUNDS || !Number.isFinite(chiSquare)) {
      throw new AdjustmentDidNotSettle({ rounds, lastStep, chiSquare });
    }
    rounds += 1;
    const step = rules.basis.mmul(Matrix.columnVector([...fit.x])).to1DArray();
    let share = 1;
    let next = stepped(state, unknowns, step);
    let nextEquations = equationsAt(next);
    let nextSquares = squares(nextEquations);
    // half the step while it makes things worse; the small allowance lets rounding pass
    while (nextSquares > chiSquare * (1 + 1e-9) + 1e-9 && share > 1e-3) {
      share /= 2;
      next = stepped(
        state,
        unknowns,
        step.map((v) => share * v),
      );
      nextEquations = equationsAt(next);
      nextSquares = squares(nextEquations);
    }
    lastStep = share * Math.max(0, ...step.map(Math.abs));
    state = next;
    equations = nextEquations;
    chiSquare = nextSquares;
    weighted = productSkippingZeros(rows(equations, unknowns), rules.basis);
    fit = linearFit(weighted, offs(equations));
  }
  return {
    state,
    unknowns,
    equations,
    weighted,
    fit,
    basis: rules.basis,
    chiSquare,
    freedom: equations.length - fit.rank,
    undetermined: undeterminedPoints(fit, rules.basis, unknowns),
    contradicted: rules.contradicted,
    rounds,
  };
}

const squares = (equations: readonly Equation[]): number =>
  equations.reduce((sum, e) => sum + ((e.read - e.computed) / e.u) ** 2, 0);

const offs = (equations: readonly Equation[]): readonly number[] =>
  equations.map((e) => (e.read - e.computed) / e.u);

function rows(equations: readonly Equation[], unknowns: Unknowns): Matrix {
  const A = jacobian(equations, unknowns);
  equations.forEach((e, i) => {
    A.mulRow(i, 1 / e.u);
  });
  return A;
}

function undeterminedPoints(fit: LinearFit, basis: Matrix, unknowns: Unknowns): readonly Undetermined[] {
  const loose = fit.undetermined.map((y) => {
    const x = basis.mmul(Matrix.columnVector([...y])).to1DArray();
    const most = Math.max(...x.map(Math.abs));
    return x.map((v) => (Math.abs(v) > 1e-6 * most ? v / most : 0));
  });
  const movedBy = (x: readonly number[], j: number): Vec3 => [x[j]!, x[j + 1]!, x[j + 2]!];
  return [...unknowns.pointAt].flatMap(([point, j]) => {
    const x = loose.find((each) => Math.hypot(...movedBy(each, j)) > 0);
    if (x === undefined) return [];
    const v = movedBy(x, j);
    const size = Math.hypot(...v);
    const together = [...unknowns.pointAt].flatMap(([name, k]) =>
      name !== point && Math.hypot(...movedBy(x, k)) > 0 ? [name] : [],
    );
    return [{ point, direction: [v[0] / size, v[1] / size, v[2] / size], together } satisfies Undetermined];
  });
}

export interface Outlook {
  readonly points: readonly AdjustedPoint[];
  readonly covariance: readonly (readonly number[])[];
  readonly gain: readonly (readonly number[])[];
  readonly gainColumns: readonly { readonly id: string; readonly component: string; readonly u: number }[];
  readonly rounds: number;
}

/** What the balance says of the points it determines: places, covariance, and the share of each reading. */
export function outlook(settled: Balance): Outlook {
  const free = new Set(settled.undetermined.map((each) => each.point));
  const names = [...settled.unknowns.pointAt.keys()].filter((name) => !free.has(name));
  const lines = names.flatMap((name) => [0, 1, 2].map((k) => settled.unknowns.pointAt.get(name)! + k));
  const columns = Array.from({ length: settled.basis.columns }, (_, j) => j);
  const B =
    lines.length > 0 ? settled.basis.subMatrix(0, settled.basis.rows - 1, 0, columns.length - 1) : undefined;
  const picked = B === undefined ? Matrix.zeros(0, 0) : new Matrix(lines.map((i) => B.getRow(i)));
  const spread = lines.length === 0 ? picked : productSkippingZeros(picked, settled.fit.cofactor());
  const covariance = lines.length === 0 ? [] : productSkippingZeros(picked, spread.transpose()).to2DArray(); // SU-12
  const gain =
    lines.length === 0
      ? []
      : productSkippingZeros(settled.weighted, spread.transpose()).transpose().to2DArray(); // SU-13, per u
  const us = settled.equations.map((e) => e.u);
  return {
    points: names.map((name, k) => {
      const block = [0, 1, 2].map((i) => [0, 1, 2].map((j) => covariance[3 * k + i]![3 * k + j]!));
      const u = (i: number): number => Math.sqrt(Math.max(0, block[i]![i]!));
      return { name, at: settled.state.points.get(name)!, u: [u(0), u(1), u(2)], covariance: block };
    }),
    covariance,
    gain: gain.map((line) => line.map((value, j) => value / us[j]!)),
    gainColumns: settled.equations.map((e) => ({ id: e.id, component: e.component, u: e.u })),
    rounds: settled.rounds,
  };
}
