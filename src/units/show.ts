/**
 * Units as the trade speaks them, and no more digits than the spread supports.
 *
 * In    an SI value, its SI unit, its standard uncertainty if it has one, and the way of speaking
 * Out   text and the trade's unit
 */
import { fromSI, ownUnit } from './unit.ts';

/** How the workshop speaks: millimetres and newtons, or inches and pounds. */
export type Speech = 'mm-N' | 'in-lbf';

const SPOKEN: Readonly<Record<string, readonly [string, string]>> = {
  m: ['mm', 'in'],
  'm^2': ['mm^2', 'in^2'],
  'm^4': ['mm^4', 'in^4'],
  rad: ['deg', 'deg'],
  N: ['N', 'lbf'],
  'N m': ['N m', 'lbf ft'],
  'N/m': ['N/mm', 'lbf/in'],
  'N m/rad': ['N m/deg', 'lbf in/deg'],
  'N s/m': ['N s/mm', 'lbf s/in'],
  Pa: ['MPa', 'ksi'],
  kg: ['kg', 'lb'],
  'kg/m^3': ['kg/m^3', 'lb/in^3'],
  'kg m^2': ['kg m^2', 'lb ft^2'],
  'rad/m': ['deg/mm', 'deg/in'],
  'm/rad': ['mm/deg', 'in/deg'],
  'm/s': ['mm/s', 'in/s'],
  'N/m^2': ['N/mm^2', 'lbf/in^2'],
  '1/m': ['1/mm', '1/in'],
  share: ['%', '%'],
  'm/s^2': ['gn', 'gn'],
  'rad/m^2': ['deg/mm^2', 'deg/in^2'],
};

/** The unit in which the trade says this SI unit. What has no other name keeps its own. */
export function spokenUnit(si: string, speech: Speech): string {
  const pair = SPOKEN[si];
  return pair === undefined ? si : pair[speech === 'mm-N' ? 0 : 1];
}

/** Unit as it is printed: N m → N·m, deg → °, 1 → nothing. */
export function printedUnit(unit: string): string {
  if (unit === '1') return '';
  return unit
    .replace(/\bdeg\b/g, '°')
    .replace(/\bdeg([CF])\b/g, '°$1')
    .replace(/^gn$/, 'g')
    .replaceAll(' ', '·')
    .replace(/\^2/g, '²')
    .replace(/\^3/g, '³')
    .replace(/\^4/g, '⁴');
}

/** The printed unit as it follows its number: a degree sign close up, the others after a space (SI Brochure, 9th edition, 5.4.3). */
export const unitAfter = (printed: string): string =>
  printed === '' || printed === '°' ? printed : ` ${printed}`;

/**
 * What no instrument of a workshop reads in a unit that the trade speaks: a value and a spread that are both below
 * it are what rounding leaves of nothing, such as a force held at nothing by the readings themselves.
 */
const NOTHING = 1e-6;

export interface Shown {
  readonly text: string;
  /** The ± part, one standard uncertainty, when there is one. */
  readonly spread?: string;
  readonly unit: string;
}

/**
 * The value as the trade would write it.
 *
 * With a spread the last digit shown is the second digit of the spread (GUM 7.2.6: at most two significant
 * digits of an uncertainty); without one, four significant digits.
 */
export const show = (value: number, si: string, speech: Speech = 'mm-N', u?: number): Shown =>
  showIn(value, spokenUnit(si, speech), u);

/** The same in a unit that is named, for what the trade says in another unit than is usual for its kind: a tyre in bar. */
export function showIn(value: number, unit: string, u?: number): Shown {
  const spoken = fromSI(value, unit);
  if (u !== undefined && u > 0 && Number.isFinite(u)) {
    const spread = u / ownUnit(unit).factor;
    if (spread < NOTHING && Math.abs(spoken) < NOTHING) return { text: '0', unit: printedUnit(unit) };
    const digits = Math.max(0, 1 - Math.floor(Math.log10(spread)));
    if (spread < Math.abs(spoken) * 1e3 || spread < 1e3) {
      return { text: plain(spoken, digits), spread: plain(spread, digits), unit: printedUnit(unit) };
    }
  }
  return { text: significant(spoken, 4), unit: printedUnit(unit) };
}

/** An amount within a sentence, with its unit: `−7.3 mm`. @param digits decimals in the spoken unit */
export function spokenAmount(value: number, si: string, digits: number, speech: Speech = 'mm-N'): string {
  const unit = spokenUnit(si, speech);
  return `${plain(fromSI(value, unit), digits)}${unitAfter(printedUnit(unit))}`;
}

/** The same with the figures that are worth saying: `1280 N·m`. */
export function spokenFigures(value: number, si: string, speech: Speech = 'mm-N'): string {
  const { text, unit } = show(value, si, speech);
  return `${text} ${unit}`;
}

/** Fixed decimals with thin spaces between thousands and a true minus. Never "-0". */
export function plain(value: number, digits: number): string {
  const fixed = Math.abs(value).toFixed(Math.min(digits, 9));
  const [whole, part] = fixed.split('.');
  const grouped = whole!.length > 4 ? whole!.replace(/\B(?=(\d{3})+(?!\d))/g, '\u2009') : whole!;
  const sign = value < 0 && Number(fixed) !== 0 ? '−' : '';
  return `${sign}${grouped}${part === undefined ? '' : `.${part}`}`;
}

function significant(value: number, digits: number): string {
  // what is left of a difference of equals is nothing to the eye
  if (Math.abs(value) < 1e-9) return '0';
  if (!Number.isFinite(value)) return '—';
  const magnitude = Math.floor(Math.log10(Math.abs(value)));
  if (magnitude >= 6 || magnitude < -4) return value.toExponential(digits - 1).replaceAll('-', '−');
  return plain(value, Math.max(0, digits - 1 - magnitude));
}
