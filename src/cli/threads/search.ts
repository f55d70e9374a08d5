/**
 * A search in strands in this thread and, where more are asked for, in others beside it.
 *
 * Each thread holds its own strands for good, so that only tasks and reports pass between them. The answers are the
 * same whatever the number of threads; only the clock, where it ends the search, makes a difference.
 */
import { existsSync } from 'node:fs';
import { Worker } from 'node:worker_threads';
import {
  type Cause,
  impossible,
  type RouteProblem,
  type Site,
  StrandHand,
  type StrandStands,
  Strands,
  type StrandsAsked,
  siteOf,
  type Task,
} from '../../questions/primaries.ts';
import type { Begin, FromThread, ToThread } from './protocol.ts';

export interface SearchAsked extends StrandsAsked {
  readonly problem: RouteProblem;
  readonly seed: number;
  readonly threads: number;
  readonly before?: readonly StrandStands[] | undefined;
  /** Asked often; the search ends when it says so. */
  readonly enough: (strands: Strands) => boolean;
}

export interface Searched {
  readonly strands: Strands;
  readonly causes: readonly Cause[];
  /** The problem made ready. */
  readonly site: Site;
}

export async function searched(asked: SearchAsked): Promise<Searched> {
  const { problem, seed, before, enough, threads } = asked;
  const site = siteOf(problem);
  const causes = before === undefined ? impossible(site) : [];
  const strands = new Strands(asked, before);
  if (causes.length > 0) return { strands, causes, site };
  const hand = new StrandHand(problem, seed, site);
  const others = Array.from({ length: threads - 1 }, () => new Other(strands, { problem, seed }));
  let task: Task | undefined;
  try {
    while (!strands.done && !enough(strands)) {
      others.forEach((other, k) => {
        other.work((strand) => strand % threads === k + 1);
      });
      task ??= strands.take((strand) => strand % threads === 0);
      if (task === undefined) await new Promise((resolve) => setTimeout(resolve, LOOK));
      else {
        const told = hand.advance(task, strands.savedOf(task.strand));
        strands.hear(told);
        if (told.goesOn !== true) task = undefined;
        // lets the other threads, and a key that was pressed, be heard
        await new Promise((resolve) => setImmediate(resolve));
      }
    }
    return { strands, causes, site };
  } finally {
    await Promise.all(others.map((other) => other.end()));
  }
}

/** While this thread has nothing to do, ms. */
const LOOK = 10;

/** A thread beside this one; it is begun when there is work for it. */
class Other {
  private readonly strands: Strands;
  private readonly begin: Begin;
  private worker: Worker | undefined;
  private busy = false;
  private failed: Error | undefined;

  constructor(strands: Strands, begin: Begin) {
    this.strands = strands;
    this.begin = begin;
  }

  /** Hands it the next task of the strands that it holds, where it has none. @throws what broke it off */
  work(holds: (strand: number) => boolean): void {
    if (this.failed !== undefined) throw this.failed;
    if (this.busy) return;
    const task = this.strands.take(holds);
    if (task === undefined) return;
    this.busy = true;
    const message: ToThread = { task, saved: this.strands.savedOf(task.strand) };
    this.worker ??= this.begun();
    this.worker.postMessage(message);
  }

  async end(): Promise<void> {
    await this.worker?.terminate();
  }

  private begun(): Worker {
    const worker = new Worker(THREAD, { workerData: this.begin });
    worker.on('message', (told: FromThread) => {
      this.strands.hear(told);
      if (told.goesOn !== true) this.busy = false;
    });
    worker.on('error', (reason: Error) => {
      this.failed = reason;
    });
    return worker;
  }
}

/** Beside the command line where it is built, beside this file where it runs from its sources. */
const THREAD = [
  new URL('../thread.mjs', import.meta.url),
  new URL('./thread.mjs', import.meta.url),
  new URL('./thread.ts', import.meta.url),
].find((each) => existsSync(each))!;
