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
  const { dark, place } = usePage();
  const [colours, setColours] = useState(() => read(place.way));
  // biome-ignore lint/correctness/useExhaustiveDependencies: the light changes what the style sheet answers
  useEffect(() => setColours(read(place.way)), [dark, place.way]);
  return colours;
}
