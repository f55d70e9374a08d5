/**
 * A found set when hot: where its pipes then lie, what force that asks, and each gap hot beside cold.
 *
 * In    a car, a bank of it, its problem as it was put, a set that stands
 * Out   gaps cold and hot against what is asked, force and strain of each pipe, how collector and slip joints move
 */

import type { BankName, ExhaustForm } from '../car/check-exhaust.ts';
import type { Car } from '../car/read.ts';
import { type HotLine, hotSet, type StartMoves } from '../gaspath/hot/hot-set.ts';
import { walkThrough } from '../gaspath/hot/hot-walk.ts';
import type { Heat } from '../gaspath/pipework/growth.ts';
import { growth } from '../gaspath/pipework/index.ts';
import type { Clearance, Pose, RouteProblem, RouteSolution, Solid } from '../gaspath/route/problem.ts';
import type { Laid } from '../gaspath/verify/gaps.ts';
import { LOOK, type NearPlace, nearPlaces } from '../gaspath/verify/nearest.ts';
import { laidOut } from '../gaspath/verify/read.ts';
import type { Walked } from '../gaspath/verify/walk.ts';
import { tubeMaterial } from '../materials/tube-material.ts';
import { add, length, scale, turned, unit, type Vec3 } from '../maths/vec3.ts';
import type { Kelvin, Metre, Newton, NewtonMetre, Radian } from '../units/quantity.ts';
import type { PrimariesSet } from './primaries-set.ts';

export interface HotGap {
  readonly cylinder: number;
  /** `pipe of cylinder 3`, `crankcase`, `the bodywork`. */
  readonly against: string;
  /** Least that is asked hot. */
  readonly asked: Metre;
  /** Metal to metal; undefined where it is more than `PrimariesHot.looked` beyond what is asked. */
  readonly cold: Metre | undefined;
  readonly hot: Metre | undefined;
  /** Of the hot place, on the cold middle line or near it, car axes. */
  readonly at: Vec3 | undefined;
  readonly kind: NearPlace['kind'];
  /** As the problem names it. */
  readonly name: string;
  readonly askedCold: Metre;
  /** Both pipes where they come together, and the ring has them near. */
  readonly inZone: boolean;
}

export interface HotPipe {
  readonly cylinder: number;
  /** Longer when hot. */
  readonly grows: Metre;
  /** On its studs. */
  readonly force: Newton;
  readonly moment: NewtonMetre;
  /** Greatest of its wall at the skin, as by an elastic sum. */
  readonly strain: number;
  readonly strainAt: Vec3;
  /** In its slip joint, into the collector; undefined where it is welded. */
  readonly slides?: Metre;
}

export interface PrimariesHot {
  readonly pipe: Kelvin;
  readonly cold: Kelvin;
  readonly material: string;
  readonly expansion: number;
  readonly held: 'by its pipes' | 'to the engine';
  readonly joins: 'welded' | 'slip';
  readonly engineMoves?: { readonly along: Metre; readonly across: Metre; readonly up: Metre };
  readonly pipes: readonly HotPipe[];
  readonly collector: { readonly moves: Metre; readonly turns: Radian };
  /** Least spare hot first. */
  readonly gaps: readonly HotGap[];
  readonly looked: Metre;
  /** All that is asked hot is kept. */
  readonly holds: boolean;
  /** What the file does not say and was taken. */
  readonly taken: readonly string[];
}

const MM = 1000;
/** Where the file leaves it open, K: 700 °C, 20 °C (common practice, no source). */
const USUAL = { pipe: 973.15, cold: 293.15 } as const;

/** The heat of the pipes, as the file has it or as it is usual. */
export function heatOf({ hot, tube }: ExhaustForm): {
  readonly pipe: Kelvin;
  readonly cold: Kelvin;
  readonly heat: Heat;
} {
  const pipe = hot?.pipe ?? USUAL.pipe;
  const cold = hot?.cold ?? USUAL.cold;
  return { pipe, cold, heat: { expansion: tubeMaterial(tube.material)!.expansion, hotter: pipe - cold } };
}

/** Whether a gap is what is asked of it hot. */
export const isKeptHot = ({ hot, asked }: HotGap): boolean => hot === undefined || hot >= asked - HELD;

/** Other parts as solids, cold and hot; they ride with the engine. */
export interface BesideHot {
  readonly cold: readonly Solid[];
  readonly hot: readonly Solid[];
}

