/** What one corner does at one position: every figure of tyre, upright, links, rocker and spring. */
import type { Car } from '../car/read.ts';
import { DegenerateCorner } from '../loadpath/corner/prepare.ts';
import { type TravelLimits, travelLimits, Unreachable } from '../loadpath/corner/reach.ts';
import { putCornerFigures } from '../loadpath/figures/corner.ts';
import { Numbers } from '../loadpath/numbers.ts';
import { type SprungCorner, sprungCorner, travelMarks } from '../loadpath/sprung-corner.ts';
import {
  COILED_SPRING_CAUTION,
  CRACK_TEST_CAUTION,
  GAS_DAMPER_CAUTION,
  STANDING_CAUTION,
  WOUND_BAR_CAUTION,
} from './cautions.ts';
import { springNotes, standNotes } from './corner-notes.ts';
import type { Figure, Position, TravelEvent, Wheel } from './figure.ts';
import { figuresOf, figuresWithSpread, type Pass } from './spread-of-figures.ts';

/** How far the wheel goes, and what ends it. Metres. */
export interface TravelRange {
  readonly bump: number;
  readonly droop: number;
  readonly bumpBy: string;
  readonly droopBy: string;
}

export interface CornerReached {
  readonly reached: true;
  readonly wheel: Wheel;
  readonly at: Position;
  readonly figures: readonly Figure[];
  readonly events: readonly TravelEvent[];
  readonly range: TravelRange;
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
}

/** The wheel does not come there, or the points cannot be a corner: why, in a sentence. */
export interface NotReached {
  readonly reached: false;
  readonly wheel: Wheel;
  readonly at: Position;
  readonly message: string;
  readonly range?: TravelRange;
}

export type CornerAnswer = CornerReached | NotReached;

/** The pass that puts the corner's figures. */
export const cornerPass =
  (car: Car, wheel: Wheel, at: Position): Pass =>
  (numbers, put) => {
    putCornerFigures(car.form[wheel.end], wheel.side, at, numbers, put);
  };

export function cornerFigures(
  car: Car,
  wheel: Wheel,
  at: Position,
  options: { readonly spread?: boolean } = {},
): CornerAnswer {
  const numbers = new Numbers(car.values);
  let of: SprungCorner;
  try {
    of = sprungCorner(car.form[wheel.end], wheel.side, numbers);
  } catch (reason) {
    if (reason instanceof DegenerateCorner) return { reached: false, wheel, at, message: reason.message };
    throw reason;
  }
  const range = rangeOf(of, at.rack);
  try {
    const pass = cornerPass(car, wheel, at);
    const figures = options.spread ? figuresWithSpread(car, pass) : figuresOf(car, pass);
    return {
      reached: true,
      wheel,
      at,
      figures,
      events: eventsOf(of, range),
      range,
      notes: [...of.springing.notes, ...standNotes(of, at.travel), ...springNotes(of, range, numbers)],
      cautions: cautionsOf(of),
    };
  } catch (reason) {
    if (reason instanceof Unreachable) return { reached: false, wheel, at, message: reason.message, range };
    throw reason;
  }
}

const END_WORDS = { bump: 'damper closed', droop: 'droop stop' } as const;

/** The range of the linkage, cut by the damper's own ends where it has one. */
export function rangeOf(of: SprungCorner, rack: number): TravelRange {
  const limits: TravelLimits = travelLimits(of.corner, rack);
  const marks = travelMarks(of);
  const linkage = (end: TravelLimits['bump']): string =>
    end.limit === undefined ? 'linkage free this far' : `${end.limit.binds} ${end.limit.how}`;
  const closed = Number.isFinite(marks.closed) && marks.closed < limits.bump.travel;
  const stopped = Number.isFinite(marks.droopStop) && marks.droopStop > limits.droop.travel;
  return {
    bump: closed ? marks.closed : limits.bump.travel,
    bumpBy: closed ? END_WORDS.bump : linkage(limits.bump),
    droop: stopped ? marks.droopStop : limits.droop.travel,
    droopBy: stopped ? END_WORDS.droop : linkage(limits.droop),
  };
}

/** What happens along the travel, in order from droop to bump. */
export function eventsOf(of: SprungCorner, range: TravelRange): TravelEvent[] {
  const marks = travelMarks(of);
  const { springing } = of;
  const all: TravelEvent[] = [
    { travel: marks.droopStop, what: 'droop stop takes over', kind: 'stop' },
    { travel: marks.coilFree, what: 'coil comes free of its seat', kind: 'free' },
    { travel: marks.barSlack, what: 'torsion bar is slack; beyond, its twist reverses', kind: 'free' },
    { travel: marks.rubber, what: 'bump rubber touches', kind: 'stop' },
    { travel: marks.coilSolid, what: 'coil is solid', kind: 'limit' },
    { travel: marks.closed, what: 'damper is closed', kind: 'limit' },
    ...(springing.closedAt === undefined
      ? [{ travel: range.bump, what: range.bumpBy, kind: 'limit' } as const]
      : []),
  ];
  return all.filter((event) => Number.isFinite(event.travel)).sort((a, b) => a.travel - b.travel);
}

export function cautionsOf(of: SprungCorner): string[] {
  const { form } = of;
  return [
    ...(form.bar === undefined ? [] : [WOUND_BAR_CAUTION]),
    ...(form.coil === undefined ? [] : [COILED_SPRING_CAUTION]),
    ...(form.damper?.gasForce === undefined ? [] : [GAS_DAMPER_CAUTION]),
    CRACK_TEST_CAUTION,
    STANDING_CAUTION,
  ];
}
