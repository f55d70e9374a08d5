/** Sets of several parts as they stand beside each other: each checked by itself, and all of them against each other. */
import { solutionJson } from '../route/exchange.ts';
import type { RouteSolution } from '../route/problem.ts';
import { type Between, betweenParts, type StandingPart } from '../verify/between.ts';
import { type SolutionBreach, verify } from '../verify/verify.ts';
import { ownProblem, type Part, portFrom } from './part.ts';

/** @throws Error where a set is missing that another begins at: whoever asks has all of them */
export const standing = (
  parts: readonly Part[],
  solutions: readonly RouteSolution[],
): readonly StandingPart[] =>
  parts.map(({ name }, k) => {
    const problem = ownProblem(parts, k, (at) => solutions[at]);
    if (problem === undefined) throw new Error(`No set of the part at which ${name} begins.`);
    return { problem, solution: solutions[k]!, leaves: (other) => portFrom(parts, k, other) };
  });

export interface PartsBreaches {
  /** Of each part by itself, in the order of the parts. */
  readonly own: readonly (readonly SolutionBreach[])[];
  readonly between: readonly Between[];
}

export function verifyParts(parts: readonly Part[], solutions: readonly RouteSolution[]): PartsBreaches {
  const stand = standing(parts, solutions);
  return {
    own: stand.map(({ problem, solution }) => verify(problem, solutionJson(solution))),
    between: betweenParts(stand),
  };
}
