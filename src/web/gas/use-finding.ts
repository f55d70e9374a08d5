/**
 * The finder of the chosen bank: opened with the car and its scans, set going, held, and taken up again.
 *
 * What it has reached is kept in this browser every time it tells, under the car, the bank and the state of the file:
 * a page that was closed goes on from there.
 */

import { useCallback, useEffect, useRef, useState } from 'react';
import type { Vec3 } from '../../maths/vec3.ts';
import {
  HOLDABLE,
  type Holdable,
  heldByFile,
  type PrimariesScene,
  type PrimariesSet,
  type SavedHand,
} from '../../questions/index.ts';
import { useCar } from '../sheet/car-file.tsx';
import { usePage } from '../state.tsx';
import { fetchScans } from './fetch-scans.ts';
import { keep, keptBefore } from './kept.ts';
import type { Answered, EasedTold, HandAnswer, HandDoes, Progress, Told, Wanted } from './protocol.ts';
import { usePulls } from './use-pulls.ts';

export interface Finding {
  readonly scene?: PrimariesScene;
  readonly notes: readonly string[];
  /** Why nothing can be found; empty where nothing is amiss. */
  readonly refused: readonly string[];
  readonly causes: readonly string[];
  /** With the set as it lies: as found, or as it was moved by hand since. */
  readonly progress?: Progress;
  /** The set as the finder left it. */
  readonly found?: PrimariesSet | undefined;
  readonly hand?: HandAnswer;
  /** Where the bends were when the hand came: what the paper must hold, and keeps still by. */
  readonly bendsAt?: readonly Vec3[];
  readonly going: boolean;
  /** Begins, or goes on from where it was held. */
  readonly find: () => void;
  readonly stop: () => void;
  /** Looks for one more set beside those that stand; anew, from other starting places, where no more are kept. */
  readonly another: () => void;
  /** One of the sets that stand, to be looked at. */
  readonly choose: (strand: number) => void;
  /** What would let them fit, where nothing does; undefined while it was not asked. */
  readonly eased?: EasedTold;
  readonly ease: () => void;
  readonly stopEasing: () => void;
  /** What a hand does to the set. Pulls come as fast as they are answered, the latest alone. */
  readonly does: (what: HandDoes) => void;
  /** What a set must hold in the car. */
  readonly hold: readonly Holdable[];
  readonly onHold: (kind: Holdable, on: boolean) => void;
  /** What must be held was changed since the set was found. */
  readonly holdChanged: boolean;
}

interface Kept {
  readonly of: string;
  readonly seed: number;
  readonly sets?: number;
  readonly chosen?: number | undefined;
  readonly saved: Progress['saved'];
  readonly hand?: SavedHand;
  readonly hold?: readonly Holdable[];
}

const cupboard = (id: string, bank: string): string => `primaries ${id} ${bank}`;

type Doings = 'find' | 'stop' | 'another' | 'choose' | 'does' | 'found' | 'ease' | 'stopEasing';
type State = Omit<Finding, Doings | 'hold' | 'onHold' | 'holdChanged'>;
/** A search keeps no more strands than this, and each gives one set. */
const MOST_SETS = 8;

const NOTHING: State = { notes: [], refused: [], causes: [], going: false };

