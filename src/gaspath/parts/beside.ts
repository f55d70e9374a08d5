/**
 * What a part must stay clear of in the parts beside it, as solids that the finder of one part knows.
 *
 * A pipe is a chain of capsules along its middle: a bend is cut into chords, and what the chord lies inside the arc
 * (its sag) is added to the radius, so that the chain holds the pipe wholly. What is asked between pipes is asked by a
 * radius that is larger, or smaller, than the pipe's by what it differs from what is asked of solids.  [RT-23]
 */
import type { Round, RouteProblem, RouteSolution, Solid } from '../route/problem.ts';
import { laidOut } from '../verify/read.ts';
import { sizesAlong } from '../verify/sizes.ts';
import { pointOn, type Walked } from '../verify/walk.ts';
import { bodyOf, type Part, type SetOf } from './part.ts';

/** Largest sag of a chord, mm. */
const SAG = 0.04;

/** The middle of a pipe between two lengths as chords, and the most that the middle lies beside them, mm. */
export function chordsOf(
  path: Walked,
  from = 0,
  to = path.length,
): readonly { readonly a: Round['a']; readonly b: Round['b']; readonly sag: number }[] {
  return path.pieces.flatMap((piece) => {
    const [s0, s1] = [Math.max(from, piece.from), Math.min(to, piece.to)];
    if (s0 >= s1) return [];
    const { radius: R } = piece;
    const isStraight = piece.kind === 'straight' || R === 0;
    const angle = isStraight ? 0 : (s1 - s0) / R;
    const steps = isStraight ? 1 : Math.ceil(angle / (2 * Math.acos(Math.max(0, 1 - SAG / R))));
    const sag = R * (1 - Math.cos(angle / steps / 2));
    const at = (k: number) => pointOn(piece, s0 + (k / steps) * (s1 - s0));
    return Array.from({ length: steps }, (_, k) => ({ a: at(k), b: at(k + 1), sag }));
  });
}

/** One part's pipes and collector as another part has to stay clear of them. */
export function solidsOf(part: Part, set: RouteSolution, { clearance }: RouteProblem): Round[] {
  const { problem, pipes } = part;
  const more = clearance.pipe - clearance.solid;
  return [
    ...laidOut(set).flatMap(({ pipe, path }) =>
      sizesAlong(problem.tube, pipe, path.length).flatMap(({ from, to, radius }) =>
        chordsOf(path, from, to).map(
          ({ a, b, sag }): Round => ({
            kind: 'capsule',
            name: pipes[pipe.port]!,
            a,
            b,
            r: radius + sag + more,
            // from collector to pipe what is asked of solids is asked
            bodyGap: clearance.solid - more,
          }),
        ),
      ),
    ),
    bodySolid(part, set.collector, clearance),
  ];
}

const bodySolid = (
  { collector: name, problem }: Part,
  pose: RouteSolution['collector'],
  { solid }: RouteProblem['clearance'],
): Round => ({ kind: 'cylinder', name, ...bodyOf(problem, pose), bodyGap: solid });

/** A part's problem among the parts that stand, and the collectors that are fixed and are still to come. */
export function amongOthers(
  parts: readonly Part[],
  at: number,
  own: RouteProblem,
  setOf: SetOf,
): RouteProblem {
  const from = parts[at]!.from ?? [];
  const others = parts.flatMap((part, k): Solid[] => {
    if (k === at) return [];
    const set = setOf(k);
    if (set === undefined) {
      const { collector } = part.problem;
      return collector.mode === 'fixed' ? [bodySolid(part, collector, own.clearance)] : [];
    }
    const solids = solidsOf(part, set, own);
    const port = from.indexOf(k);
    // its own pipe leaves from that collector
    return port < 0 ? solids : [...solids.slice(0, -1), { ...solids.at(-1)!, leaves: port }];
  });
  return { ...own, solids: [...own.solids, ...others] };
}
