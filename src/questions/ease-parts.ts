/**
 * What would let the part of an exhaust fit that did not: alone where it cannot be, else with the other parts where
 * they lie.
 */
import { type EasingPrimaries, easePrimaries } from './ease-primaries.ts';
import { partWords } from './part-words.ts';
import type { CarPart } from './parts-of-car.ts';
import type { Put } from './parts-put.ts';

export interface PartToEase {
  readonly part: CarPart;
  /** Among the others where it could be alone. */
  readonly put: Put;
}

export function easePart({ part, put }: PartToEase, seed: number): EasingPrimaries {
  const easing = easePrimaries(put, seed);
  return {
    advance: easing.advance,
    found: (speech) => easing.found(speech).map((each) => ({ ...each, words: partWords(part, each.words) })),
    now: (speech) => {
      const now = easing.now(speech);
      return now === undefined ? undefined : partWords(part, now);
    },
  };
}
