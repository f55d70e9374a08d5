/**
 * A sheet that is being read now: what was typed so far and which step is next, kept in this browser until it is kept
 * in the car file, so that a phone put down in the pit lane has lost nothing.
 */
import { useCallback, useEffect, useState } from 'react';
import type { FloorSheetRead } from '../../questions/index.ts';
import { readWithSpread } from '../../units/read.ts';
import { DATE } from '../sheet/title-block.tsx';
import { kindOf, TYPED } from './words.ts';

export const STATES = ['as found', 'as set', 'after run'] as const;

export interface Run {
  readonly state: (typeof STATES)[number];
  readonly on: string;
  readonly by: string;
  /** As typed, with its unit, by the name of the reading. */
  readonly typed: Readonly<Record<string, string>>;
  /** What of it was worked from strings, plates or scales: it is so while it stands as it was put. */
  readonly worked?: Readonly<Record<string, { readonly from: string; readonly text: string }>>;
  /** Holds that were answered. */
  readonly held: readonly string[];
  /** Place among the steps. */
  readonly at: number;
}

const OWN_HAND = 'own hand';
const cupboard = (id: string): string => `flat floor ${id}`;

function keptBefore(id: string): Run | undefined {
  try {
    return (JSON.parse(localStorage.getItem(cupboard(id)) ?? 'null') as Run | null) ?? undefined;
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
        state,
        on: DATE.format(new Date()),
        by: localStorage.getItem(OWN_HAND) ?? '',
        typed: {},
        held: [],
        at: 0,
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

/** What was typed so far, as a sheet to look at. */
export const readSoFar = (run: Run): FloorSheetRead => ({
  name: run.state,
  state: run.state,
  on: run.on,
  by: run.by,
  bars: run.held.includes('bars') ? 'disconnected' : 'connected',
  readings: Object.entries(run.typed).flatMap(([id, text]) => {
    const amount = readWithSpread(text, TYPED[kindOf(id)]!.si);
    return amount.ok ? [{ id, value: amount.is.value, u: amount.is.u ?? 0 }] : [];
  }),
});

/** Where a reading was worked from, while it stands as it was put. */
export function workedFrom({ worked, typed }: Run, id: string): string | undefined {
  const found = worked?.[id];
  return found !== undefined && found.text === typed[id] ? found.from : undefined;
}

function withOrigin(run: Run, id: string, text: string): unknown {
  const from = workedFrom(run, id);
  return from === undefined ? text : { is: text, note: `worked from ${from}` };
}

/** The sheet as it goes into the car file. */
export function sheetForFile(run: Run): Record<string, unknown> {
  const readings: Record<string, Record<string, unknown>> = {};
  const pressure: Record<string, string> = {};
  for (const [id, text] of Object.entries(run.typed)) {
    const kind = id.slice(0, id.indexOf('.'));
    const of = id.slice(id.indexOf('.') + 1);
    if (kind === 'pressure') pressure[of] = text;
    else readings[kind] = { ...readings[kind], [of]: withOrigin(run, id, text) };
  }
  return {
    state: run.state,
    on: run.on,
    ...(run.by === '' ? {} : { by: run.by }),
    bars: run.held.includes('bars') ? 'disconnected' : 'connected',
    ...(Object.keys(pressure).length === 0 ? {} : { pressure }),
    readings,
  };
}
