/**
 * A part of an exhaust: pipes of one length into one collector, beside other such parts.
 *
 * Two banks are two parts; six into one as 3+3 are two parts of one bank; four into two into one are three parts, the
 * last of which begins at the collectors of the first two. Lengths mm.
 */
import { along, type Vec3 } from '../../maths/vec3.ts';
import type { Port, RouteProblem, RouteSolution } from '../route/problem.ts';
import { atMouth } from '../verify/sizes.ts';

export interface Part {
  /** What it is called, for telling: `left bank`. */
  readonly name: string;
  /** What its collector is called: `collector of the left bank`. */
  readonly collector: string;
  /** As if it stood alone. */
  readonly problem: RouteProblem;
  /** The pipe of each port, for telling: `pipe of cylinder 3`. */
  readonly pipes: readonly string[];
  /** Where its ports are the outlets of other parts' collectors: those parts, in the order of its ports. */
  readonly from?: readonly number[];
}

/** The collector's body as it is held off: a drum with flat ends from mouth to outlet. */
export interface Body {
  readonly a: Vec3;
  readonly b: Vec3;
  readonly r: number;
}

export function bodyOf(
  { collector, collectorBody, tube }: RouteProblem,
  { origin, axis }: RouteSolution['collector'],
): Body {
  return {
    a: origin,
    b: along(origin, axis, collectorBody.length),
    r: collector.ringRadius + atMouth(tube) / 2 + collectorBody.radiusAdd,
  };
}

/** Where a pipe behind this part's collector begins. */
export const outletOf = ({ collectorBody }: RouteProblem, { collector }: RouteSolution): Port => ({
  p: along(collector.origin, collector.axis, collectorBody.length),
  d: collector.axis,
});

export type SetOf = (part: number) => RouteSolution | undefined;

/** The part's own problem, its ports put where the collectors before it stand; undefined while one of them does not. */
export function ownProblem(parts: readonly Part[], at: number, setOf: SetOf): RouteProblem | undefined {
  const { problem, from } = parts[at]!;
  if (from === undefined) return problem;
  const ports: Port[] = [];
  for (const before of from) {
    const set = setOf(before);
    if (set === undefined) return undefined;
    ports.push(outletOf(parts[before]!.problem, set));
  }
  return { ...problem, ports };
}

/** The port of one part whose pipe leaves from the other's collector. */
export function portFrom(parts: readonly Part[], of: number, other: number): number | undefined {
  const port = parts[of]!.from?.indexOf(other) ?? -1;
  return port < 0 ? undefined : port;
}
