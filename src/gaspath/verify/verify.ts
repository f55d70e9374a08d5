/**
 * Whether an answer keeps all that a problem of equal primaries asks: a list of breaches, empty where it does.
 *
 * Every pipe is walked from its flange by its own elements; distances are exact to a point, and along the pipe by
 * halving with the fact that a distance changes no faster than one goes. Figures in mm and degrees.
 *
 * The collector's body is held off like a solid.
 */
import { along, cross, distance, dot, length, type Vec3 } from '../../maths/vec3.ts';
import type { RouteProblem } from '../route/problem.ts';
import { type Gap, gapBreaches } from './gaps.ts';
import { type ReadPipe, type ReadSolution, readSolution } from './read.ts';
import { sizeBreaches } from './sizes.ts';
import { type Walked, walk } from './walk.ts';

export type BreachCode =
  | 'form'
  | 'ports'
  | 'inlets'
  | 'order'
  | 'pose'
  | 'start'
  | 'tangency'
  | 'end'
  | 'length'
  | 'radius'
  | 'step'
  | 'bends'
  | 'bend angle'
  | 'straight'
  | Gap;

export interface SolutionBreach {
  readonly code: BreachCode;
  readonly says: string;
  /** Port of the pipe, and of the other one. */
  readonly pipe?: number;
  readonly other?: number;
  readonly needs?: number;
  readonly has?: number;
  /** What `needs` and `has` are where they are no lengths in mm. */
  readonly in?: 'degrees' | 'number';
  readonly at?: Vec3;
  /** Of a clearance: what of `needs` is tube, from middle line to skin, of both pipes where there are two. */
  readonly metal?: number;
  /** Of two pipes: both near the collector, where less is asked. */
  readonly inZone?: boolean;
}

/** What a cut end or a mouth may be off, mm. */
const PLACE = 0.02;
/** What a straight or a clearance may lack, mm. */
export const SLACK = 0.01;
const ANGLE = 0.02;
const SQUARE = 1e-5;

const degrees = (a: Vec3, b: Vec3): number => (Math.atan2(length(cross(a, b)), dot(a, b)) * 180) / Math.PI;

export function verify(problem: RouteProblem, json: unknown): readonly SolutionBreach[] {
  const solution = readSolution(json);
  if (typeof solution === 'string') return [{ code: 'form', says: `Not of the form: ${solution}.` }];
  const breaches = [...poseBreaches(problem, solution), ...orderBreaches(problem, solution)];
  if (breaches.some(({ code }) => code === 'ports' || code === 'inlets')) return breaches;
  const walked: { readonly pipe: ReadPipe; readonly path: Walked }[] = [];
  for (const pipe of solution.pipes) {
    const own = elementBreaches(problem, pipe);
    breaches.push(...own);
    if (own.some(({ code }) => code === 'form')) continue;
    const path = walk(pipe.start, pipe.steps);
    walked.push({ pipe, path });
    breaches.push(...pathBreaches(problem, solution, pipe, path));
  }
  breaches.push(...gapBreaches(problem, solution.collector, walked));
  return breaches;
}

function poseBreaches(problem: RouteProblem, { collector: pose }: ReadSolution): SolutionBreach[] {
  const { collector } = problem;
  const off = Math.max(
    Math.abs(length(pose.axis) - 1),
    Math.abs(length(pose.ref) - 1),
    Math.abs(dot(pose.axis, pose.ref)),
  );
  if (off > SQUARE)
    return [
      {
        code: 'pose',
        says: 'Axis and ref of the collector are not unit and square.',
        needs: 0,
        has: off,
        in: 'number',
      },
    ];
  if (collector.mode === 'fixed') {
    const moved = distance(pose.origin, collector.origin);
    const turned = Math.max(degrees(pose.axis, collector.axis), degrees(pose.ref, collector.ref));
    return [
      ...(moved > PLACE
        ? [{ code: 'pose' as const, says: 'The collector is not where it is fixed.', needs: 0, has: moved }]
        : []),
      ...(turned > ANGLE
        ? [
            {
              code: 'pose' as const,
              says: 'The collector is not turned as it is fixed.',
              needs: 0,
              has: turned,
              in: 'degrees' as const,
            },
          ]
        : []),
    ];
  }
  const beyond = Math.max(
    ...[0, 1, 2].flatMap((c) => [
      collector.boxMin[c]! - pose.origin[c]!,
      pose.origin[c]! - collector.boxMax[c]!,
    ]),
  );
  const tilt = degrees(pose.axis, collector.axis);
  return [
    ...(beyond > SLACK
      ? [
          {
            code: 'pose' as const,
            says: `The collector stands ${beyond.toFixed(2)} mm outside the room that it is given.`,
          },
        ]
      : []),
    ...(tilt > collector.coneDeg + ANGLE
      ? [
          {
            code: 'pose' as const,
            says: 'The collector leans out of its cone.',
            needs: collector.coneDeg,
            has: tilt,
            in: 'degrees' as const,
          },
        ]
      : []),
  ];
}

