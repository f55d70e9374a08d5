/** The threads beside the finder on the page: as many as the machine has for it, the finder's own among them. */
import type { OpenThread, Threads, Told, ToThread } from '../../questions/primaries.ts';

/** A search has no more strands than this. */
const MOST = 8;

const open: OpenThread = (begin, hear, fail) => {
  const worker = new Worker(new URL('./strand-thread.ts', import.meta.url), { type: 'module' });
  worker.onmessage = ({ data }: MessageEvent<Told>) => hear(data);
  worker.onerror = () => fail(new Error('A thread of the finder broke off.'));
  worker.postMessage(begin);
  return {
    send: (message: ToThread) => worker.postMessage(message),
    end: async () => worker.terminate(),
  };
};

export const THREADS: Threads = {
  count: Math.min(MOST, Math.max(1, navigator.hardwareConcurrency)),
  open,
};
