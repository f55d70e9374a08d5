/**
 * Finding a bank's primaries that hold in the car what they must: searches, and mending between them.
 *
 * In    what is to be held, a seed, sets wanted, threads, what a finding before it had saved
 * Out   like any finding: how it stands, the best sets so far; and what of it is held and what lacks
 *
 * While no set holds all, the one that lacks least is the answer, and says so.
 */
import { amended } from '../gaspath/holding/amend.ts';
import {
  Holding,
  type HoldingDoes,
  type SavedHolding,
  type SearchWanted,
  type SetHeld,
  type SetNamed,
} from '../gaspath/holding/holding.ts';
import type { Cause } from '../gaspath/route/impossible.ts';
import type { RouteSolution } from '../gaspath/route/problem.ts';
import { type Site, siteOf } from '../gaspath/route/site.ts';
import { type StrandStands, Strands } from '../gaspath/strands.ts';
import { StrandsRun } from '../gaspath/strands-run.ts';
import {
  type FindAsked,
  type FindingPrimaries,
  type FindingStands,
  type FoundPrimaries,
  findPrimaries,
  foundPrimaries,
  type OneOfSets,
} from './find-primaries.ts';
import { PrimariesByHand } from './primaries-by-hand.ts';
import { ranked } from './primaries-front.ts';
import type { Holds } from './primaries-holding.ts';
import type { ProblemPut } from './primaries-problem.ts';
import { type PrimariesSet, primariesSet } from './primaries-set.ts';

/** Plain data, from which a finding goes on. */
export interface SavedHeld {
  readonly held: SavedHolding;
  /** Of the first search, which is gone on with. */
  readonly first?: readonly StrandStands[];
  /** Of the search at work, where it is another. */
  readonly harder?: readonly StrandStands[];
}

/** A search that somebody is to do, with what it goes on from. */
interface HeldSearch extends SearchWanted {
  readonly before?: readonly StrandStands[];
}

class HeldFinding {
  private readonly holds: Holds;
  private readonly holding: Holding;
  private kept: Pick<SavedHeld, 'first' | 'harder'>;
  /** Of the search at work, or the last. */
  private strands: Strands;
  private began: number;
  private site: Site | undefined;
  /** Of the first search alone: a harder one that cannot be is given up. */
  private causes: readonly Cause[] = [];
  private chosen: number | undefined;
  /** Worked out once for each solution. */
  private readonly drawn = new WeakMap<RouteSolution, PrimariesSet>();

  constructor(holds: Holds, seed: number, sets: number, saved?: SavedHeld) {
    const { put, from, look } = holds;
    this.holds = holds;
    this.holding = new Holding({ problem: put.problem, seed, sets, from, look }, saved?.held);
    this.kept = saved ?? {};
    this.strands = new Strands({ answers: sets, brief: false }, saved?.harder ?? saved?.first);
    this.began = this.strands.work;
  }

  get does(): HoldingDoes | 'impossible' {
    return this.causes.length > 0 ? 'impossible' : this.holding.does;
  }

  get search(): HeldSearch {
    const wanted = this.holding.search;
    const before = this.kept[wanted.of];
    return { ...wanted, ...(before === undefined ? {} : { before }) };
  }

  /** A search begins. */
  begins(strands: Strands): void {
    this.strands = strands;
    this.began = strands.work;
  }

  /** Whether the search is to be ended without a further answer. */
  get isEnough(): boolean {
    const { most, of } = this.holding.search;
    const { taken } = this.holding.saved;
    if (this.strands.work - this.began <= most) return false;
    return this.strands.answers.every(({ strand }) => of === 'first' && taken.includes(strand));
  }

  /** The search has come to its end. @param site  of its problem */
  found(causes: readonly Cause[], site?: Site): void {
    const { strands } = this;
    const { of } = this.holding.search;
    this.site = site;
    const { first } = this.kept;
    this.kept = of === 'first' ? { first: strands.saved } : first === undefined ? {} : { first };
    if (causes.length > 0 && of === 'first') this.causes = causes;
    else this.holding.found(strands.answers);
  }

  /** One piece of mending. */
  advance(): void {
    this.holding.advance();
  }

  get saved(): SavedHeld {
    const held = this.holding.saved;
    return this.does === 'search'
      ? { ...this.kept, held, [this.holding.search.of]: this.strands.saved }
      : { ...this.kept, held };
  }