export function useFinding(): Finding {
  const { place, speech } = usePage();
  const { id, car, file, source } = useCar();
  const { bank } = place;
  const of = `${file.version} ${car.spec}`;
  const worker = useRef<Worker>(undefined);
  const seed = useRef(1);
  const sets = useRef(1);
  const lastKept = useRef<Kept>(undefined);
  const tell = useCallback((told: Told) => worker.current?.postMessage(told), []);
  const {
    does,
    answered: pullAnswered,
    forget,
  } = usePulls(useCallback((what: HandDoes) => tell({ kind: 'hand', does: what }), [tell]));
  const [state, setState] = useState<State>(NOTHING);
  const hold = useRef<readonly Holdable[]>([]);
  const [holds, setHolds] = useState({ kinds: hold.current, changed: false });

  const lookedFor = useCallback(
    (chosen: number | undefined): Wanted => ({
      seed: seed.current,
      sets: sets.current,
      hold: hold.current,
      ...(chosen === undefined ? {} : { chosen }),
    }),
    [],
  );

  useEffect(() => {
    let wanted = true;
    setState(NOTHING);
    const made = new Worker(new URL('./finder.ts', import.meta.url), { type: 'module' });
    worker.current = made;
    made.onmessage = ({ data }: MessageEvent<Answered>) => {
      if (!wanted) return;
      if (data.kind === 'progress')
        lastKept.current = {
          ...lastKept.current,
          of,
          seed: seed.current,
          sets: data.wanted,
          chosen: data.chosen,
          saved: data.saved,
          hold: hold.current,
        };
      if (data.kind === 'hand' && data.saved !== undefined && lastKept.current !== undefined)
        lastKept.current = { ...lastKept.current, hand: data.saved };
      if (lastKept.current !== undefined && (data.kind === 'progress' || data.kind === 'hand'))
        keep(cupboard(id, bank), lastKept.current);
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
    const kept = keptBefore<Kept>(cupboard(id, bank), of);
    seed.current = kept?.seed ?? 1;
    sets.current = kept?.sets ?? 1;
    lastKept.current = kept;
    hold.current = kept?.hold ?? heldByFile(car, bank);
    setHolds({ kinds: hold.current, changed: false });
    forget();
    const open = async (): Promise<void> => {
      const scans = await fetchScans(id, car);
      if (!wanted) return;
      const told: Told = {
        kind: 'open',
        source,
        side: bank,
        scans,
        ...lookedFor(kept?.chosen),
        ...(kept === undefined ? {} : { saved: kept.saved }),
        ...(kept?.hand === undefined ? {} : { hand: kept.hand }),
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
  }, [id, bank, of, car, source, lookedFor, pullAnswered, forget]);

  /** The finder begins or goes on: what was done by hand was of another set. */
  const begin = (before: State): State => {
    const { hand: _, bendsAt: __, eased: ___, ...rest } = before;
    return { ...rest, going: true };
  };
  const cleared = ({ progress: _, ...before }: State): State => ({ ...begin(before), causes: [] });
  const dropHand = (): void => {
    if (lastKept.current === undefined) return;
    const { hand: _, ...kept } = lastKept.current;
    lastKept.current = kept;
  };
  const find = (): void => {
    dropHand();
    // what was found does not hold what is asked now: begun anew
    const { saved, chosen } = holds.changed ? {} : (state.progress ?? {});
    setState(holds.changed ? cleared : begin);
    setHolds(({ kinds }) => ({ kinds, changed: false }));
    if (holds.changed) sets.current = 1;
    tell({ kind: 'find', ...lookedFor(chosen), ...(saved === undefined ? {} : { saved }) });
  };
  const anew = (): void => {
    seed.current += 1;
    sets.current = 1;
    dropHand();
    setState(cleared);
    setHolds(({ kinds }) => ({ kinds, changed: false }));
    tell({ kind: 'find', ...lookedFor(undefined) });
  };
  const another = (): void => {
    const found = state.progress?.sets.length ?? 0;
    if (found < sets.current || sets.current === MOST_SETS) anew();
    else {
      sets.current += 1;
      find();
    }
  };
  const choose = (strand: number): void => {
    dropHand();
    setState(({ hand: _, bendsAt: __, ...before }) => before);
    tell({ kind: 'choose', strand });
  };
  const onHold = (kind: Holdable, on: boolean): void => {
    hold.current = HOLDABLE.filter((each) => (each === kind ? on : hold.current.includes(each)));
    const found = state.progress;
    const before = found?.holding?.kinds ?? [];
    setHolds({
      kinds: hold.current,
      changed: found !== undefined && before.join() !== hold.current.join(),
    });
  };
  return {
    ...shown(state),
    found: state.progress?.set,
    find,
    stop: () => tell({ kind: 'hold' }),
    another,
    choose,
    ease: () => tell({ kind: 'ease', seed: seed.current, speech }),
    stopEasing: () => tell({ kind: 'hold' }),
    does,
    hold: holds.kinds,
    onHold,
    holdChanged: holds.changed,
  };
}

/** The set as a hand has it stands in the place of the found one. */
function shown(state: State): State {
  const { hand, progress } = state;
  if (hand === undefined || progress === undefined) return state;
  const { file: _, ...rest } = progress;
  return {
    ...state,
    progress: { ...rest, set: hand.told.set, ...(hand.file === undefined ? {} : { file: hand.file }) },
  };
}

function answered(before: State, data: Answered): State {
  switch (data.kind) {
    case 'opened':
      return { ...before, scene: data.scene, notes: data.notes };
    case 'refused':
      return { ...before, going: false, refused: data.messages };
    case 'impossible':
      return { ...before, going: false, causes: data.causes };
    case 'eased':
      return { ...before, eased: data };
    case 'hand': {
      // while a hand pulls, what may be saved is the set at rest
      const file = data.file ?? before.hand?.file;
      const hand = { ...data, ...(file === undefined ? {} : { file }) };
      return { ...before, hand, bendsAt: before.bendsAt ?? data.told.bends.map(({ at }) => at) };
    }
    case 'progress':
      return {
        ...before,
        progress: data,
        going: data.stands === 'searching' || data.stands === 'improving',
      };
  }
}
