/**
 * What a drop link that goes on under preload does: twist of the bar and cross weight for a tenth of a turn of it.
 *
 * In    a car whose drop links have threads
 * Out   for each axle the torque in the bar and the share of cross weight, without sign; nothing where no link is told
 */
import type { Car } from '../car/read.ts';
import { adjustersOf } from '../flatfloor/adjusters.ts';
import { floorCarOf } from '../flatfloor/floor-car.ts';
import { Floor } from '../flatfloor/stand.ts';
import { Numbers } from '../loadpath/numbers.ts';
import { stateOf } from './floor.ts';
import { isFloorRefusal } from './floor-refusal.ts';

/** Turns within which a link goes on without preload (common practice, no source). */
export const LINK_ZERO = 0.1;

export interface BarPreload {
  readonly end: 'front' | 'rear';
  /** N m of the bar, and share of the whole across, for LINK_ZERO of a turn of one link. */
  readonly torque: number;
  readonly cross: number;
}

export function barPreload(car: Car): readonly BarPreload[] {
  const numbers = new Numbers(car.values);
  try {
    const prepared = floorCarOf(car.form, numbers);
    const state = stateOf(car, { bars: 'connected' }, prepared, numbers);
    const { readings } = new Floor(prepared).stand(state);
    return adjustersOf(car.form, prepared.changes, numbers).flatMap((adjuster): BarPreload[] => {
      const { kind, at, change, step, perTurn } = adjuster;
      // both links of a bar do the same to it: the left one is told
      if (kind !== 'drop link' || perTurn === undefined || !adjuster.name.includes(' left ')) return [];
      const end = at === 'rear' ? 'rear' : 'front';
      const torque = readings.get(`barTorque.${end}`);
      const cross = readings.get('cross');
      if (torque === undefined || cross === undefined) return [];
      const length = LINK_ZERO * perTurn * step;
      return [
        { end, torque: Math.abs(torque.by[change]! * length), cross: Math.abs(cross.by[change]! * length) },
      ];
    });
  } catch (reason) {
    if (isFloorRefusal(reason)) return [];
    throw reason;
  }
}
