/**
 * What must be so before the car is read on its pads, set, or let go, in the words of page and paper alike: one list.
 *
 * The order is the trade's: pads, rack, bars, what is aboard, settled, bump steer, settled anew, springs, bars on,
 * lock nuts (common practice, no source).
 */
import type { HoldName } from '../car/form/beside-readings.ts';

export type { HoldName } from '../car/form/beside-readings.ts';

export const HOLDS = {
  pads: 'Pads are level, scales read nought without a wheel, and a known mass was put on one of them.',
  rack: 'The rack is in the middle by its gauge, and the wheel is held there.',
  bars: 'Drop links of the anti-roll bars are off, dampers at their softest.',
  settled: 'The car was rolled off and on, or bounced at both ends, and came to rest.',
  bump: 'Bump steer was read with springs out since caster, track rods or rack were last moved.',
  again: 'Rolled off and on once more before the weights; nobody touches the car.',
  springs:
    'With the tub jacked no spring is loose that should not be, and the gap at each bump rubber was looked at.',
  links:
    'Bars go on with no preload: the bolt of each drop link goes in by hand, within a tenth of a turn of the link.',
  locks:
    'Every lock nut, lock ring and bolt that was moved is tight and marked; thread is seen in each witness hole.',
  marks: 'No lock nut, lock ring or bolt has moved off its mark.',
} as const satisfies Readonly<Record<Exclude<HoldName, 'aboard'>, string>>;

/** @param aboard  masses in kilograms */
export const aboardHold = (aboard: readonly { readonly name: string; readonly mass: number }[]): string =>
  aboard.length === 0
    ? 'The driver, or the same mass, is in his place; fuel is as on the sheet.'
    : `Aboard, or the same mass in their places: ${aboard.map(({ name, mass }) => `${name} ${mass.toFixed(1)} kg`).join(', ')}.`;

export const holdWords = (name: HoldName, aboard: Parameters<typeof aboardHold>[0]): string =>
  name === 'aboard' ? aboardHold(aboard) : HOLDS[name];
