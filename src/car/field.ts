/**
 * The kinds of field that a car file is made of.
 *
 * Each field is declared once, with what it means, its unit, its plausible range, how it is measured and which
 * instrument usually reads it. Reading, checking, the published JSON Schema, the page's forms and every error
 * message are made from that one declaration.
 */
import { z } from 'zod';
import { readAmount, readPoint, readWithSpread } from '../units/read.ts';
import { plain, printedUnit } from '../units/show.ts';
import { fromSI, toSI } from '../units/unit.ts';
import { kindWords } from './form-words.ts';

/** What a field says of itself. Ranges are in the spoken unit. */
export interface FieldNotes {
  readonly means: string;
  /** How to measure it, in one sentence. */
  readonly measure: string;
  /** The unit the trade writes, which also fixes what kind of quantity it is. */
  readonly unit: string;
  readonly si: string;
  readonly min: number;
  readonly max: number;
  /** Class of the instrument that usually reads it: its spread applies where the file states none. */
  readonly usual: string;
}

/** A measured amount as written, before it has a place in the car's list of values. */
export interface RawAmount {
  readonly kind: 'amount';
  readonly value: number;
  readonly u?: number;
  readonly text: string;
  readonly notes: FieldNotes;
  readonly stamp: Stamp;
}

/** Three co-ordinates as written; `surveyed` where the survey gives them. */
export interface RawPoint {
  readonly kind: 'point';
  readonly value: readonly [number, number, number] | 'surveyed';
  readonly u?: number;
  readonly text: string;
  readonly notes: FieldNotes;
  readonly stamp: Stamp;
}

/** Who read it, with what, when. */
export interface Stamp {
  readonly with?: string;
  readonly by?: string;
  readonly on?: string;
  readonly note?: string;
}

const READING_KEYS = ['is', 'with', 'by', 'on', 'note'] as const;

type Complain = (code: string, message: string) => void;

/** A reading is a text, or a mapping of `is` with what is known about it. */
function opened(
  raw: unknown,
  notes: FieldNotes,
  complain: Complain,
): { text: string; stamp: Stamp } | undefined {
  if (raw === undefined || raw === null) {
    complain('field/missing', 'is missing');
    return undefined;
  }
  if (typeof raw === 'string') return { text: raw, stamp: {} };
  if (typeof raw === 'number') {
    if (notes.si === '1') return { text: String(raw), stamp: {} };
    complain(
      'field/no-unit',
      `is ${raw} without a unit; write ${raw} ${notes.unit} if that is what was meant`,
    );
    return undefined;
  }
  if (typeof raw !== 'object' || Array.isArray(raw)) {
    complain('field/form', `is ${kindWords(raw)}; write ${example(notes)}`);
    return undefined;
  }
  const record = raw as Record<string, unknown>;
  for (const key of Object.keys(record)) {
    if (!(READING_KEYS as readonly string[]).includes(key)) {
      complain('field/unknown-key', `has "${key}"; a reading has ${READING_KEYS.join(', ')}`);
      return undefined;
    }
  }
  const { is } = record;
  if (typeof is !== 'string' && !(typeof is === 'number' && notes.si === '1')) {
    complain('field/no-value', `needs "is" with a number and a unit, such as is: ${example(notes)}`);
    return undefined;
  }
  const stamp: Record<string, string> = {};
  for (const key of READING_KEYS.slice(1)) {
    const value = record[key];
    if (value === undefined) continue;
    if (typeof value !== 'string' && typeof value !== 'number') {
      complain('field/form', `has a "${key}" that is not a word; put it in quotes`);
      return undefined;
    }
    stamp[key] = String(value);
  }
  if (stamp.on !== undefined && !isDay(stamp.on)) {
    complain('field/date', `was read "on" ${stamp.on}; write the day as 2026-03-14`);
    return undefined;
  }
  return { text: String(is), stamp };
}

/** A day of the calendar, as ISO 8601 writes it. */
export function isDay(text: string): boolean {
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (parts === null) return false;
  const [year, month, day] = parts.slice(1).map(Number) as [number, number, number];
  const last = [
    31,
    year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28,
    31,
    30,
    31,
    30,
    31,
    31,
    30,
    31,
    30,
    31,
  ];
  return month >= 1 && month <= 12 && day >= 1 && day <= last[month - 1]!;
}

const example = (notes: FieldNotes): string =>
  notes.si === 'm' && notes.usual === 'portable arm' && notes.min < 0
    ? '120, -310.5, 88 mm'
    : `${plainNumber((notes.min + notes.max) / 2)} ${notes.unit === '1' ? '' : notes.unit}`.trim();

const plainNumber = (value: number): string =>
  Math.abs(value) >= 100 ? value.toFixed(0) : Number(value.toPrecision(3)).toString();

const rangeWords = (notes: FieldNotes): string =>
  `${plain(notes.min, digitsOf(notes.min))} to ${plain(notes.max, digitsOf(notes.max))} ${notes.unit === '1' ? '' : notes.unit}`.trim();

const digitsOf = (value: number): number =>
  Number.isInteger(value) ? 0 : 3 - Math.floor(Math.log10(Math.abs(value)) + 1e-9) - 1;

/** Attaches the notes, so that JSON Schema, forms and messages can be made from the same declaration. */
const noted = <S extends z.ZodType>(schema: S, notes: FieldNotes, kind: string): S =>
  schema.meta({ title: notes.means, description: notes.measure, reading: { kind, ...notes } }) as S;

