/**
 * Units written for one another: pounds as kilograms, inches or centimetres as millimetres, absolute pressure as gauge.
 *
 * In    one sheet, the car as surveyed under the same known changes
 * Out   doubts in words
 *
 * A reading is asked about where it lies far off what the survey has, and near it with the one unit read as the other.
 * Such a reading is no setting: it ends the question before anything is made of it.
 */
import type { CarForm } from '../car/read.ts';
import { endOf, sideOf, WHEEL_NAMES } from '../loadpath/loads/doing.ts';
import type { Numbers } from '../loadpath/numbers.ts';
import { spokenAmount } from '../units/show.ts';
import { fromSI, toSI } from '../units/unit.ts';
import type { Doubt } from './doubts.ts';
import { readingWords, WHEEL_WORDS } from './reading-words.ts';
import type { Sheet, SheetReading } from './sheet.ts';
import type { FloorStanding } from './stand.ts';

interface Slip {
  readonly meant: string;
  /** What was written times this is what was meant. */
  readonly factor: number;
}

const SLIPS: Readonly<Record<string, readonly Slip[]>> = {
  weight: [
    { meant: 'pounds', factor: toSI(1, 'lb') },
    { meant: 'kilograms, written as pounds', factor: 1 / toSI(1, 'lb') },
  ],
  height: [
    { meant: 'inches', factor: 25.4 },
    { meant: 'centimetres', factor: 10 },
    { meant: 'a slipped decimal point', factor: 0.1 },
  ],
};

/** Of the air around, Pa. */
const AIR = 101_325;

/** Parts of what the survey has: within NEAR with the other unit, and beyond FAR as written. */
const NEAR = 0.3;
const FAR = 0.5;

export function unitsSlipped(sheet: Sheet, surveyed: FloorStanding): readonly Doubt[] {
  return Object.entries(SLIPS).flatMap(([kind, slips]) =>
    slips.flatMap(({ meant, factor }): Doubt[] => {
      const slipped = sheet.readings.filter((reading) => {
        const expected = surveyed.readings.get(reading.id)?.value;
        if (!reading.id.startsWith(`${kind}.`) || expected === undefined || expected <= 0) return false;
        const off = (value: number): number => Math.abs(value / expected - 1);
        return off(reading.value) > FAR && off(reading.value * factor) < NEAR;
      });
      if (slipped.length === 0) return [];
      return [
        {
          code: 'sheet/unit',
          message: `${sheet.name}: ${slipped.map((each) => found(each, surveyed)).join('; ')}: ${slipped.length === 1 ? 'it looks' : 'they look'} like ${meant}.`,
          remedy: 'Write each with the unit that the pad or gauge showed, such as 286.8 lb or 1.48 in.',
          paths: slipped.map(({ path }) => path),
          weight: 'error',
        },
      ];
    }),
  );
}

const found = ({ id, value }: SheetReading, surveyed: FloorStanding): string => {
  const expected = surveyed.readings.get(id)!;
  return `${readingWords(id)} is ${spokenAmount(value, expected.unit, 1)} where the survey has ${spokenAmount(expected.value, expected.unit, 1)}`;
};

/** Gauge pressures of a sheet that have the air's own on top. */
export function absolutePressures(car: CarForm, numbers: Numbers): readonly Doubt[] {
  return Object.entries(car.floor?.read ?? {}).flatMap(([name, { pressure }]): Doubt[] => {
    const high = WHEEL_NAMES.filter((wheel) => {
      const tyre = car[endOf(wheel)][sideOf(wheel)].adjusters?.tyre;
      const read = pressure?.[wheel];
      if (tyre === undefined || read === undefined || numbers.of(read) <= numbers.of(tyre.most)) return false;
      return Math.abs(numbers.of(read) - AIR - numbers.of(tyre.pressure)) < 0.4 * AIR;
    });
    if (high.length === 0) return [];
    const told = high.map(
      (wheel) => `${WHEEL_WORDS[wheel]} ${fromSI(numbers.of(pressure![wheel]!), 'bar').toFixed(2)} bar`,
    );
    return [
      {
        code: 'sheet/absolute-pressure',
        message: `${name}: tyre pressure ${told.join(', ')} is more than the file allows, and looks like absolute pressure.`,
        remedy: 'Write gauge pressure, which is what is above the air around: about 1 bar less.',
        paths: high.map((wheel) => `floor.read.${name}.pressure.${wheel}`),
        weight: 'error',
      },
    ];
  });
}
