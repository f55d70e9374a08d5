/**
 * Room for a tool on a nut, as solids that every pipe is kept clear of while a set is sought. mm; angles in degrees.
 *
 * In    the nut, the tools, what stands still about it
 * Out   the ways in which one of the tools goes on, each with the room that it asks; of several the one that is least
 *       in the way of pipes as they lie
 *
 * A stroke is a fan of handles; boxes are laid round it. They hold all that the look at a nut asks of that stroke, and a
 * little more, so that a set which keeps clear of them lets the tool on. GP-n are those of docs/theory/gas-path.md.
 */
import { add, along, cross, dot, scale, sub, type Vec3 } from '../../maths/vec3.ts';
import type { Box, Round, Solid } from '../route/problem.ts';
import { outside } from '../verify/obstacles.ts';
import { radiusAt, sizesOf } from '../verify/sizes.ts';
import {
  type Bar,
  openSpannerOn,
  ratchetHandle,
  ringHandle,
  ringPushed,
  socketBehind,
  socketPushed,
  wayAt,
} from './tool-bars.ts';
import {
  type About,
  inTheWay,
  type Nut,
  PLAY,
  RATCHET_SWING,
  type RingSize,
  type SocketSize,
  type SpannerSize,
  stopsRound,
  TURN,
} from './tools.ts';

export type ToolForm = 'socket' | 'ring spanner' | 'open spanner';

export interface ToolRoom {
  readonly form: ToolForm;
  /** Bar behind a socket; length of a spanner. */
  readonly length: number;
  /** Way of the handle in the middle of its stroke, from `Nut.across`. */
  readonly way: number;
  readonly solids: readonly Solid[];
}

export interface Tools {
  readonly sockets: readonly SocketSize[];
  readonly rings: readonly RingSize[];
  readonly open: readonly SpannerSize[];
}

/** Of a spanner. */
const STROKE = 30;
/** Between two strokes that are weighed: spanners work close to the flange, ratchets far out of it. */
const APART: Readonly<Record<ToolForm, number>> = { socket: 45, 'ring spanner': 6, 'open spanner': 6 };
/** Parts of a handle that have a box of their own, of its length from the stud. */
const PARTS = [0, 0.1, 0.25, 0.5, 1] as const;

/** @param about  all that stands still; pipes only as far as they are straight out of their ports */
export function toolRooms(name: string, nut: Nut, tools: Tools, about: About): readonly ToolRoom[] {
  const rooms: ToolRoom[] = [];
  const named = (solid: Solid): Solid => ({ ...solid, name, gap: PLAY });
  const put = (
    form: ToolForm,
    length: number,
    stroke: number,
    standing: readonly Bar[],
    handleAt: (way: Vec3) => readonly Bar[],
  ): void => {
    if (inTheWay(standing, about) !== undefined) return;
    const stops = stopsRound(nut, about, handleAt);
    // whole steps, so that a look every few degrees finds the stroke
    const half = Math.ceil(stroke / 2 / TURN);
    const isClear = (k: number): boolean => {
      for (let j = -half; j <= half; j += 1)
        if (stops[(k + j + stops.length) % stops.length] !== undefined) return false;
      return true;
    };
    for (let k = 0; k < stops.length; k += APART[form] / TURN) {
      if (!isClear(k)) continue;
      const way = k * TURN;
      const fan = fanBoxes(nut, way, half * TURN, handleAt);
      const solids = [...standing.map(roundOf), ...fan].map(named);
      if (isClearOf(solids, about)) rooms.push({ form, length, way, solids });
    }
  };
  for (const size of tools.sockets)
    for (const bar of [0, ...size.bar.lengths])
      put(
        'socket',
        bar,
        RATCHET_SWING,
        [...socketPushed(nut, size), ...socketBehind(nut, size, bar)],
        (way) => [ratchetHandle(nut, size, bar, way)],
      );
  for (const size of tools.rings)
    put('ring spanner', size.length, STROKE, [ringPushed(nut, size)], (way) => ringHandle(nut, size, way));
  for (const size of tools.open)
    put('open spanner', size.length, STROKE, [], (way) => openSpannerOn(nut, size, way));
  return rooms;
}

