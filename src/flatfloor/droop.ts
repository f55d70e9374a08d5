/**
 * Droop: how far each wheel falls from where it stands until the damper is drawn out, with what moves it.
 *
 * In    the prepared car, the changes, the corner as it stands
 * Out   travel at the stop and its derivatives by the links' changes
 *
 * At the stop the eye to eye length is the damper's open length: L(z, p) = L_open, so dz/dp = −L_p/L_z.  [FF-27]
 */
import type { WheelName } from '../loadpath/loads/doing.ts';
import type { Metre } from '../units/quantity.ts';
import { LINK_CHANGES, type LinkChanges, variableIndex } from './corner-links.ts';
import type { FloorCar } from './floor-car.ts';

export interface DroopStopAt {
  readonly travel: Metre;
  /** By the links' changes, in their order. */
  readonly by: readonly number[];
}

const FOUND: Metre = 1e-11;
const STRIDE: Metre = 0.02;

/** @returns undefined without a damper that can be drawn out, or where the linkage ends before its stop */
export function droopStopAt(
  car: FloorCar,
  wheel: WheelName,
  changes: LinkChanges,
  from: { readonly travel: Metre; readonly joints: Float64Array | undefined },
): DroopStopAt | undefined {
  const { links, sprung } = car.wheels[wheel];
  const stop = sprung.springing.droopStopAt;
  if (stop === undefined) return undefined;
  const open = sprung.surveyedLength - stop;
  let { travel, joints } = from;
  for (let tries = 0; tries < 30; tries += 1) {
    const at = links.at(travel, changes, joints);
    const length = at.unitLength!;
    const perTravel = at.jets.first(length, 0);
    const step = (open - at.jets.value(length)) / perTravel;
    if (Math.abs(step) < FOUND) {
      const by = LINK_CHANGES.map((name) => -at.jets.first(length, variableIndex(name)) / perTravel);
      return { travel: travel + step, by };
    }
    if (!Number.isFinite(step)) return undefined;
    travel += Math.max(-STRIDE, Math.min(STRIDE, step));
    joints = at.unknowns;
  }
  return undefined;
}
