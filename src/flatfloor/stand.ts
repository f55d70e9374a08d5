/**
 * The car at rest on four pads, and what any change does to how it stands: by the implicit function theorem.
 *
 * In    the prepared car, the changes since the survey
 * Out   the unknowns, all readings, and every reading's derivative by every change, exact to rounding
 *
 * With E(u, p) = 0 the seven equations and R(u, p) a reading, dR/dp = R_p − R_u E_u⁻¹ E_p.  [FF-13, FF-14]
 */

import { NotSettled } from '../loadpath/loads/car-equilibrium.ts';
import { WHEEL_NAMES } from '../loadpath/loads/doing.ts';
import { DenseLu } from '../maths/dense-lu.ts';
import { NotTied } from '../maths/implied-jets.ts';
import { Jets } from '../maths/jets.ts';
import type { Metre, Newton } from '../units/quantity.ts';
import { LINK_CHANGES, type LinkChanges } from './corner-links.ts';
import { droopStopAt } from './droop.ts';
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
  readonly #jets: Jets;
  readonly #lu = new DenseLu(UNKNOWNS);

  /** @param withDroop  also how far each wheel falls to its stop, which takes as long as all else */
  constructor(car: FloorCar, withDroop = false) {
    this.car = car;
    this.#withDroop = withDroop;
    this.#jets = new Jets(changeVariable(car.changes.count), 0);
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
    return {
      state,
      place: look.place,
      readings: this.#totals(look, state, droop),
      residual: left,
      iterations,
    };
  }

  /**
   * Values of the readings a hair from a place of rest, to first order about it: for a spread, which needs two digits.
   *
   * @throws NotSettled where the joints do not close there
   */
  readNear(state: FloorState, place: Place): ReadonlyMap<string, number> {
    const look = this.#look(state, place);
    if (look === undefined) throw new NotSettled({ residual: Number.NaN, iterations: 0 });
    const { jets } = look;
    const step = this.#step(look);
    const readings = [...readingsOf(this.car, look), ...(this.#withDroop ? this.#droops(look, state) : [])];
    return new Map(
      readings.map(({ id, jet }) => [
        id,
        step.reduce((sum, move, k) => sum + jets.first(jet, k) * move, jets.value(jet)),
      ]),
    );
  }

  #look(state: FloorState, from: Place): Look | undefined {
    try {
      return lookAt(this.car, state, from, this.#jets);
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
    const moves: Float64Array[] = [];
    const stiff = this.#factored(look);
    for (let i = 0; i < count; i += 1) {
      const right = Float64Array.from(equations, (each) => -jets.first(each, changeVariable(i)));
      moves.push(stiff ? this.#lu.solve(right) : right.fill(Number.NaN));
    }
    const all = [...readingsOf(this.car, look), ...(droop ? this.#droops(look, state) : [])];
    return new Map(
      all.map(({ jet, ...about }) => {
        const by = new Float64Array(count);
        for (let i = 0; i < count; i += 1) {
          let sum = jets.first(jet, changeVariable(i));
          for (let k = 0; k < UNKNOWNS; k += 1) sum += jets.first(jet, k) * moves[i]![k]!;
          by[i] = sum;
        }
        return [about.id, { ...about, value: jets.value(jet), by }];
      }),
    );
  }

  #droops({ jets, place }: Look, { changes }: FloorState): readonly FloorReading[] {
    const { changes: names } = this.car;
    return WHEEL_NAMES.flatMap((wheel, k): FloorReading[] => {
      const at = names.wheel[wheel];
      const links = Object.fromEntries(LINK_CHANGES.map((name) => [name, changes[at[name]]!])) as LinkChanges;
      const from = { travel: place.u[k]!, joints: place.joints[wheel] };
      const stop = droopStopAt(this.car, wheel, links, from);
      if (stop === undefined) return [];
      const jet = jets.scale(jets.variable(place.u[k]!, k), 1, -stop.travel);
      LINK_CHANGES.forEach((name, i) => {
        jets.setFirst(jet, changeVariable(at[name]), -stop.by[i]!);
      });
      return [{ id: `droop.${wheel}`, kind: 'droop', of: wheel, unit: 'm', jet }];
    });
  }
}

const sizeOf = ({ jets, equations }: Look): number =>
  equations.reduce((most, each) => Math.max(most, Math.abs(jets.value(each))), 0);
