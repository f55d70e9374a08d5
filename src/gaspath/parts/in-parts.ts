/**
 * Several parts of an exhaust found so that they stay clear of each other.
 *
 * Each part that begins at the head is first found alone. Where the sets so found are clear of each other that is the
 * answer. Where they are not, one part after another is laid among those that are laid already. A part that cannot be
 * laid in its work takes out one that is in its way, goes first, and that one is laid anew after it, from another draw;
 * so the parts take turns in going first, with more work for each, a bounded number of times.  [RT-23]
 *
 * Work is counted in evaluations, so that the same seed gives the same sets on one thread and on many; it goes on from what was saved. That no
 * set was found is no proof that there is none.
 */
import type { Cause } from '../route/impossible.ts';
import type { RouteProblem, RouteSolution } from '../route/problem.ts';
import type { Miss } from '../route/search.ts';
import { type Site, siteOf } from '../route/site.ts';
import { seedOf } from '../schedule.ts';
import type { Threads } from '../strand-beside.ts';
import type { StrandStands } from '../strands.ts';
import { StrandsRun } from '../strands-run.ts';
import { betweenParts } from '../verify/between.ts';
import { amongOthers } from './beside.ts';
import { ownProblem, type Part, portFrom } from './part.ts';

/** What was done with a part so far. */
interface Tried {
  /** Its set when it stands alone; undefined while there is none, and where it begins at another part. */
  readonly alone?: RouteSolution;
  /** Evaluations until that set stood. */
  readonly aloneWork?: number;
  /** That set was laid among others once. */
  readonly aloneLaid: boolean;
  /** Draws among others, and how often it was taken out. */
  readonly draws: number;
  readonly out: number;
}

/** Plain data, from which a search goes on. */
export interface SavedParts {
  readonly tried: readonly Tried[];
  readonly laid: readonly { readonly part: number; readonly solution: RouteSolution }[];
  /** Parts still to be laid, the next first. */
  readonly toLay: readonly number[];
  readonly failed: number;
  /** Of the part that is looked for now. */
  readonly strands?: readonly StrandStands[];
  /** Evaluations of all that was looked for before. */
  readonly workBefore: number;
  readonly miss?: PartMiss;
}

/** Where the search came no further: the part that was to be laid, among which, and what came nearest. */
export interface PartMiss {
  readonly part: number;
  readonly among: readonly number[];
  readonly nearest?: Miss;
}

export type PartsStand = 'impossible' | 'searching' | 'stuck' | 'done';

/** Evaluations with which an answer is bettered. */
const BETTER = 6000;
/** Evaluations before a part among others is given up, where it did not take more of them alone; more after each round of failures. */
const PATIENCE = 3000;
/** Failures for each part after which the search is given up. */
const MOST_FAILED = 60;

const UNTRIED: Tried = { aloneLaid: false, draws: 0, out: 0 };

export class InParts {
  readonly parts: readonly Part[];
  /** Why a part cannot be, alone. */
  causes: { readonly part: number; readonly causes: readonly Cause[] } | undefined;
  private readonly seed: number;
  private readonly tried: Tried[];
  private laid: SavedParts['laid'];
  private toLay: readonly number[];
  private failed: number;
  private workBefore: number;
  private miss: PartMiss | undefined;
  private run: { readonly of: StrandsRun; readonly part: number; readonly alone: boolean } | undefined;
  private before: readonly StrandStands[] | undefined;
  private readonly threads: Threads | undefined;
  /** Once all stand nothing moves any more. */
  private all: readonly RouteSolution[] | undefined;
  /** Of each part, made ready once: the bodywork about it stays what it is. */
  private readonly sites: (Site | undefined)[] = [];

  /** @param threads  this one alone, where none are told */
  constructor(parts: readonly Part[], seed: number, saved?: SavedParts, threads?: Threads) {
    this.parts = parts;
    this.threads = threads;
    this.seed = seed;
    this.tried = parts.map((_, k) => saved?.tried[k] ?? UNTRIED);
    this.laid = saved?.laid ?? [];
    this.toLay = saved?.toLay ?? parts.map((_, k) => k);
    this.failed = saved?.failed ?? 0;
    this.workBefore = saved?.workBefore ?? 0;
    this.miss = saved?.miss;
    this.before = saved?.strands;
  }

