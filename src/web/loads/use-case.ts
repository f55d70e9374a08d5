/** What the car is doing as the address says it: a case by name or a row of a log, and what of it is typed otherwise. */
import { useMemo } from 'react';
import {
  type Doing,
  doingInRow,
  doingsOf,
  type LogAnswer,
  logOf,
  STANDING,
  spokenDoing,
} from '../../questions/index.ts';
import { useCar } from '../sheet/car-file.tsx';
import { usePage } from '../state.tsx';

export interface CaseAsked {
  readonly doing: Doing;
  readonly means: string;
  readonly notes: readonly string[];
  /** Why it is not what was asked for. */
  readonly told?: string;
}

/** The log that the address names, read once for a file. */
export function useLog(): LogAnswer | undefined {
  const { place } = usePage();
  const { car, file } = useCar();
  const { log } = place;
  return useMemo(() => (log === undefined ? undefined : logOf(car, file.files, log)), [car, file, log]);
}

export function useCase(): CaseAsked {
  const { place, speech } = usePage();
  const { car } = useCar();
  const log = useLog();
  const { doing: name, row, changed } = place;
  return useMemo(() => {
    const from = log === undefined ? byName() : byRow(log);
    if (changed === undefined) return from;
    const doing: Doing = { ...from.doing, ...changed };
    return { ...from, doing, means: spokenDoing(doing, speech) };

    function byName(): CaseAsked {
      const found = doingsOf(car).find((each) => each.name === name);
      return found === undefined
        ? {
            doing: STANDING,
            means: 'standing',
            notes: [],
            told: `This car has no case "${name}": it is shown standing.`,
          }
        : { doing: found.doing, means: found.means, notes: [] };
    }
    function byRow(of: LogAnswer): CaseAsked {
      const no = (told: string): CaseAsked => ({ doing: STANDING, means: 'standing', notes: [], told });
      if (!of.reached)
        return no(of.problems.map(({ message, remedy }) => `${message} ${remedy ?? ''}`).join(' '));
      const is = doingInRow(of.name, of.log, row ?? 0);
      if (!is.reached) return no(is.message);
      return { doing: is.doing, means: `${is.means}: ${spokenDoing(is.doing, speech)}`, notes: is.notes };
    }
  }, [car, log, name, row, changed, speech]);
}

export const useDoing = (): Doing => useCase().doing;
