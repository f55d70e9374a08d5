/**
 * What must be so before the car is read on its pads or set, in the words of page and paper alike: one list.
 *
 * The order is the trade's: pads, pressures, rack, bars, what is aboard, settled (common practice, no source).
 */

export const HOLDS = {
  pads: 'Pads are level, scales read nought without a wheel, and a known mass was put on one of them.',
  rack: 'The rack is in the middle by its gauge, and the wheel is held there.',
  bars: 'Drop links of the anti-roll bars are off, dampers at their softest.',
  settled: 'The car was rolled off and on, or bounced at both ends, and came to rest.',
  again: 'Rolled off and on once more before the weights; nobody touches the car.',
} as const;

/** @param aboard  masses in kilograms */
export const aboardHold = (aboard: readonly { readonly name: string; readonly mass: number }[]): string =>
  aboard.length === 0
    ? 'The driver, or the same mass, is in his place; fuel is as on the sheet.'
    : `Aboard, or the same mass in their places: ${aboard.map(({ name, mass }) => `${name} ${mass.toFixed(1)} kg`).join(', ')}.`;
