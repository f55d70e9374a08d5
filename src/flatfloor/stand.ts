/**
 * The car at rest on four pads, and what any change does to how it stands: by the implicit function theorem.
 *
 * In    the prepared car, the changes since the survey
 * Out   the unknowns, all readings, and every reading's derivative by every change, exact to rounding
 *
 * With E(u, p) = 0 the seven equations and R(u, p) a reading, dR/dp = R_p − R_u E_u⁻¹ E_p.  [FF-13, FF-14]
 */

import { NotSettled } from '../loadpath/loads/car-equilibrium.ts';
import { DenseLu } from '../maths/dense-lu.ts';
import { NotTied } from '../maths/implied-jets.ts';
import { Jets } from '../maths/jets.ts';
import type { Metre, Newton } from '../units/quantity.ts';
import { droopsOf } from './droop.ts';
import type { FloorCar } from './floor-car.ts';
import { LinkOpen } from './joined.ts';
import {
  atSurvey,
  changeVariable,
  type FloorState,
  type Look,
  lookAt,
  type Place,
  UNKNOWNS,
} from './look.ts';
import { type FloorReading, readingsOf } from './readings.ts';

export interface Reading extends Omit<FloorReading, 'jet'> {
  readonly value: number;
  /** Derivative by each change, in the order of the car's changes. */
  readonly by: Float64Array;
}

export interface FloorStanding {
  readonly state: FloorState;
  readonly place: Place;
  readonly readings: ReadonlyMap<string, Reading>;
  /** Largest equation left over. */
  readonly residual: Newton;
  readonly iterations: number;
}

const CLOSED: Newton = 1e-6;
const LOOSE: Newton = 1e-3;
const MOST_STEPS = 60;
/** Longest step of a wheel, m: a stop is walked up to and not jumped over. */
const STRIDE: Metre = 0.01;

/** A car with its store of jets, which is as large as the car has changes. */
export class Floor {
  readonly car: FloorCar;
  readonly #withDroop: boolean;
  /** Of the unknowns alone, for the search; and of everything, for the place found. */
  readonly #lean = new Jets(UNKNOWNS, 0);
  readonly #whole: Jets;
  readonly #lu = new DenseLu(UNKNOWNS);

  /** @param withDroop  also how far each wheel falls to its stop */
  constructor(car: FloorCar, withDroop = false) {
    this.car = car;
    this.#withDroop = withDroop;
    this.#whole = new Jets(changeVariable(car.changes.count), 0);
  }

  /**
   * @param from  a place near by to begin from
   * @param droop  whether this time the droops are wanted too
   * @throws NotSettled, LinkOpen
   */
  stand(state: FloorState, from: Place = atSurvey(), droop = this.#withDroop): FloorStanding {
    let look = this.#look(state, from);
    if (look === undefined) throw new NotSettled({ residual: Number.NaN, iterations: 0 });
    let left = sizeOf(look);
    let iterations = 0;
    for (; iterations < MOST_STEPS && left > CLOSED; iterations += 1) {
      const step = this.#step(look);
      const longest = step.subarray(0, 4).reduce((most, each) => Math.max(most, Math.abs(each)), 0);
      let part = Math.min(1, STRIDE / longest);
      if (!Number.isFinite(longest)) break;
      const { place } = look;
      let next: Look | undefined;
      // shorter steps until the equations close further: at a kink the slope of one side says too much
      for (let half = 0; half < 20; half += 1) {
        next = this.#look(state, { ...place, u: place.u.map((value, k) => value + part * step[k]!) });
        if (next !== undefined && sizeOf(next) < left) break;
        part /= 2;
        next = undefined;
      }
      if (next === undefined) {
        // the last look is gone from the store: taken anew where the search stood
        look = this.#look(state, place)!;
        break;
      }
      look = next;
      left = sizeOf(look);
    }
    if (!(left <= LOOSE)) throw new NotSettled({ residual: left, iterations });
    const { place } = look;
    return {
      state,
      place,
      readings: this.#totals(lookAt(this.car, state, place, this.#whole), state, droop),
      residual: left,
      iterations,
    };
  }

  /**
   * Values of the readings a hair from a place of rest, to first order about it: for a spread, which needs two digits.
   *
   * @param car  the same car with a number of its file moved
   * @throws NotSettled where the joints do not close there
   */
  readNear(state: FloorState, place: Place, car: FloorCar = this.car): ReadonlyMap<string, number> {
    const look = this.#look(state, place, car);
    if (look === undefined) throw new NotSettled({ residual: Number.NaN, iterations: 0 });
    const { jets } = look;
    const step = this.#step(look);
    const readings = [
      ...readingsOf(car, look),
      ...(this.#withDroop ? droopsOf(car, look, state, this.car) : []),
    ];
    return new Map(
      readings.map(({ id, jet }) => [
        id,
        step.reduce((sum, move, k) => sum + jets.first(jet, k) * move, jets.value(jet)),
      ]),
    );
  }

  #look(state: FloorState, from: Place, car: FloorCar = this.car): Look | undefined {
    try {
      return lookAt(car, state, from, this.#lean);
    } catch (reason) {
      if (reason instanceof NotTied || reason instanceof LinkOpen) return undefined;
      throw reason;
    }
  }

  #factored({ jets, equations }: Look): boolean {
    equations.forEach((equation, i) => {
      for (let j = 0; j < UNKNOWNS; j += 1) this.#lu.a[i * UNKNOWNS + j] = jets.first(equation, j);
    });
    return this.#lu.factor();
  }

  #step(look: Look): Float64Array {
    if (!this.#factored(look)) return new Float64Array(UNKNOWNS).fill(Number.NaN);
    return this.#lu.solve(Float64Array.from(look.equations, (each) => -look.jets.value(each)));
  }

  /** Readings with their whole derivatives.  [FF-14] */
  #totals(look: Look, state: FloorState, droop: boolean): ReadonlyMap<string, Reading> {
    const { jets, equations } = look;
    const count = this.car.changes.count;
    const stiff = this.#factored(look);
    const moves = Array.from({ length: count }, (_, i) => {
      const right = new Float64Array(UNKNOWNS);
      for (let k = 0; k < UNKNOWNS; k += 1) right[k] = -jets.first(equations[k]!, changeVariable(i));
      return stiff ? this.#lu.solve(right) : right.fill(Number.NaN);
    });
    const all = [...readingsOf(this.car, look), ...(droop ? droopsOf(this.car, look, state) : [])];
    return new Map(
      all.map(({ jet, ...about }) => {
        const by = new Float64Array(count);
        for (let i = 0; i < count; i += 1) {
          let sum = jets.first(jet, changeVariable(i));
          for (let k = 0; k < UNKNOWNS; k += 1) sum += jets.first(jet, k) * moves[i]![k]!;
          by[i] = sum;
        }
        return [about.id, { ...about, value: about.work(), by }];
      }),
    );
  }
}

const sizeOf = ({ jets, equations }: Look): number =>
  equations.reduce((most, each) => Math.max(most, Math.abs(jets.value(each))), 0);
