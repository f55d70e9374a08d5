/** How many threads are asked for; all that the machine has where none are. */
import { availableParallelism } from 'node:os';
import { askedCount } from '../asked.ts';

/** A search has no more strands than this. */
const MOST = 8;

export const THREADS_HELP =
  'threads that look, 1 to 8; the answer is the same with each (as many as the machine has)';

export const askedThreads = (given: string | undefined): number =>
  given === undefined
    ? Math.min(MOST, Math.max(1, availableParallelism()))
    : askedCount('--threads', given, 1, MOST);
