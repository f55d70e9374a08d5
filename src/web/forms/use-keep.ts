/** Keeping what was typed: sent, told why not, or met by another hand's change. Nothing typed is lost by it. */
import { useState } from 'react';
import type { Change, Kept } from '../client.ts';
import { useCar } from '../sheet/car-file.tsx';
import { usePage } from '../state.tsx';

export interface Keeping {
  readonly told: readonly string[];
  readonly conflict: Extract<Kept, { kind: 'conflict' }> | undefined;
  readonly waiting: boolean;
  /** Says what is wrong before anything is sent. */
  tell(lines: readonly string[]): void;
  /** @returns whether the file has it now */
  send(changes: readonly Change[], aloud: string): Promise<boolean>;
  clear(): void;
}

export function useKeep(): Keeping {
  const { keep } = useCar();
  const { say } = usePage();
  const [told, tell] = useState<readonly string[]>([]);
  const [conflict, setConflict] = useState<Extract<Kept, { kind: 'conflict' }>>();
  const [waiting, setWaiting] = useState(false);

  const send = async (changes: readonly Change[], aloud: string): Promise<boolean> => {
    tell([]);
    setWaiting(true);
    try {
      const kept = await keep(changes);
      if (kept.kind === 'kept') {
        setConflict(undefined);
        say(aloud);
        return true;
      }
      if (kept.kind === 'conflict') setConflict(kept);
      else tell(kept.problems.map(({ message, remedy }) => [message, remedy].filter(Boolean).join(' ')));
    } catch (reason) {
      tell([`${(reason as Error).message} What you typed is still here: press Keep again then.`]);
    } finally {
      setWaiting(false);
    }
    return false;
  };
  const clear = (): void => {
    tell([]);
    setConflict(undefined);
  };
  return { told, conflict, waiting, tell, send, clear };
}
