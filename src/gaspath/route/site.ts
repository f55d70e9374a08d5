/** A problem made ready for the search: what every pipe must keep away from, and by how much. */
import { ShellField } from './field.ts';
import { inletPlaces, leastPitch } from './inlets.ts';
import { type RouteProblem, SELF_SEPARATION } from './problem.ts';
import { type ReadySolid, ready } from './solids.ts';
import { type ReadyStep, readySteps } from './steps.ts';

export interface Site {
  readonly problem: RouteProblem;
  readonly field: ShellField;
  readonly solids: readonly ReadySolid[];
  /** Centre line to skin, mm. */
  readonly needShell: number;
  readonly needSolid: number;
  /** Centre line to centre line, mm. */
  readonly needPipe: number;
  readonly needInZone: number;
  readonly needSelf: number;
  readonly bodyRadius: number;
  /** Of each inlet, along the collector's `ref` and across. */
  readonly inlets: Float64Array;
  /** Between neighbouring inlets. */
  readonly pitch: number;
  readonly zone: number;
  readonly maxBend: number;
  /** Of all sizes, least first. */
  readonly radii: readonly number[];
  /** Steps of the tube; what is needed above is that of the tube at the flange. */
  readonly steps: readonly ReadyStep[];
  readonly radiiAtFlange: readonly number[];
  /** What the thickest tube, and the one at the collector, have in radius beyond that at the flange, mm. */
  readonly mostMore: number;
  readonly moreAtMouth: number;
  /** Points of a pipe nearer than this along it are not held apart, mm. */
  readonly selfApart: number;
}

/** @param like  a site of the same shell, kept as far off in the same bounds: its field serves again */
export function siteOf(problem: RouteProblem, like?: Site): Site {
  const { tube, clearance, collector, collectorBody, limits } = problem;
  const steps = readySteps(problem);
  const risen = (radii: readonly number[]): number[] => [...new Set(radii)].sort((a, b) => a - b);
  const mostMore = Math.max(0, ...steps.map(({ more }) => more));
  const moreAtMouth = steps.at(-1)?.more ?? 0;
  return {
    problem,
    field: serves(like, problem) ? like.field : new ShellField(problem),
    solids: problem.solids.map((each, k) => ready(each, k, clearance.solid)),
    needShell: tube.od / 2 + clearance.shell,
    needSolid: tube.od / 2 + clearance.solid,
    needPipe: tube.od + clearance.pipe,
    needInZone: tube.od + clearance.pipeInZone,
    needSelf: tube.od + clearance.self,
    inlets: inletPlaces(collector),
    pitch: leastPitch(collector),
    bodyRadius: collector.ringRadius + tube.od / 2 + moreAtMouth + collectorBody.radiusAdd,
    zone: clearance.collectorZone,
    maxBend: (limits.maxBendDeg * Math.PI) / 180,
    radii: risen([...problem.radii, ...steps.flatMap(({ radii }) => radii)]),
    steps,
    radiiAtFlange: risen(problem.radii),
    mostMore,
    moreAtMouth,
    selfApart: SELF_SEPARATION * (tube.od + 2 * mostMore),
  };
}

const serves = (like: Site | undefined, { shell, bounds, tube, clearance }: RouteProblem): like is Site =>
  like !== undefined &&
  like.problem.shell === shell &&
  like.problem.bounds === bounds &&
  like.problem.tube === tube &&
  like.problem.clearance.shell === clearance.shell;
