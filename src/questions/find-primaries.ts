/**
 * Finding a bank's primaries: what a search has come to, told for the bank; and a search on one thread, a piece at a
 * time, for whoever keeps the time, stops it, and takes it up again.
 *
 * In    a problem as it was put, a seed, sets wanted, threads, and what a run before it had saved
 * Out   how it stands, the best set so far, and while there is none what came nearest
 *
 * The same seed gives the same sets in the same order, however long each piece takes and however many threads work.
 */
import type { Amendments } from '../gaspath/holding/amend.ts';
import type { HoldingDoes } from '../gaspath/holding/holding.ts';
import { solutionOf } from '../gaspath/route/elements.ts';
import type { Cause } from '../gaspath/route/impossible.ts';
import type { RouteSolution } from '../gaspath/route/problem.ts';
import type { Miss } from '../gaspath/route/search.ts';
import { type Site, siteOf } from '../gaspath/route/site.ts';
import type { Threads } from '../gaspath/strand-beside.ts';
import type { AnswerFound, StrandStands, Strands } from '../gaspath/strands.ts';
import { StrandsRun } from '../gaspath/strands-run.ts';
import type { SavedHeld } from './find-held.ts';
import { MISS_WORDS, missBy } from './miss-words.ts';
import { PrimariesByHand, type SavedHand } from './primaries-by-hand.ts';
import { ranked, type Weighed } from './primaries-front.ts';
import type { Holdable } from './primaries-holding.ts';
import type { ProblemPut } from './primaries-problem.ts';
import { type PrimariesSet, primariesSet } from './primaries-set.ts';

/** Plain data, from which a finding goes on. */
export type SavedFinding = readonly StrandStands[] | SavedHeld;
export type FindingStands = 'impossible' | 'searching' | 'improving' | 'done';

type Put = Extract<ProblemPut, { reached: true }>;

/** A set among those that stand, to be told from the others. */
export interface OneOfSets extends Weighed {
  /** The same for this set however many are found beside it. */
  readonly strand: number;
  /** Counted from 1, as they were found. */
  readonly number: number;
  /** Another is better in all that is weighed. */
  readonly beaten: boolean;
}

/** What a search has come to. */
export interface FoundPrimaries {
  /** The set that is chosen, as good as it is so far; the first where none is. Undefined until one stands. */
  readonly solution: () => RouteSolution | undefined;
  readonly set: () => PrimariesSet | undefined;
  /** Strand of that set. */
  readonly chosen: () => number | undefined;
  readonly choose: (strand: number | undefined) => void;
  /** All sets that stand, beaten ones last. */
  readonly sets: () => readonly OneOfSets[];
  /** All answers that stand, in their order. */
  readonly solutions: () => readonly RouteSolution[];
  /** Why it cannot be, found before any search. */
  readonly causes: readonly string[];
  /** What came nearest, in words, while nothing was found. */
  readonly nearest: () => string | undefined;
  /** The same as it lies, with what is breached; it is no set. Undefined where it cannot even be bent. */
  readonly nearestSet: () => PrimariesSet | undefined;
  /** Fresh starts made. */
  readonly starts: () => number;
  /** The set that was found, to be moved by hand; undefined while none stands. */
  readonly byHand: (saved?: SavedHand) => PrimariesByHand | undefined;
  /** Where a set must hold more than its cold gaps. */
  readonly holding?: HoldingStands | undefined;
}

/** How a finding stands to what a set must hold in the car. */
export interface HoldingStands {
  readonly kinds: readonly Holdable[];
  readonly holdsAll: boolean;
  /** Nuts on which no tool goes wherever the pipes lie: nobody can hold them. */
  readonly never: readonly string[];
  /** How many things lack of the set that lacks least; what was asked beyond the cold gaps for it. */
  readonly lacking?: number;
  readonly more?: Amendments;
  readonly does: HoldingDoes | 'impossible';
}

export interface FindingPrimaries extends FoundPrimaries {
  /** One piece of work, some milliseconds. */
  readonly advance: () => FindingStands;
  /** Nothing is to be done here until another thread has told. */
  readonly waits: () => boolean;
  /** Ends the threads beside this one. */
  readonly end: () => Promise<void>;
  /** Plain data, from which `findPrimaries` goes on. */
  readonly saved: () => SavedFinding;
}

export interface FindAsked {
  readonly seed: number;
  /** Sets wanted, 1 to 8. */
  readonly sets?: number;
  readonly saved?: SavedFinding | undefined;
  /** This thread alone, where none are told. */
  readonly threads?: Threads;
}

