/** The colours of paper and ink as the style sheet has them now, for what is drawn on a canvas. */
import { useEffect, useState } from 'react';
import { usePage } from '../state.tsx';
import type { Colours } from './ink.ts';

function read(way: string): Colours {
  const style = getComputedStyle(document.documentElement);
  const of = (name: string): string => style.getPropertyValue(name).trim();
  return {
    paper: of('--paper'),
    ink: of('--ink'),
    tint: of('--tint'),
    hair: of('--hair'),
    accent: of(`--${way}`),
  };
}

export function useColours(): Colours {
  const { light, place } = usePage();
  const [colours, setColours] = useState(() => read(place.way));
  // biome-ignore lint/correctness/useExhaustiveDependencies: the light changes what the style sheet answers
  useEffect(() => {
    const dark = matchMedia('(prefers-color-scheme: dark)');
    const again = (): void => setColours(read(place.way));
    again();
    dark.addEventListener('change', again);
    return () => dark.removeEventListener('change', again);
  }, [light, place.way]);
  return colours;
}
