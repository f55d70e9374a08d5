/**
 * A set of one bank as the mirror image of the other bank's, laid on the ports as they were measured.
 *
 * The image in the middle plane is moved as a whole, turned and shifted but not bent, onto the other bank's ports: so it
 * is what the shop makes from the same cut list with every clock angle turned round. What is left between the image
 * and each port is told, never taken up.  [RT-24]
 */
import { fitRigid, moved, type RigidMotion } from '../../geometry/rigid-fit.ts';
import { rotated } from '../../geometry/rotation.ts';
import { along, cross, distance, dot, length, mirrored, scale, type Vec3 } from '../../maths/vec3.ts';
import { inletPlace } from '../route/inlets.ts';
import type { Inlets, Port, RouteSolution } from '../route/problem.ts';

export interface Misfit {
  readonly port: number;
  /** Middle of the image's flange from the measured port, mm. */
  readonly off: number;
  /** Between the two axes, degrees. */
  readonly leans: number;
}

/** A set of the bank that was found, and the ports that its image goes to; none where it begins at another's collector. */
export interface ToMirror {
  readonly solution: RouteSolution;
  readonly inlets: Inlets;
  readonly ports?: readonly Port[];
}

export interface MirrorImage {
  readonly solution: RouteSolution;
  readonly misfits: readonly Misfit[];
}

/** Where an axis is matched besides the port itself, mm along it. */
const REACH = 100;

/** The set in the middle plane y = 0: it turns left for right, so that inlets run the other way round. */
export function imageOf({ collector, pipes }: RouteSolution, inlets: Inlets): RouteSolution {
  const { inletOf, turned } = mirroredInlets(inlets);
  const ref = mirrored(collector.ref);
  return {
    collector: {
      origin: mirrored(collector.origin),
      axis: mirrored(collector.axis),
      ref: turned ? scale(ref, -1) : ref,
    },
    pipes: pipes.map((pipe) => ({
      ...pipe,
      inlet: inletOf(pipe.inlet),
      start: { p: mirrored(pipe.start.p), d: mirrored(pipe.start.d) },
      // about the image of the normal the image turns left-handed
      elements: pipe.elements.map((each) =>
        each.kind === 'bend' ? { ...each, normal: scale(mirrored(each.normal), -1) } : each,
      ),
    })),
  };
}

/** Which inlet stands where the image of each is; rows of unequal counts are counted from their other side. */
function mirroredInlets(of: Inlets): { readonly inletOf: (k: number) => number; readonly turned: boolean } {
  const places = Array.from({ length: of.n }, (_, k) => inletPlace(of, k));
  const at = (u: number, v: number): number =>
    places.findIndex(([x, y]) => Math.hypot(x - u, y - v) < 1e-6 * (1 + of.ringRadius));
  const across = places.map(([u, v]) => at(u, -v));
  const turned = across.includes(-1);
  const inlets = turned ? places.map(([u, v]) => at(-u, v)) : across;
  return { inletOf: (k) => inlets[k]!, turned };
}

/**
 * All sets of a bank are moved as one.
 *
 * @returns undefined where the ports of the two banks cannot be laid on each other
 */
export function mirrorImages(sets: readonly ToMirror[]): readonly MirrorImage[] | undefined {
  const images = sets.map((each) => ({ image: imageOf(each.solution, each.inlets), ports: each.ports }));
  if (images.some(({ image, ports }) => ports !== undefined && ports.length !== image.pipes.length)) {
    return undefined;
  }
  const fit = fitRigid(
    images.flatMap(({ image, ports }) =>
      image.pipes.flatMap(({ port, start }) => {
        const to = ports?.[port];
        if (to === undefined) return [];
        return [
          { from: start.p, to: to.p },
          { from: along(start.p, start.d, REACH), to: along(to.p, to.d, REACH) },
        ];
      }),
    ),
  );
  if (!fit.ok) return undefined;
  return images.map(({ image, ports }): MirrorImage => {
    const solution = movedSet(image, fit.is);
    const misfits = solution.pipes.flatMap(({ port, start }): Misfit[] => {
      const to = ports?.[port];
      if (to === undefined) return [];
      return [misfit(port, start, to)];
    });
    return { solution, misfits: misfits.sort((a, b) => a.port - b.port) };
  });
}

/** How a pipe stands to the port that it belongs on. */
export const misfit = (port: number, start: Port, to: Port): Misfit => ({
  port,
  off: distance(start.p, to.p),
  leans: degreesBetween(start.d, to.d),
});

const degreesBetween = (a: Vec3, b: Vec3): number =>
  (Math.atan2(length(cross(a, b)), dot(a, b)) * 180) / Math.PI;

function movedSet({ collector, pipes }: RouteSolution, motion: RigidMotion): RouteSolution {
  const turn = (v: Vec3): Vec3 => rotated(motion.rotation, v);
  return {
    collector: {
      origin: moved(motion, collector.origin),
      axis: turn(collector.axis),
      ref: turn(collector.ref),
    },
    pipes: pipes.map((pipe) => ({
      ...pipe,
      start: { p: moved(motion, pipe.start.p), d: turn(pipe.start.d) },
      elements: pipe.elements.map((each) =>
        each.kind === 'bend' ? { ...each, normal: turn(each.normal) } : each,
      ),
    })),
  };
}
