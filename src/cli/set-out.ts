/** A set of primaries as the published form of answers has it. */
import type { PrimariesSet } from '../questions/index.ts';

/** As the published form has it: what only drawings need stays behind. */
export const setOut = (set: PrimariesSet) => ({
  target: set.target,
  within: set.within,
  apart: set.apart,
  mass: set.mass,
  spare: set.spare ?? null,
  collector: { mouth: [...set.collector.mouth], axis: [...set.collector.axis] },
  passed: set.passed,
  order: set.order.map(({ cylinder, inlet }) => ({ cylinder, inlet })),
  pipes: set.pipes.map(({ cylinder, inlet, length, bends, turned, mass, tightest }) => ({
    cylinder,
    inlet,
    length,
    bends,
    turned,
    mass,
    tightest:
      tightest === undefined
        ? null
        : {
            against: tightest.against,
            gap: tightest.gap,
            spare: tightest.spare,
            at: [...tightest.at],
          },
  })),
});
