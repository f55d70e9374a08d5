/**
 * Droop: how far each wheel falls from where it stands until the damper is drawn out, with what moves it.
 *
 * In    the prepared car, the changes, the corner as it stands
 * Out   travel at the stop and its derivatives by the links' changes
 *
 * At the stop the eye to eye length is the damper's open length: L(z, p) = L_open, so dz/dp = −L_p/L_z.  [FF-27]
 */
import { WHEEL_NAMES } from '../loadpath/loads/doing.ts';
import type { Metre } from '../units/quantity.ts';
import { type CornerLinks, LINK_CHANGES, type LinkChanges, variableIndex } from './corner-links.ts';
import type { FloorCar } from './floor-car.ts';
import { changeVariable, type FloorState, type Look, UNKNOWNS } from './look.ts';
import type { FloorReading, Work } from './readings.ts';
import { droopOf, solved } from './worked-readings.ts';

export interface DroopStopAt {
  readonly travel: Metre;
  /** By the links' changes, in their order. */
  readonly by: readonly number[];
}

/** A stop with what was asked for it and the joints there. */
interface FoundStop {
  readonly asked: readonly number[];
  readonly is: DroopStopAt;
  readonly joints: Float64Array;
}

const FOUND: Metre = 1e-11;
const STRIDE: Metre = 0.02;

/** The droop stop of a corner. Where the links are as they were last time, so is the stop. */
export class DroopStop {
  readonly #links: CornerLinks;
  #last: { readonly asked: readonly number[]; readonly is: DroopStopAt | undefined } | undefined;
  /** The last one found, with its joints: the next is near, by its slopes. */
  #found: FoundStop | undefined;

  /** @param links  of its own: a corner keeps one place, and the wheel does not stand at its stop */
  constructor(links: CornerLinks) {
    this.#links = links;
  }

  /** @returns undefined where the linkage ends before the stop */
  at(
    open: Metre,
    changes: LinkChanges,
    from: { readonly travel: Metre; readonly joints: Float64Array | undefined },
  ): DroopStopAt | undefined {
    const asked = [open, changes.rod, changes.toe, changes.camber, changes.caster];
    if (this.#last?.asked.every((value, i) => value === asked[i])) return this.#last.is;
    const is = this.#sought(asked, changes, from);
    this.#last = { asked, is };
    return is;
  }

  /** To first order about the stop of the same corner with other numbers: for a spread, which needs two digits. */
  near(open: Metre, changes: LinkChanges, { is, joints }: FoundStop): DroopStopAt {
    const at = this.#links.at(is.travel, changes, joints);
    const length = at.unitLength!;
    return { travel: is.travel + (open - at.jets.value(length)) / at.jets.first(length, 0), by: is.by };
  }

  get found(): FoundStop | undefined {
    return this.#found;
  }

  #sought(
    asked: readonly number[],
    changes: LinkChanges,
    from: { readonly travel: Metre; readonly joints: Float64Array | undefined },
  ): DroopStopAt | undefined {
    const open = asked[0]!;
    const before = this.#found;
    let { travel, joints } = from;
    if (before !== undefined) {
      joints = before.joints;
      travel = before.is.by.reduce(
        (sum, by, i) => sum + by * (asked[i + 1]! - before.asked[i + 1]!),
        before.is.travel,
      );
    }
    for (let tries = 0; tries < 30; tries += 1) {
      const at = this.#links.at(travel, changes, joints);
      const length = at.unitLength!;
      const perTravel = at.jets.first(length, 0);
      const step = (open - at.jets.value(length)) / perTravel;
      if (Math.abs(step) < FOUND) {
        const by = LINK_CHANGES.map((name) => -at.jets.first(length, variableIndex(name)) / perTravel);
        const is = { travel: travel + step, by };
        this.#found = { asked, is, joints: at.unknowns };
        return is;
      }
      if (!Number.isFinite(step)) return undefined;
      travel += Math.max(-STRIDE, Math.min(STRIDE, step));
      joints = at.unknowns;
    }
    return undefined;
  }
}

/**
 * Droop of every wheel whose damper can be drawn out, in the store of the look.
 *
 * @param filed  the same car before a number of it moved, its stops found: those of a corner that is another are then
 *   taken to first order about them
 */
export function droopsOf(
  car: FloorCar,
  { jets, place }: Look,
  { changes }: FloorState,
  filed: FloorCar = car,
): readonly FloorReading[] {
  return WHEEL_NAMES.flatMap((wheel, k): FloorReading[] => {
    const { sprung, droopStop } = car.wheels[wheel];
    const stop = sprung.springing.droopStopAt;
    if (stop === undefined) return [];
    const at = car.changes.wheel[wheel];
    const moved = Object.fromEntries(LINK_CHANGES.map((name) => [name, changes[at[name]]!])) as LinkChanges;
    const open = sprung.surveyedLength - stop;
    const before = filed.wheels[wheel].droopStop;
    const found =
      before === droopStop || before.found === undefined
        ? droopStop.at(open, moved, { travel: place.u[k]!, joints: place.joints[wheel] })
        : droopStop.near(open, moved, before.found);
    if (found === undefined) return [];
    const jet = jets.scale(jets.variable(place.u[k]!, k), 1, -found.travel);
    if (jets.variables > UNKNOWNS) {
      LINK_CHANGES.forEach((name, i) => {
        jets.setFirst(jet, changeVariable(at[name]), -found.by[i]!);
      });
    }
    const [z, z_s] = [place.u[k]!, found.travel];
    const work: Work = (working) => {
      solved(working, { symbol: 'z', means: 'travel where the car rests', unit: 'm', value: z }, 'rest');
      solved(working, { symbol: 'z_s', means: 'travel at the droop stop', unit: 'm', value: z_s }, 'stop');
      return droopOf({ z, z_s }, working);
    };
    return [{ id: `droop.${wheel}`, kind: 'droop', of: wheel, unit: 'm', jet, work }];
  });
}
