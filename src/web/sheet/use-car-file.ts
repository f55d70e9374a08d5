/**
 * A car's file, fetched and opened: what is shown is always a file together with the car that was read from it.
 *
 * While a newer file or another spec is being opened, the one before stays on the page; so does all that was typed.
 */
import { useCallback, useEffect, useRef, useState } from 'react';
import { type CarFile, fetchCar, watchCars } from '../client.ts';
import type { CarSource, Opened } from '../engine/answers.ts';
import { openAside } from '../engine/opened.ts';

export interface FetchedCar {
  /** Counts what was shown of this car: another file, or another spec, has another number. */
  readonly number: number;
  readonly file: CarFile;
  readonly source: CarSource;
  readonly read: Opened;
}

export type Fetched =
  | { readonly state: 'fetching' }
  | { readonly state: 'opening' }
  | { readonly state: 'failed'; readonly message: string }
  | { readonly state: 'here'; readonly shown: FetchedCar; readonly away?: string };

/** What the car is read from. Logs are left behind: they are long, and no figure of the car leans on them. */
export function sourceOf(file: CarFile, spec: string | undefined): CarSource {
  return {
    text: file.text,
    file: `${file.id}/car.yaml`,
    files: Object.fromEntries(Object.entries(file.files).filter(([name]) => !file.logs.includes(name))),
    ...(spec === undefined ? {} : { spec }),
  };
}

const sameFile = (a: CarFile, b: CarFile): boolean =>
  a.version === b.version && JSON.stringify(a.files) === JSON.stringify(b.files);

export function useCarFile(id: string, spec: string | undefined) {
  const [fetched, setFetched] = useState<Fetched>({ state: 'fetching' });
  const [round, setRound] = useState(0);
  const newest = useRef<CarFile>(undefined);
  const count = useRef(0);
  const wanted = useRef(spec);
  wanted.current = spec;
  const again = useCallback(() => setRound((before) => before + 1), []);

  const show = useCallback(async (file: CarFile): Promise<void> => {
    newest.current = file;
    const source = sourceOf(file, wanted.current);
    setFetched((before) => (before.state === 'here' ? before : { state: 'opening' }));
    const read = await openAside(source);
    // a newer file, or another spec, has been asked for meanwhile
    if (newest.current !== file || source.spec !== wanted.current) return;
    count.current += 1;
    setFetched({ state: 'here', shown: { number: count.current, file, source, read } });
  }, []);

  // what was shown stays, with the sentence beside it
  const fail = useCallback(({ message }: Error): void => {
    setFetched((before) =>
      before.state === 'here' ? { ...before, away: message } : { state: 'failed', message },
    );
  }, []);

  // biome-ignore lint/correctness/useExhaustiveDependencies: a new round asks again
  useEffect(() => {
    let current = true;
    const fetchAndShow = async (): Promise<void> => {
      const file = await fetchCar(id);
      if (!current) return;
      if (newest.current !== undefined && sameFile(newest.current, file)) {
        setFetched((before) => (before.state === 'here' ? { state: 'here', shown: before.shown } : before));
      } else await show(file);
    };
    fetchAndShow().catch((reason: Error) => current && fail(reason));
    return () => {
      current = false;
    };
  }, [id, round, show, fail]);

  // biome-ignore lint/correctness/useExhaustiveDependencies: another spec opens the same file anew
  useEffect(() => {
    if (newest.current !== undefined) show(newest.current).catch(fail);
  }, [spec, show, fail]);

  useEffect(() => watchCars((event) => event.id === id && again(), again), [id, again]);
  return { fetched, show, again };
}