  get saved(): SavedParts {
    return {
      tried: [...this.tried],
      laid: this.laid,
      toLay: this.toLay,
      failed: this.failed,
      ...(this.run === undefined ? {} : { strands: this.run.of.strands.saved }),
      workBefore: this.workBefore,
      ...(this.miss === undefined ? {} : { miss: this.miss }),
    };
  }

  get stands(): PartsStand {
    if (this.causes !== undefined) return 'impossible';
    if (this.toLay.length === 0) return 'done';
    return this.failed >= MOST_FAILED * this.parts.length ? 'stuck' : 'searching';
  }

  /** A set of each part, when all stand and are clear of each other; in the order of the parts. */
  get solutions(): readonly RouteSolution[] | undefined {
    if (this.toLay.length > 0) return undefined;
    this.all ??= this.parts.map((_, k) => this.setOf(k)!);
    return this.all;
  }

  /** What is looked for now. */
  get now(): PartMiss | undefined {
    if (this.run === undefined) return undefined;
    const { part, alone, of } = this.run;
    const { nearest } = of.strands;
    return {
      part,
      among: alone ? [] : this.laid.map((each) => each.part),
      ...(nearest === undefined ? {} : { nearest }),
    };
  }

  /** Where it came no further: of the part that is looked for now, else the last that was given up. */
  get missed(): PartMiss | undefined {
    const { now } = this;
    return now?.nearest === undefined ? (this.miss ?? now) : now;
  }

  get work(): number {
    return this.workBefore + (this.run?.of.strands.work ?? 0);
  }

  /** Nothing is to be done here until another thread has told. */
  get waits(): boolean {
    return this.run?.of.waits ?? false;
  }

  /** Ends the threads beside this one. */
  async end(): Promise<void> {
    await this.run?.of.end();
  }

  /** A piece of work, some milliseconds; false when nothing is left to do. */
  advance(): boolean {
    if (this.stands !== 'searching') return false;
    if (this.run === undefined) this.begin();
    if (this.run !== undefined) this.go(this.run);
    return this.stands === 'searching';
  }

  private setOf(part: number): RouteSolution | undefined {
    return this.laid.find((each) => each.part === part)?.solution;
  }

  /** The part's problem among those that are laid; undefined while one at which it begins is not. */
  among(part: number): RouteProblem | undefined {
    const own = ownProblem(this.parts, part, (k) => this.setOf(k));
    return own === undefined ? undefined : amongOthers(this.parts, part, own, (k) => this.setOf(k));
  }

  private begin(): void {
    const lacks = this.parts.findIndex(
      ({ from }, k) => from === undefined && this.tried[k]!.alone === undefined,
    );
    if (lacks >= 0) {
      this.start(lacks, this.parts[lacks]!.problem, this.seed, true);
      return;
    }
    const part = this.toLay.find((k) => (this.parts[k]!.from ?? []).every((at) => this.setOf(at)))!;
    const { alone, aloneLaid, draws } = this.tried[part]!;
    if (alone !== undefined && !aloneLaid && this.clashes(part, alone).length === 0) {
      this.tried[part] = { ...this.tried[part]!, aloneLaid: true };
      this.lay(part, alone);
      return;
    }
    this.start(part, this.among(part)!, seedOf(this.seed, 16 + draws), false);
  }

  private start(part: number, problem: RouteProblem, seed: number, alone: boolean): void {
    const site = siteOf(problem, this.sites[part]);
    this.sites[part] ??= site;
    const patience =
      Math.max(PATIENCE, this.tried[part]!.aloneWork ?? 0) *
      (1 + Math.floor(this.failed / this.parts.length) / 3);
    const asked = { answers: 1, brief: false, better: BETTER, ...(alone ? {} : { most: patience }) };
    const of = new StrandsRun(problem, seed, asked, { before: this.before, site, threads: this.threads });
    this.before = undefined;
    if (of.causes.length === 0) this.run = { of, part, alone };
    else if (alone) this.causes = { part, causes: of.causes };
    else this.fail(part);
  }

