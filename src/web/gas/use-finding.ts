/**
 * The finder of the chosen bank: opened with the car and its scans, set going, held, and taken up again.
 *
 * What it has reached is kept in this browser every time it tells, under the car, the bank and the state of the file:
 * a page that was closed goes on from there.
 */
import { useCallback, useEffect, useRef, useState } from 'react';
import { type PrimariesScene, scanForms } from '../../questions/index.ts';
import { fetchScan } from '../client.ts';
import { useCar } from '../sheet/car-file.tsx';
import { usePage } from '../state.tsx';
import type { Answered, Progress, Told } from './protocol.ts';

export interface Finding {
  readonly scene?: PrimariesScene;
  readonly notes: readonly string[];
  /** Why nothing can be found; empty where nothing is amiss. */
  readonly refused: readonly string[];
  readonly causes: readonly string[];
  readonly progress?: Progress;
  readonly going: boolean;
  /** Begins, or goes on from where it was held. */
  readonly find: () => void;
  readonly hold: () => void;
  /** Begins anew from other starting places. */
  readonly another: () => void;
}

interface Kept {
  readonly of: string;
  readonly seed: number;
  readonly saved: Progress['saved'];
}

const cupboard = (id: string, bank: string): string => `primaries ${id} ${bank}`;

function keptBefore(id: string, bank: string, of: string): Kept | undefined {
  try {
    const kept = JSON.parse(localStorage.getItem(cupboard(id, bank)) ?? 'null') as Kept | null;
    return kept?.of === of ? kept : undefined;
  } catch {
    // nothing kept that can be read: begun anew
    return undefined;
  }
}

function keep(id: string, bank: string, kept: Kept): void {
  try {
    localStorage.setItem(cupboard(id, bank), JSON.stringify(kept));
  } catch {
    // a browser that keeps nothing still finds
  }
}

type State = Omit<Finding, 'find' | 'hold' | 'another'>;
const NOTHING: State = { notes: [], refused: [], causes: [], going: false };

export function useFinding(): Finding {
  const { place } = usePage();
  const { id, car, file, source } = useCar();
  const { bank } = place;
  const of = `${file.version} ${car.spec}`;
  const worker = useRef<Worker>(undefined);
  const seed = useRef(1);
  const [state, setState] = useState<State>(NOTHING);

  useEffect(() => {
    let wanted = true;
    setState(NOTHING);
    const made = new Worker(new URL('./finder.ts', import.meta.url), { type: 'module' });
    worker.current = made;
    made.onmessage = ({ data }: MessageEvent<Answered>) => {
      if (!wanted) return;
      if (data.kind === 'progress') keep(id, bank, { of, seed: seed.current, saved: data.saved });
      setState((before) => answered(before, data));
    };
    made.onerror = () => {
      if (wanted)
        setState((before) => ({
          ...before,
          going: false,
          refused: ['The finding broke off. Open the page again.'],
        }));
    };
    const kept = keptBefore(id, bank, of);
    seed.current = kept?.seed ?? 1;
    const open = async (): Promise<void> => {
      const scans: Record<string, Uint8Array> = {};
      for (const [name, form] of Object.entries(scanForms(car))) scans[name] = await fetchScan(id, form.file);
      if (!wanted) return;
      const told: Told = {
        kind: 'open',
        source,
        side: bank,
        scans,
        seed: seed.current,
        ...(kept === undefined ? {} : { saved: kept.saved }),
      };
      made.postMessage(told);
    };
    open().catch((reason: Error) => {
      if (wanted) setState((before) => ({ ...before, refused: [reason.message] }));
    });
    return () => {
      wanted = false;
      made.terminate();
    };
  }, [id, bank, of, car, source]);

  const tell = useCallback((told: Told) => worker.current?.postMessage(told), []);
  const find = (): void => {
    setState((before) => ({ ...before, going: true }));
    const saved = state.progress?.saved;
    tell({ kind: 'find', seed: seed.current, ...(saved === undefined ? {} : { saved }) });
  };
  const another = (): void => {
    seed.current += 1;
    setState(({ progress: _, ...before }) => ({ ...before, going: true, causes: [] }));
    tell({ kind: 'find', seed: seed.current });
  };
  return { ...state, find, hold: () => tell({ kind: 'hold' }), another };
}

function answered(before: State, data: Answered): State {
  switch (data.kind) {
    case 'opened':
      return { ...before, scene: data.scene, notes: data.notes };
    case 'refused':
      return { ...before, going: false, refused: data.messages };
    case 'impossible':
      return { ...before, going: false, causes: data.causes };
    case 'progress':
      return {
        ...before,
        progress: data,
        going: data.stands === 'searching' || data.stands === 'improving',
      };
  }
}
