/**
 * What a set-up is made from: the fit of all sheets, and what no sheet holds.
 *
 * In    the sheets as they were read
 * Out   the car as found, or in words why no car stands so; names of what is wanted and was not read
 */
import { type Found, foundFrom } from '../flatfloor/found.ts';
import { readingWords } from '../flatfloor/reading-words.ts';
import type { ReadingKind } from '../flatfloor/readings.ts';
import { type Sheet, USUAL_TOLERANCE, type Wanted } from '../flatfloor/sheet.ts';
import { WHEEL_NAMES } from '../loadpath/loads/doing.ts';
import { spokenAmount } from '../units/show.ts';
import { isFloorRefusal } from './floor-refusal.ts';
import type { SheetsRead } from './sheets-read.ts';

/** The fit of the sheets; or, where no car can stand so, the reading that is furthest from the survey in words. */
export function fittedTo({ floor, sheets, hidden, standings }: SheetsRead): Found | string {
  try {
    return foundFrom(floor, sheets, hidden);
  } catch (reason) {
    if (!isFloorRefusal(reason)) throw reason;
    const off = sheets.flatMap((sheet, k) =>
      sheet.readings.flatMap((reading) => {
        const expected = standings[k]!.readings.get(reading.id);
        const tolerance = USUAL_TOLERANCE[reading.id.split('.')[0] as ReadingKind];
        if (expected === undefined || tolerance === undefined) return [];
        return [{ sheet, reading, expected, by: Math.abs(reading.value - expected.value) / tolerance }];
      }),
    );
    const worst = off.reduce<(typeof off)[number] | undefined>(
      (most, each) => (most !== undefined && most.by >= each.by ? most : each),
      undefined,
    );
    if (worst === undefined) return reason.message;
    const { sheet, reading, expected } = worst;
    return `No car stands as these sheets have it. Furthest from the survey is ${sheet.name}, ${readingWords(reading.id)}: ${spokenAmount(reading.value, expected.unit, 1)} read, ${spokenAmount(expected.value, expected.unit, 1)} as surveyed. Look at its unit and its decimal point, and read it again.`;
  }
}

const PADS = WHEEL_NAMES.map((wheel) => `weight.${wheel}`);

/** What is wanted and stands in no sheet, nor follows from what does. */
export function unread(sheets: readonly Sheet[], wanted: readonly Wanted[]): readonly string[] {
  const read = new Set(sheets.flatMap(({ readings }) => readings.map(({ id }) => id)));
  const heights = [...read].filter((id) => id.startsWith('height.')).length;
  return wanted
    .map(({ id }) => id)
    .filter((id) => {
      if (read.has(id) || id === 'wheelbase' || id.startsWith('ride.')) return false;
      if (['cross', 'frontShare', 'leftShare', 'total'].includes(id))
        return !PADS.every((pad) => read.has(pad));
      if (id === 'rake' || id.startsWith('height.')) return heights < 3;
      if (id.startsWith('toe.')) return !read.has(id.replace('toe.', 'toeAtRim.'));
      if (id.startsWith('toeAtRim.')) return !read.has(id.replace('toeAtRim.', 'toe.'));
      return true;
    });
}
