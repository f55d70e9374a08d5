/** How a figure came about: the steps that led to it, the readings that they lean on, and its spread. */
import type { Car } from '../car/read.ts';
import { putCornerFigures } from '../loadpath/figures/corner.ts';
import type { Put } from '../loadpath/figures/note.ts';
import { Numbers } from '../loadpath/numbers.ts';
import type { Reading } from '../measured/reading.ts';
import { type Step, Working } from '../working/working.ts';
import { cornerPass } from './corner.ts';
import type { Figure, Position, Wheel } from './figure.ts';
import { isRefusal } from './refusal.ts';
import { figuresWithSpread, type Pass } from './spread-of-figures.ts';

export interface WorkingReached {
  readonly reached: true;
  readonly figure: Figure;
  /** In the order in which they were worked out; the last gives the figure. */
  readonly steps: readonly Step[];
  /** Readings that the steps or the spread name, by path. */
  readonly readings: Readonly<Record<string, Reading>>;
}

export type WorkingAnswer = WorkingReached | { readonly reached: false; readonly message: string };

export interface WorkingAsked {
  readonly wheel: Wheel;
  readonly at: Position;
  /** Id of the figure. */
  readonly figure: string;
}

export function workingOf(car: Car, asked: WorkingAsked): WorkingAnswer {
  const { wheel, at } = asked;
  return workingOfPass(car, asked.figure, cornerPass(car, wheel, at), (put, working) => {
    putCornerFigures(car.form[wheel.end], wheel.side, at, new Numbers(car.values), put, working);
  });
}

/** The working of one figure of a pass; `record` runs the same pass with a record. */
export function workingOfPass(
  car: Car,
  id: string,
  pass: Pass,
  record: (put: Put, working: Working) => void,
): WorkingAnswer {
  try {
    const figures = figuresWithSpread(car, pass);
    const figure = figures.find((each) => each.id === id);
    if (figure === undefined) {
      return {
        reached: false,
        message: `There is no figure "${id}" here. There are: ${figures.map((each) => each.id).join(', ')}.`,
      };
    }
    const working = new Working();
    record(() => {}, working);
    const steps = leadingTo(working.steps, figure);
    return { reached: true, figure, steps, readings: readingsOf(car, steps, figure) };
  } catch (reason) {
    if (isRefusal(reason)) {
      return { reached: false, message: reason.message };
    }
    throw reason;
  }
}

/** The step that gave the figure and, before it, every step that it leans on. */
export function leadingTo(steps: readonly Step[], figure: Pick<Figure, 'symbol' | 'value'>): Step[] {
  const kept = new Set<Step>();
  const keep = (symbol: string, value: number, before: number): void => {
    const index = steps.findLastIndex(
      (step, k) => k < before && step.symbol === symbol && Object.is(step.value, value),
    );
    const step = steps[index];
    if (step === undefined || kept.has(step)) return;
    kept.add(step);
    for (const term of step.terms) if (term.from?.kind === 'step') keep(term.from.symbol, term.value, index);
  };
  keep(figure.symbol, figure.value, steps.length);
  return steps.filter((step) => kept.has(step));
}

export function readingsOf(
  car: Pick<Car, 'readings'>,
  steps: readonly Step[],
  figure: Pick<Figure, 'spread'>,
): Record<string, Reading> {
  const paths = new Set<string>();
  for (const step of steps)
    for (const { from } of step.terms) if (from?.kind === 'reading') paths.add(from.path);
  for (const share of figure.spread?.shares ?? []) paths.add(share.path);
  const found = car.readings.filter((reading) => paths.has(reading.path));
  return Object.fromEntries(found.map((reading) => [reading.path, reading]));
}
