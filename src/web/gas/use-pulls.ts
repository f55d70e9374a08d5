/** What a hand does, sent as fast as it is answered: of pulls that come while one is worked on the latest alone. */
import { useCallback, useRef } from 'react';
import type { HandDoes } from './protocol.ts';

export interface Pulls {
  readonly does: (what: HandDoes) => void;
  /** A pull was answered. */
  readonly answered: () => void;
  /** Nothing is waited for any more. */
  readonly forget: () => void;
}

export function usePulls(send: (what: HandDoes) => void): Pulls {
  const pulls = useRef<{ waiting: boolean; next?: HandDoes | undefined }>({ waiting: false });
  const does = useCallback(
    (what: HandDoes): void => {
      const { waiting, next } = pulls.current;
      if (what.do === 'pull' && waiting) {
        pulls.current = { waiting, next: what };
        return;
      }
      // what was pulled last comes before whatever follows on it
      if (what.do !== 'pull' && next !== undefined) send(next);
      pulls.current = { waiting: what.do === 'pull' || next !== undefined };
      send(what);
    },
    [send],
  );
  const answered = useCallback((): void => {
    const { next } = pulls.current;
    pulls.current = { waiting: next !== undefined };
    if (next !== undefined) send(next);
  }, [send]);
  const forget = useCallback((): void => {
    pulls.current = { waiting: false };
  }, []);
  return { does, answered, forget };
}
