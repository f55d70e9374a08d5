/**
 * A load case whose one figure is slid: how far it may go, and the spread of what is found on the way.
 *
 * A figure without its spread is worked out in a few thousandths of a second and follows a hand; its spread takes a
 * hundred times as long. It is therefore worked out at knots along the slide, and taken between them.  [LL-47]
 */
import type { Car } from '../car/read.ts';
import type { Doing } from '../loadpath/loads/doing.ts';
import { spreadBetween } from '../measured/spread.ts';
import { STANDARD_GRAVITY } from '../units/quantity.ts';
import type { Figure } from './figure.ts';

export const SLID = ['longitudinal', 'lateral', 'vertical', 'speed', 'rack'] as const;
export type Slid = (typeof SLID)[number];

export interface SlideRange {
  /** SI of the figure. */
  readonly low: number;
  readonly high: number;
  readonly step: number;
}

const G = STANDARD_GRAVITY;
const KMH = 1 / 3.6;

/** Wide enough for a formula-type single-seater; none is a limit of the car.  common practice, no source */
const RANGES: Readonly<Record<Exclude<Slid, 'rack'>, SlideRange>> = {
  longitudinal: { low: -5 * G, high: 2 * G, step: 0.05 * G },
  lateral: { low: -4 * G, high: 4 * G, step: 0.05 * G },
  // weightless is where the wheels leave the ground
  vertical: { low: -0.9 * G, high: 5 * G, step: 0.05 * G },
  speed: { low: 0, high: 340 * KMH, step: 2 * KMH },
};

/** Travel to one lock where the file does not tell it.  common practice, no source */
const USUAL_LOCK = 0.03;

/** Where a figure of the case can be slid to; a figure that was typed beyond widens it. */
export function slideRange(car: Car, slid: Slid, value: number): SlideRange {
  const { low, high, step } = slid === 'rack' ? lockToLock(car) : RANGES[slid];
  return { low: Math.min(low, value), high: Math.max(high, value), step };
}

function lockToLock({ form, values }: Car): SlideRange {
  const { rackTravel } = form.front.steering ?? {};
  const lock = rackTravel === undefined ? USUAL_LOCK : values[rackTravel.index]!;
  return { low: -lock, high: lock, step: 0.0005 };
}

/** Spaces between knots: with more, the first two take no longer, and the last come later. */
const SPACES = 16;

/** Knots of a slide from end to end, SI. */
export const knotsOf = ({ low, high }: SlideRange): readonly number[] =>
  Array.from({ length: SPACES + 1 }, (_, k) => low + ((high - low) * k) / SPACES);

/** The two knots that a value lies between; both the same at a knot. */
export function knotsRound(knots: readonly number[], value: number): readonly [number, number] {
  const below = knots.findLast((knot) => knot <= value) ?? knots[0]!;
  const above = knots.find((knot) => knot >= value) ?? knots.at(-1)!;
  return [below, above];
}

export const slidTo = (doing: Doing, slid: Slid, value: number): Doing => ({ ...doing, [slid]: value });

/** How far a figure may lie off the straight line between two knots, in standard uncertainties. */
const STRAIGHT = 0.5;

/** Figures found at one knot, with their spread. */
export interface AtKnot {
  readonly knot: number;
  readonly figures: readonly Figure[];
}

/**
 * Figures worked out at a value, each with the spread that lies between those of the knots round it.
 *
 * Where a figure does not run straight between the two, such as the size of a force that changes sign on the way, what
 * lies between says nothing: it stays without, as does one that either knot does not have.
 */
export function withSpreadBetween(
  figures: readonly Figure[],
  value: number,
  below: AtKnot,
  above: AtKnot,
): readonly Figure[] {
  const byId = ({ figures: of }: AtKnot) => new Map(of.map((figure) => [figure.id, figure]));
  const [low, high] = [byId(below), byId(above)];
  const part = above.knot === below.knot ? 0 : (value - below.knot) / (above.knot - below.knot);
  return figures.map((figure) => {
    const [a, b] = [low.get(figure.id), high.get(figure.id)];
    if (a?.spread === undefined || b?.spread === undefined || !Number.isFinite(figure.value)) return figure;
    const spread = spreadBetween(a.spread, b.spread, part);
    const straight = (1 - part) * a.value + part * b.value;
    return Math.abs(figure.value - straight) > STRAIGHT * spread.u ? figure : { ...figure, spread };
  });
}
