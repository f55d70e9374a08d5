/** One thread of a search: works through the tasks that it is handed, and tells how far it has come. */
import { parentPort, workerData } from 'node:worker_threads';
import { type Begin, worksThrough } from '../../questions/primaries.ts';

const port = parentPort!;
port.on(
  'message',
  worksThrough(
    workerData as Begin,
    (told) => port.postMessage(told),
    () => performance.now(),
  ),
);
