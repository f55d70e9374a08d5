/** What the page holds: where the reader is, how units are spoken, day or night, and what is to be read aloud. */
import {
  createContext,
  type ReactNode,
  useCallback,
  useContext,
  useEffect,
  useMemo,
  useReducer,
} from 'react';
import type { Slid } from '../questions/index.ts';
import type { Speech } from '../units/show.ts';
import { type Light, useDark } from './light.ts';
import { type Place, placeFrom, searchOf } from './place.ts';

interface Held {
  readonly place: Place;
  readonly speech: Speech;
  readonly light: Light;
  /** Last sentence for the live region. */
  readonly said: string;
  /** The figure of the load case whose slider is held. */
  readonly slid?: Slid | undefined;
}

type Act =
  | { readonly kind: 'go'; readonly to: Partial<Place> | ((from: Place) => Partial<Place>) }
  | { readonly kind: 'came back'; readonly place: Place }
  | { readonly kind: 'speech'; readonly speech: Speech }
  | { readonly kind: 'light'; readonly light: Light }
  | { readonly kind: 'say'; readonly words: string }
  | { readonly kind: 'slide'; readonly slid: Slid | undefined };

/** Steps that the browser's own back arrow takes; a travel or a turn of the view is no step. */
const STEPS = [
  'car',
  'spec',
  'against',
  'way',
  'stop',
  'wheel',
  'view',
  'card',
  'figure',
  'doing',
  'changed',
  'log',
  'joint',
  'gas',
  'floor',
  'gauge',
  'read',
  'bank',
  'both',
] as const;

function after(held: Held, act: Act): Held {
  switch (act.kind) {
    case 'go': {
      const to = typeof act.to === 'function' ? act.to(held.place) : act.to;
      return { ...held, place: { ...held.place, ...to } };
    }
    case 'came back':
      return { ...held, place: act.place };
    case 'speech':
      return { ...held, speech: act.speech };
    case 'light':
      return { ...held, light: act.light };
    case 'say':
      return { ...held, said: act.words };
    case 'slide':
      return held.slid === act.slid ? held : { ...held, slid: act.slid };
  }
}

export interface Page extends Held {
  /** Whether the page is dark now, by the reader's choice or the machine's. */
  readonly dark: boolean;
  go(to: Partial<Place> | ((from: Place) => Partial<Place>)): void;
  setSpeech(speech: Speech): void;
  setLight(light: Light): void;
  say(words: string): void;
  /** A slider over the load case is taken hold of, or let go. */
  slide(slid: Slid | undefined): void;
}

const PageContext = createContext<Page | undefined>(undefined);

export function usePage(): Page {
  const page = useContext(PageContext);
  if (page === undefined) throw new Error('no page round this part');
  return page;
}

const kept = <T extends string>(key: string, of: readonly T[], otherwise: T): T =>
  of.find((each) => each === localStorage.getItem(key)) ?? otherwise;

const start = (): Held => ({
  place: placeFrom(location.search),
  speech: kept('speech', ['mm-N', 'in-lbf'], 'mm-N'),
  light: kept('light', ['as the machine', 'day', 'night'], 'as the machine'),
  said: '',
});

export function PageState({ children }: { children: ReactNode }) {
  const [held, act] = useReducer(after, undefined, start);
  const { place, speech, light } = held;

  useEffect(() => {
    const back = (): void => act({ kind: 'came back', place: placeFrom(location.search) });
    addEventListener('popstate', back);
    return () => removeEventListener('popstate', back);
  }, []);

  // the address follows once the hand rests: browsers refuse hundreds of changes a second
  useEffect(() => {
    const timer = setTimeout(() => {
      const wanted = searchOf(place);
      if (wanted === searchOf(placeFrom(location.search))) return;
      const was = placeFrom(location.search);
      const step = STEPS.some((key) => JSON.stringify(was[key]) !== JSON.stringify(place[key]));
      history[step ? 'pushState' : 'replaceState'](null, '', wanted === '' ? location.pathname : wanted);
    }, 150);
    return () => clearTimeout(timer);
  }, [place]);

  useEffect(() => localStorage.setItem('speech', speech), [speech]);
  useEffect(() => localStorage.setItem('light', light), [light]);
  const dark = useDark(light);

  const go = useCallback((to: Parameters<Page['go']>[0]) => act({ kind: 'go', to }), []);
  const say = useCallback((words: string) => act({ kind: 'say', words }), []);
  const page = useMemo<Page>(
    () => ({
      ...held,
      dark,
      go,
      say,
      slide: (slid) => act({ kind: 'slide', slid }),
      setSpeech: (next) => act({ kind: 'speech', speech: next }),
      setLight: (next) => act({ kind: 'light', light: next }),
    }),
    [held, dark, go, say],
  );
  return <PageContext value={page}>{children}</PageContext>;
}
