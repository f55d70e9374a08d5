/** What a figure says of itself, once and for all cars. */
import type { Term, Working } from '../../working/working.ts';

/** Stops of the load path, in the order in which the force passes. */
export const LOAD_PATH = ['tyre', 'upright', 'links', 'rocker', 'spring', 'case', 'studs', 'tub'] as const;
export type Stop = (typeof LOAD_PATH)[number];

export interface FigureNote {
  /** Name of the figure within its answer: `wheelRate`. */
  readonly id: string;
  readonly stop: Stop;
  /** In the trade's words. */
  readonly means: string;
  readonly symbol: string;
  /** SI unit. */
  readonly unit: string;
  /** Point of the drawing that the figure stands at. */
  readonly anchor?: string;
  /** 1: one of the few large figures of its stop; 2: on its card; 3: in its table alone. */
  readonly rank: 1 | 2 | 3;
  /** The one figure of its stop that the eye should find first. */
  readonly lead?: true;
  /** What must be said beside the figure always: which way round a sign or a ratio is. */
  readonly say?: string;
  /** How it is solved where it is not one formula, and where that stands in docs/theory. */
  readonly method?: string;
  readonly source?: string;
}

/** Takes figures one by one, in the same order for the same car. */
export type Put = (note: FigureNote, value: number) => void;

/** Where the naught comes from that stands for a part which this corner has not. */
export const NO_UNIT = { kind: 'constant', what: 'no damper unit' } as const;
export const NO_BAR = { kind: 'constant', what: 'no torsion bar' } as const;

/** Notes of one stop, with the stop filled in. */
export const notesOf =
  (stop: Stop) =>
  (note: Omit<FigureNote, 'stop'>): FigureNote => ({ stop, ...note });

/**
 * Puts figures and, where a figure is solved and not one formula, writes that down as a step of the working.
 */
export const recorded =
  (put: Put, working: Working, asked: readonly Term[] = []): Put =>
  (note, value) => {
    put(note, value);
    if (note.method === undefined || working.stepOf(note.symbol, value) !== undefined) return;
    working.add({
      kind: 'solved',
      symbol: note.symbol,
      means: note.means,
      method: note.method,
      value,
      unit: note.unit,
      source: note.source ?? '',
      terms: asked,
    });
  };

/** Writes down a number that is no figure of its own and no one formula, so that terms below can be followed to it. */
export function noteSolved(
  working: Working | undefined,
  method: string,
  source: string,
  numbers: () => readonly {
    readonly symbol: string;
    readonly means: string;
    readonly value: number;
    readonly unit: string;
  }[],
): void {
  // asked for only when there is a record: a spread makes thousands of passes without one
  if (working === undefined) return;
  for (const each of numbers()) working.add({ kind: 'solved', method, source, terms: [], ...each });
}
