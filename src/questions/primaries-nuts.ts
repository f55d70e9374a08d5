/**
 * The nuts of the flanges of a bank: whether a socket goes on each, or a spanner, ring or open, and with what swing.
 *
 * In    a car, a bank of it, its problem as the car stands for work, a set that stands
 * Out   each nut with the tool that goes on and what stops the other; or why it cannot be said
 */
import type { ExhaustForm } from '../car/check-exhaust.ts';
import type { Car } from '../car/read.ts';
import { shellThing, solidThing, solidThings, type Thing } from '../gaspath/hand/surroundings.ts';
import {
  type About,
  type Nut,
  ringSwing,
  type SocketOn,
  type SocketSize,
  type Swing,
  socketOn,
  spannerSwing,
} from '../gaspath/hand/tools.ts';
import type { RouteProblem, RouteSolution } from '../gaspath/route/problem.ts';
import { laidOut } from '../gaspath/verify/read.ts';
import { atMouth, sizesAlong } from '../gaspath/verify/sizes.ts';
import { walk } from '../gaspath/verify/walk.ts';
import { Numbers } from '../loadpath/numbers.ts';
import { hexagonOf } from '../materials/spanner.ts';
import { threadNamed } from '../materials/thread.ts';
import { add, cross, dot, scale, sub, unit, type Vec3 } from '../maths/vec3.ts';
import type { Metre } from '../units/quantity.ts';
import { type NutTools, nutTools } from './nut-tools.ts';

export interface NutRoom {
  readonly cylinder: number;
  /** Counted from 1, as the holes of the flange. */
  readonly stud: number;
  /** As seen from the tube: `left`, `right`, `upper left` … */
  readonly where: string;
  /** `drive`: square of the socket that goes on, or of the smallest that does not. */
  readonly socket: SocketOn & { readonly drive: Metre };
  readonly spanner: Swing & { readonly length: Metre };
  readonly ring: Swing & { readonly length: Metre };
  /** None of them goes on, and none would with all pipes away but for what is straight out of their ports: for this. */
  readonly never?: string;
}

/** Least stroke of a spanner, degrees: a ring of twelve points, an open one that is turned over. */
export const STROKE = 30;

/** Whether any of the tools goes on. */
export const isReached = ({ socket, spanner, ring }: NutRoom): boolean =>
  socket.goes || spanner.degrees >= STROKE || ring.degrees >= STROKE;

export interface NutsReached {
  readonly reached: true;
  /** Across flats. */
  readonly flats: Metre;
  readonly thread: string;
  readonly nuts: readonly NutRoom[];
}

export type PrimariesNuts = NutsReached | { readonly reached: false; readonly message: string };

const MM = 1000;

/** A flange on its studs, mm: each stud where it stands, and how it is seen from the tube. */
export interface FlangeOnHead {
  readonly at: Vec3;
  readonly out: Vec3;
  /** To the right seen from the tube, and up. */
  readonly right: Vec3;
  readonly up: Vec3;
  readonly thick: number;
  readonly studs: readonly { readonly at: Vec3; readonly hole: number }[];
  readonly portRadius: number;
  readonly land: { readonly port: number; readonly bolt: number };
}

export interface StudSize {
  readonly major: number;
  readonly flats: number;
  readonly height: number;
  /** Out of the head. */
  readonly standsOut: number;
}

export function flangesOf(
  { flange, given }: ExhaustForm,
  numbers: Numbers,
  { ports }: RouteProblem,
): readonly FlangeOnHead[] {
  if (flange === undefined) return [];
  const width = numbers.of(flange.width);
  return ports.map(({ p, d }) => {
    const straightUp: Vec3 = Math.abs(d[2]) < 0.95 ? [0, 0, 1] : [1, 0, 0];
    const up = unit(sub(straightUp, scale(d, dot(straightUp, d))));
    const right = cross(up, d);
    return {
      at: p,
      out: d,
      right,
      up,
      thick: numbers.or(given.flange, 0) * MM,
      portRadius: (Math.max(width, numbers.or(flange.height, width)) * MM) / 2,
      land: { port: flange.land * MM, bolt: flange.boltLand * MM },
      studs: flange.bolts.map((bolt) => ({
        at: add(p, add(scale(right, numbers.of(bolt.across) * MM), scale(up, numbers.of(bolt.up) * MM))),
        hole: numbers.of(bolt.hole) * MM,
      })),
    };
  });
}

