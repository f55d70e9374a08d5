/** What one corner does at one position: every figure of tyre, upright, links, rocker and spring. */
import type { Car } from '../car/read.ts';
import { DegenerateCorner } from '../loadpath/corner/prepare.ts';
import { Unreachable } from '../loadpath/corner/reach.ts';
import { putCornerFigures } from '../loadpath/figures/corner.ts';
import { Numbers } from '../loadpath/numbers.ts';
import { type SprungCorner, sprungCorner } from '../loadpath/sprung-corner.ts';
import {
  COILED_SPRING_CAUTION,
  CRACK_TEST_CAUTION,
  GAS_DAMPER_CAUTION,
  STANDING_CAUTION,
  WOUND_BAR_CAUTION,
} from './cautions.ts';
import { jumpNotes, springNotes, standNotes } from './corner-notes.ts';
import type { Figure, Position, TravelEvent, Wheel } from './figure.ts';
import { figuresOf, figuresWithSpread, inOrder, type Pass } from './spread-of-figures.ts';
import { eventsOf, rangeOf, type TravelRange } from './travel-range.ts';

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
    const figures = inOrder(options.spread ? figuresWithSpread(car, pass) : figuresOf(car, pass));
    return {
      reached: true,
      wheel,
      at,
      figures,
      events: eventsOf(of, range),
      range,
      notes: [
        ...of.springing.notes,
        ...standNotes(of, at.travel),
        ...jumpNotes(figures, at.travel),
        ...springNotes(of, range, numbers),
      ],
      cautions: cautionsOf(of),
    };
  } catch (reason) {
    if (reason instanceof Unreachable) return { reached: false, wheel, at, message: reason.message, range };
    throw reason;
  }
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
