/**
 * Every figure of the load path of a car with its spread, in one go: four corners, two axles, the whole car.
 *
 * One pass puts them all, so that a part that several of them lean on is worked out once for each reading moved.
 */
import type { Car } from '../car/read.ts';
import { putAxleFigures } from '../loadpath/figures/axle.ts';
import { putCarFigures } from '../loadpath/figures/car.ts';
import { putCornerFigures } from '../loadpath/figures/corner.ts';
import type { FigureNote, Put } from '../loadpath/figures/note.ts';
import { WHEELS } from './drawing.ts';
import { type Figure, rackOf, type Stance, travelOf } from './figure.ts';
import { isRefusal } from './refusal.ts';
import { figuresWithSpread } from './spread-of-figures.ts';

/** What a figure belongs to: a wheel (`front left`), an axle (`front`), or the car. */
export interface PlacedFigure {
  readonly of: string;
  readonly figure: Figure;
}

export type EveryFigure =
  | { readonly reached: true; readonly figures: readonly PlacedFigure[] }
  | { readonly reached: false; readonly message: string };

export function everyFigure(car: Car, stance: Stance): EveryFigure {
  const places: string[] = [];
  let noted = false;
  try {
    const figures = figuresWithSpread(car, (numbers, put) => {
      /** The figures of one place, taken over as they are while none of its readings moves. */
      const under = (place: string, putAll: (put: Put) => void): void => {
        const found = numbers.part(`figures of ${place}`, () => {
          const list: (readonly [FigureNote, number])[] = [];
          putAll((note, value) => list.push([note, value]));
          return list;
        });
        // the first pass is that of the readings as filed: it tells what each figure belongs to
        if (!noted) for (const _ of found) places.push(place);
        for (const [note, value] of found) put(note, value);
      };
      for (const wheel of WHEELS) {
        const at = { travel: travelOf(stance, wheel), rack: rackOf(stance, wheel) };
        const axle = car.form[wheel.end];
        under(`${wheel.end} ${wheel.side}`, (each) => putCornerFigures(axle, wheel.side, at, numbers, each));
      }
      for (const end of ['front', 'rear'] as const) {
        const at = { ...stance[end], rack: end === 'front' ? stance.rack : 0 };
        under(end, (each) => putAxleFigures(car.form, end, at, numbers, each));
      }
      under('car', (each) => putCarFigures(car.form, numbers, each));
      noted = true;
    });
    return { reached: true, figures: figures.map((figure, k) => ({ of: places[k]!, figure })) };
  } catch (reason) {
    if (isRefusal(reason)) {
      return { reached: false, message: reason.message };
    }
    throw reason;
  }
}