export function studSize({ flange }: ExhaustForm, numbers: Numbers): StudSize | undefined {
  const stud = flange?.stud;
  if (stud === undefined) return undefined;
  const thread = threadNamed(stud.thread)!;
  const standard = hexagonOf(thread);
  return {
    major: thread.major * MM,
    flats: numbers.or(stud.flats, standard?.flats ?? 0) * MM,
    height: numbers.or(stud.nutHeight, standard?.height ?? 0) * MM,
    standsOut: numbers.of(stud.standsOut) * MM,
  };
}

/** Stud and nut of a flange that is on, as something in the way. */
const nutThing = (name: string, at: Vec3, out: Vec3, size: StudSize, thick: number): Thing =>
  solidThing(name, {
    kind: 'cylinder',
    a: at,
    b: add(at, scale(out, Math.max(size.height, size.standsOut - thick))),
    // over the corners of the hexagon
    r: size.flats / Math.sqrt(3),
  });

/** A nut where it sits, and what stands about it. */
export interface NutAsked {
  readonly cylinder: number;
  readonly port: number;
  readonly stud: number;
  readonly where: string;
  readonly nut: Nut;
  readonly about: About;
}

export type NutsAsked =
  | {
      readonly reached: true;
      readonly size: StudSize;
      readonly thread: string;
      readonly tools: NutTools;
      readonly nuts: readonly NutAsked[];
    }
  | { readonly reached: false; readonly message: string };

/**
 * The nuts of a bank among all that stands still in the car, and the pipes and collector of a set where there is one.
 *
 * @param put  as the car stands for work
 */
export function nutsAsked(car: Car, put: Put, solution?: RouteSolution): NutsAsked {
  const exhaust = car.form.exhaust!;
  const numbers = new Numbers(car.values);
  const size = studSize(exhaust, numbers);
  if (size === undefined) {
    return {
      reached: false,
      message:
        'The car file tells no studs: write stud under exhaust, flange, with thread and how far it stands out.',
    };
  }
  const tools = nutTools(size.flats / MM);
  if (tools.sockets.length === 0) {
    return {
      reached: false,
      message: `The table has no socket for a nut of ${size.flats.toFixed(1)} mm across flats.`,
    };
  }
  const { problem, cylinders } = put;
  const flanges = flangesOf(exhaust, numbers, problem);
  const pipes = (solution === undefined ? [] : laidOut(solution)).map(({ pipe, path }) => ({
    name: `pipe of cylinder ${cylinders[pipe.port]}`,
    path,
    radius: sizesAlong(problem.tube, pipe, path.length),
  }));
  const fixed = [
    ...solidThings(problem),
    ...shellThing(problem),
    ...(solution === undefined ? [] : collectorThing(problem, solution)),
  ];
  const nutThings = flanges.map(({ studs, out, thick }, port) =>
    studs.map(({ at }) => nutThing(`a nut of cylinder ${cylinders[port]}`, at, out, size, thick)),
  );
  const nuts = flanges.flatMap((flange, port) =>
    flange.studs.map(
      ({ at }, k): NutAsked => ({
        cylinder: cylinders[port]!,
        port,
        stud: k + 1,
        where: whereOf(sub(at, flange.at), flange),
        nut: {
          at,
          axis: flange.out,
          across: flange.right,
          height: size.height,
          standsOut: Math.max(size.height, size.standsOut - flange.thick),
        },
        about: {
          pipes,
          things: [...fixed, ...nutThings.flatMap((of, p) => of.filter((_, j) => p !== port || j !== k))],
          port: flange.at,
          flangeZone: problem.clearance.flangeZone,
        },
      }),
    ),
  );
  return { reached: true, size, thread: threadNamed(exhaust.flange!.stud!.thread)!.name, tools, nuts };
}

