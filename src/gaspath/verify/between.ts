/**
 * Gaps between pipes and collectors of different parts, measured as the checker measures: every pipe walked by its own
 * elements, distances exact to a point, nothing missed along the pipe. Lengths mm.
 *
 * The collector's body is a drum. Of two drums a lower bound is told: from the axis of one to the other, less its
 * radius, so as if the one had round ends; of the two ways the larger.
 */
import { along, type Vec3 } from '../../maths/vec3.ts';
import type { RouteProblem, RouteSolution } from '../route/problem.ts';
import { toPath } from './gaps.ts';
import { leastBelow } from './least.ts';
import { outsideCylinder } from './obstacles.ts';
import { laidOut } from './read.ts';
import { atMouth, sizesAlong } from './sizes.ts';
import { SLACK } from './verify.ts';
import { pointAt } from './walk.ts';

/** A set in its part, as it stands beside others. */
export interface StandingPart {
  readonly problem: RouteProblem;
  readonly solution: RouteSolution;
  /** The port whose pipe leaves from the other's collector, by the other's place in the list. */
  readonly leaves: (other: number) => number | undefined;
}

export interface Between {
  /** Place of the part in the list, and port of its pipe; undefined where it is its collector. */
  readonly part: number;
  readonly pipe?: number;
  readonly other: number;
  readonly otherPipe?: number;
  /** Metal to metal. */
  readonly gap: number;
  readonly asked: number;
  /** On the middle of the pipe, or on the collector's axis. */
  readonly at: Vec3;
}

/** The least gap of each pipe and collector to each of the other parts, where it is less than asked and so much more. */
export function betweenParts(parts: readonly StandingPart[], look = 0): readonly Between[] {
  return parts.flatMap((one, i) =>
    parts.slice(i + 1).flatMap((two, k) => betweenTwo([one, i], [two, i + 1 + k], look)),
  );
}

type At = readonly [StandingPart, number];

interface Drum {
  readonly origin: Vec3;
  readonly axis: Vec3;
  readonly length: number;
  readonly radius: number;
}

function drumOf({ problem, solution: { collector } }: StandingPart): Drum {
  const { collectorBody, tube } = problem;
  return {
    origin: collector.origin,
    axis: collector.axis,
    length: collectorBody.length,
    radius: problem.collector.ringRadius + atMouth(tube) / 2 + collectorBody.radiusAdd,
  };
}

function betweenTwo([one, i]: At, [two, j]: At, look: number): readonly Between[] {
  const found: Between[] = [];
  const [laid, others] = [laidOut(one.solution), laidOut(two.solution)];
  const asked = Math.max(one.problem.clearance.pipe, two.problem.clearance.pipe);
  for (const { pipe, path } of laid) {
    for (const other of others) {
      const pair = { part: i, pipe: pipe.port, other: j, otherPipe: other.pipe.port };
      const nears = sizesAlong(one.problem.tube, pipe, path.length).flatMap((mine) =>
        sizesAlong(two.problem.tube, other.pipe, other.path.length).map((its) =>
          leastBelow(
            (s) => toPath(pointAt(path, s), other.path, its.from, its.to) - mine.radius - its.radius,
            mine.from,
            mine.to,
            asked + look - SLACK,
          ),
        ),
      );
      const near = leastOf(nears);
      if (near === undefined) continue;
      found.push({ ...pair, gap: near.value, asked, at: pointAt(path, near.s) });
    }
  }
  const solid = Math.max(one.problem.clearance.solid, two.problem.clearance.solid);
  found.push(...toDrum([one, i], [two, j], solid, look), ...toDrum([two, j], [one, i], solid, look));
  const apart = drumsApart(drumOf(one), drumOf(two), solid + look - SLACK);
  if (apart !== undefined) found.push({ part: i, other: j, asked: solid, ...apart });
  return found;
}

/** Pipes of one part to the collector of the other. */
function toDrum([of, i]: At, [to, j]: At, asked: number, look: number): Between[] {
  const { origin, axis, length, radius } = drumOf(to);
  const leaving = of.leaves(j);
  return laidOut(of.solution).flatMap(({ pipe, path }): Between[] => {
    const from = pipe.port === leaving ? of.problem.clearance.flangeZone : 0;
    const near = leastOf(
      sizesAlong(of.problem.tube, pipe, path.length).map((size) =>
        leastBelow(
          (s) => outsideCylinder(pointAt(path, s), origin, axis, length, radius) - size.radius,
          Math.max(from, size.from),
          size.to,
          asked + look - SLACK,
        ),
      ),
    );
    if (near === undefined) return [];
    return [{ part: i, pipe: pipe.port, other: j, gap: near.value, asked, at: pointAt(path, near.s) }];
  });
}

type Near = ReturnType<typeof leastBelow>;

const leastOf = (nears: readonly Near[]): Near =>
  nears.reduce((a, b) => (a === undefined || (b !== undefined && b.value < a.value) ? b : a), undefined);

function drumsApart(one: Drum, two: Drum, below: number): { gap: number; at: Vec3 } | undefined {
  const way = (a: Drum, b: Drum) => {
    const near = leastBelow(
      (s) => outsideCylinder(along(a.origin, a.axis, s), b.origin, b.axis, b.length, b.radius) - a.radius,
      0,
      a.length,
      below,
    );
    return near === undefined ? undefined : { gap: near.value, at: along(a.origin, a.axis, near.s) };
  };
  const [there, back] = [way(one, two), way(two, one)];
  // each is a lower bound: where one says that they are apart they are
  if (there === undefined || back === undefined) return undefined;
  return there.gap > back.gap ? there : back;
}
