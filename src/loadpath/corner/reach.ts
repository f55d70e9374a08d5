/**
 * How far the corner can go, and what stops it.
 *
 * In    a prepared corner, rack travel
 * Out   the reachable range of wheel travel and what binds at each end; a bracket for the search of a travel
 * Axes  travel is vertical movement of the contact point against the tub, positive in bump
 * Not   bump rubbers, droop stops, joints that run out of angle, parts that touch: the linkage alone
 *
 * The corner is followed in small steps from the surveyed position, so the answer is on the surveyed branch.
 */
import { sub, type Vec3 } from '../../maths/vec3.ts';
import type { Metre } from '../../units/quantity.ts';
import { spokenAmount } from '../../units/show.ts';
import { moveRocker, moveWheel, placeRocker, placeWheel } from './chain.ts';
import { leverage } from './check.ts';
import {
  CLOSED,
  LOWER,
  PHI,
  RISE,
  ROCKER_HINGE,
  stateSize,
  TOE,
  TOE_INNER,
  TOE_OPEN,
  UPPER,
  UPPER_OPEN,
} from './layout.ts';
import type { Corner } from './prepare.ts';

/** What ends the travel; 'wheel' when every link closes and yet the wheel rises or falls no further. */
export type Binding = 'upper wishbone' | 'toe link' | 'rod and rocker' | 'wheel';

/** Out of reach: the link is drawn straight. Over-centre: it is folded back, or the wheel turns round. */
export type BindingManner = 'out of reach' | 'over-centre';

export interface Limit {
  readonly travel: Metre;
  readonly binds: Binding;
  readonly how: BindingManner;
  /** Where the wheel itself turns back: the link that is nearest to lying in line, which makes it turn. */
  readonly nearest?: 'upper wishbone' | 'toe link';
}

/** One end of the travel. Without `limit` the linkage still moves freely there. */
export interface TravelEnd {
  readonly travel: Metre;
  readonly limit?: Limit;
  /** Travel at which the rocker stops turning and goes back, when that comes before the end. */
  readonly rockerReverses?: Metre;
}

export interface TravelLimits {
  readonly bump: TravelEnd;
  readonly droop: TravelEnd;
}

const mm = (value: Metre): string => spokenAmount(value, 'm', 1);

const bound = (limit: Limit): string =>
  limit.nearest === undefined
    ? limit.binds === 'rod and rocker'
      ? `rod and rocker ${limit.how === 'out of reach' ? 'no longer reach each other' : 'are over-centre'}`
      : `the ${limit.binds} is ${limit.how}`
    : `the wheel goes no further and turns back, the ${limit.nearest} being nearly in line`;

/** The linkage does not reach the wanted travel. */
export class Unreachable extends Error {
  readonly travel: Metre;
  readonly rack: Metre;
  readonly limit: Metre;
  readonly binds: Binding;
  readonly how: BindingManner;
  constructor(facts: { travel: Metre; rack: Metre; limit: Limit }) {
    const { travel, rack, limit } = facts;
    super(
      Number.isNaN(travel) || Number.isNaN(rack)
        ? 'The wheel travel or the rack travel asked for is not a number.'
        : `The wheel does not reach ${mm(travel)} at a rack travel of ${mm(rack)}: ` +
            `at ${mm(limit.travel)} ${bound(limit)}.`,
    );
    this.name = 'Unreachable';
    this.travel = travel;
    this.rack = rack;
    this.limit = limit.travel;
    this.binds = limit.binds;
    this.how = limit.how;
  }
}

/** Step of the lower wishbone, rad: about 4 mm of travel, well below the width of any branch. */
const STEP = 0.01;
/** Far enough for any travel within ±200 mm of any wishbone longer than 100 mm. */
const MOST_STEPS = 400;
const WIDEST: Metre = 0.2;

/** Moves everything to angle φ; tells what does not close, `CLOSED` when all does. */
function place(corner: Corner, s: Float64Array, phi: number, rack: Metre): number {
  const wheel = placeWheel(corner.constants, s, phi, rack);
  if (wheel !== CLOSED) return wheel;
  const rocker = placeRocker(corner.constants, s, corner.rodOn);
  if (rocker !== CLOSED) return rocker;
  moveWheel(corner.constants, s);
  moveRocker(corner.constants, s, corner.rodOn);
  return CLOSED;
}

