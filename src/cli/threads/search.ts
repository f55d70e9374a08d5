/** A search in strands in this thread and, where more are asked for, in others of this machine beside it. */
import { existsSync } from 'node:fs';
import { Worker } from 'node:worker_threads';
import {
  type Cause,
  type OpenThread,
  type RouteProblem,
  type Site,
  type StrandStands,
  type Strands,
  type StrandsAsked,
  StrandsRun,
  type Told,
  type ToThread,
} from '../../questions/primaries.ts';

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
  const run = new StrandsRun(problem, seed, asked, { before, threads: { count: threads, open: openThread } });
  try {
    while (!enough(run.strands) && run.advance()) {
      // lets the other threads, and a key that was pressed, be heard
      await new Promise((resolve) => (run.waits ? setTimeout(resolve, LOOK) : setImmediate(resolve)));
    }
    return run;
  } finally {
    await run.end();
  }
}

/** While this thread has nothing to do, ms. */
const LOOK = 10;

export const openThread: OpenThread = (begin, hear, fail) => {
  const worker = new Worker(THREAD, { workerData: begin });
  worker.on('message', (told: Told) => hear(told));
  worker.on('error', fail);
  return {
    send: (message: ToThread) => worker.postMessage(message),
    end: async () => {
      await worker.terminate();
    },
  };
};

/** Beside the command line where it is built, beside this file where it runs from its sources. */
const THREAD = [
  new URL('../thread.mjs', import.meta.url),
  new URL('./thread.mjs', import.meta.url),
  new URL('./thread.ts', import.meta.url),
].find((each) => existsSync(each))!;
