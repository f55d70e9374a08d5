/**
 * Slips of the pen that the whole of the readings shows: two entries changed over, a toe with the other sign.
 *
 * In    the sheets, the fit of them as they were read, what is wanted
 * Out   for each slip that would suit far better a doubt in words
 *
 * Changed over: the sheets are fitted once more with the two readings changed, and the sum of squares tells. Four
 * weights hold the moments of the car, so that two of them crosswise cannot be a setting.
 * Other sign: toe is free to be anything, so no fit tells. It is asked about where the survey, the wheel across and
 * the sheet wanted, as far as they have a sign, all have the other one; a wheel across that stands alone itself is not
 * asked, so that a sheet of plates read as strings is told.
 */
import { eachWheel, endOf, sideOf, WHEEL_NAMES, type WheelName } from '../loadpath/loads/doing.ts';
import type { Doubt } from './doubts.ts';
import { type Found, foundFrom, type Hidden } from './found.ts';
import { readingWords } from './reading-words.ts';
import type { Sheet, SheetReading, Wanted } from './sheet.ts';
import type { Floor, FloorStanding } from './stand.ts';

/** Fall of the sum of squares that is no chance: a residual of 3.7 times its spread gone. */
const CLEARLY = 14;

const CROSSED = ['weight', 'camber', 'caster', 'toe', 'toeAtRim'] as const;
/** Wheels that are taken for one another: left and right first, then the corners of a diagonal, then an end. */
const PAIRS: readonly (readonly [WheelName, WheelName])[] = [
  ['frontLeft', 'frontRight'],
  ['rearLeft', 'rearRight'],
  ['frontLeft', 'rearLeft'],
  ['frontRight', 'rearRight'],
  ['frontLeft', 'rearRight'],
  ['frontRight', 'rearLeft'],
];

const readingIn = (sheet: Sheet, id: string): SheetReading | undefined =>
  sheet.readings.find((each) => each.id === id);

/** Entries changed over: the one change that the fit likes best, if it likes it far better. */
export function crossedByFit(
  floor: Floor,
  sheets: readonly Sheet[],
  found: Found,
  hidden: readonly Hidden[],
): readonly Doubt[] {
  if (found.chiSquared < CLEARLY) return [];
  let best = found.chiSquared - CLEARLY;
  let doubt: Doubt | undefined;
  sheets.forEach((sheet, at) => {
    for (const kind of CROSSED) {
      for (const [one, other] of PAIRS) {
        const [a, b] = [readingIn(sheet, `${kind}.${one}`), readingIn(sheet, `${kind}.${other}`)];
        if (a === undefined || b === undefined || Math.abs(a.value - b.value) < 3 * Math.hypot(a.u, b.u))
          continue;
        const readings = sheet.readings.map((each) =>
          each === a ? { ...a, value: b.value } : each === b ? { ...b, value: a.value } : each,
        );
        const changed = sheets.map((each, k) => (k === at ? { ...sheet, readings } : each));
        const { chiSquared } = foundFrom(floor, changed, hidden);
        if (chiSquared >= best) continue;
        best = chiSquared;
        doubt = {
          code: 'sheet/crossed',
          message: `${sheet.name}: ${readingWords(a.id)} and ${readingWords(b.id)} would suit the car and the other readings far better changed over.`,
          remedy:
            'Left and right are as the driver sits. Look whether the two were written down crosswise, or two cables of the pads are.',
          paths: [a.path, b.path],
          weight: 'warning',
        };
      }
    }
  });
  return doubt === undefined ? [] : [doubt];
}

/** Toe whose sign nothing else has. */
export function lonelySigns(
  sheet: Sheet,
  surveyed: FloorStanding,
  wanted: readonly Wanted[],
): readonly Doubt[] {
  return (['toe', 'toeAtRim'] as const).flatMap((kind): Doubt[] => {
    const across = eachWheel(
      (wheel) => `${kind}.${endOf(wheel)}${sideOf(wheel) === 'left' ? 'Right' : 'Left'}`,
    );
    const alone = WHEEL_NAMES.flatMap((wheel): SheetReading[] => {
      const reading = readingIn(sheet, `${kind}.${wheel}`);
      const before = surveyed.readings.get(`${kind}.${wheel}`)?.value;
      if (reading === undefined || before === undefined || Math.abs(reading.value) < 3 * reading.u) return [];
      const aim = wanted.find(({ id }) => id === reading.id)?.value;
      const over = readingIn(sheet, across[wheel])?.value;
      // a wheel across that itself has the sign that neither its survey nor the sheet wanted has, was turned with this
      const turned =
        over !== undefined &&
        [
          surveyed.readings.get(across[wheel])?.value,
          wanted.find(({ id }) => id === across[wheel])?.value,
        ].every((each) => each !== undefined && each * over < 0);
      const others = [before, turned ? undefined : over, aim].filter(
        (each) => each !== undefined && Math.abs(each) > reading.u,
      );
      const against = others.filter((each) => each! * reading.value < 0);
      return against.length >= 2 && against.length === others.length ? [reading] : [];
    });
    if (alone.length === 0) return [];
    return [
      {
        code: 'sheet/sign',
        message: `${sheet.name}: ${alone.map(({ id }) => readingWords(id)).join(', ')} ${alone.length === 1 ? 'has' : 'have'} a sign that neither the survey nor the wheel across nor the sheet wanted has.`,
        remedy:
          'Toe is positive in. Strings and plates count opposite ways: look at the wheel, and write it again if it is the other way.',
        paths: alone.map(({ path }) => path),
        weight: 'warning',
      },
    ];
  });
}
