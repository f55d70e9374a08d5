/**
 * What cannot be among the amounts asked about tyre pressures: colder than any place, damper than saturated, the
 * pressure of the air in the wrong unit.
 *
 * In    the amounts as they were typed
 * Out   for the first that cannot be, in words what was found and what would do
 */

import type { AskedAmount } from '../measured/asked-reading.ts';
import { spokenAmount } from '../units/show.ts';

interface Limits {
  readonly unit: string;
  readonly from: number;
  readonly to: number;
}

const CELSIUS = 273.15;
export const WEATHER: Limits = { unit: 'K', from: CELSIUS - 40, to: CELSIUS + 60 };
export const GAS: Limits = { unit: 'K', from: CELSIUS - 40, to: CELSIUS + 200 };
export const AIR_AROUND: Limits = { unit: 'Pa', from: 50e3, to: 110e3 };
export const SHARE: Limits = { unit: 'share', from: 0, to: 1 };
export const GAUGE_PRESSURE: Limits = { unit: 'Pa', from: 0, to: 5e5 };

/** @param all  what each is, as it was asked, and what can be */
export function outOfLimits(
  all: readonly (readonly [means: string, asked: AskedAmount | undefined, limits: Limits])[],
): string | undefined {
  for (const [means, asked, { unit, from, to }] of all) {
    if (asked === undefined || (asked.value >= from && asked.value <= to)) continue;
    // a temperature is spoken as a thermometer has it
    const [low, high] = [from, to].map((each) =>
      unit === 'K' ? `${Math.round(each - CELSIUS)} °C` : spokenAmount(each, unit, 1),
    );
    return `The ${means} is "${asked.text}"; what can be is ${low} to ${high}.`;
  }
  return undefined;
}
