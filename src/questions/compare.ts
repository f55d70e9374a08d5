/** Two specs of one car, figure by figure. */
import type { CarSource } from '../car/read.ts';
import type { Problem } from '../measured/problem.ts';
import { cornerFigures } from './corner.ts';
import type { Figure, Position, Stop, Wheel } from './figure.ts';
import { openCar } from './open-car.ts';

export interface ComparedRow {
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

export function compareSpecs(
  source: CarSource,
  a: string,
  b: string,
  wheel: Wheel,
  at: Position,
  options: { readonly spread?: boolean } = {},
): Comparison {
  const problems: Problem[] = [];
  const notReached: string[] = [];
  const figures = (spec: string): readonly Figure[] => {
    const read = openCar({ ...source, spec });
    if (!read.ok) {
      problems.push(...read.problems);
      return [];
    }
    const answer = cornerFigures(read.car, wheel, at, options);
    if (answer.reached) return answer.figures;
    notReached.push(`${spec}: ${answer.message}`);
    return [];
  };
  const left = figures(a);
  const right = figures(b);
  const byId = new Map(right.map((figure) => [figure.id, figure]));
  const rows = left.map((figure) => row(figure, byId.get(figure.id)));
  const known = new Set(left.map((figure) => figure.id));
  for (const figure of right) if (!known.has(figure.id)) rows.push(row(undefined, figure));
  return { rows, problems, notReached };
}

function row(a: Figure | undefined, b: Figure | undefined): ComparedRow {
  const { id, means, unit, stop } = (a ?? b)!;
  const difference = a === undefined || b === undefined ? Number.NaN : b.value - a.value;
  return {
    id,
    means,
    unit,
    stop,
    ...(a === undefined ? {} : { a }),
    ...(b === undefined ? {} : { b }),
    ...(Number.isFinite(difference) ? { difference } : {}),
  };
}
