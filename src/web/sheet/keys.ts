/** Keys that work anywhere on the sheet, except while something is being typed. */
import { useEffect } from 'react';
import { LOAD_PATH } from '../../questions/figure.ts';
import { arrived, GAS_STOPS } from '../place.ts';
import type { View } from '../scene/look.ts';
import { usePage } from '../state.tsx';

export const VIEW_KEYS: Readonly<Record<View, string>> = {
  front: 'f',
  rear: 'r',
  side: 's',
  plan: 'p',
  free: 'd',
  car: 'c',
};

const typing = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  (target.matches('input, select, textarea, [contenteditable]') || target.closest('dialog, .slip') !== null);

export function useKeys(): void {
  const { place, go } = usePage();
  useEffect(() => {
    const pressed = (event: KeyboardEvent): void => {
      if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey) return;
      if (event.key === 'Escape') {
        if (place.figure !== undefined) go({ figure: undefined });
        // out of the field first: what is typed there stays where it is
        else if (typing(event.target)) (event.target as HTMLElement).blur();
        else if (place.against !== undefined) go({ against: undefined });
        else if (place.card !== 'figures') go({ card: 'figures' });
        return;
      }
      if (typing(event.target)) return;
      const view = (Object.keys(VIEW_KEYS) as View[]).find(
        (each) => VIEW_KEYS[each] === event.key.toLowerCase(),
      );
      if (view !== undefined) go({ view });
      const step = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0;
      if (step !== 0 && place.way === 'gas') {
        const gas = GAS_STOPS[GAS_STOPS.indexOf(place.gas) + step];
        if (gas !== undefined) go({ gas });
        return;
      }
      if (step === 0 || place.way !== 'load') return;
      const next = LOAD_PATH[LOAD_PATH.indexOf(place.stop) + step];
      if (next === undefined) return;
      event.preventDefault();
      go((from) => arrived(next, from));
      document.querySelector<HTMLElement>(`[data-stop="${next}"]`)?.focus({ preventScroll: true });
    };
    addEventListener('keydown', pressed);
    return () => removeEventListener('keydown', pressed);
  }, [place, go]);
}
