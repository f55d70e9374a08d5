/** Clearances of walked pipes: to shell, solids, bounds, the collector's body, each other and themselves. */
import type { Vec3 } from '../../maths/vec3.ts';
import type { RouteProblem } from '../route/problem.ts';
import { leastBelow } from './least.ts';
import { outside, outsideCylinder, Skin } from './obstacles.ts';
import { SLACK, type SolutionBreach } from './verify.ts';
import { pointAt, toPiece, type Walked } from './walk.ts';

export type Gap = 'shell' | 'solid' | 'bounds' | 'collector body' | 'pipe to pipe' | 'self';

const SHELL_FREE = 3;
const SELF_APART = 2.5;

export interface Laid {
  readonly pipe: { readonly port: number };
  readonly path: Walked;
}

export function gapBreaches(
  problem: RouteProblem,
  pose: { readonly origin: Vec3; readonly axis: Vec3 },
  pipes: readonly Laid[],
): SolutionBreach[] {
  const { clearance, tube } = problem;
  const half = tube.od / 2;
  const most = half + clearance.shell;
  const { min, max } = problem.bounds;
  const skin = new Skin(
    problem.shell,
    min.map((v) => v - most - 1) as unknown as Vec3,
    max.map((v) => v + most + 1) as unknown as Vec3,
    20,
  );
  const breaches: SolutionBreach[] = [];
  const look = (
    code: Gap,
    laid: Laid,
    what: string,
    need: number,
    from: number,
    to: number,
    f: (x: Vec3, s: number) => number,
    slope = 1,
    other?: number,
  ): void => {
    const { path, pipe } = laid;
    const found = leastBelow((s) => f(pointAt(path, s), s), from, to, need - SLACK, slope);
    if (found === undefined) return;
    breaches.push({
      code,
      pipe: pipe.port,
      ...(other === undefined ? {} : { other }),
      says: `Too near ${what}, ${found.s.toFixed(0)} mm from the flange.`,
      needs: need,
      has: found.value,
      at: pointAt(path, found.s),
    });
  };
  for (const laid of pipes) {
    const { path } = laid;
    const long = path.length;
    look('bounds', laid, 'the bounds', 0, 0, long, (x) =>
      Math.min(x[0] - min[0], max[0] - x[0], x[1] - min[1], max[1] - x[1], x[2] - min[2], max[2] - x[2]),
    );
    // beyond the bounds nothing of the shell is kept, and that is a breach already
    look('shell', laid, 'the shell', most, SHELL_FREE, long, (x) => skin.nearest(x, most + 40));
    problem.solids.forEach((solid, k) => {
      const exempt = solid.flangeExempt === true || (solid.kind !== 'box' && solid.leaves === laid.pipe.port);
      const from = exempt ? clearance.flangeZone : 0;
      const need = half + (solid.gap ?? clearance.solid);
      look('solid', laid, solid.name ?? `solid ${k + 1}`, need, from, long, (x) => outside(solid, x));
    });
    const radius = problem.collector.ringRadius + half + problem.collectorBody.radiusAdd;
    look(
      'collector body',
      laid,
      'the body of the collector',
      half + clearance.solid,
      0,
      long - clearance.collectorZone,
      (x) => outsideCylinder(x, pose.origin, pose.axis, problem.collectorBody.length, radius),
    );
    const apart = SELF_APART * tube.od;
    // what lies ahead grows as one goes back, so the distance may change twice as fast
    look(
      'self',
      laid,
      'itself',
      tube.od + clearance.self,
      0,
      long - apart,
      (x, s) => toPath(x, path, s + apart, long),
      2,
    );
  }
  for (let i = 0; i < pipes.length; i++)
    for (let j = i + 1; j < pipes.length; j++) {
      const one = pipes[i]!;
      const two = pipes[j]!;
      const far = tube.od + clearance.pipe;
      const near = tube.od + clearance.pipeInZone;
      const a = one.path.length;
      const b = two.path.length;
      const za = Math.max(0, a - clearance.collectorZone);
      const zb = Math.max(0, b - clearance.collectorZone);
      const name = `the pipe of port ${two.pipe.port}`;
      const port = two.pipe.port;
      look('pipe to pipe', one, name, far, 0, za, (x) => toPath(x, two.path, 0, b), 1, port);
      look('pipe to pipe', one, name, far, za, a, (x) => toPath(x, two.path, 0, zb), 1, port);
      look('pipe to pipe', one, name, near, za, a, (x) => toPath(x, two.path, zb, b), 1, port);
    }
  return breaches;
}

/** Distance from a point to the part of a pipe between two lengths along it. */
export function toPath(x: Vec3, path: Walked, from: number, to: number): number {
  let best = Infinity;
  for (const piece of path.pieces)
    if (piece.to >= from && piece.from <= to) best = Math.min(best, toPiece(x, piece, from, to));
  return best;
}
