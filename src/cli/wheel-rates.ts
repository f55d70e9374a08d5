/**
 * What a change of spring does at the wheel, in two places: as the car stands, and at full bump.
 *
 * In    wheel rate by the old spring and by the new one
 * Out   both beside each other with the difference
 * Not   bump rubber, gas and stops, which stay the same: the rate of the spring alone, with its force × change of
 *       ratio
 */
import type { Speech } from '../units/show.ts';
import { amountText, table } from './print.ts';

export const WHEEL_RATES = {
  wheelRateStanding: ['wheel rate by the spring, as the car stands', 'N/m'],
  wheelRateFullBump: ['wheel rate by the spring, at full bump', 'N/m'],
} as const;

export interface RatesAtWheel {
  readonly name: string;
  /** N/m */
  readonly standing: number;
  readonly top: number;
  /** Travel of `top`, m. */
  readonly topAt: number;
}

/** The last of a curve: where the travel ends in which both springs carry. */
export const topOf = (
  { travel }: { readonly travel: readonly number[] },
  rates: readonly number[],
): Pick<RatesAtWheel, 'top' | 'topAt'> => ({ top: rates.at(-1)!, topAt: travel.at(-1)! });

export function atTheWheel(before: RatesAtWheel, after: RatesAtWheel, speech: Speech): string[] {
  const row = (where: string, from: number, to: number): string[] => [
    where,
    amountText(from, 'N/m', speech),
    amountText(to, 'N/m', speech),
    withSign(to - from, amountText(to - from, 'N/m', speech)),
    withSign(to - from, amountText(to / from - 1, 'share', speech)),
  ];
  return table([
    ['Wheel rate by the spring', before.name, after.name, 'difference', ''],
    row('  as the car stands', before.standing, after.standing),
    row(`  at full bump, ${amountText(before.topAt, 'm', speech)}`, before.top, after.top),
  ]);
}

const withSign = (value: number, text: string): string => (value > 0 ? `+${text}` : text);
