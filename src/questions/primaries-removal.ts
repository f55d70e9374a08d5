/**
 * Whether the primaries of a bank come off with the engine in the car, in which order, and by which way.
 *
 * In    a car, a bank of it, its problem as the car stands for work, a set that stands
 * Out   the parts in the order in which they come off, each with a way that was found, or what stopped it
 *
 * Welded to their collector they are one part. With slip joints the collector is drawn off first, then each pipe.
 * The tail pipe is off. A sampled look: a way that was found is one; that none was found proves nothing.
 */
import type { BankName } from '../car/check-exhaust.ts';
import type { Car } from '../car/read.ts';
import { pipeThing, shellThing, solidThing, solidThings, type Thing } from '../gaspath/hand/surroundings.ts';
import { type Ball, ballsOfDrum, ballsOfPipe, ballsOfPlate, type Plate } from '../gaspath/removal/body.ts';
import { type OrderOff, orderOff, type Part, type Taken } from '../gaspath/removal/order.ts';
import { bindOf } from '../gaspath/removal/way-out.ts';
import type { RouteProblem, RouteSolution } from '../gaspath/route/problem.ts';
import { laidOut } from '../gaspath/verify/read.ts';
import { atMouth, sizesAlong } from '../gaspath/verify/sizes.ts';
import { Numbers } from '../loadpath/numbers.ts';
import { add, along, scale, unit, type Vec3 } from '../maths/vec3.ts';
import type { Metre } from '../units/quantity.ts';
import { type FlangeOnHead, flangesOf, studSize } from './primaries-nuts.ts';

export interface StudBinds {
  readonly cylinder: number;
  /** Sideways over its length, and what its hole gives. */
  readonly off: Metre;
  readonly gives: Metre;
}

export interface RemovalReached {
  readonly reached: true;
  readonly parts: 'one' | 'each';
  readonly off: readonly Taken[];
  readonly held: OrderOff['held'];
  /** Studs that stand too far off the way in which a welded set is drawn: they must be screwed out first. */
  readonly binds: readonly StudBinds[];
  /** By which the parts are drawn off first. */
  readonly drawn: Metre;
  /** What the file does not say and was taken. */
  readonly taken: readonly string[];
}

export type PrimariesRemoval = RemovalReached | { readonly reached: false; readonly message: string };

const MM = 1000;
/** How far a pipe stands in its slip joint where the file does not say (common practice, no source), mm. */
const USUAL_ENGAGED = 30;
/** Beyond the end of the stud, mm. */
const CLEAR_OF_STUD = 1;

