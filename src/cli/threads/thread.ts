/** One thread of a search: works through the tasks that it is handed, and tells how far it has come. */
import { parentPort, workerData } from 'node:worker_threads';
import { StrandHand } from '../../questions/primaries.ts';
import type { Begin, FromThread, ToThread } from './protocol.ts';

/** Time between two reports within a task, ms. */
const TELL_EVERY = 500;

const { problem, seed } = workerData as Begin;
const hand = new StrandHand(problem, seed);

parentPort!.on('message', ({ task, saved }: ToThread) => {
  let told: FromThread;
  let last = performance.now();
  do {
    told = hand.advance(task, saved);
    if (told.goesOn === true && performance.now() - last > TELL_EVERY) {
      last = performance.now();
      parentPort!.postMessage(told);
    }
  } while (told.goesOn === true);
  parentPort!.postMessage(told);
});