/** The limit at the place that `s` holds; `code` says what no longer closes just beyond it. */
function limitOf(corner: Corner, s: Float64Array, code: number, travel: Metre): Limit {
  const how = code > 0 ? 'out of reach' : 'over-centre';
  const which = Math.abs(code);
  if (which === CLOSED) {
    const at = (i: number): Vec3 => [s[i], s[i + 1], s[i + 2]];
    const [upper, lower, toe] = [at(UPPER), at(LOWER), at(TOE)];
    const ofUpper = leverage(upper, lower, corner.geometry.upperRear, corner.upperAxis);
    const ofToe = leverage(toe, at(TOE_INNER), lower, sub(upper, lower));
    return { travel, binds: 'wheel', how, nearest: ofUpper < ofToe ? 'upper wishbone' : 'toe link' };
  }
  return {
    travel,
    binds: which === UPPER_OPEN ? 'upper wishbone' : which === TOE_OPEN ? 'toe link' : 'rod and rocker',
    how,
  };
}

/** Halves [good, bad] until the two touch; `holds` is true at `good`. Returns the last good place. */
function lastGood(holds: (x: number) => boolean, good: number, bad: number): number {
  let a = good;
  let b = bad;
  for (let i = 0; i < 100; i++) {
    const middle = (a + b) / 2;
    if (middle === a || middle === b) break;
    if (holds(middle)) a = middle;
    else b = middle;
  }
  return a;
}

export interface Reach {
  /** Angles of the lower wishbone with the wanted travel between them; absent when it is not reached. */
  readonly bracket?: { readonly low: number; readonly high: number };
  readonly limit?: Limit;
  readonly rockerReverses?: Metre;
}

/** Follows the corner from the surveyed angle in steps until `travel` is passed or the linkage ends. */
export function reachFor(corner: Corner, travel: Metre, rack: Metre): Reach {
  const s = new Float64Array(stateSize(corner));
  const atRest = place(corner, s, 0, rack);
  if (atRest !== CLOSED) return { limit: limitOf(corner, s, atRest, 0) };
  const direction = travel >= s[RISE] ? 1 : -1;
  const rising = (phi: number): boolean => place(corner, s, phi, rack) === CLOSED && s[RISE + 1] > 0;
  if (!rising(0)) return { limit: limitOf(corner, s, CLOSED, s[RISE]) };
  let reverses: { rockerReverses?: Metre } = {};
  let previous = 0;
  for (let i = 1; i <= MOST_STEPS; i++) {
    const phi = direction * STEP * i;
    if (!rising(phi)) {
      const edge = lastGood(rising, previous, phi);
      const beyond = edge + direction * 1e-9;
      const code = place(corner, s, beyond, rack);
      place(corner, s, edge, rack);
      const limit = limitOf(corner, s, code, s[RISE]);
      if (direction * (s[RISE] - travel) < 0) return { limit, ...reverses };
      return { bracket: order(previous, edge), ...reverses };
    }
    if (reverses.rockerReverses === undefined && s[ROCKER_HINGE + 2] < 0) {
      const turn = lastGood((x) => rising(x) && s[ROCKER_HINGE + 2] >= 0, previous, phi);
      place(corner, s, turn, rack);
      if (direction * (s[RISE] - travel) < 0) reverses = { rockerReverses: s[RISE] };
      place(corner, s, phi, rack);
    }
    if (direction * (s[RISE] - travel) >= 0) return { bracket: order(previous, phi), ...reverses };
    previous = phi;
  }
  throw new Error('the lower wishbone went round without an end to the travel');
}

const order = (a: number, b: number): { low: number; high: number } =>
  a < b ? { low: a, high: b } : { low: b, high: a };

/** Finds `travel` between the two angles: Newton, kept inside the bracket by halving. */
export function findInBracket(
  corner: Corner,
  wanted: { travel: Metre; rack: Metre; tolerance: Metre },
  bracket: { low: number; high: number },
  s: Float64Array,
): number {
  let { low, high } = bracket;
  let phi = (low + high) / 2;
  for (let evaluations = 1; evaluations <= 100; evaluations++) {
    if (place(corner, s, phi, wanted.rack) !== CLOSED)
      throw new Error('the bracket holds a place that is open');
    const miss = wanted.travel - s[RISE];
    if (Math.abs(miss) <= wanted.tolerance || high - low < 1e-15) return evaluations;
    if (miss > 0) low = phi;
    else high = phi;
    const newton = s[PHI] + miss / s[RISE + 1];
    phi = newton > low && newton < high ? newton : (low + high) / 2;
  }
  throw new Error('Newton within a bracket did not settle');
}

/** The reachable travel within ±200 mm at a rack travel, and what binds at each end. */
export function travelLimits(corner: Corner, rack: Metre = 0): TravelLimits {
  const end = (travel: Metre): TravelEnd => {
    const { limit, rockerReverses } = reachFor(corner, travel, rack);
    return {
      travel: limit === undefined ? travel : limit.travel,
      ...(limit === undefined ? {} : { limit }),
      ...(rockerReverses === undefined ? {} : { rockerReverses }),
    };
  };
  return { bump: end(WIDEST), droop: end(-WIDEST) };
}
