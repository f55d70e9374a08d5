/** The car whose sheet is open: its file as the server has it, read, and the way to keep changes. */
import { createContext, type ReactNode, useContext, useMemo } from 'react';
import { type CarFile, type Change, type Kept, keepChanges } from '../client.ts';
import type { Car, CarSource } from '../engine/answers.ts';
import type { FetchedCar } from './use-car-file.ts';

export interface OpenCar {
  readonly id: string;
  readonly file: CarFile;
  readonly source: CarSource;
  readonly car: Car;
  /** Whether the file has a survey. */
  readonly surveyed: boolean;
  /** Stands for file, spec and all that hangs on them. */
  readonly key: string;
  /** Said while the workshop does not answer; what is shown then is the file as it last came. */
  readonly away?: string | undefined;
  /** Answered once the page shows the file with the change in it. */
  keep(changes: readonly Change[]): Promise<Kept>;
  /** Takes the file as another hand left it. */
  takeTheirs(text: string, version: string): void;
  again(): void;
}

const OpenCarContext = createContext<OpenCar | undefined>(undefined);

export function useCar(): OpenCar {
  const open = useContext(OpenCarContext);
  if (open === undefined) throw new Error('no car is open round this part');
  return open;
}

interface Props {
  readonly shown: FetchedCar;
  readonly car: Car;
  readonly surveyed: boolean;
  readonly away: string | undefined;
  readonly show: (file: CarFile) => Promise<void>;
  readonly again: () => void;
  readonly children: ReactNode;
}

export function OpenCarIs({ shown, car, surveyed, away, show, again, children }: Props) {
  const { number, file, source } = shown;
  const open = useMemo<OpenCar>(
    () => ({
      id: file.id,
      file,
      source,
      car,
      surveyed,
      key: `${file.id} ${number}`,
      away,
      again,
      takeTheirs: (text, version) => void show({ ...file, text, version }),
      keep: async (changes) => {
        const kept = await keepChanges(file.id, file.version, changes);
        if (kept.kind === 'kept') await show({ ...file, text: kept.text, version: kept.version });
        return kept;
      },
    }),
    [number, file, source, car, surveyed, away, again, show],
  );
  return <OpenCarContext value={open}>{children}</OpenCarContext>;
}
