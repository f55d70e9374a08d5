/**
 * A set of primaries as people look at it: each pipe with its length, bends and tightest place, in car axes and SI.
 *
 * In    the problem as it was put, an answer to it in the exchange form
 * Out   the pipes, what is breached, where each is nearest to what it must stay clear of
 */
import { into, placeAt, type Station, stations } from '../gaspath/pipework/centreline.ts';
import {
  bendsOf,
  developedLength,
  type Element,
  elementLength,
  NO_LENGTH,
  type Pipe,
  tubeOf,
} from '../gaspath/pipework/pipe.ts';
import { pipeMass, stepPlaces, steppedElements } from '../gaspath/pipework/stepped.ts';
import { solutionJson } from '../gaspath/route/exchange.ts';
import { inletPlace } from '../gaspath/route/inlets.ts';
import { overOf } from '../gaspath/route/order.ts';
import type { Pose, RoutedPipe, RouteProblem, RouteSolution } from '../gaspath/route/problem.ts';
import { nearPlaces } from '../gaspath/verify/nearest.ts';
import { laidOut } from '../gaspath/verify/read.ts';
import { type SolutionBreach, verify } from '../gaspath/verify/verify.ts';
import { scale, type Vec3 } from '../maths/vec3.ts';
import type { Kilogram, Metre, Radian } from '../units/quantity.ts';
import { EXHAUST_CAUTION, STANDING_CAUTION } from './cautions.ts';

export interface TightPlace {
  /** Against what: `cover`, `pipe of cylinder 3`, `crankcase`. */
  readonly against: string;
  /** Metal to metal, cold. */
  readonly gap: Metre;
  /** Of it beyond what was asked; below nothing it is breached. */
  readonly spare: Metre;
  /** On the centre line, car axes. */
  readonly at: Vec3;
}

export interface PrimaryOfSet {
  readonly cylinder: number;
  /** Counted from 1, in the sense of the ring. */
  readonly inlet: number;
  readonly pipe: Pipe;
  readonly length: Metre;
  readonly bends: number;
  /** All bends together. */
  readonly turned: Radian;
  readonly mass: Kilogram;
  /** The least spare, where anything is within reach. */
  readonly tightest?: TightPlace;
  /** Points of the centre line, close enough to draw by. */
  readonly line: readonly Vec3[];
  /** Its tubes in the order of the flow, each with its part of that line; one where the tube does not step. */
  readonly tubes: readonly TubeOfPipe[];
  /** Where pieces meet along the centre line: the welds of a set cut from stock bends. */
  readonly seams: readonly { readonly at: Vec3; readonly od: Metre }[];
}

export interface TubeOfPipe {
  readonly od: Metre;
  readonly wall: Metre;
  /** From the flange, where its outside begins. */
  readonly from: Metre;
  readonly line: readonly Vec3[];
}

export interface PrimariesSet {
  readonly pipes: readonly PrimaryOfSet[];
  readonly collector: {
    readonly mouth: Vec3;
    readonly axis: Vec3;
    readonly inlets: readonly Vec3[];
    /** The same in the plane of the mouth, seen with the flow, inlet 1 of a ring on top: to the right, up. */
    readonly seen: readonly (readonly [Metre, Metre])[];
    readonly inRows: boolean;
  };
  readonly target: Metre;
  readonly within: Metre;
  /** Longest less shortest. */
  readonly apart: Metre;
  readonly mass: Kilogram;
  /** Least spare of all. */
  readonly spare?: Metre;
  /** Inlets that are passed over in a round of the firing order; none where they stand in rotation. */
  readonly passed: number;
  /** In the order in which they fire, the inlets that are met. */
  readonly order: readonly { readonly cylinder: number; readonly inlet: number }[];
  /** What the check by other means found amiss; none where the set stands. */
  readonly breaches: readonly string[];
  readonly cautions: readonly string[];
}

const MM = 1000;

