/**
 * The set of a part in its car, the other parts beside it: hot beside cold, its nuts, the way it comes off.
 *
 * In    sets of all parts, which of them, the scans as they lie in the car
 * Out   the three statements of one bank; of secondaries and tail, which stand on no head, how they lie hot alone:
 *       they have no nuts there, and come off before anything else
 */

import type { StartMoves } from '../gaspath/hot/hot-set.ts';
import { walkThrough } from '../gaspath/hot/hot-walk.ts';
import { chordsOf } from '../gaspath/parts/beside.ts';
import { bodyOf } from '../gaspath/parts/part.ts';
import type { Pose, Round, Solid } from '../gaspath/route/problem.ts';
import { laidOut } from '../gaspath/verify/read.ts';
import { thickest } from '../gaspath/verify/sizes.ts';
import type { Walked } from '../gaspath/verify/walk.ts';
import { add, cross, scale } from '../maths/vec3.ts';
import { collectorName, partWords, pipeName } from './part-words.ts';
import { type Holdable, heldByFile } from './primaries-holding.ts';
import {
  type BesideHot,
  grownSet,
  hotPose,
  isKeptHot,
  type PrimariesHot,
  primariesHot,
} from './primaries-hot.ts';
import type { PrimariesInCar } from './primaries-in-car.ts';
import { primariesNuts } from './primaries-nuts.ts';
import type { PartSet } from './primaries-parts.ts';
import { primariesProblem, type ScanInCar } from './primaries-problem.ts';
import { primariesRemoval } from './primaries-removal.ts';
import { slipsOf } from './primaries-slip.ts';

const MM = 1000;

export function partInCar(
  sets: readonly PartSet[],
  at: number,
  scans: readonly ScanInCar[],
  kinds?: readonly Holdable[],
): PrimariesInCar | undefined {
  const { part, put, set, solution } = sets[at]!;
  if (part.stage !== 'primaries') return undefined;
  const { car, side } = part;
  const work = primariesProblem(car, side, scans, 'work');
  if (!work.reached) return undefined;
  const { beside, staying } = besidePart(sets, at);
  const hot = primariesHot(car, side, put, { set, solution }, beside);
  // a mirrored set begins where it was made to, not at the ports as measured
  const problem = { ...work.problem, ports: put.problem.ports };
  const worked = {
    ...work,
    problem: { ...problem, solids: [...problem.solids, ...staying] },
  };
  const slips = slipsOf(car, side, put.problem);
  return {
    kinds: kinds ?? heldByFile(car, side),
    hot: askedOfPipes(hot, sets, at),
    nuts: primariesNuts(car, worked, solution),
    removal: primariesRemoval(car, side, worked, solution),
    ...(slips === undefined ? {} : { slip: { needs: slips.least(hot), lacks: slips.lacks(solution, hot) } }),
  };
}

/** The other parts as a part has them beside it. */
export function besidePart(
  sets: readonly PartSet[],
  at: number,
): { readonly beside: BesideHot; readonly staying: readonly Solid[] } {
  const { side } = sets[at]!.part;
  const before = beforeIt(sets, at) ?? [];
  /** Its pipe leaves from the collector before it. */
  const left = (solids: readonly Solid[], k: number): readonly Solid[] => {
    const port = before.indexOf(k);
    const body = solids.at(-1)!;
    return port < 0 || body.kind === 'box' ? solids : [...solids.slice(0, -1), { ...body, leaves: port }];
  };
  const others = sets.flatMap((_, k) => (k === at ? [] : [k]));
  // what hangs behind its collector is taken off before it
  const stays = ({ part }: PartSet): boolean => part.stage === 'primaries' || part.side !== side;
  return {
    beside: {
      cold: others.flatMap((k) => left(coldSolids(sets[k]!), k)),
      hot: others.flatMap((k) => left(hotSolids(sets, k), k)),
    },
    staying: others.flatMap((k) => (stays(sets[k]!) ? coldSolids(sets[k]!) : [])),
  };
}

