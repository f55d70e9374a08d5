/**
 * Sets that hold more than the finder is asked: what lacks of a found set is asked of the next one.
 *
 * A set is found as the file asks it cold, and looked at. What it lacks is written into the problem as larger gaps and as
 * room for tools, and the set is mended from where it lies, a number of times. Where that does not come out the harder
 * problem is searched anew; where that finds nothing, the first search goes on to its next set. The number of failures
 * is bounded, and what came out of it holds all, or is the set that lacks least.  [GP-9]
 *
 * Whoever keeps the time does the searching (`search`, `found`) and calls `advance` for the rest. The same seed gives
 * the same sets, however the pieces fall.
 */
import { PrimariesRun } from '../primaries.ts';
import { layoutFrom } from '../route/from-elements.ts';
import type { RouteProblem, RouteSolution } from '../route/problem.ts';
import { type Site, siteOf } from '../route/site.ts';
import { MOST_STRANDS, seedOf } from '../schedule.ts';
import { type Amendments, amended } from './amend.ts';
import { foundAlready } from './bettering.ts';

export interface Looked {
  /** How many things lack. */
  readonly lacking: number;
  /** What is to be asked so that they would not; undefined where nothing can be asked for it. */
  readonly next?: Amendments;
}

export interface HoldingAsked {
  readonly problem: RouteProblem;
  readonly seed: number;
  /** Sets wanted that hold all. */
  readonly sets: number;
  /** What is asked from the start. */
  readonly from: Amendments;
  readonly look: (solution: RouteSolution, more: Amendments) => Looked;
}

/** A search that somebody is to do. */
export interface SearchWanted {
  /** `first`: the problem as it was put, gone on with from what it had come to. */
  readonly of: 'first' | 'harder';
  readonly problem: RouteProblem;
  readonly seed: number;
  readonly answers: number;
  /** Better each no longer than it took to find. */
  readonly brief: boolean;
  /** Evaluations after which it is given up. */
  readonly most: number;
}

/** A set and its name: its strand in the first search, or a number of its own. */
export interface SetNamed {
  readonly strand: number;
  readonly solution: RouteSolution;
}

/** A set that was looked at, and what was asked when it was found. */
export interface SetHeld extends SetNamed {
  readonly lacking: number;
  readonly more: Amendments;
}

/** Plain data. */
export interface SavedHolding {
  readonly search: SearchWanted['of'];
  readonly fails: number;
  readonly more: Amendments;
  /** Strands of the first search of which the sets were taken. */
  readonly taken: readonly number[];
  /** Sets that are to be held, the one at work first. */
  readonly queue: readonly SetNamed[];
  readonly mends: number;
  /** What is done to the first of the queue; begun again where it was broken off. */
  readonly step: Step;
  readonly sets: readonly SetHeld[];
  readonly nearest?: SetHeld;
}

type Step = 'look' | 'mend' | 'better';

/** To be begun with a set that was found before, instead of a search. */
export const beganWith = (solution: RouteSolution, more: Amendments): SavedHolding => ({
  search: 'first',
  fails: 0,
  more,
  taken: [0],
  queue: [{ strand: 0, solution }],
  mends: 0,
  step: 'look',
  sets: [],
});

export type HoldingDoes = 'search' | 'mend' | 'better' | 'done';

/** Mends of one set, each for what lacked after the one before. */
const MOST_MENDS = 8;
/** Sets that did not come to hold all, and searches that found none, since the last that did. */
const MOST_FAILS = 6;
/** Evaluations before a mend, a bettering and a later search are given up. */
const MEND_PATIENCE = 5000;
const BETTER_PATIENCE = 5000;
const SEARCH_PATIENCE = 20_000;

export class Holding {
  private readonly asked: HoldingAsked;
  private state: SavedHolding;
  private run: PrimariesRun | undefined;
  private site: Site | undefined;

  constructor(asked: HoldingAsked, saved?: SavedHolding) {
    this.asked = asked;
    this.state = saved ?? {
      search: 'first',
      fails: 0,
      more: asked.from,
      taken: [],
      queue: [],
      mends: 0,
      step: 'look',
      sets: [],
    };
    if (this.state.queue.length > 0) this.begin(this.state.step);
  }

  get saved(): SavedHolding {
    return this.state;
  }

  /** Sets that hold all, in the order in which they were found. */
  get held(): readonly SetHeld[] {
    return this.state.sets;
  }

  /** What lacks least, while none holds all. */
  get nearest(): SetHeld | undefined {
    return this.state.nearest;
  }

