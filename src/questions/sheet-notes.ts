/** What must be told beside whatever is worked out from a sheet: what was not so while it was read, and stale checks. */
import { LOOSE_NUT_CAUTION } from './cautions.ts';
import { holdWords } from './floor-holds.ts';
import type { FloorSheetRead, FloorSheets } from './floor-sheets.ts';

/** Holds whose failing moves the readings; the rest belong to the car that is let go. */
const MOVES_READINGS = ['pads', 'rack', 'bars', 'aboard', 'settled', 'again'];

export function sheetNotes(
  { name, notSo, bars, instruments }: FloorSheetRead,
  { aboard }: Pick<FloorSheets, 'aboard'>,
): readonly string[] {
  return [
    ...(bars === 'connected'
      ? [
          `${name}: anti-roll bars were on while it was read. What twist their links hold is not known: it is looked for in the readings, and weights tell less of the rest.`,
        ]
      : []),
    ...notSo
      .filter((hold) => hold !== 'bars' || bars === 'disconnected')
      .map(
        (hold) =>
          `${name}: this was not so${MOVES_READINGS.includes(hold) ? ' while it was read, and no ± counts it in' : ''}: ${holdWords(hold, aboard)}`,
      ),
    ...instruments
      .filter(({ outOfDate }) => outOfDate)
      .map(
        (one) =>
          `${name}: the check of ${one.name}${one.mark === undefined ? '' : ` (${one.mark})`} ran out on ${one.due}, before it was read. Have it checked against a known ${one.kinds.includes('weight') ? 'mass' : 'gauge'} before its readings are trusted.`,
      ),
  ];
}

/** Of the sheets that are meant, the last: a nut that is loose now. */
export const sheetCautions = (last: FloorSheetRead | undefined): readonly string[] =>
  last?.notSo.some((hold) => hold === 'locks' || hold === 'marks') === true ? [LOOSE_NUT_CAUTION] : [];
