/**
 * Figures of the flat floor with their spread and working: from readings of the file and from what is asked beside
 * them, each moved by its uncertainty like every other reading.
 */
import type { Car } from '../car/read.ts';
import type { FloorNote, PutFloor } from '../flatfloor/floor-figure.ts';
import { Numbers } from '../loadpath/numbers.ts';
import { type AskedItem, askedReading } from '../measured/asked-reading.ts';
import type { Reading } from '../measured/reading.ts';
import { type Spread, type SpreadInput, spreadOf } from '../measured/spread.ts';
import { type Step, Working } from '../working/working.ts';
import { leadingTo, readingsOf } from './working.ts';

/** The numbers of one question: those of the car, then those asked. */
export interface QuestionNumbers {
  readonly readings: readonly Reading[];
  readonly values: Float64Array;
  readonly inputs: readonly SpreadInput[];
  /** What was asked, by its name. */
  readonly asked: Readonly<Record<string, Reading>>;
}

export function withAsked(car: Car, items: readonly AskedItem[]): QuestionNumbers {
  if (items.length === 0) {
    const { readings, values, inputs } = car;
    return { readings, values, inputs, asked: {} };
  }
  const asked = items.map((item, k) => askedReading(item, car.values.length + k));
  return {
    readings: [...car.readings, ...asked],
    values: Float64Array.from([...car.values, ...asked.map((each) => each.value)]),
    inputs: [
      ...car.inputs,
      ...asked
        .filter((each) => each.u > 0)
        .map(({ means, path, index, u }): SpreadInput => ({ label: means, path, moves: [[index, u]] })),
    ],
    asked: Object.fromEntries(items.map(({ name }, k) => [name, asked[k]!])),
  };
}

export interface ToldFigure extends FloorNote {
  /** What it belongs to: `front`, `gear 3`, `car`. */
  readonly of: string;
  /** SI. Not finite where the figure does not exist here. */
  readonly value: number;
  readonly spread?: Spread;
}

/** How a figure is called from outside: `front.coldPressure`. */
export const floorId = ({ of, id }: Pick<ToldFigure, 'of' | 'id'>): string => `${of}.${id}`;

/** A pass puts the same figures in the same order every time. */
export type FloorPass = (numbers: Numbers, put: PutFloor, working?: Working) => void;

/** The figures of a pass, each with its spread unless that is not wanted. */
export function floorFigures(on: QuestionNumbers, pass: FloorPass, spread = true): ToldFigure[] {
  const asFiled = new Numbers(on.values);
  const figures: ToldFigure[] = [];
  pass(asFiled, (of, note, value) => figures.push({ of, ...note, value }));
  if (!spread) return figures;
  const spreads = spreadOf(
    on.values,
    on.inputs,
    (values, out, index) => {
      let k = 0;
      const numbers = index === undefined ? asFiled : new Numbers(values, { index, from: asFiled });
      pass(numbers, (_, __, value) => {
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

export interface FloorWorking {
  readonly figure: ToldFigure;
  readonly steps: readonly Step[];
  readonly readings: Readonly<Record<string, Reading>>;
}

/** How one of them came about; undefined where there is no figure of this name. */
export function floorWorking(
  on: QuestionNumbers,
  pass: FloorPass,
  figures: readonly ToldFigure[],
  id: string,
): FloorWorking | undefined {
  const figure = figures.find((each) => floorId(each) === id);
  if (figure === undefined) return undefined;
  const working = new Working();
  // other figures may have the same symbol and value: what was worked out up to this one alone is looked at
  let seen = false;
  let steps: readonly Step[] = [];
  pass(
    new Numbers(on.values),
    (of, note) => {
      if (seen || of !== figure.of || note.id !== figure.id) return;
      seen = true;
      steps = [...working.steps];
    },
    working,
  );
  // a solved figure writes its step after it is put
  if (!steps.some((step) => step.symbol === figure.symbol && Object.is(step.value, figure.value)))
    steps = working.steps;
  const leading = leadingTo(steps, figure);
  return { figure, steps: leading, readings: readingsOf(on, leading, figure) };
}
