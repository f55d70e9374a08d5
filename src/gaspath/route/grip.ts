/**
 * What a hand takes hold of in a set of pipes, and where it wants it: a bend, or the collector.
 *
 * The first bend of a pipe lies on the line of its port and the last on that of its inlet: these go along it.
 */
import { add, cross, dot, length, sub, turned, unit, type Vec3, ZERO } from '../../maths/vec3.ts';
import type { Pose } from './problem.ts';
import type { Rig } from './rig.ts';
import { LEVER, type PipeShape } from './shape.ts';
import type { Site } from './site.ts';

export type Wish =
  | {
      readonly kind: 'bend';
      readonly pipe: number;
      /** From 1 at the port. */
      readonly corner: number;
      readonly to: Vec3;
    }
  | { readonly kind: 'collector'; readonly pose: Pose };

export const cornerAt = (pipe: PipeShape, corner: number): Vec3 => [
  pipe.vertex[3 * corner]!,
  pipe.vertex[3 * corner + 1]!,
  pipe.vertex[3 * corner + 2]!,
];

export const poseOf = ({ origin: o, axis: a, ref: r }: Rig): Pose => ({
  origin: [o[0]!, o[1]!, o[2]!],
  axis: [a[0]!, a[1]!, a[2]!],
  ref: [r[0]!, r[1]!, r[2]!],
});

/** The numbers of the pipe that put a corner where it is wished. */
export function numbersOf(pipe: PipeShape, corner: number, to: Vec3): readonly (readonly [number, number])[] {
  const along = (from: Float64Array, way: Float64Array): number =>
    (to[0] - from[0]!) * way[0]! + (to[1] - from[1]!) * way[1]! + (to[2] - from[2]!) * way[2]!;
  if (corner === 1) return [[0, along(pipe.port, pipe.out)]];
  if (corner === pipe.corners) return [[1, -along(pipe.inlet, pipe.into)]];
  return to.map((value, c) => [3 * corner - 4 + c, value] as const);
}

/** The line along which a bend goes, where it is not free. */
export const lineOf = (pipe: PipeShape, corner: number): Vec3 | undefined => {
  const way = corner === 1 ? pipe.out : corner === pipe.corners ? pipe.into : undefined;
  return way === undefined ? undefined : [way[0]!, way[1]!, way[2]!];
};

/** A pose brought into the box and the cone that it may stand in, and what held it back. */
export function poseWithin(
  site: Site,
  { origin, axis, ref }: Pose,
): { readonly pose: Pose; readonly limit?: 'box' | 'cone' } {
  const { collector } = site.problem;
  if (collector.mode === 'fixed') return { pose: collector };
  const { boxMin: low, boxMax: high } = collector;
  const into = (c: 0 | 1 | 2): number => Math.min(high[c], Math.max(low[c], origin[c]));
  const at: Vec3 = [into(0), into(1), into(2)];
  const out = at.some((value, c) => Math.abs(value - origin[c]!) > 1e-6);
  const cone = (collector.coneDeg * Math.PI) / 180;
  const across = cross(axis, collector.axis);
  const tilt = Math.atan2(length(across), dot(axis, collector.axis));
  if (tilt <= cone) return { pose: { origin: at, axis, ref }, ...(out ? { limit: 'box' as const } : {}) };
  const back = (v: Vec3): Vec3 => turned(v, unit(across), tilt - cone);
  return { pose: { origin: at, axis: unit(back(axis)), ref: unit(back(ref)) }, limit: 'cone' };
}

/** How far two wishes of one kind are apart, mm; a turn counts as 100 mm a radian. RT-11 */
export function apart(a: Wish, b: Wish): number {
  if (a.kind === 'bend' && b.kind === 'bend') return length(sub(b.to, a.to));
  if (a.kind === 'bend' || b.kind === 'bend') return Infinity;
  return Math.max(length(sub(b.pose.origin, a.pose.origin)), LEVER * length(turnBetween(a.pose, b.pose)));
}

/** The wish at a share of the way from one to the other. */
export function between(a: Wish, b: Wish, share: number): Wish {
  const mix = (p: Vec3, q: Vec3): Vec3 => [
    p[0] + share * (q[0] - p[0]),
    p[1] + share * (q[1] - p[1]),
    p[2] + share * (q[2] - p[2]),
  ];
  if (share === 1 || (a.kind === 'bend') !== (b.kind === 'bend')) return b;
  if (a.kind === 'bend' && b.kind === 'bend') return { ...b, to: mix(a.to, b.to) };
  const [from, to] = [(a as Posed).pose, (b as Posed).pose];
  const turn = turnBetween(from, to);
  const size = length(turn);
  const spun = (v: Vec3): Vec3 => (size < 1e-12 ? v : unit(turned(v, unit(turn), share * size)));
  return {
    kind: 'collector',
    pose: { origin: mix(from.origin, to.origin), axis: spun(from.axis), ref: spun(from.ref) },
  };
}
type Posed = Extract<Wish, { kind: 'collector' }>;

/** The turn that brings one pose on the other, as an axis times its angle, rad. */
function turnBetween(a: Pose, b: Pose): Vec3 {
  // of the rotation's matrix the part that changes sign with it
  const frames = [a, b].map(({ axis, ref }) => [axis, ref, cross(axis, ref)] as const);
  const [from, to] = [frames[0]!, frames[1]!];
  const skew = [0, 1, 2].reduce<Vec3>(
    (sum, k) => {
      const by = cross(from[k]!, to[k]!);
      return [sum[0] + by[0] / 2, sum[1] + by[1] / 2, sum[2] + by[2] / 2];
    },
    [0, 0, 0],
  );
  const trace = [0, 1, 2].reduce((sum, k) => sum + dot(from[k]!, to[k]!), 0);
  const sine = length(skew);
  const angle = Math.atan2(sine, (trace - 1) / 2);
  if (sine < 1e-12) return angle < 1 ? [0, 0, 0] : halfTurn(from, to);
  return [(skew[0] * angle) / sine, (skew[1] * angle) / sine, (skew[2] * angle) / sine];
}

type Three = readonly [Vec3, Vec3, Vec3];

/** Half a turn: about the way that lies in the middle of a direction and where it goes. */
function halfTurn(from: Three, to: Three): Vec3 {
  const sums = [0, 1, 2].map(
    (k): Vec3 => [from[k]![0] + to[k]![0], from[k]![1] + to[k]![1], from[k]![2] + to[k]![2]],
  );
  const longest = sums.reduce((a, b) => (length(b) > length(a) ? b : a));
  const way = unit(longest);
  return [Math.PI * way[0], Math.PI * way[1], Math.PI * way[2]];
}

/** A pose moved and turned about the axes of the problem, mm and degrees; clocked about its own axis. */
export function movedPose(
  { origin, axis, ref }: Pose,
  by: { readonly shift?: Vec3; readonly turnDeg?: Vec3; readonly clockDeg?: number },
): Pose {
  const rad = Math.PI / 180;
  const turn = by.turnDeg ?? ZERO;
  const lean = (v: Vec3): Vec3 => (length(turn) === 0 ? v : turned(v, unit(turn), rad * length(turn)));
  const leant = lean(axis);
  return {
    origin: add(origin, by.shift ?? ZERO),
    axis: leant,
    ref: turned(lean(ref), leant, rad * (by.clockDeg ?? 0)),
  };
}
