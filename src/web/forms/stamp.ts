/** Who read it, with what, on which day: typed once, and remembered for the next reading. */
import type { FieldNotes } from '../../car/field.ts';
import { readPoint, readWithSpread } from '../../units/read.ts';
import { printedUnit } from '../../units/show.ts';
import { DATE } from '../sheet/title-block.tsx';
import type { Draft } from './draft.ts';

const OWN_HAND = 'own hand';

export const newStamp = (): Draft => ({
  with: '',
  by: localStorage.getItem(OWN_HAND) ?? '',
  on: DATE.format(new Date()),
});

export const rememberHand = (draft: Draft): void => localStorage.setItem(OWN_HAND, draft.by ?? '');

/** The reading as it goes into the file: the text alone, or with what is known of it. */
export function stamped(text: string, draft: Draft): unknown {
  const known = (['with', 'by', 'on'] as const).flatMap((key) => {
    const word = draft[key]?.trim() ?? '';
    return word === '' ? [] : [[key, word] as const];
  });
  return known.length === 0 ? text : { is: text, ...Object.fromEntries(known) };
}

/** A bare number gets the unit that stands on the key; `12.4 ± 0.1` gets it on both. */
export function withUnit(text: string, unit: string): string {
  const trimmed = text.trim();
  if (unit === '1' || /[a-z°%"]/i.test(trimmed) || trimmed === '') return trimmed;
  return trimmed
    .split('±')
    .map((part) => `${part.trim()} ${unit}`)
    .join(' ± ');
}

/** What is wrong with a text as a reading of this field, if anything. */
export function wrongWith(text: string, kind: 'amount' | 'point', notes: FieldNotes): string | undefined {
  const read = kind === 'point' ? readPoint(text) : readWithSpread(text, notes.si);
  return read.ok ? undefined : `${notes.means}: ${read.why}.`;
}

export const unitWord = (unit: string): string => printedUnit(unit) || 'number';
