/**
 * Whether a socket, a ring or an open spanner goes on a nut of a flange, and what stops it. mm; angles in degrees.
 *
 * In    the nut on its stud, what stands about it, the tools
 * Out   the extension bar with which a socket goes on, the swing of a spanner, what is in the way
 *
 * Tools are round bars and discs with flat ends. Against pipes they are exact to the spacing of places along a pipe;
 * against solids and bodywork by places on their skin. GP-n are the equations of docs/theory/gas-path.md.
 */
import { add, along, cross, distance, scale, type Vec3 } from '../../maths/vec3.ts';
import { outsideCylinder } from '../verify/obstacles.ts';
import { radiusAt, sizesOf, type Thick } from '../verify/sizes.ts';
import { pointAt, type Walked } from '../verify/walk.ts';
import type { Thing } from './surroundings.ts';
import {
  type Bar,
  type Nut,
  openSpannerOn,
  PLAY,
  type RingSize,
  ratchetHandle,
  ringHandle,
  ringPushed,
  type SocketSize,
  type SpannerSize,
  socketBehind,
  socketPushed,
  wayAt,
} from './tool-bars.ts';

export { type Nut, PLAY, type RingSize, type SocketSize, type SpannerSize };

export interface About {
  readonly pipes: readonly { readonly name: string; readonly path: Walked; readonly radius: Thick }[];
  readonly things: readonly Thing[];
  /** What carries the flange is not asked within this distance of the port. */
  readonly port: Vec3;
  readonly flangeZone: number;
}

/** Spacing of places on pipes and tools, mm. */
const ALONG_PIPE = 2;
const ON_TOOL = 4;

/** What is in the way of the bars; undefined where they are clear. */
export function inTheWay(bars: readonly Bar[], about: About): string | undefined {
  for (const bar of bars) {
    for (const { name, path, radius: thick } of about.pipes) {
      const sizes = sizesOf(thick, path.length);
      const reach = bar.long + bar.r + Math.max(...sizes.map(({ radius }) => radius)) + PLAY;
      const places = placesAlong(path);
      for (let k = 0; k < places.length; k += 1) {
        const x = places[k]!;
        const from = distance(x, bar.a);
        if (from > reach) {
          // a pipe comes nearer no faster than one goes along it
          k += Math.max(0, Math.floor((from - reach) / ALONG_PIPE) - 1);
          continue;
        }
        if (outsideCylinder(x, bar.a, bar.axis, bar.long, bar.r) < radiusAt(sizes, k * ALONG_PIPE) + PLAY)
          return name;
      }
    }
    const middle = along(bar.a, bar.axis, bar.long / 2);
    const size = bar.long / 2 + bar.r;
    let skin: readonly Vec3[] | undefined;
    for (const thing of about.things) {
      const { name, from, ball, carriesFlange } = thing;
      if (ball !== undefined && distance(middle, ball.middle) > size + ball.radius + PLAY) continue;
      if (isFarFrom(bar, thing)) continue;
      skin ??= placesOn(bar);
      for (const x of skin) {
        if (carriesFlange && distance(x, about.port) < about.flangeZone) continue;
        if (from(x, PLAY + 1) < PLAY) return name;
      }
    }
  }
  return undefined;
}

/** No place of the bar is farther from the nearest of some on its axis than these are from the thing. */
function isFarFrom({ a, axis, long, r }: Bar, { from }: Thing): boolean {
  const parts = Math.max(1, Math.ceil(long / (3 * r)));
  const reach = Math.hypot(r, long / parts / 2) + PLAY;
  for (let k = 0; k < parts; k += 1)
    if (from(along(a, axis, (long * (k + 0.5)) / parts), reach + 1) <= reach) return false;
  return true;
}

/** Places along pipes that are asked of tool after tool. */
const placed = new WeakMap<Walked, readonly Vec3[]>();

function placesAlong(path: Walked): readonly Vec3[] {
  const known = placed.get(path);
  if (known !== undefined) return known;
  const places = Array.from({ length: Math.floor(path.length / ALONG_PIPE) + 1 }, (_, k) =>
    pointAt(path, k * ALONG_PIPE),
  );
  placed.set(path, places);
  return places;
}

