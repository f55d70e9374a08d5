/**
 * Figures as words on a sheet: the workshop's own way of units, and the other way in square brackets.
 *
 * In    SI values with their spread
 * Out   words with no more digits than the spread supports
 */

import type { Wheel } from '../questions/figure.ts';
import { plain, printedUnit, type Shown, type Speech, show, unitAfter } from '../units/show.ts';
import { fromSI } from '../units/unit.ts';

export const otherWay = (speech: Speech): Speech => (speech === 'mm-N' ? 'in-lbf' : 'mm-N');

export const shownWords = (shown: Shown): string => {
  const spread = shown.spread === undefined ? '' : ` ± ${shown.spread}`;
  return `${shown.text}${spread}${unitAfter(shown.unit)}`;
};

export interface Quantity {
  readonly value: number;
  readonly unit: string;
  readonly u?: number;
}

/** Below this, in SI, a value or a spread is what rounding left of nothing. */
const NOTHING = 1e-11;

export function ownWords({ value, unit, u }: Quantity, speech: Speech): string {
  if (unit === '1' && u === 0 && Number.isInteger(value)) return String(value);
  const real = Math.abs(value) < NOTHING ? 0 : value;
  return shownWords(show(real, unit, speech, u === undefined || u < NOTHING ? undefined : u));
}

/** The other way of units; nothing where both ways say the same. */
export function otherWords(of: Quantity, speech: Speech): string {
  const own = ownWords(of, speech);
  const other = ownWords(of, otherWay(speech));
  return own === other ? '' : other;
}

/** `41.2 N/mm [235 lbf/in]`. */
export function bothWords(of: Quantity, speech: Speech): string {
  const other = otherWords(of, speech);
  return other === '' ? ownWords(of, speech) : `${ownWords(of, speech)} [${other}]`;
}

/** A length on a drawing, without its unit: millimetres to stated decimals; inches with two more. */
export function lengthWords(metres: number, decimals: number, speech: Speech): string {
  return speech === 'mm-N'
    ? plain(fromSI(metres, 'mm'), decimals)
    : plain(fromSI(metres, 'in'), decimals + 2);
}

/** `16.00 [0.6299]`. */
export const drawnLength = (metres: number, decimals: number, speech: Speech): string =>
  `${lengthWords(metres, decimals, speech)} [${lengthWords(metres, decimals, otherWay(speech))}]`;

/** A length in words to stated decimals: `0.02 mm [0.0008 in]`. */
export function fixedLength(metres: number, decimals: number, speech: Speech): string {
  const unit = (way: Speech): string => (way === 'mm-N' ? 'mm' : 'in');
  const other = otherWay(speech);
  return `${lengthWords(metres, decimals, speech)} ${unit(speech)} [${lengthWords(metres, decimals, other)} ${unit(other)}]`;
}

/** A value to stated decimals in a stated unit. */
export const inUnit = (value: number, unit: string, decimals: number): string =>
  `${plain(fromSI(value, unit), decimals)}${unitAfter(printedUnit(unit))}`;

export const wheelWords = (wheel: Wheel): string => `${wheel.end} ${wheel.side}`;

/** `20.0 mm bump [0.787 in]`. */
export function travelWords(travel: number, speech: Speech): string {
  if (travel === 0) return 'as surveyed';
  const way = travel > 0 ? 'bump' : 'droop';
  return `${bothWords({ value: Math.abs(travel), unit: 'm' }, speech)} ${way}`;
}