export function primariesSet(
  problem: RouteProblem,
  cylinders: readonly number[],
  solution: RouteSolution,
): PrimariesSet {
  const json = solutionJson(solution);
  const breaches = verify(problem, json);
  const near = tightPlaces(problem, solution, cylinders);
  const pipes = [...solution.pipes]
    .sort((a, b) => a.port - b.port)
    .map((routed) => primaryDrawn(problem, cylinders, routed, near.get(routed.port)));
  const spares = pipes.flatMap(({ tightest }) => (tightest === undefined ? [] : [tightest.spare]));
  const lengths = pipes.map(({ length }) => length);
  const inletOf = new Map(solution.pipes.map(({ port, inlet }) => [port, inlet]));
  const firing = problem.order.mode === 'rotation' ? problem.order.firing : [...cylinders.keys()];
  return {
    pipes,
    collector: collectorDrawn(solution.collector, problem),
    target: problem.length.target / MM,
    within: problem.length.tol / MM,
    apart: Math.max(...lengths) - Math.min(...lengths),
    mass: pipes.reduce((sum, { mass }) => sum + mass, 0),
    ...(spares.length === 0 ? {} : { spare: Math.min(...spares) }),
    passed: overOf(
      problem,
      problem.ports.map((_, port) => inletOf.get(port)!),
    ),
    order: firing.map((port) => ({ cylinder: cylinders[port]!, inlet: inletOf.get(port)! + 1 })),
    breaches: breaches.map((each) => breachWords(each, cylinders)),
    cautions: [EXHAUST_CAUTION, STANDING_CAUTION],
  };
}

/** One pipe as people look at it; its tightest place as it was found by whoever asks. */
export function primaryDrawn(
  problem: RouteProblem,
  cylinders: readonly number[],
  routed: RoutedPipe,
  tightest: TightPlace | undefined,
): PrimaryOfSet {
  const pipe = pipeOf(problem.tube, String(cylinders[routed.port]), routed);
  const tubes = tubesOf(pipe);
  return {
    cylinder: cylinders[routed.port]!,
    inlet: routed.inlet + 1,
    pipe,
    length: developedLength(pipe),
    bends: bendsOf(pipe).length,
    turned: bendsOf(pipe).reduce((sum, { angle }) => sum + angle, 0),
    mass: pipeMass(pipe),
    ...(tightest === undefined ? {} : { tightest }),
    // where a tube begins the one before it ends: once is enough
    line: tubes.flatMap(({ line }, k) => (k === 0 ? line : line.slice(1))),
    tubes,
    seams: seamsOf(pipe),
  };
}

/** A routed pipe in metres, cut where its tube steps. */
function pipeOf(tube: RouteProblem['tube'], name: string, { start, elements, stepsAt }: RoutedPipe): Pipe {
  const density = tube.densityKgM3;
  const drawn = elements.map(
    (each): Element =>
      each.kind === 'straight'
        ? { kind: 'straight', length: each.length / MM }
        : {
            kind: 'bend',
            radius: each.radius / MM,
            angle: (each.angleDeg * Math.PI) / 180,
            normal: each.normal,
          },
  );
  const steps = (tube.steps ?? []).map(({ from, od, wall, join }, k) => ({
    at: (stepsAt?.[k] ?? from) / MM,
    tube: { od: od / MM, wall: wall / MM, density },
    join: { kind: join.kind, length: join.length / MM },
  }));
  return {
    name,
    tube: { od: tube.od / MM, wall: tube.wall / MM, density },
    start: { p: scale(start.p, 1 / MM), d: start.d },
    ...(steps.length === 0 ? { elements: drawn } : steppedElements(drawn, steps)),
  };
}

/** Where pieces are welded to one another, on the larger tube where it steps; a lap at the end of its outer tube. */
function seamsOf(pipe: Pipe): PrimaryOfSet['seams'] {
  const steps = stepPlaces(pipe);
  return stations(pipe)
    .slice(1, -1)
    .map(({ p }, k) => {
      const od = Math.max(tubeOf(pipe, k).od, tubeOf(pipe, k + 1).od);
      const step = (pipe.steps ?? []).findIndex(({ element }) => element === k + 1);
      const lapped = step >= 0 && pipe.steps![step]!.join.kind === 'slipped over';
      return { at: lapped ? placeAt(pipe, steps[step]!.s).p : p, od };
    });
}

/** What of the problem an answer breaches, in words; an answer that lacks pipes is no set, and is asked this first. */
export const primariesBreaches = (
  problem: RouteProblem,
  cylinders: readonly number[],
  solution: RouteSolution,
): readonly string[] => verify(problem, solutionJson(solution)).map((each) => breachWords(each, cylinders));

