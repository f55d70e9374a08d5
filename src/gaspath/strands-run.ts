/** A search in several strands on one thread: a piece at a time, so that whoever has a clock can stop it. */
import { type Cause, impossible } from './route/impossible.ts';
import type { RouteProblem } from './route/problem.ts';
import { type Site, siteOf } from './route/site.ts';
import { StrandHand } from './strand-hand.ts';
import { type StrandStands, Strands, type StrandsAsked, type Task } from './strands.ts';

export class StrandsRun {
  readonly strands: Strands;
  /** Why it cannot be; then nothing is searched. */
  readonly causes: readonly Cause[];
  private readonly hand: StrandHand;
  private task: Task | undefined;

  constructor(
    problem: RouteProblem,
    seed: number,
    asked: StrandsAsked,
    before?: readonly StrandStands[],
    site: Site = siteOf(problem),
  ) {
    this.causes = before === undefined ? impossible(site) : [];
    this.strands = new Strands(asked, before);
    this.hand = new StrandHand(problem, seed, site);
  }

  /** Some milliseconds of work; false when nothing is left to do. */
  advance(): boolean {
    if (this.causes.length > 0) return false;
    this.task ??= this.strands.take(() => true);
    if (this.task === undefined) return false;
    const told = this.hand.advance(this.task, this.strands.savedOf(this.task.strand));
    this.strands.hear(told);
    if (told.goesOn !== true) this.task = undefined;
    return true;
  }
}
