/**
 * Several sets of primaries to choose from: what the shop weighs of each, and which is beaten by another in all of it.
 *
 * One set is beaten where another has as much room, passes no more inlets over, has no more bends, turning, welds and
 * mass, and is better in one of them (the order of Pareto). Those that are not come first, of them those in rotation,
 * of them those with fewer bends.
 */
import type { RouteSolution } from '../gaspath/route/problem.ts';
import { ROTATION_WORK } from '../gaspath/route/search.ts';
import type { Kilogram, Metre, Radian } from '../units/quantity.ts';
import type { ProblemPut } from './primaries-problem.ts';
import { type PrimariesSet, primariesSet } from './primaries-set.ts';

export interface Weighed {
  /** Least room beyond what was asked; undefined where nothing is near. */
  readonly spare?: Metre;
  /** Inlets that are passed over in a round of the firing order; none in rotation. */
  readonly passed: number;
  readonly bends: number;
  readonly turned: Radian;
  /** Along the pipes, one at each seam, flange and collector. */
  readonly welds: number;
  readonly mass: Kilogram;
}

export interface RankedSet extends Weighed {
  readonly beaten: boolean;
  readonly set: PrimariesSet;
  readonly solution: RouteSolution;
}

/** Less than this is no difference to anybody: a tenth of a millimetre, a degree, ten grams. */
const ALIKE = { spare: 1e-4, turned: Math.PI / 180, mass: 0.01 } as const;

/** What is to be said of a set that is not in rotation. */
export const passedWords = (passed: number): string =>
  `Not in rotation: in a round of the firing order ${passed} ${
    passed === 1 ? 'inlet is' : 'inlets are'
  } passed over, where a pulse enters farther on than beside the one before it. Such an order is taken only after ${ROTATION_WORK} tries of those in rotation.`;

export function rankedSets(
  { problem, cylinders }: Extract<ProblemPut, { reached: true }>,
  solutions: readonly RouteSolution[],
): readonly RankedSet[] {
  return ranked(solutions.map((solution) => ({ solution, set: primariesSet(problem, cylinders, solution) })));
}

export function ranked(sets: readonly Pick<RankedSet, 'set' | 'solution'>[]): readonly RankedSet[] {
  const all = sets.map((each) => ({ ...each, ...weighed(each.set) }));
  return all
    .map((each) => ({ ...each, beaten: all.some((other) => beats(other, each)) }))
    .sort(
      (a, b) =>
        Number(a.beaten) - Number(b.beaten) ||
        a.passed - b.passed ||
        a.bends - b.bends ||
        (b.spare ?? 1) - (a.spare ?? 1),
    );
}

function weighed({ pipes, spare, mass, passed }: PrimariesSet): Weighed {
  const sum = (of: (pipe: PrimariesSet['pipes'][number]) => number): number =>
    pipes.reduce((all, pipe) => all + of(pipe), 0);
  return {
    ...(spare === undefined ? {} : { spare }),
    passed,
    bends: sum((pipe) => pipe.bends),
    turned: sum((pipe) => pipe.turned),
    welds: sum((pipe) => pipe.seams.length + 2),
    mass,
  };
}

/** Whether one is at least as good in all that is weighed, and better in something. */
export function beats(one: Weighed, other: Weighed): boolean {
  // by how much the one is better, in what counts as a difference
  const better = [
    ((one.spare ?? 1) - (other.spare ?? 1)) / ALIKE.spare,
    other.passed - one.passed,
    other.bends - one.bends,
    (other.turned - one.turned) / ALIKE.turned,
    other.welds - one.welds,
    (other.mass - one.mass) / ALIKE.mass,
  ];
  return better.every((by) => by > -1) && better.some((by) => by >= 1);
}