/** Chords of a bend that the eye takes for an arc. */
const CHORD: Radian = (4 * Math.PI) / 180;

function tubesOf(pipe: Pipe): readonly TubeOfPipe[] {
  const begins = stations(pipe);
  const places = stepPlaces(pipe);
  const ends = [...places.map(({ s }) => s), begins.at(-1)!.s];
  return [pipe.tube, ...places.map(({ behind }) => behind)].map(({ od, wall }, k): TubeOfPipe => {
    const from = places[k - 1]?.s ?? 0;
    return { od, wall, from, line: lineBetween(pipe, begins, from, ends[k]!) };
  });
}

function lineBetween(pipe: Pipe, begins: readonly Station[], from: Metre, to: Metre): readonly Vec3[] {
  const inner = pipe.elements.flatMap((element, k) => {
    const long = elementLength(element);
    const steps = element.kind === 'straight' ? 1 : Math.max(1, Math.ceil(element.angle / CHORD));
    return Array.from({ length: steps }, (_, j) => (long * (j + 1)) / steps).flatMap((l) => {
      const s = begins[k]!.s + l;
      return s > from + NO_LENGTH && s < to - NO_LENGTH ? [into(element, begins[k]!, l).p] : [];
    });
  });
  return [placeAt(pipe, from).p, ...inner, placeAt(pipe, to).p];
}

/** Ports are counted from nought there; here a pipe has its cylinder's number. */
const breachWords = (
  { says, pipe, needs, has, in: unit }: SolutionBreach,
  cylinders: readonly number[],
): string =>
  `${pipe === undefined ? '' : `Cylinder ${cylinders[pipe]}: `}${says.replace(
    /the pipe of port (\d+)/,
    (_, port: string) => `the pipe of cylinder ${cylinders[Number(port)]}`,
  )}${needs === undefined || has === undefined ? '' : ` Needs ${amountOf(needs, unit)}, has ${amountOf(has, unit)}.`}`;

const amountOf = (value: number, unit: SolutionBreach['in']): string =>
  unit === 'degrees'
    ? `${value.toFixed(1)}°`
    : unit === 'number'
      ? String(Math.round(value * 1e4) / 1e4)
      : `${value.toFixed(1)} mm`;

/** The least spare of each pipe; at the mouth the pipes touch as the ring has them, and nobody is told that. */
function tightPlaces(
  problem: RouteProblem,
  solution: RouteSolution,
  cylinders: readonly number[],
): Map<number, TightPlace> {
  const least = new Map<number, TightPlace>();
  const take = (pipe: number, place: TightPlace): void => {
    const before = least.get(pipe);
    if (before === undefined || place.spare < before.spare) least.set(pipe, place);
  };
  const laid = laidOut(solution);
  for (const { pipe, other, against, gap, asked, inZone, at } of nearPlaces(
    problem,
    solution.collector,
    laid,
  )) {
    if (inZone) continue;
    const here = { gap: gap / MM, spare: (gap - asked) / MM, at: scale(at, 1 / MM) };
    if (other === undefined) take(pipe, { against, ...here });
    else {
      take(pipe, { against: `pipe of cylinder ${cylinders[other]}`, ...here });
      take(other, { against: `pipe of cylinder ${cylinders[pipe]}`, ...here });
    }
  }
  return least;
}

export function collectorDrawn(
  { origin, axis, ref }: Pose,
  { collector }: RouteProblem,
): PrimariesSet['collector'] {
  const across: Vec3 = [
    axis[1] * ref[2] - axis[2] * ref[1],
    axis[2] * ref[0] - axis[0] * ref[2],
    axis[0] * ref[1] - axis[1] * ref[0],
  ];
  const inlets = Array.from({ length: collector.n }, (_, k): Vec3 => {
    const [c, s] = inletPlace(collector, k);
    return [0, 1, 2].map((i) => (origin[i]! + c * ref[i]! + s * across[i]!) / MM) as unknown as Vec3;
  });
  const seen = inlets.map((_, k): [Metre, Metre] => {
    const [c, s] = inletPlace(collector, k);
    return [s / MM, c / MM];
  });
  return { mouth: scale(origin, 1 / MM), axis, inlets, seen, inRows: collector.rows !== undefined };
}
