/** What tests draw by chance. */
import fc from 'fast-check';

const STEPS = 1_000_000;

/**
 * A real number between the two, every part of the range alike, its ends now and then. fast-check's own
 * `double` draws its bits alike, so that nearly all of a range about zero comes out as next to nothing.
 */
export const real = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: STEPS }).map((step) => min + ((max - min) * step) / STEPS);

/** Numbers between nothing and one, the same every time (Park & Miller's minimal standard). */
export function drawn(seed: number): () => number {
  let state = seed;
  return () => {
    state = (16807 * state) % 2147483647;
    return state / 2147483647;
  };
}
