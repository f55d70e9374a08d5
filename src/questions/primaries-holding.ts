/**
 * What a set of primaries must hold in its car beside the gaps that the finder is asked cold: hot gaps, a tool on every
 * nut, slip joints, the way off.
 *
 * In    a car, a bank of it, its scans, its problem as it was put, what is to be held
 * Out   what is asked of the finder from the start, and after each set what lacks of it and what is to be asked more
 *
 * GP-n are the equations of docs/theory/gas-path.md.
 */
import type { BankName } from '../car/check-exhaust.ts';
import { HOLDABLE } from '../car/form/exhaust.ts';
import type { Car } from '../car/read.ts';
import { inTheWayOf, type Laid, type ToolRoom, toolRooms } from '../gaspath/hand/tool-room.ts';
import {
  AGAIN,
  type Amendments,
  amended,
  type GapHot,
  moreForHot,
  moreForTheWay,
  NOTHING_MORE,
  type ToolOfNut,
} from '../gaspath/holding/amend.ts';
import type { Looked } from '../gaspath/holding/holding.ts';
import { ballsOfDrum } from '../gaspath/removal/body.ts';
import type { RouteProblem, RouteSolution, Solid } from '../gaspath/route/problem.ts';
import { laidOut } from '../gaspath/verify/read.ts';
import { atMouth, sizesAlong } from '../gaspath/verify/sizes.ts';
import { pointAt } from '../gaspath/verify/walk.ts';
import { type BesideHot, type HotGap, isKeptHot, type PrimariesHot, primariesHot } from './primaries-hot.ts';
import {
  isReached,
  type NutAsked,
  type NutsAsked,
  nutRoom,
  nutsAsked,
  nutWords,
  withStubs,
} from './primaries-nuts.ts';
import { type ProblemPut, primariesProblem, type ScanInCar } from './primaries-problem.ts';
import { primariesRemoval } from './primaries-removal.ts';
import { collectorDrawn, primaryDrawn } from './primaries-set.ts';
import { slipsOf } from './primaries-slip.ts';

type Put = Extract<ProblemPut, { reached: true }>;

export { HOLDABLE };
export type Holdable = (typeof HOLDABLE)[number];

/** What the file says must be held; where it does not, what it tells of, but for the way off. */
export function heldByFile(car: Car, side: BankName): readonly Holdable[] {
  const { exhaust } = car.form;
  const says = (kind: Holdable): boolean =>
    exhaust?.hold === undefined
      ? kind === 'hot'
        ? exhaust?.hot !== undefined
        : kind !== 'removal'
      : exhaust.hold.includes(kind);
  return holdableOf(car, side).filter(says);
}

/** What can be held at all: what the file tells enough of. */
export function holdableOf({ form: { exhaust } }: Car, side: BankName): readonly Holdable[] {
  const collector = exhaust?.[side]?.collector;
  const studs = exhaust?.flange?.stud !== undefined;
  const can: Readonly<Record<Holdable, boolean>> = {
    hot: collector !== undefined,
    tools: studs,
    slip: collector?.joins === 'slip' && collector.engaged !== undefined,
    removal: studs,
  };
  return HOLDABLE.filter((each) => can[each]);
}

export interface Holds {
  readonly put: Put;
  /** The same with what is asked from the start. */
  readonly asked: Put;
  readonly kinds: readonly Holdable[];
  /** Nuts on which no tool goes wherever the pipes lie; known once a set was looked at. */
  readonly never: readonly string[];
  /** What is asked from the start. */
  readonly from: Amendments;
  readonly look: (solution: RouteSolution, more: Amendments) => Looked;
}

const MM = 1000;

/** What lies beside a bank that is one part of several. */
export interface Among {
  /** The problem with the others in it, for the finder. */
  readonly problem: RouteProblem;
  readonly beside: BesideHot;
  /** What is there when this part comes off, and its nuts are turned. */
  readonly staying: readonly Solid[];
  /** What is asked hot of the gaps to what lies beside. */
  readonly asked: (hot: PrimariesHot) => PrimariesHot;
}

