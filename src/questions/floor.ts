/** How the car stands on its pads: as surveyed, or under one of its sheets, with the spread of every reading. */
import type { Car } from '../car/read.ts';
import { adjustersOf } from '../flatfloor/adjusters.ts';
import { floorCarOf } from '../flatfloor/floor-car.ts';
import type { FloorState } from '../flatfloor/look.ts';
import { readingWords } from '../flatfloor/reading-words.ts';
import { movedInSheets, patchChanges, sheetsOf } from '../flatfloor/sheet.ts';
import { Floor, type FloorStanding } from '../flatfloor/stand.ts';
import { Numbers } from '../loadpath/numbers.ts';
import type { Reading } from '../measured/reading.ts';
import { spreadOf } from '../measured/spread.ts';
import { type Step, Working } from '../working/working.ts';
import { JACKING_CAUTION, STANDING_CAUTION } from './cautions.ts';
import { isFloorRefusal } from './floor-refusal.ts';
import { leadingTo, readingsOf } from './working.ts';

export interface FloorAsked {
  /** Name of a sheet of the file whose driver, fuel, pressures, moves and bars are meant. */
  readonly sheet?: string;
  /** Whether the anti-roll bars are on; left out, as the sheet has it, or off. */
  readonly bars?: 'connected' | 'disconnected';
  readonly spread?: boolean;
  /** Name of a reading whose working is wanted: `cross`, `camber.frontLeft`. */
  readonly working?: string;
}

export interface FloorFigure {
  readonly id: string;
  readonly words: string;
  /** SI. */
  readonly value: number;
  readonly unit: string;
  /** One standard uncertainty, from the readings of the car file. */
  readonly u?: number;
}

export interface FloorReached {
  readonly reached: true;
  readonly readings: readonly FloorFigure[];
  readonly residual: number;
  /** Of the reading that was asked for by name, if there is one of that name. */
  readonly working?: ReadingWorking;
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
}

/** How one reading came about: the last step gives it. */
export interface ReadingWorking {
  readonly figure: string;
  readonly steps: readonly Step[];
  readonly readings: Readonly<Record<string, Reading>>;
}

/** The working of one of several figures; undefined where there is none of that name. */
export function readingWorking(
  car: Car,
  figure: string,
  work: ((working: Working) => number) | undefined,
): ReadingWorking | undefined {
  if (work === undefined) return undefined;
  const working = new Working();
  const value = work(working);
  const symbol = working.steps.findLast((each) => Object.is(each.value, value))?.symbol ?? '';
  const steps = leadingTo(working.steps, { symbol, value });
  return { figure, steps, readings: readingsOf(car, steps, {}) };
}

export type FloorAnswer = FloorReached | { readonly reached: false; readonly message: string };

/** Names of the sheets that the file holds. */
export const sheetNames = (car: Car): readonly string[] => Object.keys(car.form.floor?.read ?? {});

export function standOnFloor(car: Car, asked: FloorAsked = {}): FloorAnswer {
  const asFiled = new Numbers(car.values);
  try {
    const { floor, ...filed } = standingOf(car, asked, asFiled);
    const ids = [...filed.readings.keys()];
    const spreads =
      asked.spread === false
        ? undefined
        : spreadOf(
            car.values,
            car.inputs,
            (values, out, index) => {
              const numbers = index === undefined ? asFiled : new Numbers(values, { index, from: asFiled });
              const prepared = floorCarOf(car.form, numbers);
              const state = stateOf(car, asked, prepared, numbers);
              const readings = floor.readNear(state, filed.place, prepared);
              ids.forEach((id, k) => {
                out[k] = readings.get(id) ?? Number.NaN;
              });
            },
            ids.length,
            { leaned: asFiled.leaned },
          );
    return {
      reached: true,
      readings: [...filed.readings.values()].map(({ id, value, unit }, k) => ({
        id,
        words: readingWords(id),
        value,
        unit,
        ...(spreads === undefined ? {} : { u: spreads[k]!.u }),
      })),
      residual: filed.residual,
      ...(asked.working === undefined ? {} : workingIn(car, asked.working, filed)),
      notes: notesOf(car, filed.state),
      cautions: [JACKING_CAUTION, STANDING_CAUTION],
    };
  } catch (reason) {
    if (isFloorRefusal(reason)) return { reached: false, message: reason.message };
    throw reason;
  }
}

function workingIn(car: Car, id: string, { readings }: FloorStanding): { readonly working?: ReadingWorking } {
  const working = readingWorking(car, id, readings.get(id)?.work);
  return working === undefined ? {} : { working };
}

function standingOf(
  car: Car,
  asked: FloorAsked,
  numbers: Numbers,
): FloorStanding & { readonly floor: Floor } {
  const prepared = floorCarOf(car.form, numbers);
  const floor = new Floor(prepared, true);
  return { floor, ...floor.stand(stateOf(car, asked, prepared, numbers)) };
}

export function stateOf(
  car: Car,
  { sheet, bars }: FloorAsked,
  prepared: ReturnType<typeof floorCarOf>,
  numbers: Numbers,
): FloorState {
  // without moves no adjuster is asked; and few numbers touch them
  const moved = sheet !== undefined && movedInSheets(car.form).some((each) => Object.keys(each).length > 0);
  const adjusters = moved
    ? numbers.part('adjusters', () => adjustersOf(car.form, prepared.changes, numbers))
    : [];
  const found = sheetsOf(car.form, prepared, adjusters, numbers).find(({ name }) => name === sheet);
  const state = found?.state ?? {
    changes: patchChanges(car.form, prepared, numbers),
    bars: { front: false, rear: false },
  };
  return bars === undefined
    ? state
    : { ...state, bars: { front: bars === 'connected', rear: bars === 'connected' } };
}

function notesOf(car: Car, state: FloorState): readonly string[] {
  const { floor } = car.form;
  const bars = Object.values(state.bars).some((on) => on);
  return [
    bars
      ? 'Anti-roll bars are on: weights read with a bar wound up are not those of the car alone.'
      : 'Anti-roll bars are off, steering straight, tyres free to settle: roll the car or bounce it before reading.',
    ...(floor?.heights === undefined
      ? [
          'No measuring points for heights in the file (floor, heights): how far the tub stands above its survey is told instead.',
        ]
      : []),
    ...(floor?.patch === undefined ? ['The pads are taken as level and of one height (floor, patch).'] : []),
  ];
}
