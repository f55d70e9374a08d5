/**
 * Finding the primaries of several parts so that they stay clear of each other: a piece at a time, for whoever keeps the
 * time, stops it, and takes it up again.
 *
 * The same seed gives the same sets, however long each piece takes.
 */
import { InParts, type SavedParts } from '../gaspath/parts/in-parts.ts';
import type { RouteSolution } from '../gaspath/route/problem.ts';
import { causeWords, missOf } from './find-primaries.ts';
import { partWords } from './part-words.ts';
import type { PartPut } from './parts-put.ts';
import { type PartSet, partSets } from './primaries-parts.ts';

export type { SavedParts };
export type PartsStand = InParts['stands'];

export interface FindingParts {
  readonly advance: () => PartsStand;
  readonly stands: () => PartsStand;
  /** One of each part, in the order of the parts; undefined until all stand. */
  readonly solutions: () => readonly RouteSolution[] | undefined;
  readonly sets: () => readonly PartSet[] | undefined;
  /** Why a part cannot be, whatever the others do. */
  readonly causes: () => readonly string[];
  /** What is looked for now: `left bank`, `right bank, beside the left bank`. */
  readonly now: () => string | undefined;
  /** Where it came no further, in words. */
  readonly nearest: () => string | undefined;
  /** Evaluations. */
  readonly work: () => number;
  readonly saved: () => SavedParts;
}

export function findParts(parts: readonly PartPut[], seed: number, saved?: SavedParts): FindingParts {
  const run = new InParts(
    parts.map((each) => each.gas),
    seed,
    saved,
  );
  const titled = (part: number, among: readonly number[]): string =>
    [
      parts[part]!.part.title,
      ...(among.length === 0
        ? []
        : [`beside ${among.map((k) => `the ${parts[k]!.part.title}`).join(' and ')}`]),
    ].join(', ');
  let told: { readonly of: readonly RouteSolution[]; readonly sets: readonly PartSet[] } | undefined;
  return {
    advance: () => {
      run.advance();
      return run.stands;
    },
    stands: () => run.stands,
    solutions: () => run.solutions,
    sets: () => {
      if (told !== undefined) return told.sets;
      const { solutions } = run;
      if (solutions === undefined) return undefined;
      told = { of: solutions, sets: partSets(parts, solutions) };
      return told.sets;
    },
    causes: () => {
      const { causes } = run;
      if (causes === undefined) return [];
      const { part, put } = parts[causes.part]!;
      return causeWords(put, causes.causes).map((each) => partWords(part, each));
    },
    now: () => (run.now === undefined ? undefined : titled(run.now.part, run.now.among)),
    nearest: () => {
      const { missed } = run;
      if (missed === undefined) return undefined;
      const { part, put } = parts[missed.part]!;
      const words = missed.nearest === undefined ? undefined : partWords(part, missOf(put, missed.nearest));
      return `${capital(titled(missed.part, missed.among))}${words === undefined ? '.' : `: ${words}`}`;
    },
    work: () => run.work,
    saved: () => run.saved,
  };
}

const capital = (text: string): string => `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;