function orderBreaches(problem: RouteProblem, { pipes }: ReadSolution): SolutionBreach[] {
  const { order, collector, ports } = problem;
  const breaches: SolutionBreach[] = [];
  const used = new Set(pipes.map(({ port }) => port));
  if (
    pipes.length !== ports.length ||
    used.size !== ports.length ||
    ![...used].every((p) => Number.isInteger(p) && p >= 0 && p < ports.length)
  )
    breaches.push({
      code: 'ports',
      says: `Each of the ${ports.length} ports needs one pipe.`,
      needs: ports.length,
      has: pipes.length,
      in: 'number',
    });
  const inlets = pipes.map(({ inlet }) => inlet);
  if (
    new Set(inlets).size !== inlets.length ||
    !inlets.every((k) => Number.isInteger(k) && k >= 0 && k < collector.n)
  )
    breaches.push({
      code: 'inlets',
      says: `Each pipe needs an inlet of its own from 0 to ${collector.n - 1}.`,
    });
  if (breaches.length > 0 || order.mode === 'free') return breaches;
  const inletOf = new Map(pipes.map(({ port, inlet }) => [port, inlet]));
  const { n } = collector;
  const senses = order.sense === 'either' ? [1, -1] : order.sense === '+' ? [1] : [-1];
  const legal = senses.some((sense) =>
    order.firing.every((port, k) => {
      const next = order.firing[k + 1];
      if (next === undefined) return true;
      return (((inletOf.get(next)! - inletOf.get(port)! - sense) % n) + n) % n === 0;
    }),
  );
  if (legal) return breaches;
  const passed = passes(order.firing, inletOf, n, senses);
  if (passed > (order.passed ?? 0))
    breaches.push({
      code: 'order',
      says: 'Round the collector the inlets do not follow the firing order.',
      ...(order.passed === undefined ? {} : { needs: order.passed, has: passed, in: 'number' as const }),
    });
  return breaches;
}

/** Inlets between one pulse and the next, the shorter way of those allowed, over a round. */
function passes(
  firing: readonly number[],
  inletOf: ReadonlyMap<number, number>,
  n: number,
  senses: readonly number[],
): number {
  const round = firing.length === n ? [...firing, firing[0]!] : firing;
  return round.slice(1).reduce((sum, port, k) => {
    const ways = senses.map((sense) => {
      let at = inletOf.get(round[k]!)!;
      let between = -1;
      while (at !== inletOf.get(port)) {
        at = (at + sense + n) % n;
        between += 1;
      }
      return Math.max(0, between);
    });
    return sum + Math.min(...ways);
  }, 0);
}

