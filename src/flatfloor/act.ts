/**
 * How an adjuster is moved, as plain data: for whoever draws it instead of saying it.
 *
 * In    the car file, an adjuster, how many units it is moved and how many it was moved since the survey
 * Out   which way round and seen from where, thread engaged before and after, shims out and in, from what to what
 *
 * Words of the same move stand with the adjuster (adjusters.ts); both take their way round from one place.
 * [FF-18 to FF-21]
 */
import type { CarForm } from '../car/read.ts';
import { endOf, sideOf, WHEEL_NAMES } from '../loadpath/loads/doing.ts';
import type { Numbers } from '../loadpath/numbers.ts';
import { nearestSetting } from '../loadpath/spring/spline.ts';
import type { Kilogram, Metre, Pascal, Radian } from '../units/quantity.ts';
import type { Adjuster } from './adjusters.ts';
import type { Shims } from './shims.ts';
import { type LinkThread, type TubeEnds, tubeEnds, type Way, wayRound } from './way-round.ts';

type Corner = CarForm['front']['left'];

/** One screwed end. */
export interface ScrewedEnd {
  readonly hand: 'left' | 'right' | undefined;
  readonly engaged: Metre;
  readonly engagedAfter: Metre;
  readonly least: Metre;
}

export type Act =
  | {
      readonly by: 'tube' | 'end';
      readonly longer: boolean;
      /** A tube seen from its end with the right-hand thread, an end seen from its eye. */
      readonly way: Way | undefined;
      /** Of a tube, where the file tells at which end the right-hand thread is. */
      readonly tube: TubeEnds | undefined;
      /** Of one turn. */
      readonly perTurn: number;
      readonly length: Metre;
      readonly size: string | undefined;
      readonly ends: readonly ScrewedEnd[];
    }
  | {
      readonly by: 'platform';
      readonly tighter: boolean;
      readonly perTurn: number;
      readonly length: Metre;
      /** Thread left the way that it is turned, afterwards. */
      readonly left: Metre;
    }
  | { readonly by: 'anchor'; readonly tighter: boolean; readonly angle: Radian; readonly left: Metre }
  | {
      readonly by: 'splines';
      readonly rocker: number;
      readonly anchor: number;
      readonly angle: Radian;
    }
  | {
      readonly by: 'stack';
      readonly at: string;
      readonly put: readonly Shims[];
      readonly taken: readonly Shims[];
      readonly before: Metre;
      readonly after: Metre;
      readonly most: Metre;
    }
  | {
      readonly by: 'shift';
      readonly moves: string;
      readonly rearward: readonly Shims[];
      readonly forward: readonly Shims[];
      readonly length: Metre;
    }
  | { readonly by: 'pressure'; readonly from: Pascal; readonly to: Pascal }
  | { readonly by: 'ballast'; readonly from: Kilogram; readonly to: Kilogram; readonly piece: Kilogram };

/** @param moved  units by which it was moved since the survey */
export function actOf(
  car: CarForm,
  adjuster: Adjuster,
  units: number,
  numbers: Numbers,
  moved: number,
): Act | undefined {
  if (adjuster.kind === 'ballast') {
    const form = car.floor?.ballast?.[adjuster.name.slice('ballast '.length)];
    if (form === undefined) return undefined;
    const piece = numbers.of(form.step);
    const from = numbers.of(form.fitted) + moved * piece;
    return { by: 'ballast', from, to: from + units * piece, piece };
  }
  if (adjuster.kind === 'drop link') {
    const bar = car[adjuster.at === 'rear' ? 'rear' : 'front'].antiRollBar;
    const link = adjuster.name.includes(' left ') ? bar?.leftLink : bar?.rightLink;
    return link === undefined ? undefined : screwed('dropLink', link.thread, adjuster, units, numbers, moved);
  }
  const wheel = WHEEL_NAMES.find((each) => each === adjuster.at);
  if (wheel === undefined) return undefined;
  return atCorner(car[endOf(wheel)][sideOf(wheel)], adjuster, units, numbers, moved);
}

