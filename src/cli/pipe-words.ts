/** Lengths, places and tables of pipes as a terminal shows them: to the digit that a tape or vernier gives. */
import type { Column } from '../questions/index.ts';
import type { Metre } from '../units/quantity.ts';
import type { Speech } from '../units/show.ts';
import { fromSI } from '../units/unit.ts';
import { table } from './print.ts';

/** An inch is cut to two digits more than a millimetre. */
const inch = (unit: string, speech: Speech, digits: number): readonly [string, number] =>
  unit === 'mm' && speech === 'in-lbf' ? ['in', digits + 2] : [unit, digits];

function fixed(value: number, unit: string, digits: number): string {
  const text = fromSI(value, unit).toFixed(digits);
  return (Number(text) === 0 ? text.replace('-', '') : text).replace('-', '−');
}

/** `647.0 mm` */
export const sizeText =
  (speech: Speech) =>
  (value: Metre, digits = 1): string => {
    const [unit, places] = inch('mm', speech, digits);
    return `${fixed(value, unit, places)} ${unit}`;
  };

/** `−1772, 334, 173 mm` */
export function placeText(at: readonly [number, number, number], speech: Speech): string {
  const [unit, places] = inch('mm', speech, 0);
  return `${at.map((each) => fixed(each, unit, places)).join(', ')} ${unit}`;
}

/** Columns of a shop's table for a terminal: a column in which no row says anything is left out. */
export function columnLines<R>(columns: readonly Column<R>[], rows: readonly R[], speech: Speech): string[] {
  const made = columns.map(({ head, unit, digits = 0, of }) => {
    const [spoken, places] = unit === undefined ? [undefined, digits] : inch(unit, speech, digits);
    const cells = rows.map((row) => {
      const value = of(row);
      if (value === undefined) return '';
      if (typeof value === 'string') return value;
      return spoken === undefined ? value.toFixed(places) : fixed(value, spoken, places);
    });
    return { head: spoken === undefined ? head : `${head} (${spoken})`, cells };
  });
  const said = made.filter(({ cells }) => cells.some((each) => each !== ''));
  return table([said.map(({ head }) => head), ...rows.map((_, k) => said.map(({ cells }) => cells[k]!))]);
}
