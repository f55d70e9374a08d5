/** What readings by hand come to: figures with their spread, each of a wheel, an axle, a pad, a row. */
import type { Measured } from '../flatfloor/weighing.ts';

export interface GaugedFigure extends Measured {
  readonly id: string;
  /** What it belongs to: `front left`, `front axle`, `+10 mm`. */
  readonly of: string;
  readonly words: string;
  /** SI. */
  readonly unit: string;
}

export interface GaugedReached {
  readonly reached: true;
  readonly figures: readonly GaugedFigure[];
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
}

export type GaugedAnswer = GaugedReached | { readonly reached: false; readonly message: string };

export const gaugedRefused = (message: string): GaugedAnswer => ({ reached: false, message });

export const gauged = (
  of: string,
  unit: string,
  id: string,
  words: string,
  { value, u }: Measured,
): GaugedFigure => ({ id, of, words, unit, value, u });