  get stands(): FindingStands {
    const { does } = this;
    if (does === 'impossible' || does === 'done') return does;
    return this.sets.length === 0 ? 'searching' : 'improving';
  }

  /** Sets that hold all; until then the one that lacks least, or that was just found. */
  private get sets(): readonly SetNamed[] {
    const { held, nearest, saved } = this.holding;
    if (held.length > 0) return held;
    if (nearest !== undefined) return [nearest];
    return [...saved.queue, ...this.strands.answers].slice(0, 1);
  }

  private get at(): SetNamed | undefined {
    return this.sets.find(({ strand }) => strand === this.chosen) ?? this.sets[0];
  }

  told(): FoundPrimaries {
    const { put, kinds, never } = this.holds;
    const { problem } = put;
    const { held, nearest } = this.holding;
    const lacks: SetHeld | undefined = held.find(({ strand }) => strand === this.at?.strand) ?? nearest;
    return {
      ...foundPrimaries(put, this.strands, this.causes, this.site),
      solution: () => this.at?.solution,
      solutions: () => this.sets.map(({ solution }) => solution),
      set: () => (this.at === undefined ? undefined : this.setOf(this.at.solution)),
      chosen: () => this.at?.strand,
      choose: (strand) => {
        this.chosen = strand;
      },
      sets: () => this.weighed(),
      byHand: (saved) => {
        if (this.at === undefined) return undefined;
        // a hand is held off the tools too
        const more = lacks === undefined ? problem : amended(problem, lacks.more);
        return new PrimariesByHand(
          { ...put, problem: more },
          this.at.solution,
          saved,
          siteOf(more, this.site),
        );
      },
      holding: {
        kinds,
        never,
        holdsAll: held.length > 0,
        ...(lacks === undefined ? {} : { lacking: lacks.lacking, more: lacks.more }),
        does: this.does,
      },
    };
  }

  private setOf(solution: RouteSolution): PrimariesSet {
    const { problem, cylinders } = this.holds.put;
    const set = this.drawn.get(solution) ?? primariesSet(problem, cylinders, solution);
    this.drawn.set(solution, set);
    return set;
  }

  private weighed(): readonly OneOfSets[] {
    const { sets } = this;
    const all = ranked(sets.map(({ solution }) => ({ solution, set: this.setOf(solution) })));
    return all.map(({ set: _, solution, ...weighed }) => {
      const at = sets.findIndex((each) => each.solution === solution);
      return { strand: sets[at]!.strand, number: at + 1, ...weighed };
    });
  }
}

/** Of one problem with what sets of it must hold in the car, where they must. */
export const findSets = (
  put: Extract<ProblemPut, { reached: true }>,
  asked: FindAsked & { readonly holds?: Holds },
): FindingPrimaries => (asked.holds === undefined ? findPrimaries(put, asked) : findHeld(asked.holds, asked));

/** A piece at a time, mending on this thread. */
export function findHeld(holds: Holds, { seed, sets = 1, saved, threads }: FindAsked): FindingPrimaries {
  // what was kept of a finding that held nothing has another form: begun anew
  const before = saved !== undefined && 'held' in saved ? saved : undefined;
  const finding = new HeldFinding(holds, seed, sets, before);
  let run: StrandsRun | undefined;
  const advance = (): FindingStands => {
    if (finding.does !== 'search') {
      finding.advance();
      return finding.stands;
    }
    if (run === undefined) {
      const { problem, seed: own, answers, brief, before: from } = finding.search;
      run = new StrandsRun(problem, own, { answers, brief }, { before: from, threads });
      finding.begins(run.strands);
    }
    if (!run.advance() || finding.isEnough) {
      const { causes, site } = run;
      void run.end();
      run = undefined;
      finding.found(causes, site);
    }
    return finding.stands;
  };
  return {
    advance,
    waits: () => run?.waits ?? false,
    end: async () => run?.end(),
    saved: () => finding.saved,
    solution: () => finding.told().solution(),
    set: () => finding.told().set(),
    chosen: () => finding.told().chosen(),
    choose: (strand) => finding.told().choose(strand),
    sets: () => finding.told().sets(),
    solutions: () => finding.told().solutions(),
    get causes() {
      return finding.told().causes;
    },
    nearest: () => finding.told().nearest(),
    nearestSet: () => finding.told().nearestSet(),
    starts: () => finding.told().starts(),
    byHand: (last) => finding.told().byHand(last),
    get holding() {
      return finding.told().holding;
    },
  };
}