/** How a set lies when hot, without a look at what is about it. */
export function grownSet(
  car: Car,
  side: BankName,
  set: Pick<PrimariesSet, 'pipes' | 'collector'>,
  starts?: readonly StartMoves[],
) {
  const exhaust = car.form.exhaust!;
  const { hot } = exhaust;
  const material = tubeMaterial(exhaust.tube.material)!;
  const { pipe, cold, heat } = heatOf(exhaust);
  const held: PrimariesHot['held'] = hot?.collector === 'the engine' ? 'to the engine' : 'by its pipes';
  const joins = exhaust[side]!.collector!.joins ?? 'welded';
  const grown = hotSet({
    pipes: set.pipes.map((each) => each.pipe),
    heat,
    modulus: material.hotModulus,
    collector: set.collector,
    joins,
    held,
    starts,
  });
  return { material, pipe, cold, heat, held, joins, grown, wider: 1 + heat.expansion * heat.hotter };
}

export function primariesHot(
  car: Car,
  side: BankName,
  put: { readonly problem: RouteProblem; readonly cylinders: readonly number[] },
  {
    set,
    solution,
  }: { readonly set: Pick<PrimariesSet, 'pipes' | 'collector'>; readonly solution: RouteSolution },
  beside: BesideHot = { cold: [], hot: [] },
  starts?: readonly StartMoves[],
): PrimariesHot {
  const exhaust = car.form.exhaust!;
  const { hot } = exhaust;
  const { cylinders } = put;
  const { material, pipe, cold, heat, held, joins, grown, wider: k } = grownSet(car, side, set, starts);
  const alone = put.problem;
  const problem = { ...alone, solids: [...alone.solids, ...beside.cold] };
  const hotProblem: RouteProblem = {
    ...problem,
    solids: [...alone.solids, ...beside.hot],
    tube: grownTube(problem.tube, k),
    clearance: {
      ...problem.clearance,
      ...(hot?.body === undefined ? {} : { shell: hot.body * MM }),
      ...(hot?.solids === undefined ? {} : { solid: hot.solids * MM }),
      ...(hot?.pipes === undefined ? {} : { pipe: hot.pipes * MM }),
    },
  };
  const pose = hotPose(solution.collector, grown.collector.shift, grown.collector.turnVector);
  const laid = set.pipes.map(({ cylinder }, n): Laid => {
    const points = grown.lines[n]!.points.map(({ cold: at, shift }) => scale(add(at, shift), MM));
    const port = cylinders.indexOf(cylinder);
    const stepsAt = solution.pipes.find((each) => each.port === port)?.stepsAt?.map((at) => at * k);
    return {
      pipe: { port, ...(stepsAt === undefined ? {} : { stepsAt }) },
      path: walkThrough(points),
    };
  });
  const moves = hot?.engineMoves;
  const corners = moves === undefined ? [] : cornersOf([moves.along, moves.across, moves.up]);
  const riding = new Set(
    (exhaust.keepOuts ?? [])
      .filter((each) => each.carriesFlange === true || each.onEngine === true)
      .map(({ name }) => name),
  );
  for (const { name } of beside.hot) if (name !== undefined) riding.add(name);
  const hotPlaces = [
    ...nearPlaces(hotProblem, pose, laid),
    ...corners.flatMap((by) => movedPlaces(hotProblem, pose, laid, riding, by)),
  ];
  const gaps = sideBySide(
    nearPlaces(problem, solution.collector, laidOut(solution)),
    hotPlaces,
    { cold: problem.clearance, hot: hotProblem.clearance },
    cylinders,
  );
  return {
    pipe,
    cold,
    material: material.name,
    expansion: heat.expansion,
    held,
    joins,
    ...(moves === undefined ? {} : { engineMoves: moves }),
    pipes: set.pipes.map((each, n) =>
      hotPipe(each.cylinder, grown.lines[n]!, growth(each.pipe, heat), joins),
    ),
    collector: { moves: length(grown.collector.shift), turns: grown.collector.turn },
    gaps,
    looked: LOOK / MM,
    holds: gaps.every(isKeptHot),
    taken: [
      ...(hot === undefined ? ['No heat is given under exhaust, hot: 700 °C is taken.'] : []),
      ...(hot?.collector === undefined
        ? ['What holds the collector is not given: it is taken to hang on its pipes.']
        : []),
      ...(moves === undefined ? ['The engine is taken to be bolted fast.'] : []),
    ],
  };
}

/** Sizes, joins and where they come grow with the rest. */
const grownTube = (tube: RouteProblem['tube'], k: number): RouteProblem['tube'] => ({
  ...tube,
  od: tube.od * k,
  ...(tube.steps === undefined
    ? {}
    : {
        steps: tube.steps.map((step) => ({
          ...step,
          from: step.from * k,
          od: step.od * k,
          join: { ...step.join, length: step.join.length * k },
        })),
      }),
});