function placesOn({ a, axis, long, r }: Bar): readonly Vec3[] {
  const u = cross(axis, Math.abs(axis[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0]);
  const size = Math.hypot(...u);
  const v = cross(axis, u);
  const rings = Math.max(1, Math.ceil(long / ON_TOOL));
  const round = Math.max(6, Math.ceil((2 * Math.PI * r) / ON_TOOL));
  const places: Vec3[] = [];
  const ring = (at: Vec3, radius: number): void => {
    for (let k = 0; k < round; k += 1) {
      const angle = (2 * Math.PI * k) / round;
      const out = add(
        scale(u, (radius * Math.cos(angle)) / size),
        scale(v, (radius * Math.sin(angle)) / size),
      );
      places.push(add(at, out));
    }
  };
  for (let k = 0; k <= rings; k += 1) ring(along(a, axis, (long * k) / rings), r);
  // flat ends
  for (let radius = r - ON_TOOL; radius > 0; radius -= ON_TOOL) {
    ring(a, radius);
    ring(along(a, axis, long), radius);
  }
  return places;
}

/** Least swing with which a ratchet is worked; a fine one clicks at 5°. */
export const RATCHET_SWING = 20;

export interface SocketOn {
  readonly goes: boolean;
  /** Length of the bar behind it; 0 is the ratchet on the socket itself. */
  readonly bar?: number;
  readonly stoppedBy?: string;
}

/**
 * The shortest bar with which a socket can be put on along the stud and worked.  [GP-3]
 *
 * It has to pass over the end of the stud, so the room behind it is clear by that much more.
 */
export function socketOn(nut: Nut, size: SocketSize, about: About): SocketOn {
  const stopped = inTheWay(socketPushed(nut, size), about);
  if (stopped !== undefined) return { goes: false, stoppedBy: stopped };
  let stoppedBy: string | undefined;
  for (const bar of [0, ...size.bar.lengths]) {
    const why = inTheWay(socketBehind(nut, size, bar), about);
    const swings =
      why === undefined ? swing(nut, about, (way) => [ratchetHandle(nut, size, bar, way)]) : undefined;
    if (swings !== undefined && swings.degrees >= RATCHET_SWING) return { goes: true, bar };
    stoppedBy ??= why ?? swings?.stoppedBy;
  }
  return { goes: false, ...(stoppedBy === undefined ? {} : { stoppedBy }) };
}

export interface Swing {
  /** Widest run of clear directions. */
  readonly degrees: number;
  /** What ends it. */
  readonly stoppedBy?: string;
}

/** Directions are tried so far apart, degrees. */
export const TURN = 3;

/** What is in the way at each direction. */
export const stopsRound = (
  nut: Nut,
  about: About,
  toolAt: (way: Vec3) => readonly Bar[],
): readonly (string | undefined)[] =>
  Array.from({ length: 360 / TURN }, (_, k) => inTheWay(toolAt(wayAt(nut, k * TURN)), about));

/** The widest run of directions in which a tool stands clear. */
function swing(nut: Nut, about: About, toolAt: (way: Vec3) => readonly Bar[]): Swing {
  const stops = stopsRound(nut, about, toolAt);
  const count = stops.length;
  if (stops.every((each) => each === undefined)) return { degrees: 360 };
  let best: Swing = { degrees: 0 };
  const names = stops.filter((each) => each !== undefined);
  if (names.length === count) return { degrees: 0, stoppedBy: mostOf(names) };
  for (let k = 0; k < count; k += 1) {
    if (stops[k] !== undefined || stops[(k + count - 1) % count] === undefined) continue;
    let run = 1;
    while (stops[(k + run) % count] === undefined) run += 1;
    const degrees = (run - 1) * TURN;
    if (degrees > best.degrees || best.stoppedBy === undefined)
      best = { degrees: Math.max(degrees, best.degrees), stoppedBy: stops[(k + run) % count]! };
  }
  return best;
}

function mostOf(names: readonly string[]): string {
  const counts = new Map<string, number>();
  for (const name of names) counts.set(name, (counts.get(name) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1])[0]![0];
}

/**
 * The swing of an open spanner about a nut, its head on and its handle square to the stud.  [GP-4]
 *
 * A hexagon asks 60° a stroke, 30° with jaws set at 15° and the spanner turned over between strokes.
 */
export const spannerSwing = (nut: Nut, size: SpannerSize, about: About): Swing =>
  swing(nut, about, (way) => openSpannerOn(nut, size, way));

/**
 * The swing of a ring spanner about a nut, put over the end of the stud and lifted off the hexagon at each stroke.  [GP-7]
 *
 * A ring of twelve points asks 30° a stroke.
 */
export function ringSwing(nut: Nut, size: RingSize, about: About): Swing {
  const stoppedBy = inTheWay([ringPushed(nut, size)], about);
  return stoppedBy === undefined
    ? swing(nut, about, (way) => ringHandle(nut, size, way))
    : { degrees: 0, stoppedBy };
}