export function primariesRemoval(
  car: Car,
  side: BankName,
  put: { readonly problem: RouteProblem; readonly cylinders: readonly number[] },
  solution: RouteSolution,
): PrimariesRemoval {
  const exhaust = car.form.exhaust!;
  const numbers = new Numbers(car.values);
  const stud = studSize(exhaust, numbers);
  if (stud === undefined) {
    return {
      reached: false,
      message:
        'The car file tells no studs: write stud under exhaust, flange, so that it is known how far a pipe is drawn.',
    };
  }
  const { problem, cylinders } = put;
  const drawn = stud.standsOut + CLEAR_OF_STUD;
  const about = [...solidThings(problem), ...shellThing(problem)];
  const flanges = flangesOf(exhaust, numbers, problem);
  const pipes = laidOut(solution).map(({ pipe, path }) => {
    const name = `pipe of cylinder ${cylinders[pipe.port]}`;
    const flange = flanges[pipe.port]!;
    const plate = plateOf(flange);
    const studs = flange.studs.map(({ at }) => studThing(name, at, flange, stud));
    const sizes = sizesAlong(problem.tube, pipe, path.length);
    return {
      name,
      flange,
      studs,
      balls: [...ballsOfPipe(path, sizes), ...ballsOfPlate(plate)] as readonly Ball[],
      asThings: [pipeThing(name, path, sizes), ...plateThings(name, plate)],
    };
  });
  const { origin, axis } = solution.collector;
  const drum = {
    long: problem.collectorBody.length,
    radius: problem.collector.ringRadius + atMouth(problem.tube) / 2 + problem.collectorBody.radiusAdd,
  };
  const drumBalls = ballsOfDrum(origin, axis, drum.long, drum.radius);
  const collector = exhaust[side]!.collector!;
  const play = Math.min(...flanges.flatMap(({ studs }) => studs.map(({ hole }) => hole - stud.major)));
  if (collector.joins !== 'slip') {
    const way = unit(flanges.map(({ out }) => out).reduce(add));
    const binds = flanges.flatMap(({ out }, port): StudBinds[] => {
      const off = bindOf(out, way, stud.standsOut);
      return off <= play ? [] : [{ cylinder: cylinders[port]!, off: off / MM, gives: play / MM }];
    });
    const bound = new Set(binds.map(({ cylinder }) => cylinder));
    const whole: Part = {
      body: {
        name: 'the set with its collector',
        balls: [...pipes.flatMap(({ balls }) => balls), ...drumBalls],
      },
      draw: { way, mm: drawn },
      // studs that bind are out by then
      beyond: pipes.flatMap(({ studs }, k) => (bound.has(cylinders[k]!) ? [] : studs)),
      asThings: [],
    };
    return {
      reached: true,
      parts: 'one',
      ...orderOff([whole], about),
      binds,
      drawn: drawn / MM,
      taken: [],
    };
  }
  const engaged = collector.engaged === undefined ? USUAL_ENGAGED : numbers.of(collector.engaged) * MM;
  const theCollector: Part = {
    body: { name: 'the collector', balls: drumBalls },
    draw: { way: axis, mm: engaged },
    asThings: [
      solidThing('the collector', {
        kind: 'cylinder',
        a: origin,
        b: along(origin, axis, Math.max(1, drum.long)),
        r: drum.radius,
      }),
    ],
  };
  const studsOn = pipes.flatMap(({ studs }) => studs);
  const parts = pipes.map(
    ({ name, flange, studs, balls, asThings }): Part => ({
      body: { name, balls },
      draw: { way: flange.out, mm: drawn },
      beyond: studs,
      asThings,
      after: ['the collector'],
    }),
  );
  const others = (part: Part): readonly Thing[] =>
    studsOn.filter((each) => part.beyond?.includes(each) !== true);
  return {
    reached: true,
    parts: 'each',
    ...orderOff(
      [theCollector, ...parts].map((part) => ({ ...part, also: others(part) })),
      about,
      (group) => joined(group, stud.standsOut, play),
    ),
    binds: [],
    drawn: drawn / MM,
    taken:
      collector.engaged === undefined
        ? [`How far a pipe stands in its slip joint is not given: ${USUAL_ENGAGED} mm is taken.`]
        : [],
  };
}

/** Pipes drawn off together, where their studs stand near enough the same way for their holes. */
function joined(parts: readonly Part[], standsOut: number, play: number): Part | undefined {
  const way = unit(parts.map(({ draw }) => draw.way).reduce(add));
  if (parts.some(({ draw }) => bindOf(draw.way, way, standsOut) > play)) return undefined;
  const beyond = parts.flatMap((each) => each.beyond ?? []);
  const also = (parts[0]!.also ?? []).filter((each) => !beyond.includes(each));
  return {
    body: {
      name: `pipes of cylinders ${parts.map(({ body }) => body.name.replace('pipe of cylinder ', '')).join(', ')} together`,
      balls: parts.flatMap(({ body }) => body.balls),
    },
    draw: { way, mm: parts[0]!.draw.mm },
    beyond,
    also,
    asThings: [],
  };
}

const plateOf = ({ at, out, thick, studs, portRadius, land }: FlangeOnHead): Plate => ({
  at,
  axis: out,
  thick: Math.max(2, thick),
  discs: [
    { at, r: portRadius + land.port },
    ...studs.map((each) => ({ at: each.at, r: each.hole / 2 + land.bolt })),
  ],
});

const plateThings = (name: string, { axis, thick, discs }: Plate): readonly Thing[] =>
  discs.map(({ at, r }) => solidThing(name, { kind: 'cylinder', a: add(at, scale(axis, -thick)), b: at, r }));

/** A bare stud, its nut off: from the face of the head. */
const studThing = (
  of: string,
  at: Vec3,
  { out, thick }: FlangeOnHead,
  { major, standsOut }: { readonly major: number; readonly standsOut: number },
): Thing =>
  solidThing(`a stud of the ${of}`, {
    kind: 'cylinder',
    a: along(at, out, -thick),
    b: along(at, out, standsOut - thick),
    r: major / 2,
  });
