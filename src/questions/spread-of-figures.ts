/**
 * Figures with their spread: the same pass over the numbers as filed, and again with each input moved.
 *
 * Only inputs that the pass leaned on are moved; the others cannot change it.
 */
import type { Car } from '../car/read.ts';
import { type FigureNote, LOAD_PATH, type Put } from '../loadpath/figures/note.ts';
import { Numbers } from '../loadpath/numbers.ts';
import { spreadOf } from '../measured/spread.ts';
import type { Figure } from './figure.ts';

/** A pass puts the same figures in the same order every time. */
export type Pass = (numbers: Numbers, put: Put) => void;

/** The figures of a pass, without spread. */
export function figuresOf(car: Car, pass: Pass): Figure[] {
  const figures: Figure[] = [];
  pass(new Numbers(car.values), (note, value) => figures.push(figureOf(note, value)));
  return figures;
}

/** The figures of a pass, each with its spread. */
export function figuresWithSpread(car: Car, pass: Pass): Figure[] {
  const asFiled = new Numbers(car.values);
  const figures: Figure[] = [];
  pass(asFiled, (note, value) => figures.push(figureOf(note, value)));
  const spreads = spreadOf(
    car.values,
    car.inputs,
    (values, out, index) => {
      let k = 0;
      const numbers = index === undefined ? asFiled : new Numbers(values, { index, from: asFiled });
      pass(numbers, (_, value) => {
        out[k] = value;
        k += 1;
      });
    },
    figures.length,
    { leaned: asFiled.leaned },
  );
  return figures.map((figure, k) =>
    Number.isFinite(figure.value) ? { ...figure, spread: spreads[k]! } : figure,
  );
}

function figureOf(note: FigureNote, value: number): Figure {
  const { id, stop, means, symbol, unit, anchor, rank, say, lead } = note;
  return {
    id,
    stop,
    means,
    symbol,
    value,
    unit,
    rank,
    ...(anchor === undefined ? {} : { anchor }),
    ...(say === undefined ? {} : { say }),
    ...(lead === undefined ? {} : { lead }),
  };
}

/** Along the load path, and at each stop the figure that matters first, then by rank. */
export const inOrder = (figures: readonly Figure[]): Figure[] =>
  [...figures].sort(
    (a, b) =>
      LOAD_PATH.indexOf(a.stop) - LOAD_PATH.indexOf(b.stop) ||
      Number(b.lead ?? false) - Number(a.lead ?? false) ||
      a.rank - b.rank,
  );
