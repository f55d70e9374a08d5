/**
 * Finding a bank's primaries, a piece at a time: whoever asks keeps the time, stops it, and takes it up again.
 *
 * In    a problem as it was put, a seed, and what a run before it had saved
 * Out   how it stands, the best set so far, and while there is none what came nearest
 *
 * The same seed gives the same sets in the same order, however long each piece takes.
 */
import { PrimariesRun, type SavedRun } from '../gaspath/primaries.ts';
import type { RouteSolution } from '../gaspath/route/problem.ts';
import { PrimariesByHand, type SavedHand } from './primaries-by-hand.ts';
import type { ProblemPut } from './primaries-problem.ts';
import { type PrimariesSet, primariesSet } from './primaries-set.ts';

export type SavedFinding = SavedRun;
export type FindingStands = 'impossible' | 'searching' | 'improving' | 'done';

type Put = Extract<ProblemPut, { reached: true }>;

export interface FindingPrimaries {
  /** One piece of work, some milliseconds. */
  readonly advance: () => FindingStands;
  /** The best so far; undefined until one stands. */
  readonly solution: () => RouteSolution | undefined;
  readonly set: () => PrimariesSet | undefined;
  /** Why it cannot be, found before any search. */
  readonly causes: readonly string[];
  /** What came nearest, in words, while nothing was found. */
  readonly nearest: () => string | undefined;
  /** Fresh starts made. */
  readonly starts: () => number;
  /** Plain data, from which `findPrimaries` goes on. */
  readonly saved: () => SavedFinding;
  /** The set that was found, to be moved by hand; undefined while none stands. */
  readonly byHand: (saved?: SavedHand) => PrimariesByHand | undefined;
}

export function findPrimaries(put: Put, seed: number, saved?: SavedFinding): FindingPrimaries {
  const { problem, cylinders } = put;
  const run = new PrimariesRun(problem, seed, { saved });
  return {
    advance: () => run.advance(),
    solution: () => run.solution,
    set: () => (run.solution === undefined ? undefined : primariesSet(problem, cylinders, run.solution)),
    // ports are counted from one there; here a pipe has its cylinder's number
    causes: run.causes.map(({ says }) =>
      says.replace(
        /\b(?:Pipe of port|Port|port) (\d+)/g,
        (_, port: string) => `Cylinder ${cylinders[Number(port) - 1]}`,
      ),
    ),
    nearest: () => {
      const { nearest } = run;
      if (nearest === undefined) return undefined;
      const other = cylinders[nearest.other];
      const against = other === undefined ? nearest.what : `${nearest.what}, with cylinder ${other}`;
      return `Cylinder ${cylinders[nearest.pipe]}: ${against}, ${nearest.by.toFixed(1)} mm amiss.`;
    },
    starts: () => run.starts,
    saved: () => run.saved,
    byHand: (before) =>
      run.solution === undefined ? undefined : new PrimariesByHand(put, run.solution, before, run.site),
  };
}
