/**
 * Reading what a person typed: a number and its unit.
 *
 * In    `152.4 mm`, `-3.25 deg`, `5 3/8 in`, `1.2e-3 m`, `312 N/mm ± 4 N/mm`
 * Out   the value in SI and the unit as written, or a sentence that says what would do
 *
 * There is no default unit anywhere: a bare number is an error. A comma is not taken as a decimal sign, since
 * `1,234` means a thousand to one man and one and a bit to the next.
 */
import { ownUnit, sameDimension, unitNamed, unitsLike } from './unit.ts';

export interface Amount {
  /** In SI. */
  readonly value: number;
  /** The unit as it was written. */
  readonly unit: string;
}

export type Read<T> = { readonly ok: true; readonly is: T } | { readonly ok: false; readonly why: string };

const NUMBER = String.raw`[-+−]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?`;
const FRACTION = String.raw`[-+−]?(?:\d+[ -])?\d+/\d+`;
const LEADING = new RegExp(`^(${FRACTION}|${NUMBER})\\s*(.*)$`, 's');

/** Of an acceleration the trade says g and means that of free fall, not a gram. */
const ACCELERATION = 'm/s^2';

const asNumber = (text: string): number => {
  const plain = text.replace('−', '-');
  const fraction = /^([-+]?)(?:(\d+)[ -])?(\d+)\/(\d+)$/.exec(plain);
  if (fraction === null) return Number(plain);
  const size = Number(fraction[2] ?? 0) + Number(fraction[3]) / Number(fraction[4]);
  return fraction[1] === '-' ? -size : size;
};

/** Reads one amount whose unit must be of the same kind as `like` (an SI unit name). */
export function readAmount(text: string, like: string): Read<Amount> {
  const trimmed = text.trim();
  if (/\d,\d/.test(trimmed)) {
    return no(`"${trimmed}" has a comma; write a point for the decimal sign and nothing between thousands`);
  }
  const matched = LEADING.exec(trimmed);
  if (matched === null) return no(`"${trimmed}" is not a number with a unit, such as ${example(like)}`);
  const value = asNumber(matched[1]!);
  const unitText = matched[2]!.trim();
  if (unitText === '' && like === '1') return finite(value, '1', trimmed);
  if (unitText === '') return no(`"${trimmed}" has no unit; write it out, such as ${example(like)}`);
  const unit = unitNamed(unitText === 'g' && like === ACCELERATION ? 'gn' : unitText);
  if (unit === undefined) return no(`"${unitText}" is not a unit we know; ${choices(like)}`);
  if (!sameDimension(unit.dimension, ownUnit(like).dimension)) {
    return no(`"${unitText}" does not measure this; ${choices(like)}`);
  }
  return finite(value * unit.factor + unit.shift, unitText, trimmed);
}

const unitOf = (text: string): string => LEADING.exec(text.trim())?.[2]?.trim() ?? '';

/** Reads an amount with an optional ± part: `312.4 mm ± 0.2 mm`. The ± is one standard uncertainty. */
export function readWithSpread(text: string, like: string): Read<Amount & { readonly u?: number }> {
  const parts = text.split(/±|\+\/-/);
  if (parts.length === 1) return readAmount(text, like);
  if (parts.length > 2) return no(`"${text.trim()}" has more than one ±`);
  const amount = readAmount(parts[0]!, like);
  if (!amount.ok) return amount;
  const spread = readAmount(parts[1]!, like);
  if (!spread.ok) return no(`after the ±: ${spread.why}`);
  // a share may go without a unit, but 50 % ± 0.3 is not meant to be ± 30 %
  if ((unitOf(parts[0]!) === '') !== (unitOf(parts[1]!) === ''))
    return no(`"${text.trim()}": write the unit before and behind ±, or a bare share in both places`);
  const u = spread.is.value - ownUnit(spread.is.unit).shift;
  if (u < 0) return no(`"${text.trim()}": what follows ± must not be negative`);
  return { ok: true, is: { ...amount.is, u } };
}

