/**
 * What a table's draft comes to as changes of the file.
 *
 * Figures of rows that stand are written one by one, so that nothing else in the file moves. A row more or less,
 * or a table within a spec (where a list stands as a whole), is written as the whole list.
 */
import type { Car } from '../../questions/index.ts';
import { readWithSpread } from '../../units/read.ts';
import type { Change } from '../client.ts';
import type { Draft } from './draft.ts';
import { keptAt, type TableOf } from './fields.ts';
import { withUnit } from './stamp.ts';

/** Keys of a draft beside its places: how many rows are added, and which are taken out. */
export const MORE = 'more';
export const TAKEN_OUT = 'out ';

export const placeOf = (row: number, key: string): string => `${row} ${key}`;

export const rowCount = ({ rows }: TableOf, draft: Draft | undefined): number =>
  rows.length + Math.min(100, Math.max(0, Math.floor(Number(draft?.[MORE] ?? 0)) || 0));

export const isOut = (draft: Draft | undefined, row: number): boolean =>
  draft?.[`${TAKEN_OUT}${row}`] !== undefined;

export const standsOf = ({ rows, columns }: TableOf): string =>
  rows.map((row) => columns.map(({ key }) => row[key]?.text ?? '').join(', ')).join('; ');

/** The text of one place as it would stand: as typed, or as before; empty where nothing was or is. */
const textAt = ({ rows, columns }: TableOf, draft: Draft, row: number, key: string): string => {
  const { unit = '' } = columns.find((column) => column.key === key)?.notes ?? {};
  return withUnit(draft[placeOf(row, key)] ?? '', unit) || (rows[row]?.[key]?.text ?? '');
};

/** Rows that stand afterwards, by their number in the draft; an added row with nothing in it is none. */
function rowsAfter(field: TableOf, draft: Draft): readonly number[] {
  return Array.from({ length: rowCount(field, draft) }, (_, row) => row).filter(
    (row) =>
      !isOut(draft, row) &&
      (row < field.rows.length || field.columns.some(({ key }) => textAt(field, draft, row, key) !== '')),
  );
}

export function wrongRows(field: TableOf, draft: Draft): readonly string[] {
  return rowsAfter(field, draft).flatMap((row) =>
    field.columns.flatMap(({ key, notes }) => {
      const text = textAt(field, draft, row, key);
      if (text === '') return [`Row ${row + 1}, ${notes.means}: nothing stands here.`];
      const read = readWithSpread(text, notes.si);
      return read.ok ? [] : [`Row ${row + 1}, ${notes.means}: ${read.why}.`];
    }),
  );
}

export function changesOf(car: Car, field: TableOf, draft: Draft): readonly Change[] {
  const { path, columns, rows } = field;
  const after = rowsAfter(field, draft);
  const sameRows = after.length === rows.length && after.every((row, k) => row === k);
  const typed = after.flatMap((row) =>
    columns.flatMap(({ key }) =>
      (draft[placeOf(row, key)] ?? '').trim() === ''
        ? []
        : [{ path: [...path, row, key], value: textAt(field, draft, row, key) }],
    ),
  );
  if (sameRows && (typed.length === 0 || car.spec === car.specs[0])) return typed;
  const whole = after.map((row) =>
    Object.fromEntries(columns.map(({ key }) => [key, textAt(field, draft, row, key)])),
  );
  return [{ path: keptAt(car, path), value: whole }];
}
