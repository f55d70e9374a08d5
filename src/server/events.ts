/** Tells every open page when a car file changed on the disk (server-sent events, HTML standard 9.2). */
import type { Handler } from 'hono';
import { streamSSE } from 'hono/streaming';
import type { CarChanged } from '../workshop/watch.ts';

/** A line now and then, so that a connection that died is noticed. */
const BREATH_MS = 20_000;

export class Listeners {
  readonly #all = new Set<(change: CarChanged) => void>();
  readonly #ends = new Set<() => void>();

  tell(change: CarChanged): void {
    for (const listener of this.#all) listener(change);
  }

  /** Lets every page's connection end. */
  close(): void {
    for (const end of this.#ends) end();
  }

  readonly handler: Handler = (context) =>
    streamSSE(context, async (stream) => {
      const listener = (change: CarChanged): void => {
        void stream.writeSSE({ data: JSON.stringify(change) }).catch(() => undefined);
      };
      this.#all.add(listener);
      const breath = setInterval(() => void stream.write(': \n\n').catch(() => undefined), BREATH_MS);
      await stream.write(': \n\n');
      let end = (): void => undefined;
      const ended = new Promise<void>((resolve) => {
        end = resolve;
      });
      this.#ends.add(end);
      stream.onAbort(end);
      await ended;
      this.#ends.delete(end);
      this.#all.delete(listener);
      clearInterval(breath);
    });
}
