/**
 * Numbers by chance that come again: a permuted congruential generator of 32 bits, seeded by the caller.
 *
 * Its whole state is one number, so that a search can be put down and taken up again.
 *
 * Source: M. E. O'Neill, PCG: A Family of Simple Fast Space-Efficient Statistically Good Algorithms for Random
 * Number Generation, Harvey Mudd College HMC-CS-2014-0905, RXS-M-XS form with 32 bits of state (from memory).
 */
export class Chance {
  state: number;

  constructor(seed: number) {
    this.state = seed >>> 0;
    this.bits();
    this.bits();
  }

  static at(state: number): Chance {
    const made = new Chance(0);
    made.state = state >>> 0;
    return made;
  }

  bits(): number {
    const old = this.state;
    this.state = (Math.imul(old, 747796405) + 2891336453) >>> 0;
    const word = Math.imul(((old >>> ((old >>> 28) + 4)) ^ old) >>> 0, 277803737) >>> 0;
    return ((word >>> 22) ^ word) >>> 0;
  }

  /** From 0 up to, not with, 1. */
  next(): number {
    return this.bits() / 4294967296;
  }

  between(low: number, high: number): number {
    return low + (high - low) * this.next();
  }

  /** A whole number from 0 up to, not with, `count`. */
  below(count: number): number {
    return Math.min(count - 1, Math.floor(this.next() * count));
  }

  /** Normal, mean 0, deviation 1 (Box and Muller). */
  normal(): number {
    const u = 1 - this.next();
    return Math.sqrt(-2 * Math.log(u)) * Math.cos(2 * Math.PI * this.next());
  }

  /** Puts a list in any order, in place. */
  shuffle<T>(list: T[]): T[] {
    for (let i = list.length - 1; i > 0; i--) {
      const j = this.below(i + 1);
      [list[i], list[j]] = [list[j]!, list[i]!];
    }
    return list;
  }
}
