/** A layout as straights and bends from the flange to the inlet mouth: what is bent and cut. RT-1, RT-2. */
import { cross, dot, scale, sub, type Vec3 } from '../../maths/vec3.ts';
import type { Layout } from './layout.ts';
import { putLayout } from './layout.ts';
import type { Element, RoutedPipe, RouteSolution } from './problem.ts';
import { Rig } from './rig.ts';
import type { PipeShape } from './shape.ts';
import type { Site } from './site.ts';
import { placeSteps, settle } from './steps.ts';

export function solutionOf(site: Site, layout: Layout): RouteSolution {
  const rig = new Rig(site);
  putLayout(rig, layout);
  return solutionOfRig(rig);
}

/** As the pipes of a rig lie. */
export function solutionOfRig(rig: Rig): RouteSolution {
  const { steps, radiiAtFlange } = rig.site;
  for (const pipe of rig.pipes) {
    pipe.lay();
    if (steps.length === 0) continue;
    settle(pipe, steps, radiiAtFlange);
    placeSteps(pipe, steps);
  }
  return {
    collector: { origin: vec(rig.origin, 0), axis: vec(rig.axis, 0), ref: vec(rig.ref, 0) },
    pipes: rig.pipes.map((pipe, i) => routed(rig.site, pipe, i, rig.inlets[i]!)),
  };
}

function routed(site: Site, pipe: PipeShape, port: number, inlet: number): RoutedPipe {
  const elements: Element[] = [];
  let straight = pipe.straight(0);
  for (let k = 1; k <= pipe.corners; k++) {
    // a bend that does not turn is part of the straight
    if (pipe.angle[k]! < 1e-7) {
      straight += 2 * pipe.tangent[k]! + pipe.straight(k);
      continue;
    }
    // between two bends that meet there is no straight
    if (elements.length === 0 || straight > 1e-9) elements.push({ kind: 'straight', length: straight });
    const before = vec(pipe.along, k - 1);
    const after = vec(pipe.along, k);
    elements.push({
      kind: 'bend',
      radius: pipe.radius[k]!,
      angleDeg: (pipe.angle[k]! * 180) / Math.PI,
      normal: squareNormal(before, after),
    });
    straight = pipe.straight(k);
  }
  elements.push({ kind: 'straight', length: straight });
  const { p, d } = site.problem.ports[port]!;
  const { steps } = site;
  return {
    port,
    inlet,
    start: { p, d },
    elements,
    ...(steps.length === 0 ? {} : { stepsAt: [...pipe.stepAt.subarray(0, steps.length)] }),
  };
}

const vec = (from: Float64Array, at: number): Vec3 => [from[3 * at]!, from[3 * at + 1]!, from[3 * at + 2]!];

/** Unit normal of the bend, square to the direction before it to the last digit. */
function squareNormal(before: Vec3, after: Vec3): Vec3 {
  let n = cross(before, after);
  if (Math.hypot(...n) < 1e-12) n = cross(before, Math.abs(before[0]) < 0.7 ? [1, 0, 0] : [0, 1, 0]);
  n = sub(n, scale(before, dot(n, before)));
  return scale(n, 1 / Math.hypot(...n));
}
