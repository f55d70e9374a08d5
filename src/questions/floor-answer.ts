/** What the questions of the flat floor have in common: figures, notes, cautions, and the working of one of them. */
import type { Car } from '../car/read.ts';
import type { AskedAmount, AskedItem } from '../measured/asked-reading.ts';
import type { Reading } from '../measured/reading.ts';
import {
  type FloorPass,
  type FloorWorking,
  floorFigures,
  floorWorking,
  type QuestionNumbers,
  type ToldFigure,
  withAsked,
} from './floor-figures.ts';
import { isRefusal } from './refusal.ts';

export interface ToldReached {
  readonly reached: true;
  readonly figures: readonly ToldFigure[];
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
  /** Of the figure that was asked for by name, if there is one of that name. */
  readonly working?: FloorWorking;
}

export interface ToldRefused {
  readonly reached: false;
  readonly message: string;
}

export type ToldAnswer = ToldReached | ToldRefused;

export interface ToldOptions {
  /** Left out, with spread. */
  readonly spread?: boolean;
  /** Name of a figure whose working is wanted, such as `front.coldPressure`. */
  readonly working?: string;
}

export const floorRefused = (message: string): ToldRefused => ({ reached: false, message });

/** Figures of a pass, with what must be said beside them. */
export function floorAnswer(
  on: QuestionNumbers,
  pass: FloorPass,
  options: ToldOptions,
  said: (figures: readonly ToldFigure[]) => Pick<ToldReached, 'notes' | 'cautions'>,
): ToldAnswer {
  try {
    const figures = floorFigures(on, pass, options.spread ?? true);
    const working =
      options.working === undefined ? undefined : floorWorking(on, pass, figures, options.working);
    return { reached: true, figures, ...said(figures), ...(working === undefined ? {} : { working }) };
  } catch (reason) {
    if (isRefusal(reason)) return floorRefused(reason.message);
    throw reason;
  }
}

/** What is asked beside the file, gathered item by item: those left out are not there. */
export class AskedList {
  readonly #items: AskedItem[] = [];

  /** @returns the name, or nothing where nothing was asked */
  add(
    amount: AskedAmount | undefined,
    item: Pick<AskedItem, 'name' | 'means' | 'unit' | 'usual'>,
  ): string | undefined {
    if (amount === undefined) return undefined;
    this.#items.push({ ...item, amount });
    return item.name;
  }

  /** The numbers of the question, and each asked reading by its name. */
  on(car: Car): {
    readonly numbers: QuestionNumbers;
    readonly asked: (name: string | undefined) => Reading | undefined;
  } {
    const numbers = withAsked(car, this.#items);
    return { numbers, asked: (name) => (name === undefined ? undefined : numbers.asked[name]) };
  }
}
