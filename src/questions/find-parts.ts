/**
 * Finding the primaries of several parts so that they stay clear of each other, and hold in the car what they must: a piece at a time, for whoever keeps the
 * time, stops it, and takes it up again.
 *
 * The same seed gives the same sets, however long each piece takes.
 */
import { InParts, type SavedParts as SavedInParts } from '../gaspath/parts/in-parts.ts';
import type { RouteSolution } from '../gaspath/route/problem.ts';
import type { Threads } from '../gaspath/strand-beside.ts';
import type { PartToEase } from './ease-parts.ts';
import { causeWords, missOf } from './find-primaries.ts';
import { HeldParts, type SavedHeldParts } from './held-parts.ts';
import { partWords } from './part-words.ts';
import { heldOfPart, type PartsHold } from './parts-holding.ts';
import type { PartPut } from './parts-put.ts';
import { type PartSet, partSets } from './primaries-parts.ts';

/** Plain data, from which `findParts` goes on. */
export interface SavedParts extends SavedInParts {
  /** Once all stand. */
  readonly held?: SavedHeldParts;
}

export interface PartsAsked {
  /** What the sets must hold in the car; nothing, where it is left out. */
  readonly hold?: PartsHold | undefined;
  /** This thread alone, where none are told. */
  readonly threads?: Threads | undefined;
}

export type PartsStand = InParts['stands'];

export interface FindingParts {
  readonly advance: () => PartsStand;
  /** Nothing is to be done here until another thread has told. */
  readonly waits: () => boolean;
  /** Ends the threads beside this one. */
  readonly end: () => Promise<void>;
  /** How many things lack of each part as it was last looked at; undefined of one that was not yet. None where nothing must be held. */
  readonly lacking: () => readonly (number | undefined)[] | undefined;
  readonly stands: () => PartsStand;
  /** One of each part, in the order of the parts; undefined until all stand. They may not hold yet what they must. */
  readonly solutions: () => readonly RouteSolution[] | undefined;
  readonly sets: () => readonly PartSet[] | undefined;
  /** Why a part cannot be, whatever the others do. */
  readonly causes: () => readonly string[];
  /** What is looked for now: `left bank`, `right bank, beside the left bank`. */
  readonly now: () => string | undefined;
  /** Where it came no further, in words. */
  readonly nearest: () => string | undefined;
  /** The part that does not fit, to ask what would let it; undefined once all stand. */
  readonly toEase: () => PartToEase | undefined;
  /** Evaluations. */
  readonly work: () => number;
  readonly saved: () => SavedParts;
}

export function findParts(
  parts: readonly PartPut[],
  seed: number,
  saved?: SavedParts,
  { hold, threads }: PartsAsked = {},
): FindingParts {
  const run = new InParts(
    parts.map((each) => each.gas),
    seed,
    saved,
    threads,
  );
  const holds = hold !== undefined && parts.some((part) => heldOfPart(part, hold).length > 0);
  let held: HeldParts | undefined;
  const heldNow = (): HeldParts | undefined => {
    const { solutions } = run;
    if (holds && solutions !== undefined) held ??= new HeldParts(parts, solutions, seed, hold, saved?.held);
    return held;
  };
  const solutionsNow = (): readonly RouteSolution[] | undefined => heldNow()?.solutions ?? run.solutions;
  const stands = (): PartsStand => (heldNow()?.done === false ? 'searching' : run.stands);
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
      if (run.stands === 'searching') run.advance();
      else heldNow()?.advance();
      return stands();
    },
    stands,
    waits: () => run.waits,
    end: () => run.end(),
    lacking: () => heldNow()?.lacking.map((each) => each ?? undefined),
    solutions: solutionsNow,
    sets: () => {
      const solutions = solutionsNow();
      if (solutions === undefined) return undefined;
      if (told?.of === solutions) return told.sets;
      told = { of: solutions, sets: partSets(parts, solutions) };
      return told.sets;
    },
    causes: () => {
      const { causes } = run;
      if (causes === undefined) return [];
      const { part, put } = parts[causes.part]!;
      return causeWords(put, causes.causes).map((each) => partWords(part, each));
    },
    now: () => {
      if (run.now !== undefined) return titled(run.now.part, run.now.among);
      const at = heldNow()?.at;
      return at === undefined ? undefined : `${parts[at]!.part.title}, what it must hold in the car`;
    },
    nearest: () => {
      const { missed } = run;
      if (missed === undefined) return undefined;
      const { part, put } = parts[missed.part]!;
      const words = missed.nearest === undefined ? undefined : partWords(part, missOf(put, missed.nearest));
      return `${capital(titled(missed.part, missed.among))}${words === undefined ? '.' : `: ${words}`}`;
    },
    toEase: () => {
      const at = run.causes?.part ?? run.missed?.part;
      if (run.solutions !== undefined || at === undefined) return undefined;
      const { part, put } = parts[at]!;
      const problem = run.causes === undefined ? run.among(at) : put.problem;
      return problem === undefined ? undefined : { part, put: { ...put, problem } };
    },
    work: () => run.work,
    saved: () => {
      const is = heldNow()?.saved;
      return is === undefined ? run.saved : { ...run.saved, held: is };
    },
  };
}

const capital = (text: string): string => `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;