export function findPrimaries(put: Put, { seed, sets = 1, saved, threads }: FindAsked): FindingPrimaries {
  // what an older page kept had another form: begun anew
  const before = Array.isArray(saved) ? saved : undefined;
  const run = new StrandsRun(put.problem, seed, { answers: sets, brief: false }, { before, threads });
  const { strands, causes, site } = run;
  return {
    ...foundPrimaries(put, strands, causes, site),
    advance: () => {
      if (causes.length > 0) return 'impossible';
      return run.advance() ? findingStands(strands) : 'done';
    },
    waits: () => run.waits,
    saved: () => strands.saved,
    end: () => run.end(),
  };
}

export function findingStands(strands: Strands): FindingStands {
  if (strands.done) return 'done';
  return strands.answers.length === 0 ? 'searching' : 'improving';
}

/** @param site  the problem made ready, where it was */
export function foundPrimaries(
  put: Put,
  strands: Strands,
  causes: readonly Cause[],
  site?: Site,
): FoundPrimaries {
  const { problem, cylinders } = put;
  let chosen: number | undefined;
  const answer = (): AnswerFound | undefined => {
    const { answers } = strands;
    return answers.find(({ strand }) => strand === chosen) ?? answers[0];
  };
  const solution = (): RouteSolution | undefined => answer()?.solution;
  /** Worked out once for each solution; bettered, it is another. */
  const drawn = new WeakMap<RouteSolution, PrimariesSet>();
  const setOf = (of: RouteSolution): PrimariesSet => {
    const set = drawn.get(of) ?? primariesSet(problem, cylinders, of);
    drawn.set(of, set);
    return set;
  };
  /** Worked out once for each. */
  let near: { readonly of: Miss; readonly set: PrimariesSet | undefined } | undefined;
  const nearestSet = (): PrimariesSet | undefined => {
    const { nearest } = strands;
    if (nearest === undefined) return undefined;
    if (near?.of !== nearest) {
      const lies = solutionOf(site ?? siteOf(problem), nearest.layout);
      near = { of: nearest, set: canBeBent(lies) ? primariesSet(problem, cylinders, lies) : undefined };
    }
    return near.set;
  };
  return {
    nearestSet,
    solution,
    solutions: () => strands.answers.map((answer) => answer.solution),
    set: () => {
      const is = solution();
      return is === undefined ? undefined : setOf(is);
    },
    chosen: () => answer()?.strand,
    choose: (strand) => {
      chosen = strand;
    },
    sets: () => {
      const { answers } = strands;
      const sets = ranked(answers.map((each) => ({ solution: each.solution, set: setOf(each.solution) })));
      return sets.map(({ set: _, solution: of, ...weighed }) => {
        const at = answers.findIndex((each) => each.solution === of);
        return { strand: answers[at]!.strand, number: at + 1, ...weighed };
      });
    },
    causes: causeWords(put, causes),
    nearest: () => (strands.nearest === undefined ? undefined : missOf(put, strands.nearest)),
    starts: () => strands.starts,
    byHand: (before) => {
      const is = solution();
      return is === undefined ? undefined : new PrimariesByHand(put, is, before, site ?? siteOf(problem));
    },
  };
}

/** Ports are counted from one there; here a pipe has its cylinder's number. */
export const causeWords = (
  { cylinders }: Pick<Put, 'cylinders'>,
  causes: readonly Cause[],
): readonly string[] =>
  causes.map(({ says }) =>
    says.replace(
      /\b(?:Pipe of port|Port|port) (\d+)/g,
      (_, port: string) => `Cylinder ${cylinders[Number(port) - 1]}`,
    ),
  );

/** What came nearest, in words. */
export function missOf({ cylinders }: Pick<Put, 'cylinders'>, nearest: Miss): string {
  const other = cylinders[nearest.other];
  const what = MISS_WORDS[nearest.what];
  const against = other === undefined ? what : `${what}, with cylinder ${other}`;
  const whose = nearest.pipe < 0 ? 'Collector' : `Cylinder ${cylinders[nearest.pipe]}`;
  const by = missBy(nearest);
  return `${whose}: ${against}${by === undefined ? '' : `, ${by} amiss`}.`;
}

const canBeBent = ({ pipes }: RouteSolution): boolean =>
  pipes.every(({ elements }) => elements.every((each) => each.kind === 'bend' || each.length >= 0));
