/**
 * What a moved reading does to anything that hangs on how the car stands, without finding its place again.
 *
 * In    the numbers as filed or with one moved; what is asked of the car as it stands, as a row of numbers
 * Out   that row: as found, or to first order about the place found
 *
 * With E(x, p) = 0 the car's equations and R(x, p) the row, a reading moved to p' gives R(x, p') − R_x E_x⁻¹ E(x, p').
 * What the reading does beside the car's place is not to first order but whole. LL-n are the equations of
 * docs/theory/loads.md.
 */
import { Matrix, pseudoInverse } from 'ml-matrix';
import type { CarForm } from '../../car/read.ts';
import type { Numbers } from '../numbers.ts';
import { type CarStanding, foundStanding, standingAt, type Unknowns } from './car-equilibrium.ts';
import type { Doing } from './doing.ts';

export type Asked = (standing: CarStanding, numbers: Numbers) => readonly number[];

/** Metres, and slopes of the ground, by which the unknowns are moved. */
const DIFFERENCE = 1e-7;

interface About {
  readonly at: Unknowns;
  readonly standing: CarStanding;
  /** R_x E_x⁻¹, by rows of what is asked. */
  readonly gain: readonly (readonly number[])[];
}

/** The car at the place found, with a reading moved: what does not lean on that reading is taken over. */
const nearPlace = (car: CarForm, doing: Doing, at: Unknowns, numbers: Numbers) =>
  numbers.part(`car at its place, doing ${JSON.stringify(doing)}`, () => standingAt(car, doing, at, numbers));

function aboutPlace(car: CarForm, doing: Doing, asked: Asked, filed: Numbers): About {
  const { at } = foundStanding(car, doing, filed);
  const look = (x: Unknowns) => {
    const { equations, standing } = standingAt(car, doing, x, filed);
    return [equations, asked(standing, filed)] as const;
  };
  // kept, so that what a moved reading does not touch is taken over
  const { standing } = nearPlace(car, doing, at, filed);
  asked(standing, filed);
  const columns = at.map((_, k) => {
    const moved = (by: number) => look(at.map((value, j) => (j === k ? value + by : value)));
    const [above, below] = [moved(DIFFERENCE), moved(-DIFFERENCE)];
    return [0, 1].map((part) =>
      above[part]!.map((value, row) => (value - below[part]![row]!) / (2 * DIFFERENCE)),
    );
  });
  const slopes = (part: number): Matrix => new Matrix(columns.map((each) => each[part]!)).transpose();
  // with a tyre off the ground a row can be empty: nothing then hangs on it
  return {
    at,
    standing,
    gain: slopes(1)
      .mmul(pseudoInverse(slopes(0)))
      .to2DArray(),
  };
}

/**
 * A row of numbers asked of the car as it stands, with a reading moved; undefined for the numbers as filed.  [LL-40]
 *
 * @param name  of what is asked; the same name must ask the same
 * @param asked.of  the row of the car at any place
 * @param asked.moved  the same row at the place found, with a reading moved, told how the car stands there as filed;
 *   as `of` unless given
 * @throws NotSettled, Unreachable, DegenerateCorner, BarOpen
 */
export function movedRow(
  name: string,
  car: CarForm,
  doing: Doing,
  numbers: Numbers,
  asked: {
    readonly of: Asked;
    readonly moved?: (standing: CarStanding, numbers: Numbers, asFiled: CarStanding) => readonly number[];
  },
): readonly number[] | undefined {
  const about = numbers.asFiled(`${name}, about the place of the car`, (filed) =>
    aboutPlace(car, doing, asked.of, filed),
  );
  if (about === undefined) return undefined;
  const { equations, standing } = nearPlace(car, doing, about.at, numbers);
  return (asked.moved ?? asked.of)(standing, numbers, about.standing).map(
    (value, k) => value - about.gain[k]!.reduce((sum, each, j) => sum + each * equations[j]!, 0),
  );
}

/**
 * A row of numbers asked of the car as it stands; with a reading moved it outlives the question.  [LL-40]
 *
 * @throws as movedRow
 */
export function askedOfStanding(
  name: string,
  car: CarForm,
  doing: Doing,
  numbers: Numbers,
  asked: { readonly asFiled: () => readonly number[]; readonly of: Asked },
): readonly number[] {
  return numbers.lasting(name, () => movedRow(name, car, doing, numbers, asked) ?? asked.asFiled());
}
