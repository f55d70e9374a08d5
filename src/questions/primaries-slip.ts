/**
 * Slip joints of a bank: the straight that each pipe needs before its mouth, and what it has.
 *
 * The mouth is where the pipe ends and its length is counted to; the sleeve of the collector stands back over it. What
 * stands in the sleeve cold, and what slides in when hot, must be straight.  [GP-8]
 */
import type { BankName } from '../car/check-exhaust.ts';
import type { Car } from '../car/read.ts';
import type { RouteProblem, RouteSolution } from '../gaspath/route/problem.ts';
import { Numbers } from '../loadpath/numbers.ts';
import type { Metre } from '../units/quantity.ts';
import { formula } from '../working/working.ts';
import { heatOf, type PrimariesHot } from './primaries-hot.ts';

export const slipStraight = formula({
  symbol: 's',
  means: 'straight that a pipe needs before its mouth in a slip joint',
  is: 'e + t + f',
  unit: 'm',
  terms: {
    e: { unit: 'm', means: 'how far it stands in the joint, cold' },
    t: { unit: 'm', means: 'how far it slides in when hot' },
    f: { unit: 'm', means: 'left free beyond that' },
  },
  source: 'GP-8',
});

export interface SlipLack {
  readonly cylinder: number;
  readonly needs: Metre;
  readonly has: Metre;
}

export interface Slips {
  /** Straight that is asked of all: by how they slide, or while there is no set by the whole of their growth. */
  readonly least: (hot: PrimariesHot | undefined) => Metre;
  readonly lacks: (solution: RouteSolution, hot: PrimariesHot) => readonly SlipLack[];
}

/** Left free, so that the joint does not close (common practice, no source). */
const FREE: Metre = 1e-3;
/** What the checker lets pass. */
const SLACK: Metre = 2e-5;
const MM = 1000;

/** Undefined where the bank has no slip joints of which it is known how far the pipes stand in them. */
export function slipsOf(car: Car, side: BankName, { length }: RouteProblem): Slips | undefined {
  const exhaust = car.form.exhaust!;
  const collector = exhaust[side]!.collector!;
  if (collector.joins !== 'slip' || collector.engaged === undefined) return undefined;
  const e = new Numbers(car.values).of(collector.engaged);
  const { heat } = heatOf(exhaust);
  const grows = (heat.expansion * heat.hotter * length.target) / MM;
  const needs = (slides: Metre): Metre => slipStraight({ e, t: Math.max(0, slides), f: FREE });
  return {
    least: (hot) => needs(hot === undefined ? grows : Math.max(...hot.pipes.map(({ slides = 0 }) => slides))),
    lacks: (solution, hot) =>
      hot.pipes.flatMap(({ cylinder, slides = 0 }, k): SlipLack[] => {
        const last = solution.pipes[k]!.elements.at(-1)!;
        const has = last.kind === 'straight' ? last.length / MM : 0;
        return has >= needs(slides) - SLACK ? [] : [{ cylinder, needs: needs(slides), has }];
      }),
  };
}
