/**
 * Sheets of the flat floor as the engine takes them: what was read with its spread, and what is wanted with its
 * tolerance.
 *
 * In    the car file's sheets, the adjusters
 * Out   readings by name, the known changes while they were read
 */
import type { CarForm } from '../car/read.ts';
import { WHEEL_NAMES } from '../loadpath/loads/doing.ts';
import type { Numbers } from '../loadpath/numbers.ts';
import type { Reading as FileReading } from '../measured/reading.ts';
import type { Adjuster } from './adjusters.ts';
import type { FloorCar } from './floor-car.ts';
import type { FloorState } from './look.ts';
import type { ReadingKind } from './readings.ts';
import type { SheetMoves } from './stacks.ts';

type SheetForm = NonNullable<NonNullable<CarForm['floor']>['read']>[string];
type WantedForm = NonNullable<NonNullable<CarForm['floor']>['sheet']>;

export interface SheetReading {
  /** As the readings of the car are named: `weight.frontLeft`. */
  readonly id: string;
  readonly value: number;
  /** One standard uncertainty. */
  readonly u: number;
  /** Part of the value that all readings of one instrument share. */
  readonly shared: number;
  readonly instrument: string | undefined;
  /** Where it stands in the file. */
  readonly path: string;
}

export interface Sheet {
  readonly name: string;
  readonly state: FloorState;
  readonly readings: readonly SheetReading[];
}

/** What is wanted of one reading. */
export interface Wanted {
  readonly id: string;
  readonly value: number;
  readonly tolerance: number;
  /** Whether the sheet states the tolerance, or the usual one stands. */
  readonly stated: boolean;
  readonly path: string;
}

const DEG = Math.PI / 180;

/** Tolerances where the sheet states none: common practice, no source. */
export const USUAL_TOLERANCE: Readonly<Partial<Record<ReadingKind, number>>> = {
  height: 0.5e-3,
  rake: 0.5e-3,
  weight: 1,
  cross: 0.003,
  camber: 0.1 * DEG,
  toe: 0.035 * DEG,
  toeAtRim: 0.2e-3,
  caster: 0.25 * DEG,
  track: 2e-3,
  wheelbase: 2e-3,
  droop: 0.5e-3,
};

/** Every reading under a sheet's keys with its name among the car's readings. */
export function readingsIn(
  sheet: SheetForm['readings'] | WantedForm,
): readonly (readonly [string, FileReading])[] {
  const found: (readonly [string, FileReading])[] = [];
  for (const [kind, of] of Object.entries(sheet)) {
    if (of === undefined || typeof of !== 'object') continue;
    if ('index' in of) found.push([kind, of as FileReading]);
    else {
      for (const [name, reading] of Object.entries(of as Readonly<Record<string, FileReading | undefined>>))
        if (reading !== undefined) found.push([`${kind}.${name}`, reading]);
    }
  }
  return found;
}

export function wantedOf(car: CarForm, numbers: Numbers): readonly Wanted[] {
  const { sheet } = car.floor ?? {};
  if (sheet === undefined) return [];
  const { note: _, ...kinds } = sheet;
  return readingsIn(kinds).map(([id, reading]) => {
    const stated = reading.spread.kind === 'stated' && reading.u > 0;
    return {
      id,
      value: numbers.of(reading),
      tolerance: stated ? reading.u : USUAL_TOLERANCE[id.split('.')[0] as ReadingKind]!,
      stated,
      path: reading.path,
    };
  });
}

/** The changes that the file itself states of the floor: pads and slopes. */
export function patchChanges(car: CarForm, of: FloorCar, numbers: Numbers): Float64Array {
  const changes = of.changes.none();
  const { patch } = car.floor ?? {};
  for (const wheel of WHEEL_NAMES) changes[of.changes.wheel[wheel].pad] = numbers.or(patch?.pads?.[wheel], 0);
  changes[of.changes.car.risesForward] = numbers.or(patch?.risesForward, 0);
  changes[of.changes.car.risesLeft] = numbers.or(patch?.risesLeft, 0);
  return changes;
}

/**
 * The sheets as read, the first first. Moves are counted up from sheet to sheet.
 *
 * @param adjusters  as surveyed
 */
export function sheetsOf(
  car: CarForm,
  of: FloorCar,
  adjusters: readonly Adjuster[],
  numbers: Numbers,
): readonly Sheet[] {
  const moved = of.changes.none();
  return Object.entries(car.floor?.read ?? {}).map(([name, sheet]) => {
    for (const [which, units] of Object.entries(sheet.moved ?? {})) {
      const adjuster = adjusters.find((each) => each.name === which);
      if (adjuster !== undefined) moved[adjuster.change] = moved[adjuster.change]! + units * adjuster.step;
    }
    const changes = patchChanges(car, of, numbers).map((value, i) => value + moved[i]!);
    for (const wheel of WHEEL_NAMES) {
      const pressure = sheet.pressure?.[wheel];
      const end = wheel.startsWith('front') ? car.front : car.rear;
      const surveyed = end[wheel.endsWith('Left') ? 'left' : 'right'].adjusters?.tyre?.pressure;
      if (pressure !== undefined && surveyed !== undefined)
        changes[of.changes.wheel[wheel].pressure] = numbers.of(pressure) - numbers.of(surveyed);
    }
    for (const [what, mass] of Object.entries(sheet.aboard ?? {})) {
      const at = of.changes.masses.get(what);
      const surveyed = of.masses.find((each) => each.name === what);
      if (at !== undefined && surveyed !== undefined) changes[at] = numbers.of(mass) - surveyed.mass;
    }
    const bars = sheet.bars === 'connected';
    return {
      name,
      state: { changes, bars: { front: bars, rear: bars } },
      readings: readingsIn(sheet.readings).map(([id, reading]) => ({
        id,
        value: numbers.of(reading),
        u: reading.u,
        shared: reading.shared,
        instrument: reading.instrument,
        path: reading.path,
      })),
    };
  });
}

/** What was moved in each sheet, in their order, up to one of them or to the last. */
export function movedInSheets(car: CarForm, upTo?: string): readonly SheetMoves[] {
  const all = Object.entries(car.floor?.read ?? {});
  const last = upTo === undefined ? all.length - 1 : all.findIndex(([name]) => name === upTo);
  return all.slice(0, last + 1).map(([, { moved }]) => moved ?? {});
}