/** What the checker lets pass. */
const HELD: Metre = 2e-5;

const hotPipe = (
  cylinder: number,
  { force, moment, strained, slides }: HotLine,
  grows: Metre,
  joins: 'welded' | 'slip',
): HotPipe => ({
  cylinder,
  grows,
  force,
  moment,
  strain: strained.strain,
  strainAt: strained.at,
  ...(joins === 'slip' ? { slides } : {}),
});

export function hotPose({ origin, axis, ref }: Pose, shift: Vec3, turn: Vec3): Pose {
  const angle = length(turn);
  const about = (v: Vec3): Vec3 => (angle < 1e-12 ? v : turned(v, unit(turn), angle));
  return { origin: add(origin, scale(shift, MM)), axis: about(axis), ref: about(ref) };
}

const cornersOf = ([x, y, z]: Vec3): readonly Vec3[] =>
  [1, -1].flatMap((a) =>
    [1, -1].flatMap((b) => [1, -1].map((c): Vec3 => [a * x * MM, b * y * MM, c * z * MM])),
  );

/** With engine, pipes and collector moved in the car: pipes stand to each other and to the engine as before. */
function movedPlaces(
  problem: RouteProblem,
  pose: Pose,
  laid: readonly Laid[],
  riding: ReadonlySet<string>,
  by: Vec3,
): readonly NearPlace[] {
  const fixed: RouteProblem = {
    ...problem,
    solids: problem.solids.filter((each) => !rides(each, riding)),
    // nothing is so near to each other that this is asked
    clearance: { ...problem.clearance, pipe: -LOOK - problem.tube.od, pipeInZone: -LOOK - problem.tube.od },
  };
  const moved = laid.map(({ pipe, path }) => ({ pipe, path: movedPath(path, by) }));
  return nearPlaces(fixed, { ...pose, origin: add(pose.origin, by) }, moved).filter(
    ({ kind }) => kind === 'shell' || kind === 'solid',
  );
}

const rides = (solid: Solid, riding: ReadonlySet<string>): boolean =>
  solid.name !== undefined && riding.has(solid.name);

const movedPath = (path: Walked, by: Vec3): Walked => ({
  ...path,
  end: add(path.end, by),
  pieces: path.pieces.map((piece) => ({
    ...piece,
    p: add(piece.p, by),
    centre: add(piece.centre, by),
  })),
});

/** Gaps of the same pair beside each other, the least of each. */
function sideBySide(
  cold: readonly NearPlace[],
  hot: readonly NearPlace[],
  asked: { readonly cold: Clearance; readonly hot: Clearance },
  cylinders: readonly number[],
): readonly HotGap[] {
  const keyOf = ({ pipe, other, against, kind, inZone }: NearPlace): string =>
    [pipe, other ?? '', kind, kind === 'solid' ? against : '', inZone].join(' ');
  const least = (places: readonly NearPlace[]): Map<string, NearPlace> => {
    const found = new Map<string, NearPlace>();
    for (const place of places) {
      const key = keyOf(place);
      const before = found.get(key);
      if (before === undefined || place.gap < before.gap) found.set(key, place);
    }
    return found;
  };
  const [before, after] = [least(cold), least(hot)];
  const askedOf = ({ kind }: NearPlace, clearance: Clearance): number =>
    kind === 'shell' ? clearance.shell : kind === 'pipe to pipe' ? clearance.pipe : clearance.solid;
  const spare = (gap: HotGap): number => (gap.hot ?? Infinity) - gap.asked;
  return [...new Set([...before.keys(), ...after.keys()])]
    .map((key): HotGap => {
      const [c, h] = [before.get(key), after.get(key)];
      const of = (h ?? c)!;
      const where = of.inZone ? ', by the collector' : '';
      return {
        cylinder: cylinders[of.pipe]!,
        against: of.other === undefined ? of.against : `pipe of cylinder ${cylinders[of.other]}${where}`,
        // where they come together a gap is asked for the weld, cold; hot they need only not touch
        asked: of.inZone ? 0 : askedOf(of, asked.hot) / MM,
        cold: c === undefined ? undefined : c.gap / MM,
        hot: h === undefined ? undefined : h.gap / MM,
        at: h === undefined ? undefined : scale(h.at, 1 / MM),
        kind: of.kind,
        name: of.against,
        askedCold: askedOf(of, asked.cold) / MM,
        inZone: of.inZone,
      };
    })
    .sort((a, b) => spare(a) - spare(b));
}