/** How much pipes that lie are in the way: squares of what lacks at places along them, mm². */
export function inTheWayOf({ solids }: ToolRoom, pipes: readonly Laid[]): number {
  let sum = 0;
  for (const solid of solids) {
    const { middle, radius } = ballOf(solid);
    for (const { places, radius: pipe } of pipes) {
      const needs = pipe + PLAY;
      for (const x of places) {
        const off = sub(x, middle);
        if (dot(off, off) > (radius + needs) ** 2) continue;
        sum += Math.max(0, needs - outside(solid, x)) ** 2;
      }
    }
  }
  return sum;
}

/** A pipe as places along its middle. */
export interface Laid {
  readonly places: readonly Vec3[];
  readonly radius: number;
}

/** Boxes round handles that reach from the stud, a few along them: near it they are narrow. */
function fanBoxes(
  nut: Nut,
  way: number,
  half: number,
  handleAt: (way: Vec3) => readonly Bar[],
): readonly Box[] {
  const bars = [-half, -half / 2, 0, half / 2, half].flatMap((off) => handleAt(wayAt(nut, way + off)));
  // jaws and the like, as they stand round the stud
  const stubby = bars.filter(({ axis }) => dot(axis, nut.axis) > 0.9);
  const long = bars.filter((bar) => !stubby.includes(bar));
  const middle = handleAt(wayAt(nut, way)).find(({ axis }) => dot(axis, nut.axis) <= 0.9)!;
  const frame: Frame = [middle.axis, cross(nut.axis, wayAt(nut, way)), [0, 0, 0]];
  const up = cross(frame[0], frame[1]);
  const axes: Frame = [frame[0], frame[1], up];
  const reach = Math.max(...long.map((bar) => bar.long));
  const parts = PARTS.slice(1).map((to, k) =>
    boxRound(
      long.flatMap((bar) => cornersOf(bar, (PARTS[k]! * reach) / bar.long, (to * reach) / bar.long)),
      axes,
    ),
  );
  return stubby.length === 0
    ? parts
    : [
        boxRound(
          stubby.flatMap((bar) => cornersOf(bar, 0, 1)),
          axes,
        ),
        ...parts,
      ];
}

type Frame = readonly [Vec3, Vec3, Vec3];

/** Corners of a box that holds a part of a bar. */
function cornersOf({ a, axis, long, r }: Bar, from: number, to: number): readonly Vec3[] {
  const u = square(axis);
  const v = cross(axis, u);
  return [from, Math.min(1, to)].flatMap((share) => {
    const at = along(a, axis, share * long);
    return [
      [1, 1],
      [1, -1],
      [-1, 1],
      [-1, -1],
    ].map(([x, y]) => add(at, add(scale(u, x! * r), scale(v, y! * r))));
  });
}

function square(axis: Vec3): Vec3 {
  const u = cross(axis, Math.abs(axis[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0]);
  return scale(u, 1 / Math.hypot(...u));
}

function boxRound(points: readonly Vec3[], axes: Frame): Box {
  const spans = axes.map((axis) => {
    const values = points.map((p) => dot(p, axis));
    return [Math.min(...values), Math.max(...values)] as const;
  });
  const center = axes
    .map((axis, k) => scale(axis, (spans[k]![0] + spans[k]![1]) / 2))
    .reduce((sum, each) => add(sum, each));
  const half = spans.map(([low, high]) => (high - low) / 2) as unknown as Vec3;
  return { kind: 'box', center, half, axes };
}

const roundOf = ({ a, axis, long, r }: Bar): Round => ({
  kind: 'cylinder',
  a,
  b: along(a, axis, long),
  r,
});

const isClearOf = (solids: readonly Solid[], { pipes }: About): boolean =>
  pipes.every(({ path, radius }) => {
    const sizes = sizesOf(radius, path.length);
    for (let s = 0; s <= path.length; s += 1) {
      const x = add(path.pieces[0]!.p, scale(path.pieces[0]!.d, s));
      if (solids.some((solid) => outside(solid, x) < radiusAt(sizes, s) + PLAY)) return false;
    }
    return true;
  });

function ballOf(solid: Solid): { readonly middle: Vec3; readonly radius: number } {
  if (solid.kind === 'box') return { middle: solid.center, radius: Math.hypot(...solid.half) };
  const middle = scale(add(solid.a, solid.b), 0.5);
  return { middle, radius: Math.hypot(...sub(solid.b, middle)) + solid.r };
}
