/**
 * A sheet that is being read now, kept in this browser until it is kept in the car file, so that a phone put down in
 * the pit lane has lost nothing.
 */
import { useCallback, useEffect, useState } from 'react';
import { DATE } from '../sheet/title-block.tsx';
import type { Run } from './run.ts';

const OWN_HAND = 'own hand';
const cupboard = (id: string): string => `flat floor ${id}`;

const EMPTY = { typed: {}, held: {}, passes: 0, told: {}, at: 0 } as const;

function keptBefore(id: string): Run | undefined {
  try {
    const kept = JSON.parse(localStorage.getItem(cupboard(id)) ?? 'null') as Run | null;
    if (kept === null) return undefined;
    // begun before holds were kept with their answers: they are asked again
    return Array.isArray(kept.held) ? { ...EMPTY, ...kept, held: {}, at: 0 } : kept;
  } catch {
    // what cannot be read is begun anew
    return undefined;
  }
}

export interface Running {
  readonly run: Run | undefined;
  readonly begin: (state: Run['state']) => void;
  readonly change: (to: Partial<Run> | ((run: Run) => Partial<Run>)) => void;
  readonly drop: () => void;
}

export function useRun(id: string): Running {
  const [run, setRun] = useState(() => keptBefore(id));
  useEffect(() => {
    try {
      if (run === undefined) localStorage.removeItem(cupboard(id));
      else {
        localStorage.setItem(cupboard(id), JSON.stringify(run));
        if (run.by !== '') localStorage.setItem(OWN_HAND, run.by);
      }
    } catch {
      // a browser that keeps nothing still reads
    }
  }, [id, run]);
  const begin = useCallback(
    (state: Run['state']) =>
      setRun({
        ...EMPTY,
        state,
        on: DATE.format(new Date()),
        by: localStorage.getItem(OWN_HAND) ?? '',
      }),
    [],
  );
  const change = useCallback<Running['change']>(
    (to) =>
      setRun((was) => (was === undefined ? was : { ...was, ...(typeof to === 'function' ? to(was) : to) })),
    [],
  );
  const drop = useCallback(() => setRun(undefined), []);
  return { run, begin, change, drop };
}
