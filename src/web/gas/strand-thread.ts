/** One thread of the finder on the page: begun with the problem, then handed its tasks. */
import { type Begin, type Told, type ToThread, worksThrough } from '../../questions/primaries.ts';

const scope = globalThis as unknown as {
  onmessage: (event: MessageEvent<Begin | ToThread>) => void;
  postMessage: (told: Told) => void;
};

let work: ReturnType<typeof worksThrough> | undefined;

scope.onmessage = ({ data }) => {
  if ('task' in data) work?.(data);
  else
    work = worksThrough(
      data,
      (told) => scope.postMessage(told),
      () => performance.now(),
    );
};
