/** Keys that work anywhere on the sheet, except while something is being typed. */
import { useEffect } from 'react';
import { LOAD_PATH } from '../../questions/figure.ts';
import { arrived, FLOOR_STOPS, GAS_STOPS, type Place } from '../place.ts';
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

/** The stop before or behind this one on the line of its way, and how one goes there; nothing at the ends. */
function beside(
  place: Place,
  step: 1 | -1,
): { readonly stop: string; readonly to: Parameters<ReturnType<typeof usePage>['go']>[0] } | undefined {
  if (place.way === 'load') {
    const stop = LOAD_PATH[LOAD_PATH.indexOf(place.stop) + step];
    return stop && { stop, to: (from) => arrived(stop, from) };
  }
  if (place.way === 'gas') {
    const gas = GAS_STOPS[GAS_STOPS.indexOf(place.gas) + step];
    return gas && { stop: gas, to: { gas } };
  }
  if (place.way === 'floor') {
    const floor = FLOOR_STOPS[FLOOR_STOPS.indexOf(place.floor) + step];
    return floor && { stop: floor, to: { floor, figure: undefined } };
  }
  return undefined;
}

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
      const next = step === 0 ? undefined : beside(place, step);
      if (next === undefined) return;
      event.preventDefault();
      go(next.to);
      document.querySelector<HTMLElement>(`[data-stop="${next.stop}"]`)?.focus({ preventScroll: true });
    };
    addEventListener('keydown', pressed);
    return () => removeEventListener('keydown', pressed);
  }, [place, go]);
}
