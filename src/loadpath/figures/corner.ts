/**
 * All figures of one corner, in one order, with or without a record of how they came about.
 *
 * The same pass gives the figures, their spread (by moving the numbers) and their working, so that what is shown
 * is what was computed.
 */
import type { Metre } from '../../units/quantity.ts';
import type { Term, Working } from '../../working/working.ts';
import { attitudeOf } from '../corner/attitude.ts';
import { jointSwings } from '../corner/joints.ts';
import { solveCorner } from '../corner/solve.ts';
import type { AxleForm, SideName } from '../corner-of-car.ts';
import type { Numbers } from '../numbers.ts';
import { linkageOf, type SprungCorner, sprungCorner } from '../sprung-corner.ts';
import { linkFigures } from './links.ts';
import { type Put, recorded } from './note.ts';
import { rockerFigures } from './rocker.ts';
import { springFigures } from './spring.ts';
import { tyreFigures } from './tyre.ts';
import { uprightFigures } from './upright.ts';

export interface CornerAt {
  readonly travel: Metre;
  readonly rack: Metre;
}

/**
 * Puts every figure of the corner.
 * @throws DegenerateCorner when the points cannot be a corner; Unreachable when the travel is out of reach
 */
export function putCornerFigures(
  axle: AxleForm,
  side: SideName,
  at: CornerAt,
  numbers: Numbers,
  put: Put,
  working?: Working,
): SprungCorner {
  const record = working === undefined ? put : recorded(put, working, askedTerms(at));
  const of = sprungCorner(axle, side, numbers, working);
  const place = `${of.form.scale.path} at ${at.travel}, rack ${at.rack}`;
  const { state, attitude, swings } = numbers.part(`linkage solved, ${place}`, () => {
    const corner = linkageOf(axle, side, numbers);
    const state = solveCorner(corner, at);
    return { state, attitude: attitudeOf(state), swings: jointSwings(corner, state) };
  });
  const now = of.wheelAt(at.travel, at.rack);
  uprightFigures(of, numbers, attitude, record, working);
  linkFigures(of, numbers, { state, attitude, swings }, record, working);
  rockerFigures(of, now, record, working);
  springFigures(of, numbers, now, record, working);
  tyreFigures(of, numbers, now, attitude, record, working);
  return of;
}

const askedTerms = (at: CornerAt): readonly Term[] => [
  {
    symbol: 'z',
    means: 'wheel travel asked for',
    value: at.travel,
    unit: 'm',
    from: { kind: 'asked', what: 'wheel travel' },
  },
  {
    symbol: 'x_r',
    means: 'rack travel asked for',
    value: at.rack,
    unit: 'm',
    from: { kind: 'asked', what: 'rack travel' },
  },
];
