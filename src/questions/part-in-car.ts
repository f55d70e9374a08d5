/**
 * The set of a part in its car, the other parts beside it: hot beside cold, its nuts, the way it comes off.
 *
 * In    sets of all parts, which of them, the scans as they lie in the car
 * Out   the three statements of one bank; undefined of secondaries, which stand on no head: they are not reckoned hot,
 *       have no nuts there, and come off before anything else
 */

import { walkThrough } from '../gaspath/hot/hot-walk.ts';
import { chordsOf } from '../gaspath/parts/beside.ts';
import { bodyOf } from '../gaspath/parts/part.ts';
import type { Pose, Round, Solid } from '../gaspath/route/problem.ts';
import { laidOut } from '../gaspath/verify/read.ts';
import { thickest } from '../gaspath/verify/sizes.ts';
import type { Walked } from '../gaspath/verify/walk.ts';
import { add, scale } from '../maths/vec3.ts';
import { collectorName, pipeName } from './part-words.ts';
import { type Holdable, heldByFile } from './primaries-holding.ts';
import { type BesideHot, grownSet, hotPose, isKeptHot, primariesHot } from './primaries-hot.ts';
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
  const others = sets.filter((_, k) => k !== at);
  // what hangs behind its collector is taken off before it
  const staying = others.filter((each) => each.part.stage === 'primaries' || each.part.side !== side);
  return {
    beside: { cold: others.flatMap(coldSolids), hot: others.flatMap(hotSolids) },
    staying: staying.flatMap(coldSolids),
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
    laidOut(of.solution).map(({ pipe, path }) => [pipeName(of.part, of.put.cylinders[pipe.port]!), path] as const),
    of.solution.collector,
    1,
  );

/** Secondaries are taken where they lie cold: what moves them is not reckoned. */
function hotSolids(of: PartSet): Solid[] {
  const { part, set, solution } = of;
  if (part.stage !== 'primaries') return coldSolids(of);
  const { grown, wider } = grownSet(part.car, part.side, set);
  const paths = grown.lines.map(({ points }, port) => {
    const lies = points.map(({ cold, shift }) => scale(add(cold, shift), MM));
    return [pipeName(of.part, of.put.cylinders[port]!), walkThrough(lies)] as const;
  });
  const pose = hotPose(solution.collector, grown.collector.shift, grown.collector.turnVector);
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
    sets.flatMap((each, k) => (k === at ? [] : each.put.cylinders.map((cylinder) => pipeName(each.part, cylinder)))),
  );
  const gaps = hot.gaps.map((each) => (pipes.has(each.against) ? { ...each, asked, askedCold } : each));
  const spare = (gap: (typeof gaps)[number]): number => (gap.hot ?? Infinity) - gap.asked;
  return {
    ...hot,
    gaps: gaps.sort((a, b) => spare(a) - spare(b)),
    holds: gaps.every(isKeptHot),
  };
}