  private go({ of, part, alone }: NonNullable<InParts['run']>): void {
    of.advance();
    const { strands } = of;
    if (strands.isOver) this.fail(part);
    if (!strands.done) return;
    const [answer] = strands.answers;
    const { solution } = answer!;
    if (alone) {
      const { work = 0, foundWith = 0 } = strands.saved[answer!.strand] ?? {};
      const aloneWork = strands.work - (work - foundWith);
      this.tried[part] = { ...this.tried[part]!, alone: solution, aloneWork };
    } else if (this.clashes(part, solution).length > 0) {
      this.fail(part);
      return;
    } else this.lay(part, solution);
    this.close();
  }

  private close(): void {
    this.workBefore += this.run?.of.strands.work ?? 0;
    void this.run?.of.end();
    this.run = undefined;
  }

  private lay(part: number, solution: RouteSolution): void {
    this.laid = [...this.laid, { part, solution }];
    this.toLay = this.toLay.filter((each) => each !== part);
  }

  /** Parts that a set would come too near, by the exact measure: laid ones, and collectors fixed and still to come. */
  private clashes(part: number, solution: RouteSolution): readonly number[] {
    const others = this.laid.filter((each) => each.part !== part);
    const fixed = this.parts.flatMap(({ problem: { collector } }, k) =>
      collector.mode === 'fixed' && k !== part && !others.some((each) => each.part === k)
        ? [{ part: k, solution: { collector, pipes: [] } }]
        : [],
    );
    const all = [{ part, solution }, ...others, ...fixed];
    const setOf = (k: number) => all.find((each) => each.part === k)?.solution;
    const near = betweenParts(
      all.map((each) => ({
        problem: ownProblem(this.parts, each.part, setOf) ?? this.parts[each.part]!.problem,
        solution: each.solution,
        leaves: (other) => portFrom(this.parts, each.part, all[other]!.part),
      })),
    );
    // each of the two may be told first
    const met = near.flatMap(({ part: one, other }) => (one === 0 ? [other] : other === 0 ? [one] : []));
    return [...new Set(met.map((each) => all[each]!.part))];
  }

  /** The part cannot be laid as the others lie: one that is in its way is taken out, and comes after it. */
  private fail(part: number): void {
    const nearest = this.run?.of.strands.nearest;
    this.miss = {
      part,
      among: this.laid.map((each) => each.part),
      ...(nearest === undefined ? {} : { nearest }),
    };
    this.close();
    this.failed += 1;
    const own = this.tried[part]!;
    this.tried[part] = { ...own, draws: own.draws + 1 };
    const laid = this.laid.map((each) => each.part);
    const near = own.alone === undefined ? (this.parts[part]!.from ?? []) : this.clashes(part, own.alone);
    const blamed = laid.filter((each) => near.includes(each));
    // the one that was taken out least often, of those the last
    const out = (blamed.length > 0 ? blamed : laid).reduceRight<number | undefined>(
      (best, each) => (best === undefined || this.tried[each]!.out < this.tried[best]!.out ? each : best),
      undefined,
    );
    if (out === undefined) return;
    const gone = [out, ...this.behind(out)].filter((each) => laid.includes(each));
    for (const each of gone) {
      const was = this.tried[each]!;
      this.tried[each] = { ...was, draws: was.draws + 1, out: was.out + 1 };
    }
    this.laid = this.laid.filter((each) => !gone.includes(each.part));
    // what begins at the part that was taken out waits for it of itself
    this.toLay = [part, ...gone, ...this.toLay.filter((each) => each !== part)];
  }

  /** Parts that begin at another's collector. */
  private behind(part: number): readonly number[] {
    return this.parts.flatMap(({ from }, k) => (from?.includes(part) === true ? [k] : []));
  }
}
