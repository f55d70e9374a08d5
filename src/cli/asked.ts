/** What is typed behind an option, read with its unit; what cannot be read is told with what would do. */

import type { AskedAmount } from '../measured/asked-reading.ts';
import type { End, Wheel } from '../questions/figure.ts';
import { readAmount, readWithSpread } from '../units/read.ts';
import type { Speech } from '../units/show.ts';
import { badAsk } from './outcome.ts';

export const WHEELS: readonly Wheel[] = [
  { end: 'front', side: 'left' },
  { end: 'front', side: 'right' },
  { end: 'rear', side: 'left' },
  { end: 'rear', side: 'right' },
];

export const wheelName = (wheel: Wheel): string => `${wheel.end}-${wheel.side}`;
export const wheelWords = (wheel: Wheel): string => `${wheel.end} ${wheel.side}`;

/** @throws BadInput */
export function askedWheel(text: string): Wheel {
  const found = WHEELS.find((wheel) => wheelName(wheel) === text);
  if (found === undefined) {
    throw badAsk(
      'asked/wheel',
      `--wheel "${text}" is no wheel of the car; write one of ${WHEELS.map(wheelName).join(', ')}.`,
    );
  }
  return found;
}

/** @throws BadInput */
export function askedEnd(text: string): End {
  if (text !== 'front' && text !== 'rear') {
    throw badAsk('asked/end', `--end "${text}" is no end of the car; write front or rear.`);
  }
  return text;
}

/** @throws BadInput */
export function askedUnits(text: string): Speech {
  if (text !== 'mm-N' && text !== 'in-lbf') {
    throw badAsk('asked/units', `--units "${text}" is not known; write mm-N or in-lbf.`);
  }
  return text;
}

/** An amount with its unit, in SI. @throws BadInput */
export function askedAmount(option: string, text: string, like: string): number {
  const read = readAmount(text, like);
  if (!read.ok) throw badAsk('asked/amount', `${option}: ${read.why}.`);
  return read.is.value;
}

/** An amount with its unit, and its spread where one was typed: `24 degC ± 2 K`. @throws BadInput */
export function askedReading(option: string, text: string, like: string): AskedAmount {
  const read = readWithSpread(text, like);
  if (!read.ok) throw badAsk('asked/amount', `${option}: ${read.why}.`);
  const { value, u } = read.is;
  return { value, text: text.trim(), ...(u === undefined ? {} : { u }) };
}

/** The same where it was typed at all. @throws BadInput */
export const maybeReading = (
  option: string,
  text: string | undefined,
  like: string,
): AskedAmount | undefined => (text === undefined ? undefined : askedReading(option, text, like));

/** A whole number within bounds. @throws BadInput */
export function askedCount(option: string, text: string, least: number, most: number): number {
  const count = /^\d+$/.test(text) ? Number(text) : Number.NaN;
  if (!(count >= least && count <= most)) {
    throw badAsk('asked/count', `${option} "${text}" must be a whole number from ${least} to ${most}.`);
  }
  return count;
}
