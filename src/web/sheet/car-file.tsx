/** The car whose sheet is open: its file as the server has it, read, and the way to keep changes. */
import { createContext, type ReactNode, useCallback, useContext, useEffect, useMemo, useState } from 'react';
import { type CarFile, type Change, fetchCar, type Kept, keepChanges, watchCars } from '../client.ts';
import { type Car, type CarRead, type CarSource, readOnce } from '../engine/answers.ts';
import { usePage } from '../state.tsx';

export interface OpenCar {
  readonly id: string;
  readonly file: CarFile;
  readonly source: CarSource;
  readonly car: Car;
  /** Stands for file, spec and all that hangs on them. */
  readonly key: string;
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

export type Fetched =
  | { readonly state: 'coming' }
  | { readonly state: 'failed'; readonly message: string }
  | { readonly state: 'here'; readonly file: CarFile };

export function useCarFile(id: string): {
  fetched: Fetched;
  setFile: (file: CarFile) => void;
  again: () => void;
} {
  const [fetched, setFetched] = useState<Fetched>({ state: 'coming' });
  const [round, setRound] = useState(0);
  const again = useCallback(() => setRound((before) => before + 1), []);
  const setFile = useCallback((file: CarFile) => setFetched({ state: 'here', file }), []);

  // biome-ignore lint/correctness/useExhaustiveDependencies: a new round asks again
  useEffect(() => {
    let current = true;
    fetchCar(id).then(
      (file) => {
        if (!current) return;
        setFetched((before) =>
          before.state === 'here' && before.file.version === file.version ? before : { state: 'here', file },
        );
      },
      (reason: Error) => current && setFetched({ state: 'failed', message: reason.message }),
    );
    return () => {
      current = false;
    };
  }, [id, round]);

  useEffect(() => watchCars((event) => event.id === id && again()), [id, again]);
  return { fetched, setFile, again };
}

export const sourceOf = (file: CarFile, spec: string | undefined): CarSource => ({
  text: file.text,
  file: `${file.id}/car.yaml`,
  files: file.files,
  ...(spec === undefined ? {} : { spec }),
});

export const readFile = (file: CarFile, spec: string | undefined): CarRead => readOnce(sourceOf(file, spec));

interface Props {
  readonly file: CarFile;
  readonly car: Car;
  readonly setFile: (file: CarFile) => void;
  readonly again: () => void;
  readonly children: ReactNode;
}

export function OpenCarIs({ file, car, setFile, again, children }: Props) {
  const { place } = usePage();
  const open = useMemo<OpenCar>(
    () => ({
      id: file.id,
      file,
      source: sourceOf(file, place.spec),
      car,
      key: `${file.version} ${place.spec ?? ''}`,
      again,
      takeTheirs: (text, version) => setFile({ ...file, text, version }),
      keep: async (changes) => {
        const kept = await keepChanges(file.id, file.version, changes);
        if (kept.kind === 'kept') setFile({ ...file, text: kept.text, version: kept.version });
        return kept;
      },
    }),
    [file, car, place.spec, again, setFile],
  );
  return <OpenCarContext value={open}>{children}</OpenCarContext>;
}