function elementBreaches(problem: RouteProblem, pipe: ReadPipe): SolutionBreach[] {
  const { limits } = problem;
  const { port, steps } = pipe;
  const breaches: SolutionBreach[] = [];
  const first = steps[0];
  const last = steps.at(-1);
  if (first === undefined || last === undefined || first.kind !== 'straight' || last.kind !== 'straight')
    return [{ code: 'form', pipe: port, says: 'A pipe begins and ends with a straight.' }];
  if (steps.some((each) => each.length < 0 || each.radius < 0 || each.angle < 0))
    return [{ code: 'form', pipe: port, says: 'Lengths, radii and angles are not negative.' }];
  const bends = steps.filter(({ kind }) => kind === 'bend');
  if (bends.some(({ normal }) => !(length(normal) > 0.5)))
    return [{ code: 'form', pipe: port, says: 'The normal of a bend is a unit direction.' }];
  if (bends.length > limits.maxBends)
    breaches.push({
      code: 'bends',
      pipe: port,
      says: 'Too many bends.',
      needs: limits.maxBends,
      has: bends.length,
      in: 'number',
    });
  breaches.push(...sizeBreaches(problem, pipe).map((each) => ({ ...each, pipe: port })));
  for (const { angle } of bends) {
    const deg = (angle * 180) / Math.PI;
    if (deg > limits.maxBendDeg + 1e-3)
      breaches.push({
        code: 'bend angle',
        pipe: port,
        says: 'A bend turns too far.',
        needs: limits.maxBendDeg,
        has: deg,
        in: 'degrees',
      });
  }
  // straights that follow each other are one; none between two bends counts as zero
  const runs: number[] = [0];
  for (const { kind, length: long } of steps) {
    if (kind === 'straight') runs[runs.length - 1]! += long;
    else runs.push(0);
  }
  runs.forEach((has, k) => {
    const [needs, where] =
      k === 0 && runs.length === 1
        ? [Math.max(limits.minStraightFlange, limits.minStraightCollector), 'from flange to collector']
        : k === 0
          ? [limits.minStraightFlange, 'at the flange']
          : k === runs.length - 1
            ? [limits.minStraightCollector, 'at the collector']
            : [limits.minStraightBetween, 'between two bends'];
    if (has < needs - SLACK)
      breaches.push({
        code: 'straight',
        pipe: port,
        says: `The straight ${where} is too short.`,
        needs,
        has,
      });
  });
  return breaches;
}

function pathBreaches(
  problem: RouteProblem,
  solution: ReadSolution,
  pipe: ReadPipe,
  path: Walked,
): SolutionBreach[] {
  const { port, start, inlet } = pipe;
  const breaches: SolutionBreach[] = [];
  const own = problem.ports[port]!;
  const off = distance(start.p, own.p);
  if (off > PLACE)
    breaches.push({
      code: 'start',
      pipe: port,
      says: 'Does not start at its flange point.',
      needs: 0,
      has: off,
    });
  const turn = degrees(start.d, own.d);
  if (turn > ANGLE || Math.abs(length(start.d) - 1) > SQUARE * 100)
    breaches.push({
      code: 'start',
      pipe: port,
      says: 'Does not leave along its port.',
      needs: 0,
      has: turn,
      in: 'degrees',
    });
  if (path.lean > SQUARE)
    breaches.push({
      code: 'tangency',
      pipe: port,
      says: 'The normal of a bend is not square to the pipe where it begins.',
      needs: 0,
      has: path.lean,
      in: 'number',
    });
  const { origin, axis, ref } = solution.collector;
  const [alongRef, across] = standsAt(problem.collector, inlet);
  const mouth = along(along(origin, ref, alongRef), cross(axis, ref), across);
  const miss = distance(path.end, mouth);
  if (miss > PLACE)
    breaches.push({ code: 'end', pipe: port, says: 'Does not end at its inlet.', needs: 0, has: miss });
  const skew = degrees(path.endDirection, axis);
  if (skew > ANGLE)
    breaches.push({
      code: 'end',
      pipe: port,
      says: 'Does not end along the collector.',
      needs: 0,
      has: skew,
      in: 'degrees',
    });
  const { target, tol } = problem.length;
  if (Math.abs(path.length - target) > tol + 1e-6)
    breaches.push({
      code: 'length',
      pipe: port,
      says: `Not of the length asked, ${target} ± ${tol} mm.`,
      needs: target,
      has: path.length,
    });
  return breaches;
}

/** Where an inlet stands in the plane of the mouth, along ref and across. */
function standsAt({ n, ringRadius, rows }: RouteProblem['collector'], inlet: number): [number, number] {
  if (rows === undefined) {
    const clock = (2 * Math.PI * inlet) / n;
    return [ringRadius * Math.cos(clock), ringRadius * Math.sin(clock)];
  }
  const all = rows.counts.flatMap((count, row) =>
    Array.from({ length: count }, (_, at) => ({ count, row, at })),
  );
  const { count, row, at } = all[inlet]!;
  return [rows.pitch * (at - 0.5 * (count - 1)), rows.pitch * (row - 0.5 * (rows.counts.length - 1))];
}
