/** What each stop of the gas path is, in a sentence; the rest of its stops are to come. */
import type { GasStop } from '../place.ts';

export const GAS_WORDS: Readonly<Record<GasStop, { readonly title: string; readonly is: string }>> = {
  primaries: {
    title: 'Primaries',
    is: 'A pipe a cylinder, all of the length that the engine builder gives, clear of all that is told (primaries: also called header tubes).',
  },
  collector: {
    title: 'Collector',
    is: 'Where the primaries of a bank come together, in the order in which they fire.',
  },
};

/** The line of the gas path in the order of the gas. */
export const GAS_LINE: readonly (GasStop | 'cylinder' | 'port' | 'tail' | 'heat')[] = [
  'cylinder',
  'port',
  'primaries',
  'collector',
  'tail',
  'heat',
];
