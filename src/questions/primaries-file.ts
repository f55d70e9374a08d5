/** A found set as a file: the exchange form of solutions, read back with what is wrong told. */
import { SOLUTION_FORMAT, solutionJson } from '../gaspath/route/exchange.ts';
import type { RouteSolution } from '../gaspath/route/problem.ts';
import { readSolution } from '../gaspath/verify/read.ts';

export const writePrimaries = (solution: RouteSolution): string =>
  `${JSON.stringify(solutionJson(solution), null, 1)}\n`;

export type PrimariesRead =
  | { readonly ok: true; readonly solution: RouteSolution }
  | { readonly ok: false; readonly message: string };

export function readPrimaries(text: string): PrimariesRead {
  let plain: unknown;
  try {
    plain = JSON.parse(text);
  } catch {
    return {
      ok: false,
      message: `The file is no JSON; a set of primaries begins with "${SOLUTION_FORMAT}".`,
    };
  }
  const read = readSolution(plain);
  if (typeof read === 'string') return { ok: false, message: `The file is no set of primaries: ${read}.` };
  // whoever reads a set checks it against its problem; the form is what is told here
  return { ok: true, solution: plain as RouteSolution };
}