/**
 * A single measured amount.
 *
 * @example
 * amount({ means: 'bar diameter', measure: 'Micrometer at three places.', unit: 'mm', si: 'm', min: 8, max: 60, usual: 'micrometer' })
 */
export function amount(notes: FieldNotes) {
  const schema = z.unknown().transform((raw, context): RawAmount => {
    const complain: Complain = (code, message) =>
      context.addIssue({ code: 'custom', message, params: { code, notes } });
    const form = opened(raw, notes, complain);
    if (form === undefined) return z.NEVER;
    const read = readWithSpread(form.text, notes.si);
    if (!read.ok) {
      complain('field/unreadable', `cannot be read: ${read.why}`);
      return z.NEVER;
    }
    const low = toSI(notes.min, notes.unit);
    const high = toSI(notes.max, notes.unit);
    // the ends belong to the range; 1e-9 lets 25.4 mm be 1 in
    const slack = 1e-9 * Math.max(Math.abs(low), Math.abs(high));
    if (read.is.value < low - slack || read.is.value > high + slack) {
      const found = fromSI(read.is.value, notes.unit);
      complain(
        'field/out-of-range',
        `is ${plainNumber(found)} ${notes.unit === '1' ? '' : notes.unit}`.trim() +
          `; what can be is ${rangeWords(notes)}${unitHint(read.is.value, notes)}`,
      );
      return z.NEVER;
    }
    return {
      kind: 'amount',
      value: read.is.value,
      ...(read.is.u === undefined ? {} : { u: read.is.u }),
      text: form.text.trim(),
      notes,
      stamp: form.stamp,
    };
  });
  return noted(schema, notes, 'amount');
}

/** When another common unit would put the value inside the range, says so: `inches read as millimetres?` */
function unitHint(value: number, notes: FieldNotes): string {
  const low = toSI(notes.min, notes.unit);
  const high = toSI(notes.max, notes.unit);
  if (notes.si === 'm') {
    if (value * 25.4 >= low && value * 25.4 <= high) return ' (inches written as mm?)';
    if (value / 1000 >= low && value / 1000 <= high && value !== 0) return ' (mm written as m?)';
    if (value * 1000 >= low && value * 1000 <= high && value !== 0) return ' (m written as mm?)';
  }
  return '';
}

/**
 * An amount that is decided and not measured, such as the acceleration of a load case: a number with its unit, in SI.
 * It has no spread.
 */
export function stated({ means, measure, unit, si, min, max }: Omit<FieldNotes, 'usual'>) {
  const word = printedUnit(unit);
  const schema = z.union([z.string(), z.number()], { error: 'must be a number with its unit' });
  return schema
    .transform((raw, context): number => {
      const complain = (message: string): never => {
        context.addIssue({ code: 'custom', message });
        return z.NEVER;
      };
      const read = readAmount(String(raw), si);
      if (!read.ok) return complain(`cannot be read: ${read.why}`);
      const found = fromSI(read.is.value, unit);
      if (found < min - 1e-9 * Math.abs(min) || found > max + 1e-9 * Math.abs(max)) {
        return complain(
          `is ${plainNumber(found)} ${word}`.trim() + `; what can be is ${min} to ${max} ${word}`.trimEnd(),
        );
      }
      return read.is.value;
    })
    .meta({ title: means, description: measure, stated: { unit: word, min, max } });
}

/** A point of the car: three co-ordinates in car axes and one unit, or the word `surveyed`. */
export function point(means: string, measure: string) {
  const notes: FieldNotes = {
    means,
    measure,
    unit: 'mm',
    si: 'm',
    min: -6000,
    max: 6000,
    usual: 'portable arm',
  };
  const schema = z.unknown().transform((raw, context): RawPoint => {
    const complain: Complain = (code, message) =>
      context.addIssue({ code: 'custom', message, params: { code, notes } });
    const form = opened(raw, notes, complain);
    if (form === undefined) return z.NEVER;
    const base = { kind: 'point', text: form.text.trim(), notes, stamp: form.stamp } as const;
    if (form.text.trim() === 'surveyed') return { ...base, value: 'surveyed' };
    const read = readPoint(form.text);
    if (!read.ok) {
      complain('field/unreadable', `cannot be read: ${read.why}`);
      return z.NEVER;
    }
    const limit = toSI(notes.max, notes.unit);
    const bad = read.is.value.find((each) => Math.abs(each) > limit);
    if (bad !== undefined) {
      complain(
        'field/out-of-range',
        `has ${plainNumber(fromSI(bad, 'mm'))} mm; no point of the car is more than 6 m from its origin`,
      );
      return z.NEVER;
    }
    return { ...base, value: read.is.value, ...(read.is.u === undefined ? {} : { u: read.is.u }) };
  });
  return noted(schema, notes, 'point');
}

/** One word out of a list. */
export const choice = <const T extends readonly [string, ...string[]]>(means: string, of: T) =>
  z.enum(of).meta({ title: means });

/** Free text. */
export const words = (means: string) =>
  z.union([z.string(), z.number()], { error: 'must be text' }).transform(String).meta({ title: means });

/** A day, written 2026-03-14. */
export const day = (means: string) =>
  z.string().refine(isDay, { error: 'must be a day written as 2026-03-14' }).meta({ title: means });

/** Yes or no. YAML 1.2 reads a bare `yes` as a word, so both the words and the truth values are taken. */
export const yesNo = (means: string) =>
  z
    .union([z.boolean(), z.enum(['yes', 'no'])], { error: 'must be yes or no' })
    .transform((value) => value === true || value === 'yes')
    .meta({ title: means });