function atCorner(
  corner: Corner,
  adjuster: Adjuster,
  units: number,
  numbers: Numbers,
  moved: number,
): Act | undefined {
  const { platform, anchor, camberShims, casterShims, tyre } = corner.adjusters ?? {};
  const change = Math.abs(units) * adjuster.step;
  switch (adjuster.kind) {
    case 'rod':
    case 'track rod': {
      const of = adjuster.kind === 'rod' ? 'rod' : 'toeLink';
      const thread = corner[of]?.thread;
      return thread === undefined ? undefined : screwed(of, thread, adjuster, units, numbers, moved);
    }
    case 'platform': {
      if (platform === undefined) return undefined;
      const left = units > 0 ? numbers.of(platform.tighter) : numbers.of(platform.slacker);
      return {
        by: 'platform',
        tighter: units > 0,
        perTurn: numbers.of(platform.perTurn),
        length: change,
        left: left - Math.sign(units) * (moved + units) * adjuster.step,
      };
    }
    case 'anchor': {
      if (anchor === undefined) return undefined;
      const left = units > 0 ? numbers.of(anchor.tighter) : numbers.of(anchor.slacker);
      const flat = numbers.of(anchor.pitch) / 6;
      return {
        by: 'anchor',
        tighter: units > 0,
        angle: change,
        left: left - Math.sign(units) * (moved + units) * flat,
      };
    }
    case 'splines': {
      const { rockerEnd, anchorEnd } = corner.bar ?? {};
      if (rockerEnd?.splines === undefined || anchorEnd?.splines === undefined) return undefined;
      const splines = { first: numbers.of(rockerEnd.splines), second: numbers.of(anchorEnd.splines) };
      const { moveFirst, moveSecond, angle } = nearestSetting(splines, units * adjuster.step);
      return { by: 'splines', rocker: moveFirst, anchor: moveSecond, angle };
    }
    case 'camber shims': {
      if (camberShims === undefined) return undefined;
      const { inward, outward } = piecesOf(adjuster, units);
      const fitted = camberShims.fitted.reduce(
        (sum, { thickness, pieces }) => sum + numbers.of(thickness) * numbers.of(pieces),
        0,
      );
      const before = fitted + moved * adjuster.step;
      return {
        by: 'stack',
        at: camberShims.at,
        put: inward,
        taken: outward,
        before,
        after: before + units * adjuster.step,
        most: numbers.of(camberShims.most),
      };
    }
    case 'caster shims': {
      if (casterShims === undefined) return undefined;
      const { inward, outward } = piecesOf(adjuster, units);
      // pieces from the first stack to the second: for the upper wishbone from behind to in front
      const upper = casterShims.moves === 'upper wishbone';
      return {
        by: 'shift',
        moves: casterShims.moves,
        forward: upper ? inward : outward,
        rearward: upper ? outward : inward,
        length: change,
      };
    }
    case 'pressure': {
      if (tyre === undefined) return undefined;
      const from = numbers.of(tyre.pressure) + moved * adjuster.step;
      return { by: 'pressure', from, to: from + units * adjuster.step };
    }
    default:
      return undefined;
  }
}

function screwed(
  of: Parameters<typeof tubeEnds>[0],
  thread: LinkThread,
  adjuster: Adjuster,
  units: number,
  numbers: Numbers,
  moved: number,
): Act {
  const both = thread.hands === 'left and right';
  const perTurn = numbers.or(thread.perTurn, both ? 6 : 2);
  const end = (
    one: Pick<LinkThread, 'pitch' | 'engaged' | 'least'>,
    hand: ScrewedEnd['hand'],
  ): ScrewedEnd => {
    const per = numbers.of(one.pitch) / perTurn;
    const engaged = numbers.of(one.engaged) - moved * per;
    return { hand, engaged, engagedAfter: engaged - units * per, least: numbers.of(one.least) };
  };
  const hand = thread.hands === 'right only' ? 'right' : thread.hands === 'left only' ? 'left' : undefined;
  return {
    by: both ? 'tube' : 'end',
    longer: units > 0,
    way: wayRound(thread.hands, units > 0),
    tube: both ? tubeEnds(of, thread) : undefined,
    perTurn,
    length: Math.abs(units) * adjuster.step,
    size: thread.size,
    // whether the thread that is described first is the right-hand one is not in the file: it is not said to be either
    ends: both ? [end(thread, undefined), end(thread.other ?? thread, undefined)] : [end(thread, hand)],
  };
}

/** Pieces of a choice: those that go in, or from the first stack to the second, and those the other way. */
function piecesOf(
  { choices }: Adjuster,
  units: number,
): { readonly inward: readonly Shims[]; readonly outward: readonly Shims[] } {
  const stack = choices.find((each) => Math.abs(each.units - units) < 1e-6)?.stack;
  const all = [...(stack?.pieces ?? [])];
  return {
    inward: all.flatMap(([thickness, n]) => (n > 0 ? [{ thickness, pieces: n }] : [])),
    outward: all.flatMap(([thickness, n]) => (n < 0 ? [{ thickness, pieces: -n }] : [])),
  };
}
