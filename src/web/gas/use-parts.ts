/**
 * The finder of several parts: opened with the car and its scans, set going, held, and taken up again.
 *
 * What it has reached is kept in this browser, under the car, the banks and the state of the file.
 */
import { useEffect, useRef, useState } from 'react';
import { type Banks, type PrimariesScene, type SavedParts, scanForms } from '../../questions/index.ts';
import { fetchScan } from '../client.ts';
import { useCar } from '../sheet/car-file.tsx';
import { keep, keptBefore } from './kept.ts';
import type { AnsweredParts, PartsProgress, PartTold, ToldParts, WantedParts } from './parts-protocol.ts';

export interface PartsFinding {
  readonly scene?: PrimariesScene;
  /** As they are asked for, none with a set. */
  readonly parts: readonly PartTold[];
  readonly notes: readonly string[];
  readonly refused: readonly string[];
  readonly causes: readonly string[];
  readonly progress?: PartsProgress;
  readonly going: boolean;
  readonly find: () => void;
  readonly stop: () => void;
  /** From other starting places. */
  readonly anew: () => void;
  /** The bank whose image the other is to be. */
  readonly mirror: WantedParts['mirror'];
  readonly onMirror: (mirror: WantedParts['mirror']) => void;
  /** That was changed since the sets were found. */
  readonly mirrorChanged: boolean;
}

interface Kept {
  readonly of: string;
  readonly seed: number;
  readonly mirror?: WantedParts['mirror'];
  readonly saved: SavedParts;
}

type State = Pick<PartsFinding, 'scene' | 'parts' | 'notes' | 'refused' | 'causes' | 'progress' | 'going'>;

const NOTHING: State = { parts: [], notes: [], refused: [], causes: [], going: false };

const cupboard = (id: string, banks: Banks): string => `exhaust ${id} ${banks}`;

export function useParts(banks: Banks): PartsFinding {
  const { id, car, file, source } = useCar();
  const of = `${file.version} ${car.spec}`;
  const worker = useRef<Worker>(undefined);
  const seed = useRef(1);
  /** Of which the sets that stand were found. */
  const found = useRef<WantedParts['mirror']>(undefined);
  const [mirror, setMirror] = useState<WantedParts['mirror']>();
  const [state, setState] = useState<State>(NOTHING);

  useEffect(() => {
    let wanted = true;
    setState(NOTHING);
    const made = new Worker(new URL('./parts-finder.ts', import.meta.url), { type: 'module' });
    worker.current = made;
    made.onmessage = ({ data }: MessageEvent<AnsweredParts>) => {
      if (!wanted) return;
      if (data.kind === 'progress') {
        const kept: Kept = { of, seed: seed.current, mirror: found.current, saved: data.saved };
        keep(cupboard(id, banks), kept);
      }
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
    const kept = keptBefore<Kept>(cupboard(id, banks), of);
    seed.current = kept?.seed ?? 1;
    found.current = kept?.mirror;
    setMirror(kept?.mirror);
    const open = async (): Promise<void> => {
      const scans: Record<string, Uint8Array> = {};
      for (const [name, form] of Object.entries(scanForms(car))) scans[name] = await fetchScan(id, form.file);
      if (!wanted) return;
      const told: ToldParts = {
        kind: 'open',
        source,
        banks,
        scans,
        ...asked(seed.current, kept?.mirror, kept?.saved),
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
  }, [id, banks, of, car, source]);

  const tell = (told: ToldParts): void => worker.current?.postMessage(told);
  const mirrorChanged = state.progress !== undefined && found.current !== mirror;
  const begin = (saved: SavedParts | undefined): void => {
    found.current = mirror;
    setState(({ progress, ...before }) => ({
      ...before,
      causes: [],
      going: true,
      ...(saved === undefined || progress === undefined ? {} : { progress }),
    }));
    tell({ kind: 'find', ...asked(seed.current, mirror, saved) });
  };
  return {
    ...state,
    find: () => begin(mirrorChanged ? undefined : state.progress?.saved),
    stop: () => tell({ kind: 'hold' }),
    anew: () => {
      seed.current += 1;
      begin(undefined);
    },
    mirror,
    onMirror: setMirror,
    mirrorChanged,
  };
}

const asked = (seed: number, mirror: WantedParts['mirror'], saved: SavedParts | undefined): WantedParts => ({
  seed,
  ...(mirror === undefined ? {} : { mirror }),
  ...(saved === undefined ? {} : { saved }),
});

function answered(before: State, data: AnsweredParts): State {
  switch (data.kind) {
    case 'opened':
      return { ...before, scene: data.scene, parts: data.parts, notes: data.notes };
    case 'refused':
      return { ...before, going: false, refused: data.messages };
    case 'impossible':
      return { ...before, going: false, causes: data.causes };
    case 'progress':
      return { ...before, progress: data, going: data.stands === 'searching' };
  }
}
