/**
 * A search in several strands, a piece at a time, so that whoever has a clock can stop it: on this thread and, where
 * others are opened, on those beside it.
 *
 * Each thread holds its own strands for good, so that only tasks and reports pass between them. The answers are the
 * same whatever the number of threads; only the clock, where it ends the search, makes a difference.  [RT-20]
 */
import { type Cause, impossible } from './route/impossible.ts';
import type { RouteProblem } from './route/problem.ts';
import { type Site, siteOf } from './route/site.ts';
import { Beside, type Threads } from './strand-beside.ts';
import { StrandHand } from './strand-hand.ts';
import { type StrandStands, Strands, type StrandsAsked, type Task } from './strands.ts';

export interface RunBeside {
  /** What a run of the same problem and seed had come to. */
  readonly before?: readonly StrandStands[] | undefined;
  /** The problem made ready, where it was. */
  readonly site?: Site;
  /** This thread alone, where none are told. */
  readonly threads?: Threads | undefined;
}

export class StrandsRun {
  readonly strands: Strands;
  readonly site: Site;
  /** Why it cannot be; then nothing is searched. */
  readonly causes: readonly Cause[];
  /** This thread has nothing to do until another has told. */
  waits = false;
  private readonly hand: StrandHand;
  private readonly count: number;
  private readonly others: readonly Beside[];
  private task: Task | undefined;

  constructor(
    problem: RouteProblem,
    seed: number,
    asked: StrandsAsked,
    { before, site = siteOf(problem), threads }: RunBeside = {},
  ) {
    this.site = site;
    this.causes = before === undefined ? impossible(site) : [];
    this.strands = new Strands(asked, before);
    this.hand = new StrandHand(problem, seed, site);
    this.count = threads?.count ?? 1;
    this.others = Array.from(
      { length: this.count - 1 },
      (_, k) =>
        new Beside(this.strands, { problem, seed }, threads!.open, (strand) => strand % this.count === k + 1),
    );
  }

  /** Some milliseconds of work; false when nothing is left to do. @throws what broke another thread off */
  advance(): boolean {
    const { strands } = this;
    if (this.causes.length > 0 || strands.done || strands.isOver) return false;
    for (const other of this.others) other.work();
    this.task ??= strands.take((strand) => strand % this.count === 0);
    this.waits = this.task === undefined;
    if (this.task === undefined) return this.others.length > 0;
    const told = this.hand.advance(this.task, strands.savedOf(this.task.strand));
    strands.hear(told);
    if (told.goesOn !== true) this.task = undefined;
    return true;
  }

  /** Ends the other threads; what they told last stands. */
  async end(): Promise<void> {
    await Promise.all(this.others.map((other) => other.end()));
  }
}