export function primariesNuts(car: Car, put: Put, solution: RouteSolution): PrimariesNuts {
  const asked = nutsAsked(car, put, solution);
  if (!asked.reached) return asked;
  const { size, thread, tools } = asked;
  return {
    reached: true,
    flats: size.flats / MM,
    thread,
    nuts: asked.nuts.map((each, k) => {
      const room = nutRoom(each, tools);
      if (isReached(room)) return room;
      const bare = nutsAsked(car, put);
      if (!bare.reached) return room;
      const alone = nutRoom(withStubs(bare.nuts[k]!, put), tools);
      const { ring, socket } = alone;
      return isReached(alone) ? room : { ...room, never: ring.stoppedBy ?? socket.stoppedBy ?? 'its flange' };
    }),
  };
}

/** Among pipes that are no longer than what is straight out of their ports: that is there whatever the finder does. */
export const withStubs = (
  nut: NutAsked,
  { problem: { ports, tube, limits }, cylinders }: Pick<Put, 'problem' | 'cylinders'>,
): NutAsked => ({
  ...nut,
  about: {
    ...nut.about,
    pipes: ports.map((port, k) => ({
      name: `pipe of cylinder ${cylinders[k]}`,
      radius: tube.od / 2,
      path: walk(port, [
        { kind: 'straight', length: limits.minStraightFlange, radius: 0, angle: 0, normal: port.d },
      ]),
    })),
  },
});

interface Put {
  readonly problem: RouteProblem;
  readonly cylinders: readonly number[];
}

/** `the nut of cylinder 3, upper left`. */
export const nutWords = ({ cylinder, where }: Pick<NutAsked, 'cylinder' | 'where'>): string =>
  `the nut of cylinder ${cylinder}, ${where}`;

export function nutRoom({ cylinder, stud, where, nut, about }: NutAsked, tools: NutTools): NutRoom {
  const best = (swings: readonly (Swing & { readonly length: Metre })[]): Swing & { length: Metre } =>
    // a short one is fetched where the usual one has no stroke
    swings.find(({ degrees }) => degrees >= STROKE) ?? [...swings].sort((a, b) => b.degrees - a.degrees)[0]!;
  return {
    cylinder,
    stud,
    where,
    socket: bestSocket(tools.sockets, nut, about),
    spanner: best(
      tools.open.map((each) => ({ ...spannerSwing(nut, each, about), length: each.length / MM })),
    ),
    ring: best(tools.rings.map((each) => ({ ...ringSwing(nut, each, about), length: each.length / MM }))),
  };
}

/** The first that goes on, the smallest drive first; else what stops that. */
function bestSocket(
  sockets: readonly (SocketSize & { readonly drive: Metre })[],
  nut: Nut,
  about: About,
): NutRoom['socket'] {
  const tried = sockets.map((each) => ({ ...socketOn(nut, each, about), drive: each.drive }));
  return tried.find(({ goes }) => goes) ?? tried[0]!;
}

/** The collector where it stands, as something in the way. */
const collectorThing = (
  { collector, collectorBody, tube }: RouteProblem,
  { collector: { origin, axis } }: RouteSolution,
): readonly Thing[] => [
  solidThing('the collector', {
    kind: 'cylinder',
    a: origin,
    b: add(origin, scale(axis, Math.max(1, collectorBody.length))),
    r: collector.ringRadius + atMouth(tube) / 2 + collectorBody.radiusAdd,
  }),
];

function whereOf(arm: Vec3, { right, up }: FlangeOnHead): string {
  const [x, y] = [dot(arm, right), dot(arm, up)];
  const size = Math.hypot(x, y);
  const high = y > 0.35 * size ? 'upper' : y < -0.35 * size ? 'lower' : '';
  const aside = x > 0.35 * size ? 'right' : x < -0.35 * size ? 'left' : '';
  return [high, aside].filter((word) => word !== '').join(' ');
}
