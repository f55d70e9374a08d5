/** A set looked at in its car: all that is told of primaries, of what stands behind a collector how it lies hot. */
import { hotTold, inCarTold, type ToldAsked, type ToldSection } from './in-car-told.ts';
import { partSection } from './part-words.ts';
import type { CarPart } from './parts-of-car.ts';
import type { PrimariesHot } from './primaries-hot.ts';
import type { PrimariesInCar } from './primaries-in-car.ts';

export type LookedAt =
  | { readonly inCar: PrimariesInCar }
  | { readonly stage: CarPart['stage']; readonly hot: PrimariesHot };

export const lookedTold = (of: LookedAt, asked: ToldAsked): readonly ToldSection[] =>
  'inCar' in of ? inCarTold(of.inCar, asked) : [partSection(of, hotTold(of.hot, asked))];
