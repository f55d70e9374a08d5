/** Cars that the worker has opened, kept while they are likely to be looked at again. */
import { sameSource } from '../../car/same-source.ts';
import type { CarSource, Opened } from './answers.ts';
import { type Asked, ask, useAnswer } from './ask.ts';

interface Kept {
  readonly source: CarSource;
  readonly coming: Promise<Opened>;
  read?: Opened;
}

const kept: Kept[] = [];
/** A floor of cars, and two specs of the one that is open. */
const MOST = 12;

const keptFor = (source: CarSource): Kept | undefined => kept.find((each) => sameSource(each.source, source));

export function openAside(source: CarSource): Promise<Opened> {
  const known = keptFor(source);
  if (known !== undefined) return known.coming;
  const coming = ask('open', source);
  const mine: Kept = { source, coming };
  kept.unshift(mine);
  kept.length = Math.min(kept.length, MOST);
  coming.then(
    (read) => {
      mine.read = read;
    },
    // what broke off is asked anew next time
    () => kept.splice(kept.indexOf(mine), 1),
  );
  return coming;
}

/** The car of a source: at once where it was opened before. */
export function useOpened(source: CarSource | undefined): Asked<Opened> {
  const known = source === undefined ? undefined : keptFor(source)?.read;
  const key = source === undefined ? undefined : `${source.file} ${source.spec} ${source.text}`;
  const asked = useAnswer(known === undefined ? key : undefined, () => openAside(source!), 0);
  return known === undefined ? asked : { state: 'answered', answer: known };
}