const UNIT_BEHIND = /[a-z%][a-z/^\d]*$/i;

/** Reads amounts with commas between: one unit behind the last, or one behind each: `105, 140, 175 km/h`. */
export function readList(text: string, like: string): Read<readonly number[]> {
  const parts = text.split(',').map((part) => part.trim());
  const unit = UNIT_BEHIND.exec(parts.at(-1) ?? '')?.[0] ?? '';
  const values: number[] = [];
  for (const part of parts) {
    const read = readAmount(UNIT_BEHIND.test(part) ? part : `${part} ${unit}`, like);
    if (!read.ok) return read;
    values.push(read.is.value);
  }
  return { ok: true, is: values };
}

/** Reads one amount in any unit that we know, where what it measures is settled elsewhere. */
export function readAnyAmount(text: string): Read<Amount> {
  const unitText = unitOf(text);
  if (unitText === '') return no(`"${text.trim()}" is not a number with a unit, such as 0.05 mm`);
  if (unitNamed(unitText) === undefined) return no(`"${unitText}" is not a unit we know`);
  return readAmount(text, unitText);
}

export interface PointAmount {
  /** x, y, z in metres. */
  readonly value: readonly [number, number, number];
  readonly unit: string;
  /** One standard uncertainty of each co-ordinate, metres. */
  readonly u?: number;
}

/** Reads three co-ordinates with one unit behind them: `-212.5, 310, 118.4 mm ± 0.3 mm`. */
export function readPoint(text: string): Read<PointAmount> {
  const [body, spread, ...more] = text.split(/±|\+\/-/);
  if (more.length > 0) return no(`"${text.trim()}" has more than one ±`);
  const numbers = body!.trim().split(/\s*[,;]\s*/);
  if (numbers.length !== 3)
    return no(`"${text.trim()}" is not three numbers and a unit, such as 120, -310.5, 88 mm`);
  const last = readAmount(numbers[2]!, 'm');
  if (!last.ok) return last;
  const value: number[] = [];
  for (const number of numbers.slice(0, 2)) {
    const plain = number.replace('−', '-');
    if (!new RegExp(`^${NUMBER}$`).test(plain))
      return no(`"${number}" is not a number; the unit stands once, at the end`);
    value.push(Number(plain) * ownUnit(last.is.unit).factor);
  }
  const point = [value[0]!, value[1]!, last.is.value] as const;
  if (spread === undefined) return { ok: true, is: { value: point, unit: last.is.unit } };
  const u = readAmount(spread, 'm');
  if (!u.ok) return no(`after the ±: ${u.why}`);
  if (u.is.value < 0) return no(`"${text.trim()}": what follows ± must not be negative`);
  return { ok: true, is: { value: point, unit: last.is.unit, u: u.is.value } };
}

const no = (why: string): { ok: false; why: string } => ({ ok: false, why });

const finite = (value: number, unit: string, text: string): Read<Amount> =>
  Number.isFinite(value) ? { ok: true, is: { value, unit } } : no(`"${text}" is not a finite number`);

const EXAMPLES: Readonly<Record<string, string>> = {
  m: '152.4 mm',
  rad: '-3.25 deg',
  N: '2400 N',
  'N/m': '120 N/mm',
  kg: '118.5 kg',
  Pa: '79 GPa',
  'm/s^2': '2.5 g',
  'm/s': '180 km/h',
  '1': '8.5',
};

const example = (like: string): string => EXAMPLES[like] ?? `12.5 ${like}`;

const choices = (like: string): string => {
  const named = like === 'rad' ? ['deg', 'rad'] : unitsLike(like).filter((name) => !name.includes('µ'));
  return `write it in ${named.length > 0 ? named.slice(0, 7).join(', ') : like}, such as ${example(like)}`;
};
