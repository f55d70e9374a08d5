/**
 * Sets of several parts beside each other: each as people look at one, checked by itself and against all the others.
 *
 * In    the parts as they were put, a set of each
 * Out   a set of each with its tightest place, whichever part that is against, and what is breached
 */
import { standing } from '../gaspath/parts/standing.ts';
import type { RouteSolution } from '../gaspath/route/problem.ts';
import { type Between, betweenParts } from '../gaspath/verify/between.ts';
import { LOOK } from '../gaspath/verify/nearest.ts';
import { SLACK } from '../gaspath/verify/verify.ts';
import { scale } from '../maths/vec3.ts';
import { partWords, setOfPart } from './part-words.ts';
import type { CarPart } from './parts-of-car.ts';
import type { PartPut, Put } from './parts-put.ts';
import { type PrimariesSet, primariesSet, type TightPlace } from './primaries-set.ts';

/** The set of one part. */
export interface PartSet {
  readonly part: CarPart;
  /** With the ports where they are: those of secondaries at the outlets of the collectors before them. */
  readonly put: Put;
  readonly set: PrimariesSet;
  readonly solution: RouteSolution;
}

const MM = 1000;

/** @param solutions  one of each part, in the order of the parts */
export function partSets(parts: readonly PartPut[], solutions: readonly RouteSolution[]): readonly PartSet[] {
  const gas = parts.map((each) => each.gas);
  const stand = standing(gas, solutions);
  const near = betweenParts(stand, LOOK);
  return parts.map(({ part, put }, k): PartSet => {
    const { problem, solution } = stand[k]!;
    const alone = setOfPart(part, primariesSet(problem, put.cylinders, solution));
    const own = near.flatMap((each) => ofPart(each, k, gas));
    return { part, put: { ...put, problem }, solution, set: amongParts(part, alone, own) };
  });
}

/** A gap to another part as the one part sees it. */
interface Beside {
  /** Port of the pipe; undefined where it is the collector. */
  readonly pipe: number | undefined;
  readonly place: TightPlace;
}

function ofPart(between: Between, part: number, gas: readonly PartPut['gas'][]): Beside[] {
  const { gap, asked, at } = between;
  const seen = (pipe: number | undefined, other: number, otherPipe: number | undefined): Beside[] => [
    {
      pipe,
      place: {
        against: otherPipe === undefined ? gas[other]!.collector : gas[other]!.pipes[otherPipe]!,
        gap: gap / MM,
        spare: (gap - asked) / MM,
        at: scale(at, 1 / MM),
      },
    },
  ];
  if (between.part === part) return seen(between.pipe, between.other, between.otherPipe);
  if (between.other === part) return seen(between.otherPipe, between.part, between.pipe);
  return [];
}

function amongParts(part: CarPart, set: PrimariesSet, beside: readonly Beside[]): PrimariesSet {
  const portOf = new Map(set.pipes.map(({ cylinder }, k) => [cylinder, k]));
  const pipes = set.pipes.map((pipe) => {
    const least = beside
      .filter((each) => each.pipe === portOf.get(pipe.cylinder))
      .map((each) => each.place)
      .reduce<TightPlace | undefined>(
        (a, b) => (a === undefined || b.spare < a.spare ? b : a),
        pipe.tightest,
      );
    return least === undefined ? pipe : { ...pipe, tightest: least };
  });
  const spares = [...(set.spare === undefined ? [] : [set.spare]), ...beside.map((each) => each.place.spare)];
  const spare = spares.length === 0 ? undefined : Math.min(...spares);
  const breaches = beside
    .filter((each) => each.place.spare < -SLACK / MM)
    .map(({ pipe, place }) => {
      const whose =
        pipe === undefined ? 'Its collector' : partWords(part, `Cylinder ${set.pipes[pipe]!.cylinder}`);
      const has = (place.gap * MM).toFixed(1);
      return `${whose}: ${has} mm from ${place.against}; ${((place.gap - place.spare) * MM).toFixed(1)} mm is asked.`;
    });
  return {
    ...set,
    pipes,
    ...(spare === undefined ? {} : { spare }),
    breaches: [...set.breaches, ...breaches],
  };
}
