/**
 * A problem with more asked of it than the file asks cold, so that a set holds what is looked at in the car.
 *
 * In    the problem as it was put, what is asked more
 * Out   the same problem with larger gaps, a longer straight at the collector, and room for tools as solids. mm
 *
 * Every set that suits an amended problem suits the one that was put. GP-n are those of docs/theory/gas-path.md.
 */
import type { ToolRoom } from '../hand/tool-room.ts';
import type { RouteProblem } from '../route/problem.ts';

/** Plain data. */
export interface Amendments {
  /** Beyond the cold gap, mm. */
  readonly shell: number;
  readonly pipes: number;
  readonly collectorBody: number;
  /** By name of the solid. */
  readonly solids: Readonly<Record<string, number>>;
  /** Least straight before the mouth, mm; that of the file where it is longer. */
  readonly straight: number;
  /** Of each nut that is held, the tool that goes on it. */
  readonly tools: readonly ToolOfNut[];
}

export interface ToolOfNut {
  /** Place in the list of nuts. */
  readonly nut: number;
  readonly room: ToolRoom;
  /** Places of rooms that were held before and did not come out, this one with them. */
  readonly tried: readonly number[];
}

export const NOTHING_MORE: Amendments = {
  shell: 0,
  pipes: 0,
  collectorBody: 0,
  solids: {},
  straight: 0,
  tools: [],
};

/** [GP-9] */
export function amended(problem: RouteProblem, more: Amendments): RouteProblem {
  const { clearance, limits, collectorBody, solids } = problem;
  const extra = (name: string | undefined): number => (name === undefined ? 0 : (more.solids[name] ?? 0));
  return {
    ...problem,
    limits: { ...limits, minStraightCollector: Math.max(limits.minStraightCollector, more.straight) },
    collectorBody: { ...collectorBody, radiusAdd: collectorBody.radiusAdd + more.collectorBody },
    clearance: {
      ...clearance,
      shell: clearance.shell + more.shell,
      pipe: clearance.pipe + more.pipes,
      self: clearance.self + more.pipes,
    },
    solids: [
      ...solids.map((each) =>
        extra(each.name) === 0 ? each : { ...each, gap: (each.gap ?? clearance.solid) + extra(each.name) },
      ),
      ...more.tools.flatMap(({ room }) => room.solids),
    ],
  };
}

/** A gap that lacks hot, mm. */
export interface GapHot {
  readonly kind: 'shell' | 'solid' | 'collector body' | 'pipe to pipe';
  /** Of the solid. */
  readonly name: string;
  /** Both pipes where they come together, and the ring has them. */
  readonly inZone: boolean;
  /** Least that is asked hot, and cold. */
  readonly asked: number;
  readonly askedCold: number;
  readonly cold: number;
  readonly hot: number;
}

/** Asked beyond what just lacks, so that one mend does, mm. */
export const AGAIN = 0.3;
/** What stops a part on its way out is kept so much farther off at each look, mm. */
const FARTHER = 4;

/** By as much as a gap comes nearer by heat it is asked larger cold, for all of its kind.  [GP-9] */
export function moreForHot(more: Amendments, gap: GapHot): Amendments {
  // where pipes come together the ring has them, and nothing more can be asked
  if (gap.inZone) return more;
  const wants = gap.asked + (gap.cold - gap.hot) - gap.askedCold + AGAIN;
  const raised = (of: number): number => Math.max(of, wants);
  switch (gap.kind) {
    case 'shell':
      return { ...more, shell: raised(more.shell) };
    case 'pipe to pipe':
      return { ...more, pipes: raised(more.pipes) };
    case 'collector body':
      return { ...more, collectorBody: raised(more.collectorBody) };
    case 'solid':
      return { ...more, solids: { ...more.solids, [gap.name]: raised(more.solids[gap.name] ?? 0) } };
  }
}

/** What stops parts on their way out, kept farther off: solids of the problem by name, else the pipes from each other. */
export function moreForTheWay(
  more: Amendments,
  { solids }: RouteProblem,
  stops: readonly string[],
): Amendments {
  const isSolid = (name: string): boolean => solids.some((each) => each.name === name);
  const named = [...new Set(stops)].filter(isSolid);
  return {
    ...more,
    pipes: stops.every(isSolid) ? more.pipes : more.pipes + FARTHER / 2,
    solids: {
      ...more.solids,
      ...Object.fromEntries(named.map((name) => [name, (more.solids[name] ?? 0) + FARTHER])),
    },
  };
}