/** Undefined where nothing is to be held. @param put  as the bank stands alone */
export function primariesHolding(
  car: Car,
  side: BankName,
  scans: readonly ScanInCar[],
  put: Put,
  kinds: readonly Holdable[] = heldByFile(car, side),
  among?: Among,
): Holds | undefined {
  const own = primariesProblem(car, side, scans, 'work');
  if (kinds.length === 0 || !own.reached) return undefined;
  const work = {
    ...own,
    problem: {
      ...own.problem,
      ports: put.problem.ports,
      solids: [...own.problem.solids, ...(among?.staying ?? [])],
    },
  };
  // looked up when the first set is there: it takes a second
  let known: readonly NutRooms[] | undefined;
  const rooms = (): readonly NutRooms[] => {
    known ??= kinds.includes('tools') ? nutRooms(car, work) : [];
    return known;
  };
  const { cylinders } = put;
  const problem = among?.problem ?? put.problem;
  const drawn = (solution: RouteSolution) => ({
    pipes: solution.pipes.map((each) => primaryDrawn(problem, cylinders, each, undefined)),
    collector: collectorDrawn(solution.collector, problem),
  });
  const slip = kinds.includes('slip') ? slipsOf(car, side, problem) : undefined;
  const from: Amendments = {
    ...NOTHING_MORE,
    straight: slip === undefined ? 0 : slip.least(undefined) * MM,
  };
  return {
    put: { ...put, problem },
    asked: { ...put, problem: amended(problem, from) },
    kinds,
    get never() {
      return (known ?? []).filter((each) => each.rooms.length === 0).map(({ of }) => nutWords(of));
    },
    from,
    look: (solution, more) => {
      const hot =
        kinds.includes('hot') || slip !== undefined
          ? (among?.asked ?? asItIs)(
              primariesHot(car, side, put, { set: drawn(solution), solution }, among?.beside),
            )
          : undefined;
      let lacking = 0;
      let next = more;
      if (hot !== undefined && kinds.includes('hot')) {
        const short = hot.gaps.filter((each) => !isKeptHot(each));
        lacking += short.length;
        for (const gap of short) next = moreForHot(next, inMm(gap, hot));
      }
      if (hot !== undefined && slip !== undefined) {
        const lacks = slip.lacks(solution, hot);
        lacking += lacks.length;
        if (lacks.length > 0)
          next = { ...next, straight: Math.max(next.straight, slip.least(hot) * MM + AGAIN) };
      }
      let asked: NutsAsked | undefined;
      const goes = (nut: number): boolean => {
        asked ??= nutsAsked(car, work, solution);
        return asked.reached && isReached(nutRoom(asked.nuts[nut]!, asked.tools));
      };
      const tools = toolsOf(rooms(), laidAbout(problem, solution), more.tools, goes);
      lacking += tools.lacking;
      next = { ...next, tools: tools.next };
      if (lacking === 0 && kinds.includes('removal')) {
        const off = primariesRemoval(car, side, work, solution);
        if (off.reached) {
          lacking += off.held.length;
          const stops = off.held.flatMap(({ way }) => (way?.stops ?? []).map(({ name }) => name));
          next = moreForTheWay(next, problem, stops);
        }
      }
      return lacking === 0 || same(next, more) ? { lacking } : { lacking, next };
    },
  };
}

const asItIs = (hot: PrimariesHot): PrimariesHot => hot;

/** A gap that is out of sight cold comes nearer by at least as much as it would from there. */
const inMm = (
  { kind, name, inZone, asked, askedCold, cold, hot }: HotGap,
  { looked }: PrimariesHot,
): GapHot => ({
  kind,
  name,
  inZone,
  asked: asked * MM,
  askedCold: askedCold * MM,
  cold: (cold ?? asked + looked) * MM,
  hot: hot! * MM,
});

const same = (one: Amendments, other: Amendments): boolean => JSON.stringify(one) === JSON.stringify(other);

interface NutRooms {
  readonly of: NutAsked;
  /** Ways in which a tool goes on while the pipes are not yet laid; none where none does whatever they do. */
  readonly rooms: readonly ToolRoom[];
}

/** Every nut with the tools that go on it among all that stands still. */
function nutRooms(car: Car, work: Put): readonly NutRooms[] {
  const asked = nutsAsked(car, work);
  if (!asked.reached) return [];
  return asked.nuts.map((of) => ({
    of,
    rooms: toolRooms(`the tool on ${nutWords(of)}`, of.nut, asked.tools, withStubs(of, work).about),
  }));
}

/** Places along a pipe at which a tool is asked, mm. */
const PLACES = 3;

/** What a set has about the nuts: its pipes and its collector. */
function laidAbout(
  { tube, collector, collectorBody }: RouteProblem,
  solution: RouteSolution,
): readonly Laid[] {
  const { origin, axis } = solution.collector;
  const drum = collector.ringRadius + atMouth(tube) / 2 + collectorBody.radiusAdd;
  return [
    ...laidOut(solution).flatMap(({ pipe, path }) =>
      sizesAlong(tube, pipe, path.length).map(({ from, to, radius }) => ({
        radius,
        places: Array.from({ length: Math.floor((to - from) / PLACES) + 1 }, (_, k) =>
          pointAt(path, from + k * PLACES),
        ),
      })),
    ),
    ...ballsOfDrum(origin, axis, collectorBody.length, drum).map(({ at, r }) => ({
      radius: r,
      places: [at],
    })),
  ];
}

function toolsOf(
  rooms: readonly NutRooms[],
  laid: readonly Laid[],
  held: readonly ToolOfNut[],
  goes: (nut: number) => boolean,
): { readonly lacking: number; readonly next: readonly ToolOfNut[] } {
  let lacking = 0;
  const next: ToolOfNut[] = [];
  rooms.forEach(({ rooms: ways }, nut) => {
    if (ways.length === 0) return;
    const has = held.find((each) => each.nut === nut);
    if (has !== undefined && inTheWayOf(has.room, laid) === 0) {
      next.push(has);
      return;
    }
    const tried = has?.tried ?? [];
    const best = ways
      .map((room, k) => ({ room, k, by: inTheWayOf(room, laid) }))
      .filter(({ k }) => !tried.includes(k))
      .sort((a, b) => a.by - b.by || a.k - b.k)[0];
    const free = best?.by === 0 || goes(nut);
    if (!free) lacking += 1;
    if (best !== undefined && (has === undefined || !free))
      next.push({ nut, room: best.room, tried: [...tried, best.k] });
    else if (has !== undefined) next.push(has);
  });
  return { lacking, next };
}
