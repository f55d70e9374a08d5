/**
 * The set of one part moved by hand, the other parts where they are.
 *
 * In    the parts as they were put, a set of each, which of them, what was done by hand before
 * Out   as `PrimariesByHand`; a collector at which another part begins is not moved
 */
import { amongOthers } from '../gaspath/parts/beside.ts';
import { ownProblem, type Part } from '../gaspath/parts/part.ts';
import type { RouteProblem, RouteSolution } from '../gaspath/route/problem.ts';
import { partWords } from './part-words.ts';
import type { PartPut } from './parts-put.ts';
import { type HandTold, PrimariesByHand, type SavedHand } from './primaries-by-hand.ts';
import type { TightPlace } from './primaries-set.ts';

export function partByHand(
  parts: readonly PartPut[],
  solutions: readonly RouteSolution[],
  at: number,
  saved?: SavedHand,
): PrimariesByHand {
  const gas = besideOne(parts, at);
  const setOf = (part: number): RouteSolution | undefined => solutions[part];
  const among = amongOthers(gas, at, ownProblem(gas, at, setOf)!, setOf);
  const isBegunAt = gas.some(({ from }) => from?.includes(at));
  const problem = isBegunAt ? stayed(among, solutions[at]!) : among;
  return new PrimariesByHand({ ...parts[at]!.put, problem }, solutions[at]!, saved);
}

/** Pipes of primaries under a name that those of what stands behind a collector, counted from 1 as well, do not have. */
const besideOne = (parts: readonly PartPut[], at: number): readonly Part[] =>
  parts.map(({ gas }, k) =>
    k === at || parts[at]!.part.stage === 'primaries'
      ? gas
      : { ...gas, pipes: gas.pipes.map((name) => name.replace(/^pipe of/, 'primary of')) },
  );

/** Its collector stays where it stands. */
const stayed = (problem: RouteProblem, { collector: pose }: RouteSolution): RouteProblem => {
  const { n, ringRadius, rows } = problem.collector;
  return {
    ...problem,
    collector: { mode: 'fixed', n, ringRadius, ...(rows === undefined ? {} : { rows }), ...pose },
  };
};

/** What a hand is told, under the names of the part; gaps to pipes of other parts as they are measured between parts. */
export function partHandTold(parts: readonly PartPut[], at: number, told: HandTold): HandTold {
  const { part, put } = parts[at]!;
  const { clearance } = put.problem;
  const others = new Set(besideOne(parts, at).flatMap(({ pipes }, k) => (k === at ? [] : pipes)));
  // pipes beside it are known to the finder of one part as solids, by so much thinner that pipes' gaps are asked of them
  const more = (clearance.pipe - clearance.solid) / 1000;
  const placed = <T extends TightPlace>(place: T): T => ({
    ...place,
    gap: others.has(place.against) ? place.gap + more : place.gap,
    against: partWords(part, place.against),
  });
  return {
    ...told,
    ...(told.tight === undefined ? {} : { tight: placed(told.tight) }),
    ...(told.stop === undefined ? {} : { stop: partWords(part, told.stop) }),
    set: {
      ...told.set,
      pipes: told.set.pipes.map((each) =>
        each.tightest === undefined ? each : { ...each, tightest: placed(each.tightest) },
      ),
    },
  };
}
