/**
 * Whether a socket or an open spanner goes on a nut of a flange, and what stops it. mm; angles in degrees.
 *
 * In    the nut on its stud, what stands about it, the tools
 * Out   the extension bar with which a socket goes on, the swing of an open spanner, what is in the way
 *
 * Tools are round bars and discs with flat ends. Against pipes they are exact to the spacing of places along a pipe;
 * against solids and bodywork by places on their skin. GP-n are the equations of docs/theory/gas-path.md.
 */
import { add, along, cross, distance, type Vec3 } from '../../maths/vec3.ts';
import { outsideCylinder } from '../verify/obstacles.ts';
import { pointAt, type Walked } from '../verify/walk.ts';
import type { Thing } from './surroundings.ts';

export interface Nut {
  /** On the axis of the stud, at the face that the nut sits on. */
  readonly at: Vec3;
  /** Unit, out along the stud. */
  readonly axis: Vec3;
  /** Unit, square to it: from which spanners are turned. */
  readonly across: Vec3;
  readonly height: number;
  /** Stud beyond the face that the nut sits on. */
  readonly standsOut: number;
}

export interface SocketSize {
  readonly atNut: number;
  readonly atDrive: number;
  readonly length: number;
  readonly bar: { readonly ends: number; readonly shank: number; readonly lengths: readonly number[] };
  readonly ratchet: {
    readonly across: number;
    readonly high: number;
    readonly handle: number;
    readonly thick: number;
  };
}

export interface SpannerSize {
  readonly flats: number;
  readonly width: number;
  readonly thickness: number;
  readonly handle: number;
  readonly length: number;
}

export interface About {
  readonly pipes: readonly { readonly name: string; readonly path: Walked; readonly radius: number }[];
  readonly things: readonly Thing[];
  /** What carries the flange is not asked within this distance of the port. */
  readonly port: Vec3;
  readonly flangeZone: number;
}

/** A round bar or disc. */
interface Bar {
  readonly a: Vec3;
  readonly axis: Vec3;
  readonly long: number;
  readonly r: number;
}

/** Air that a tool needs all round, mm. */
export const PLAY = 0.5;
/** Spacing of places on pipes and tools, mm. */
const ALONG_PIPE = 2;
const ON_TOOL = 4;

/** What is in the way of the bars; undefined where they are clear. */
function inTheWay(bars: readonly Bar[], about: About): string | undefined {
  for (const bar of bars) {
    for (const { name, path, radius } of about.pipes) {
      const reach = bar.long + bar.r + radius + PLAY;
      for (let s = 0; s <= path.length; s += ALONG_PIPE) {
        const x = pointAt(path, s);
        const from = distance(x, bar.a);
        if (from > reach) {
          // a pipe comes nearer no faster than one goes along it
          s += Math.max(0, Math.floor((from - reach) / ALONG_PIPE) - 1) * ALONG_PIPE;
          continue;
        }
        if (outsideCylinder(x, bar.a, bar.axis, bar.long, bar.r) < radius + PLAY) return name;
      }
    }
    const skin = placesOn(bar);
    const middle = along(bar.a, bar.axis, bar.long / 2);
    const size = bar.long / 2 + bar.r;
    for (const { name, from, ball, carriesFlange } of about.things) {
      if (ball !== undefined && distance(middle, ball.middle) > size + ball.radius + PLAY) continue;
      for (const x of skin) {
        if (carriesFlange && distance(x, about.port) < about.flangeZone) continue;
        if (from(x, PLAY + 1) < PLAY) return name;
      }
    }
  }
  return undefined;
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
        scaled(u, (radius * Math.cos(angle)) / size),
        scaled(v, (radius * Math.sin(angle)) / size),
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

const scaled = (v: Vec3, k: number): Vec3 => [v[0] * k, v[1] * k, v[2] * k];

/** Least swing with which a ratchet is worked; a fine one clicks at 5°. */
const RATCHET_SWING = 20;

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
  const { ratchet } = size;
  const { at, axis, standsOut } = nut;
  const half = size.length / 2;
  const drawn = size.length + standsOut;
  const pushed: Bar[] = [
    { a: at, axis, long: half, r: size.atNut / 2 },
    { a: along(at, axis, half), axis, long: drawn - half, r: Math.max(size.atNut, size.atDrive) / 2 },
  ];
  const stopped = inTheWay(pushed, about);
  if (stopped !== undefined) return { goes: false, stoppedBy: stopped };
  let stoppedBy: string | undefined;
  for (const bar of [0, ...size.bar.lengths]) {
    const end = along(at, axis, size.length + bar);
    const behind: Bar[] = [
      ...(bar === 0
        ? []
        : [
            { a: along(at, axis, size.length), axis, long: bar, r: size.bar.shank / 2 },
            { a: along(end, axis, -size.bar.ends), axis, long: size.bar.ends, r: size.bar.ends / 2 },
          ]),
      { a: end, axis, long: ratchet.high, r: ratchet.across / 2 },
    ];
    const why = inTheWay(behind, about);
    const swings =
      why === undefined
        ? swing(nut, about, (way) => [
            {
              a: along(along(end, axis, ratchet.high / 2), way, ratchet.across / 2),
              axis: way,
              long: ratchet.handle,
              r: ratchet.thick / 2,
            },
          ])
        : undefined;
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
const TURN = 3;

/** The widest run of directions in which a tool stands clear. */
function swing(nut: Nut, about: About, toolAt: (way: Vec3) => readonly Bar[]): Swing {
  const side = cross(nut.axis, nut.across);
  const count = 360 / TURN;
  const stops = Array.from({ length: count }, (_, k) => {
    const angle = (k * TURN * Math.PI) / 180;
    const way = add(scaled(nut.across, Math.cos(angle)), scaled(side, Math.sin(angle)));
    return inTheWay(toolAt(way), about);
  });
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
export function spannerSwing(nut: Nut, size: SpannerSize, about: About): Swing {
  const { at, axis, height } = nut;
  const foot = along(at, axis, Math.max(PLAY, (height - size.thickness) / 2));
  const middle = along(foot, axis, size.thickness / 2);
  const jaw = (size.width - size.flats) / 4;
  return swing(nut, about, (way) => {
    const side = cross(axis, way);
    const r = size.thickness / 2;
    const disc = (ahead: number, aside: number): Bar => ({
      a: along(along(foot, way, ahead), side, aside),
      axis,
      long: size.thickness,
      r: jaw,
    });
    const aside = size.flats / 2 + jaw;
    const out = along(middle, way, size.flats / 2 + 2 * jaw);
    const long = size.length - size.flats / 2 - 2 * jaw;
    return [
      // jaws from their tips to their root, and the root between them
      ...[-size.flats / 2 + jaw, 0, size.flats / 2].flatMap((x) => [disc(x, aside), disc(x, -aside)]),
      ...[-1, 0, 1].map((k) => disc(size.flats / 2 + jaw, (k * size.flats) / 2)),
      // flat bar: its middle and both edges
      ...[0, 1, -1].map((k) => ({
        a: along(out, side, k * Math.max(0, size.handle / 2 - r)),
        axis: way,
        long,
        r,
      })),
    ];
  });
}