  get does(): HoldingDoes {
    const { queue, step, sets, fails, search, taken } = this.state;
    if (queue.length > 0) return step === 'better' ? 'better' : 'mend';
    const noMore = search === 'first' && taken.length >= MOST_STRANDS;
    return sets.length >= this.asked.sets || fails >= MOST_FAILS || noMore ? 'done' : 'search';
  }

  /** What is to be searched, while that is what is to be done. */
  get search(): SearchWanted {
    const { problem, seed, sets: wanted, from } = this.asked;
    const { search, more, taken, sets, fails } = this.state;
    return search === 'first'
      ? {
          of: 'first',
          problem: amended(problem, from),
          seed,
          answers: Math.min(MOST_STRANDS, taken.length + wanted - sets.length),
          brief: false,
          most: taken.length === 0 ? Infinity : SEARCH_PATIENCE,
        }
      : {
          of: 'harder',
          problem: amended(problem, more),
          seed: seedOf(seed, MOST_STRANDS + fails),
          answers: 1,
          brief: true,
          most: SEARCH_PATIENCE,
        };
  }

  /** What that search came to; nothing where it was given up. */
  found(answers: readonly SetNamed[]): void {
    const { search, taken, fails, sets } = this.state;
    if (search === 'first') {
      const fresh = answers.filter(({ strand }) => !taken.includes(strand));
      this.set({
        queue: fresh.map(({ strand, solution }) => ({ strand, solution })),
        taken: [...taken, ...fresh.map(({ strand }) => strand)],
      });
    } else {
      const strand = MOST_STRANDS + sets.length + fails;
      this.set({ queue: answers.slice(0, 1).map(({ solution }) => ({ strand, solution })) });
    }
    if (this.state.queue.length === 0) this.set({ fails: fails + 1, search: 'first' });
    else this.takeFirst();
  }

  /** One piece of mending or bettering, some milliseconds; a look takes longer. */
  advance(): void {
    const { run } = this;
    const first = this.state.queue[0];
    if (first === undefined) return;
    if (run === undefined) {
      this.look(first.solution);
      return;
    }
    const stands = run.advance();
    if (this.state.step === 'better') {
      if (stands === 'done' || run.work > BETTER_PATIENCE) this.bettered(run.solution!);
    } else if (run.solution !== undefined) this.look(run.solution);
    else if (stands === 'done' || run.work > MEND_PATIENCE) this.failed();
  }

  private set(state: Partial<SavedHolding>): void {
    this.state = { ...this.state, ...state };
  }

  private look(solution: RouteSolution): void {
    const { more, mends, queue, nearest } = this.state;
    const { lacking, next } = this.asked.look(solution, more);
    const now = { strand: queue[0]!.strand, solution };
    this.set({ queue: [now, ...queue.slice(1)] });
    if (lacking === 0) {
      // as a search left it, it was bettered already
      if (mends === 0) this.bettered(solution);
      else this.begin('better');
      return;
    }
    if (nearest === undefined || lacking < nearest.lacking) this.set({ nearest: { ...now, lacking, more } });
    if (next === undefined || mends >= MOST_MENDS) {
      this.failed();
      return;
    }
    this.set({ mends: mends + 1, more: next });
    this.begin('mend');
  }

  private begin(step: Step): void {
    this.set({ step });
    this.run = undefined;
    if (step === 'look') return;
    const problem = amended(this.asked.problem, this.state.more);
    const site = siteOf(problem, this.site);
    const { solution } = this.state.queue[0]!;
    this.site = site;
    this.run = new PrimariesRun(problem, this.asked.seed, {
      site,
      ...(step === 'better'
        ? { saved: foundAlready(site, solution) }
        : {
            held: {
              layout: layoutFrom(solution, site.radii[0]!),
              pins: [],
              pipes: [],
              collector: false,
            },
          }),
    });
  }

  /** What was made better counts where it still holds all. */
  private bettered(solution: RouteSolution): void {
    const { queue, more, sets } = this.state;
    const before = queue[0]!;
    const holds = solution === before.solution || this.asked.look(solution, more).lacking === 0;
    this.set({
      sets: [...sets, { ...before, ...(holds ? { solution } : {}), lacking: 0, more }],
      fails: 0,
      queue: queue.slice(1),
      search: 'first',
    });
    this.takeFirst();
  }

  /** The set at work does not come to hold all. */
  private failed(): void {
    const { queue, fails, search } = this.state;
    const left = queue.slice(1);
    this.set({ queue: left, fails: fails + 1 });
    if (left.length === 0) this.set({ search: search === 'first' ? 'harder' : 'first' });
    this.takeFirst();
  }

  private takeFirst(): void {
    this.run = undefined;
    const { search, queue } = this.state;
    this.set({ step: 'look', mends: 0 });
    if (search === 'first' && queue.length > 0) this.set({ more: this.asked.from });
  }
}
