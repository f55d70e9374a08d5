/**
 * The nuts of the flanges of a bank: whether a socket goes on each, or an open spanner and with what swing.
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
  type SocketOn,
  type Swing,
  socketOn,
  spannerSwing,
} from '../gaspath/hand/tools.ts';
import type { RouteProblem, RouteSolution } from '../gaspath/route/problem.ts';
import { laidOut } from '../gaspath/verify/read.ts';
import { Numbers } from '../loadpath/numbers.ts';
import { hexagonOf, openSpannerFor, type Socket, STUBBY, socketsFor } from '../materials/spanner.ts';
import { threadNamed } from '../materials/thread.ts';
import { add, cross, dot, scale, sub, unit, type Vec3 } from '../maths/vec3.ts';
import type { Metre } from '../units/quantity.ts';

export interface NutRoom {
  readonly cylinder: number;
  /** Counted from 1, as the holes of the flange. */
  readonly stud: number;
  /** As seen from the tube: `left`, `right`, `upper left` … */
  readonly where: string;
  /** `drive`: square of the socket that goes on, or of the smallest that does not. */
  readonly socket: SocketOn & { readonly drive: Metre };
  readonly spanner: Swing & { readonly length: Metre };
}

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

export function primariesNuts(
  car: Car,
  put: { readonly problem: RouteProblem; readonly cylinders: readonly number[] },
  solution: RouteSolution,
): PrimariesNuts {
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
  const sockets = socketsFor(size.flats / MM);
  if (sockets.length === 0) {
    return {
      reached: false,
      message: `The table has no socket for a nut of ${size.flats.toFixed(1)} mm across flats.`,
    };
  }
  const { problem, cylinders } = put;
  const radius = problem.tube.od / 2;
  const flanges = flangesOf(exhaust, numbers, problem);
  const pipes = laidOut(solution).map(({ pipe, path }) => ({
    name: `pipe of cylinder ${cylinders[pipe.port]}`,
    path,
    radius,
  }));
  const fixed = [...solidThings(problem), ...shellThing(problem), ...collectorThing(problem, solution)];
  const nutThings = flanges.map(({ studs, out, thick }, port) =>
    studs.map(({ at }) => nutThing(`a nut of cylinder ${cylinders[port]}`, at, out, size, thick)),
  );
  const spanner = openSpannerFor(size.flats / MM);
  const nuts = flanges.flatMap((flange, port) =>
    flange.studs.map(({ at }, k): NutRoom => {
      const about: About = {
        pipes,
        things: [...fixed, ...nutThings.flatMap((of, p) => of.filter((_, j) => p !== port || j !== k))],
        port: flange.at,
        flangeZone: problem.clearance.flangeZone,
      };
      const nut: Nut = {
        at,
        axis: flange.out,
        across: flange.right,
        height: size.height,
        standsOut: Math.max(size.height, size.standsOut - flange.thick),
      };
      const on = bestSocket(sockets, nut, about);
      const swingOf = (long: Metre): Swing & { length: Metre } => ({
        ...spannerSwing(
          nut,
          {
            flats: size.flats,
            width: spanner.width * MM,
            thickness: spanner.thickness * MM,
            handle: spanner.handle * MM,
            length: long * MM,
          },
          about,
        ),
        length: long,
      });
      const usual = swingOf(spanner.length);
      // a short one is fetched where the usual one has no stroke
      const swing = usual.degrees >= 30 || spanner.length <= STUBBY ? usual : swingOf(STUBBY);
      return {
        cylinder: cylinders[port]!,
        stud: k + 1,
        where: whereOf(sub(at, flange.at), flange),
        socket: on,
        spanner: swing.degrees > usual.degrees ? swing : usual,
      };
    }),
  );
  return {
    reached: true,
    flats: size.flats / MM,
    thread: threadNamed(exhaust.flange!.stud!.thread)!.name,
    nuts,
  };
}

/** The first that goes on, the smallest drive first; else what stops that. */
function bestSocket(sockets: readonly Socket[], nut: Nut, about: About): NutRoom['socket'] {
  const tried = sockets.map((each) => {
    const size = {
      atNut: each.atNut * MM,
      atDrive: each.atDrive * MM,
      length: each.length * MM,
      bar: {
        ends: each.bar.ends * MM,
        shank: each.bar.shank * MM,
        lengths: each.bar.lengths.map((long) => long * MM),
      },
      ratchet: {
        across: each.ratchet.across * MM,
        high: each.ratchet.high * MM,
        handle: each.ratchet.handle * MM,
        thick: each.ratchet.thick * MM,
      },
    };
    return { ...socketOn(nut, size, about), drive: each.drive };
  });
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
    r: collector.ringRadius + tube.od / 2 + collectorBody.radiusAdd,
  }),
];

function whereOf(arm: Vec3, { right, up }: FlangeOnHead): string {
  const [x, y] = [dot(arm, right), dot(arm, up)];
  const size = Math.hypot(x, y);
  const high = y > 0.35 * size ? 'upper' : y < -0.35 * size ? 'lower' : '';
  const aside = x > 0.35 * size ? 'right' : x < -0.35 * size ? 'left' : '';
  return [high, aside].filter((word) => word !== '').join(' ');
}
