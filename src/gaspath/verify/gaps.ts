/** Clearances of walked pipes: to shell, solids, bounds, the collector's body, each other and themselves. */
import type { Vec3 } from '../../maths/vec3.ts';
import type { RouteProblem } from '../route/problem.ts';
import { leastBelow } from './least.ts';
import { outside, outsideCylinder, Skin } from './obstacles.ts';
import { atMouth, sizesAlong, thickest } from './sizes.ts';
import { SLACK, type SolutionBreach } from './verify.ts';
import { pointAt, toPiece, type Walked } from './walk.ts';

export type Gap = 'shell' | 'solid' | 'bounds' | 'collector body' | 'pipe to pipe' | 'self';

const SHELL_FREE = 3;
const SELF_APART = 2.5;

export interface Laid {
  readonly pipe: { readonly port: number; readonly stepsAt?: readonly number[] };
  readonly path: Walked;
}

export function gapBreaches(
  problem: RouteProblem,
  pose: { readonly origin: Vec3; readonly axis: Vec3 },
  pipes: readonly Laid[],
): SolutionBreach[] {
  const { clearance, tube } = problem;
  const thick = thickest(tube);
  const most = thick / 2 + clearance.shell;
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
    need: Need,
    from: number,
    to: number,
    f: (x: Vec3, s: number) => number,
    slope = 1,
    other?: number,
  ): void => {
    const { path, pipe } = laid;
    const needs = need.metal + need.gap;
    const found = leastBelow((s) => f(pointAt(path, s), s), from, to, needs - SLACK, slope);
    if (found === undefined) return;
    breaches.push({
      code,
      pipe: pipe.port,
      ...(other === undefined ? {} : { other }),
      says: `Too near ${what}, ${found.s.toFixed(0)} mm from the flange.`,
      needs,
      has: found.value,
      at: pointAt(path, found.s),
      metal: need.metal,
      ...(need.inZone === undefined ? {} : { inZone: need.inZone }),
    });
  };
  for (const laid of pipes) {
    const { path } = laid;
    const long = path.length;
    look('bounds', laid, 'the bounds', { metal: 0, gap: 0 }, 0, long, (x) =>
      Math.min(x[0] - min[0], max[0] - x[0], x[1] - min[1], max[1] - x[1], x[2] - min[2], max[2] - x[2]),
    );
    const body = problem.collector.ringRadius + atMouth(tube) / 2 + problem.collectorBody.radiusAdd;
    for (const { from: begins, to: ends, radius } of sizesAlong(tube, laid.pipe, long)) {
      const off = (gap: number): Need => ({ metal: radius, gap });
      const from = (first: number): number => Math.max(first, begins);
      // beyond the bounds nothing of the shell is kept, and that is a breach already
      look('shell', laid, 'the shell', off(clearance.shell), from(SHELL_FREE), ends, (x) =>
        skin.nearest(x, most + 40),
      );
      problem.solids.forEach((solid, k) => {
        const exempt =
          solid.flangeExempt === true || (solid.kind !== 'box' && solid.leaves === laid.pipe.port);
        const free = exempt ? clearance.flangeZone : 0;
        const name = solid.name ?? `solid ${k + 1}`;
        look('solid', laid, name, off(solid.gap ?? clearance.solid), from(free), ends, (x) =>
          outside(solid, x),
        );
      });
      look(
        'collector body',
        laid,
        'the body of the collector',
        off(clearance.solid),
        begins,
        Math.min(ends, long - clearance.collectorZone),
        (x) => outsideCylinder(x, pose.origin, pose.axis, problem.collectorBody.length, body),
      );
    }
    selfLooks(laid, look, tube, clearance.self);
  }
  for (let i = 0; i < pipes.length; i++)
    for (let j = i + 1; j < pipes.length; j++) pairLooks(pipes[i]!, pipes[j]!, look, problem);
  return breaches;
}

/** What is asked of a distance from a middle line: the tube itself, and air. */
interface Need {
  readonly metal: number;
  readonly gap: number;
  readonly inZone?: boolean;
}

type Look = (
  code: Gap,
  laid: Laid,
  what: string,
  need: Need,
  from: number,
  to: number,
  f: (x: Vec3, s: number) => number,
  slope?: number,
  other?: number,
) => void;

function selfLooks(laid: Laid, look: Look, tube: RouteProblem['tube'], gap: number): void {
  const { path, pipe } = laid;
  const long = path.length;
  const apart = SELF_APART * thickest(tube);
  const sizes = sizesAlong(tube, pipe, long);
  sizes.forEach((one, k) => {
    for (const two of sizes.slice(k)) {
      const metal = one.radius + two.radius;
      // what lies ahead grows as one goes back, so the distance may change twice as fast
      look(
        'self',
        laid,
        'itself',
        { metal, gap },
        one.from,
        Math.min(one.to, two.to - apart),
        (x, s) => toPath(x, path, Math.max(two.from, s + apart), two.to),
        2,
      );
    }
  });
}

function pairLooks(one: Laid, two: Laid, look: Look, { tube, clearance }: RouteProblem): void {
  const a = one.path.length;
  const b = two.path.length;
  const za = Math.max(0, a - clearance.collectorZone);
  const zb = Math.max(0, b - clearance.collectorZone);
  const { port } = two.pipe;
  const name = `the pipe of port ${port}`;
  for (const mine of sizesAlong(tube, one.pipe, a))
    for (const other of sizesAlong(tube, two.pipe, b)) {
      const metal = mine.radius + other.radius;
      const between = (low: number, high: number, low2: number, high2: number, inZone: boolean): void => {
        const [s0, s1] = [Math.max(mine.from, low), Math.min(mine.to, high)];
        const [t0, t1] = [Math.max(other.from, low2), Math.min(other.to, high2)];
        if (s0 > s1 || t0 > t1) return;
        const need = { metal, gap: inZone ? clearance.pipeInZone : clearance.pipe, inZone };
        look('pipe to pipe', one, name, need, s0, s1, (x) => toPath(x, two.path, t0, t1), 1, port);
      };
      between(0, za, 0, b, false);
      between(za, a, 0, zb, false);
      between(za, a, zb, b, true);
    }
}

/** Distance from a point to the part of a pipe between two lengths along it. */
export function toPath(x: Vec3, path: Walked, from: number, to: number): number {
  let best = Infinity;
  for (const piece of path.pieces)
    if (piece.to >= from && piece.from <= to) best = Math.min(best, toPiece(x, piece, from, to));
  return best;
}
