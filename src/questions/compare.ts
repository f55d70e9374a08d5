/** Two specs of one car, figure by figure. */
import type { Car, CarSource } from '../car/read.ts';
import type { Problem } from '../measured/problem.ts';
import { cornerFigures } from './corner.ts';
import { everyFigure } from './every-figure.ts';
import { AS_SURVEYED, type Figure, type Position, type Stop, type Wheel } from './figure.ts';
import { openCar } from './open-car.ts';

export interface ComparedRow {
  /** What it belongs to, where more than one wheel is compared: `front left`, `rear`, `car`. */
  readonly of?: string;
  readonly id: string;
  readonly means: string;
  readonly unit: string;
  readonly stop: Stop;
  /** Absent where the spec has no such figure: a coil's stress in a car on bars. */
  readonly a?: Figure;
  readonly b?: Figure;
  /** b less a, SI. */
  readonly difference?: number;
}

export interface Comparison {
  readonly rows: readonly ComparedRow[];
  readonly problems: readonly Problem[];
  /** Why a spec has no figures here, when it has none. */
  readonly notReached: readonly string[];
}

/** Two specs at one wheel and travel. */
export const compareSpecs = (
  source: CarSource,
  a: string,
  b: string,
  wheel: Wheel,
  at: Position,
  options: { readonly spread?: boolean } = {},
): Comparison =>
  compared(source, [a, b], (car) => {
    const answer = cornerFigures(car, wheel, at, options);
    return answer.reached ? answer.figures.map((figure) => ({ figure })) : answer.message;
  });

/** Two specs in every figure as surveyed: wheels, axles, the whole car. */
export const compareEvery = (source: CarSource, a: string, b: string): Comparison =>
  compared(source, [a, b], (car) => {
    const answer = everyFigure(car, AS_SURVEYED);
    return answer.reached ? answer.figures : answer.message;
  });

/** A figure, and what it belongs to where more than one place is compared. */
export interface Placed {
  readonly of?: string;
  readonly figure: Figure;
}

/** Opens both specs and pairs what they answer: figures, or the sentence that says why there are none. */
export function compared(
  source: CarSource,
  specs: readonly [string, string],
  figuresOf: (car: Car) => readonly Placed[] | string,
): Comparison {
  const problems: Problem[] = [];
  const notReached: string[] = [];
  const [left, right] = specs.map((spec): readonly Placed[] => {
    const read = openCar({ ...source, spec });
    if (!read.ok) {
      problems.push(...read.problems);
      return [];
    }
    const found = figuresOf(read.car);
    if (typeof found !== 'string') return found;
    notReached.push(`${spec}: ${found}`);
    return [];
  });
  return { rows: paired(left!, right!), problems, notReached };
}

/** Pairs figures of two specs by place and id, those of the first in their order; what one of them lacks stands alone. */
export function paired(left: readonly Placed[], right: readonly Placed[]): readonly ComparedRow[] {
  const key = ({ of, figure }: Placed): string => `${of ?? ''} ${figure.id}`;
  const others = new Map(right.map((placed) => [key(placed), placed]));
  const known = new Set(left.map(key));
  return [
    ...left.map((placed) => row(placed, others.get(key(placed)))),
    ...right.filter((placed) => !known.has(key(placed))).map((placed) => row(undefined, placed)),
  ];
}

function row(first: Placed | undefined, second: Placed | undefined): ComparedRow {
  const [a, b] = [first?.figure, second?.figure];
  const { of } = (first ?? second)!;
  const { id, means, unit, stop } = (a ?? b)!;
  const difference = a === undefined || b === undefined ? Number.NaN : b.value - a.value;
  return {
    ...(of === undefined ? {} : { of }),
    id,
    means,
    unit,
    stop,
    ...(a === undefined ? {} : { a }),
    ...(b === undefined ? {} : { b }),
    ...(Number.isFinite(difference) ? { difference } : {}),
  };
}
