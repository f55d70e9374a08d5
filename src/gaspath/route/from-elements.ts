/**
 * A set of straights and bends as a layout again: the corners in which its straights meet. RT-1 read backwards.
 *
 * A pipe with less than two bends gets corners that do not turn, so that it can be moved like any other.
 */
import { along, dot, sub, turned, unit, type Vec3 } from '../../maths/vec3.ts';
import type { LaidPipe, Layout } from './layout.ts';
import type { RoutedPipe, RouteSolution } from './problem.ts';

export function layoutFrom({ collector, pipes }: RouteSolution, radius: number): Layout {
  return {
    origin: collector.origin,
    axis: collector.axis,
    ref: collector.ref,
    pipes: [...pipes].sort((a, b) => a.port - b.port).map((pipe) => laidAgain(pipe, radius)),
  };
}

function laidAgain({ inlet, start, elements, stepsAt }: RoutedPipe, usual: number): LaidPipe {
  /** Where each bend ends along the pipe. */
  const ends: number[] = [];
  let gone = 0;
  const corners: Vec3[] = [];
  const radius: number[] = [];
  let p = start.p;
  let d = unit(start.d);
  for (const each of elements) {
    if (each.kind === 'straight') {
      gone += each.length;
      p = along(p, d, each.length);
      continue;
    }
    const angle = (each.angleDeg * Math.PI) / 180;
    const tangent = each.radius * Math.tan(angle / 2);
    const corner = along(p, d, tangent);
    d = unit(turned(d, each.normal, angle));
    p = along(corner, d, tangent);
    corners.push(corner);
    radius.push(each.radius);
    gone += each.radius * angle;
    ends.push(gone);
  }
  const last = corners.at(-1) ?? start.p;
  const left = dot(sub(p, last), d);
  if (corners.length < 2) {
    const more = 2 - corners.length;
    // behind the tangent of the last bend, so that the straights share what is left
    const used = corners.length === 0 ? 0 : left - (elements.at(-1) as { readonly length: number }).length;
    for (let k = 1; k <= more; k++) {
      corners.push(along(last, d, used + ((left - used) * k) / (more + 1)));
      radius.push(usual);
    }
  }
  const out = unit(start.d);
  return {
    inlet,
    corners: corners.length,
    radius,
    x: [dot(sub(corners[0]!, start.p), out), dot(sub(p, corners.at(-1)!), d), ...corners.slice(1, -1).flat()],
    ...(stepsAt === undefined
      ? {}
      : { stepOn: stepsAt.map((at) => ends.filter((end) => end <= at + 1e-6).length) }),
  };
}
