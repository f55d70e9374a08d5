/** Reads a solution as it was handed over; says what is not of the form. */
import type { Vec3 } from '../../maths/vec3.ts';
import { type Step, type Walked, walk } from './walk.ts';

export interface ReadPipe {
  readonly port: number;
  readonly inlet: number;
  readonly start: { readonly p: Vec3; readonly d: Vec3 };
  readonly steps: readonly Step[];
  /** Where the tube changes its size, from the flange; what the problem says where it is left out. */
  readonly stepsAt?: readonly number[];
}

export interface ReadSolution {
  readonly collector: { readonly origin: Vec3; readonly axis: Vec3; readonly ref: Vec3 };
  readonly pipes: readonly ReadPipe[];
}

class Unread extends Error {}

const SOLUTION = 'primaries-solution/1';

/** The solution, or in words what is not of the form. */
export function readSolution(json: unknown): ReadSolution | string {
  try {
    const top = object(json, '$');
    if (top.format !== undefined && top.format !== SOLUTION) throw new Unread(`$.format is not ${SOLUTION}`);
    const collector = object(top.collector, '$.collector');
    return {
      collector: {
        origin: vector(collector.origin, '$.collector.origin'),
        axis: vector(collector.axis, '$.collector.axis'),
        ref: vector(collector.ref, '$.collector.ref'),
      },
      pipes: list(top.pipes, '$.pipes').map((each, i) => pipeOf(each, `$.pipes[${i}]`)),
    };
  } catch (reason) {
    if (reason instanceof Unread) return reason.message;
    throw reason;
  }
}

function pipeOf(json: unknown, at: string): ReadPipe {
  const pipe = object(json, at);
  const start = object(pipe.start, `${at}.start`);
  return {
    port: number(pipe.port, `${at}.port`),
    inlet: number(pipe.inlet, `${at}.inlet`),
    start: { p: vector(start.p, `${at}.start.p`), d: vector(start.d, `${at}.start.d`) },
    steps: list(pipe.elements, `${at}.elements`).map((each, i) => stepOf(each, `${at}.elements[${i}]`)),
    ...(pipe.stepsAt === undefined
      ? {}
      : {
          stepsAt: list(pipe.stepsAt, `${at}.stepsAt`).map((each, i) => number(each, `${at}.stepsAt[${i}]`)),
        }),
  };
}

function stepOf(json: unknown, at: string): Step {
  const element = object(json, at);
  if (element.kind === 'straight')
    return {
      kind: 'straight',
      length: number(element.length, `${at}.length`),
      radius: 0,
      angle: 0,
      normal: [0, 0, 0],
    };
  if (element.kind !== 'bend') throw new Unread(`${at}.kind is neither straight nor bend`);
  return {
    kind: 'bend',
    length: 0,
    radius: number(element.radius, `${at}.radius`),
    angle: (number(element.angleDeg, `${at}.angleDeg`) * Math.PI) / 180,
    normal: vector(element.normal, `${at}.normal`),
  };
}

function object(of: unknown, at: string): Readonly<Record<string, unknown>> {
  if (typeof of !== 'object' || of === null || Array.isArray(of)) throw new Unread(`${at} is no object`);
  return of as Record<string, unknown>;
}

function list(of: unknown, at: string): readonly unknown[] {
  if (!Array.isArray(of)) throw new Unread(`${at} is no list`);
  return of;
}

function number(of: unknown, at: string): number {
  if (typeof of !== 'number' || !Number.isFinite(of)) throw new Unread(`${at} is no number`);
  return of;
}

function vector(of: unknown, at: string): Vec3 {
  const read = list(of, at);
  if (read.length !== 3) throw new Unread(`${at} has not three numbers`);
  return [number(read[0], `${at}[0]`), number(read[1], `${at}[1]`), number(read[2], `${at}[2]`)];
}

/** The pipes of an answer walked; empty where it is none. */
export function laidOut(json: unknown): readonly { readonly pipe: ReadPipe; readonly path: Walked }[] {
  const read = readSolution(json);
  return typeof read === 'string'
    ? []
    : read.pipes.map((pipe) => ({ pipe, path: walk(pipe.start, pipe.steps) }));
}