/** Pipes and collector as they are, under the names that they have in the shop. */
function solidsOf(
  of: PartSet,
  paths: readonly (readonly [name: string, path: Walked])[],
  pose: Pose,
  wider: number,
): Solid[] {
  const { problem } = of.put;
  const half = (thickest(problem.tube) / 2) * wider;
  return [
    ...paths.flatMap(([name, path]) =>
      chordsOf(path).map(({ a, b, sag }): Round => ({ kind: 'capsule', name, a, b, r: half + sag })),
    ),
    { kind: 'cylinder', name: collectorName(of.part), ...bodyOf(problem, pose) },
  ];
}

const coldSolids = (of: PartSet): Solid[] =>
  solidsOf(
    of,
    laidOut(of.solution).map(
      ({ pipe, path }) => [pipeName(of.part, of.put.cylinders[pipe.port]!), path] as const,
    ),
    of.solution.collector,
    1,
  );

/** How a part lies hot; one behind others begins where their collectors have moved to. */
function grownPart(sets: readonly PartSet[], at: number): ReturnType<typeof grownSet> {
  const { part, set } = sets[at]!;
  return grownSet(part.car, part.side, set, startsOf(sets, at));
}

/** How the outlets move at which its pipes begin; undefined of pipes that begin at the head.  [PW-38] */
function startsOf(sets: readonly PartSet[], at: number): readonly StartMoves[] | undefined {
  return beforeIt(sets, at)?.map((k) => {
    const { axis } = sets[k]!.set.collector;
    const { grown, wider } = grownPart(sets, k);
    const { shift, turnVector } = grown.collector;
    const arm = scale(axis, sets[k]!.put.problem.collectorBody.length / MM);
    return { shift: add(add(shift, cross(turnVector, arm)), scale(arm, wider - 1)), turn: turnVector };
  });
}

/** The parts at whose collectors its pipes begin, by their places among all. */
function beforeIt(sets: readonly PartSet[], at: number): readonly number[] | undefined {
  const { from, side } = sets[at]!.part;
  const first = sets.findIndex(({ part }) => part.side === side);
  return from?.map((k) => first + k);
}

/** Secondaries or a tail as they lie hot; undefined of primaries, of which `partInCar` tells it. */
export function partHot(sets: readonly PartSet[], at: number): PrimariesHot | undefined {
  const { part, put, set, solution } = sets[at]!;
  if (part.stage === 'primaries') return undefined;
  const { beside } = besidePart(sets, at);
  const hot = primariesHot(part.car, part.side, put, { set, solution }, beside, startsOf(sets, at));
  const { gaps, ...is } = askedOfPipes(hot, sets, at);
  return { ...is, gaps: gaps.map((gap) => ({ ...gap, against: partWords(part, gap.against) })) };
}

function hotSolids(sets: readonly PartSet[], at: number): Solid[] {
  const of = sets[at]!;
  const { grown, wider } = grownPart(sets, at);
  const paths = grown.lines.map(({ points }, port) => {
    const lies = points.map(({ cold, shift }) => scale(add(cold, shift), MM));
    return [pipeName(of.part, of.put.cylinders[port]!), walkThrough(lies)] as const;
  });
  const pose = hotPose(of.solution.collector, grown.collector.shift, grown.collector.turnVector);
  return solidsOf(of, paths, pose, wider);
}

/** Of the pipes of other parts is asked what is asked between pipes. */
export function askedOfPipes(
  hot: PrimariesInCar['hot'],
  sets: readonly PartSet[],
  at: number,
): PrimariesInCar['hot'] {
  const { car } = sets[at]!.part;
  const exhaust = car.form.exhaust!;
  const askedCold = exhaust.clearances.pipes;
  const asked = exhaust.hot?.pipes ?? askedCold;
  const pipes = new Set(
    sets.flatMap((each, k) =>
      k === at ? [] : each.put.cylinders.map((cylinder) => pipeName(each.part, cylinder)),
    ),
  );
  const gaps = hot.gaps.map((each) => (pipes.has(each.against) ? { ...each, asked, askedCold } : each));
  const spare = (gap: (typeof gaps)[number]): number => (gap.hot ?? Infinity) - gap.asked;
  return {
    ...hot,
    gaps: gaps.sort((a, b) => spare(a) - spare(b)),
    holds: gaps.every(isKeptHot),
  };
}
