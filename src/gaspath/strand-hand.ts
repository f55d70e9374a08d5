/** Whoever holds strands of a search and works through their tasks: one in every thread. */
import { PrimariesRun, type SavedRun } from './primaries.ts';
import type { RouteProblem } from './route/problem.ts';
import { type Site, siteOf } from './route/site.ts';
import { seedOf } from './schedule.ts';
import type { Task, Told } from './strands.ts';

export class StrandHand {
  private readonly problem: RouteProblem;
  private readonly site: Site;
  private readonly seed: number;
  private readonly runs = new Map<number, PrimariesRun>();

  /** @param site  made ready before, where it was */
  constructor(problem: RouteProblem, seed: number, site: Site = siteOf(problem)) {
    this.problem = problem;
    this.seed = seed;
    this.site = site;
  }

  /** A few milliseconds of a task. @param saved  what the strand goes on from where it was not worked on here before */
  advance(task: Task, saved: SavedRun | undefined): Told {
    const { strand, until, at } = task;
    const run = this.runOf(strand, saved);
    const stands = run.advance();
    const { solution, nearest, work, starts } = run;
    const ends = stands === 'done' || work >= until || (at !== undefined && solution !== undefined);
    return {
      task,
      saved: run.saved,
      work,
      starts,
      ...(solution === undefined ? {} : { solution }),
      ...(nearest === undefined ? {} : { nearest }),
      bettered: stands === 'done',
      ...(ends ? {} : { goesOn: true }),
    };
  }

  private runOf(strand: number, saved: SavedRun | undefined): PrimariesRun {
    const known = this.runs.get(strand);
    if (known !== undefined) return known;
    const run = new PrimariesRun(this.problem, seedOf(this.seed, strand), { site: this.site, saved });
    this.runs.set(strand, run);
    return run;
  }
}
