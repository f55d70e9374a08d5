/**
 * The finder of several parts: opened with the car and its scans, set going, held, and taken up again.
 *
 * What it has reached is kept in this browser, under the car, the banks and the state of the file.
 */
import { useCallback, useEffect, useRef, useState } from 'react';
import type { Banks, PrimariesScene, SavedParts } from '../../questions/index.ts';
import { useCar } from '../sheet/car-file.tsx';
import { usePage } from '../state.tsx';
import { fetchScans } from './fetch-scans.ts';
import { keep, keptBefore } from './kept.ts';
import type {
  AnsweredParts,
  PartHandAnswer,
  PartsProgress,
  PartTold,
  ToldParts,
  WantedParts,
} from './parts-protocol.ts';
import type { EasedTold, HandDoes } from './protocol.ts';
import { usePulls } from './use-pulls.ts';

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
  /** What would let the part fit that does not; undefined while it was not asked. */
  readonly eased?: EasedTold | undefined;
  readonly ease: () => void;
  readonly stopEasing: () => void;
  /** What a hand has come to in the part of that title. */
  readonly hand?: PartHandAnswer | undefined;
  /** What a hand does to a part. */
  readonly does: (title: string, what: HandDoes) => void;
}

interface Kept {
  readonly of: string;
  readonly seed: number;
  readonly mirror?: WantedParts['mirror'];
  readonly saved: SavedParts;
  readonly moved?: WantedParts['moved'];
}

type State = Pick<
  PartsFinding,
  'scene' | 'parts' | 'notes' | 'refused' | 'causes' | 'progress' | 'going' | 'hand' | 'eased'
>;

const NOTHING: State = { parts: [], notes: [], refused: [], causes: [], going: false };

const cupboard = (id: string, banks: Banks): string => `exhaust ${id} ${banks}`;

export function useParts(banks: Banks): PartsFinding {
  const { id, car, file, source } = useCar();
  const { speech } = usePage();
  const of = `${file.version} ${car.spec}`;
  const worker = useRef<Worker>(undefined);
  const tell = useCallback((told: ToldParts) => worker.current?.postMessage(told), []);
  const title = useRef('');
  const {
    does,
    answered: pullAnswered,
    forget,
  } = usePulls(
    useCallback((what: HandDoes) => tell({ kind: 'hand', title: title.current, does: what }), [tell]),
  );
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
        const { saved, moved } = data;
        const kept: Kept = {
          of,
          seed: seed.current,
          mirror: found.current,
          saved,
          ...(moved === undefined ? {} : { moved }),
        };
        keep(cupboard(id, banks), kept);
      }
      if (data.kind === 'hand' && data.live) pullAnswered();
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
    forget();
    const open = async (): Promise<void> => {
      const scans = await fetchScans(id, car);
      if (!wanted) return;
      const told: ToldParts = {
        kind: 'open',
        source,
        banks,
        scans,
        ...asked(seed.current, kept?.mirror, kept?.saved),
        ...(kept?.moved === undefined ? {} : { moved: kept.moved }),
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
  }, [id, banks, of, car, source, pullAnswered, forget]);

  const mirrorChanged = state.progress !== undefined && found.current !== mirror;
  const begin = (saved: SavedParts | undefined): void => {
    found.current = mirror;
    setState(({ progress, hand: _, eased: __, ...before }) => ({
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
    ease: () => tell({ kind: 'ease', seed: seed.current, speech }),
    stopEasing: () => tell({ kind: 'hold' }),
    onMirror: setMirror,
    mirrorChanged,
    does: (of, what) => {
      // of another part: what was done to the one before is done
      if (of !== title.current) forget();
      title.current = of;
      does(what);
    },
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
    case 'hand': {
      const file = data.file ?? before.hand?.file;
      return { ...before, hand: { ...data, ...(file === undefined ? {} : { file }) } };
    }
    case 'eased':
      return { ...before, eased: data };
    case 'progress':
      return { ...before, progress: data, going: data.stands === 'searching' };
  }
}
