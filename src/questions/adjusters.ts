/** Every adjuster of the car and what one unit of it does to every reading: the table for use by hand. */
import type { Car } from '../car/read.ts';
import { type Adjuster, type AdjusterKind, adjustersOf } from '../flatfloor/adjusters.ts';
import { floorCarOf } from '../flatfloor/floor-car.ts';
import { readingWords } from '../flatfloor/reading-words.ts';
import { movedInSheets } from '../flatfloor/sheet.ts';
import { Floor } from '../flatfloor/stand.ts';
import { Numbers } from '../loadpath/numbers.ts';
import { SET_UP_CAUTION, STANDING_CAUTION } from './cautions.ts';
import { type FloorAsked, stateOf } from './floor.ts';
import { isFloorRefusal } from './floor-refusal.ts';

export interface AdjusterRow {
  readonly name: string;
  readonly kind: AdjusterKind;
  readonly unit: string;
  /** What one unit is, SI. */
  readonly step: number;
  readonly stepUnit: string;
  /** Units left either way, and what stops them. */
  readonly down: number;
  readonly up: number;
  readonly stops: { readonly up: string; readonly down: string };
  /** Change of each reading by one unit, SI, in the order of the readings. */
  readonly effects: readonly number[];
}

export interface AdjustersReached {
  readonly reached: true;
  readonly readings: readonly { readonly id: string; readonly words: string; readonly unit: string }[];
  readonly adjusters: readonly AdjusterRow[];
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
}

export type AdjustersAnswer = AdjustersReached | { readonly reached: false; readonly message: string };

export function adjusterTable(car: Car, asked: FloorAsked = {}): AdjustersAnswer {
  const numbers = new Numbers(car.values);
  try {
    const prepared = floorCarOf(car.form, numbers);
    const floor = new Floor(prepared, true);
    const standing = floor.stand(stateOf(car, asked, prepared, numbers));
    const adjusters = adjustersOf(
      car.form,
      prepared.changes,
      numbers,
      asked.sheet === undefined ? [] : movedInSheets(car.form, asked.sheet),
    );
    const readings = [...standing.readings.values()];
    return {
      reached: true,
      readings: readings.map(({ id, unit }) => ({ id, words: readingWords(id), unit })),
      adjusters: adjusters.map((adjuster) => ({
        name: adjuster.name,
        kind: adjuster.kind,
        unit: adjuster.unit,
        step: adjuster.step,
        stepUnit: adjuster.stepUnit,
        down: 0 - adjuster.choices[0]!.units,
        up: adjuster.choices.at(-1)!.units,
        stops: adjuster.stops,
        effects: readings.map(({ by }) => by[adjuster.change]! * adjuster.step),
      })),
      notes: [...noneNote(adjusters), ...adjusters.flatMap(({ notes }) => notes)],
      cautions: [SET_UP_CAUTION, STANDING_CAUTION],
    };
  } catch (reason) {
    if (isFloorRefusal(reason)) return { reached: false, message: reason.message };
    throw reason;
  }
}

const noneNote = (adjusters: readonly Adjuster[]): readonly string[] =>
  adjusters.length > 0
    ? []
    : [
        'The file describes no adjuster: write the threads of rods and links (rod, thread), platforms and shims (adjusters) to have them here.',
      ];
