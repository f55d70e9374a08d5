/**
 * A reading: a number that somebody measured, with what is known of how well.
 *
 * In    what the car file says
 * Out   value and standard uncertainty in SI, and the words that a working shows about it
 */

/** How the standard uncertainty of a reading came about. */
export type SpreadOrigin =
  | { readonly kind: 'stated' }
  | { readonly kind: 'instrument'; readonly instrument: string; readonly class: string }
  | { readonly kind: 'usual'; readonly class: string }
  | { readonly kind: 'exact' };

export interface Reading {
  /** Number of this reading in the car's list of values. A mirrored reading has the number of its original. */
  readonly index: number;
  /** Where it stands in the file: `front.left.bar.diameter`. */
  readonly path: string;
  /** What it is, in the trade's words. */
  readonly means: string;
  /** SI. */
  readonly value: number;
  /** One standard uncertainty, SI. */
  readonly u: number;
  /** Part of the value that every reading of the same instrument shares. */
  readonly shared: number;
  /** SI unit. */
  readonly unit: string;
  /** As it was written. */
  readonly text: string;
  readonly spread: SpreadOrigin;
  readonly instrument?: string;
  readonly by?: string;
  readonly on?: string;
  readonly note?: string;
  /** Taken from the other side because the file says `mirrored`. */
  readonly mirrored: boolean;
}

/** Many an instrument has no other name than its kind. */
const ofClass = ({
  instrument,
  class: kind,
}: {
  readonly instrument: string;
  readonly class: string;
}): string => (instrument === kind ? kind : `${instrument} (${kind})`);

/** Words for where a reading's uncertainty comes from. */
export function spreadWords(reading: Reading): string {
  switch (reading.spread.kind) {
    case 'stated':
      return 'spread as stated in the file';
    case 'instrument':
      return `spread usual for ${ofClass(reading.spread)}, not stated in the file`;
    case 'usual':
      return `no instrument stated: spread usual for this kind (${reading.spread.class})`;
    case 'exact':
      return 'taken as exact';
  }
}
