/** A bar on the bench: its rate from torque and angle readings, and what that says of its size or its steel. */

import type { Stated } from '../loadpath/spring/bench-test.ts';
import {
  type BenchReading,
  type BenchTest,
  benchTest as fitted,
  type Implied,
  implied,
  type SharedScale,
} from '../loadpath/spring/bench-test.ts';
import type { NoProposal } from './bar-for-coil.ts';
import { STANDING_CAUTION, WOUND_BAR_CAUTION } from './cautions.ts';

export interface BenchAsked {
  readonly readings: readonly BenchReading[];
  /** What all readings have in common, as parts of the value. */
  readonly shared?: SharedScale;
  readonly confidence?: number;
  /** The bar as it is believed to be; then the answer says what each size would have to be for this rate. */
  readonly bar?: {
    readonly diameter: Stated;
    readonly bore: Stated;
    readonly activeLength: Stated;
    readonly shearModulus: Stated;
  };
}

export interface BenchAnswer {
  readonly reached: true;
  readonly test: BenchTest;
  readonly implied?: Implied;
  readonly cautions: readonly string[];
}

export function benchTest(asked: BenchAsked): BenchAnswer | NoProposal {
  const { readings } = asked;
  if (readings.length < 3)
    return {
      reached: false,
      because: 'asked wrongly',
      message: 'A rate with an interval needs three readings; five on and five off are better.',
    };
  if (readings.some(({ torque, twist }) => !Number.isFinite(torque) || !Number.isFinite(twist))) {
    return { reached: false, because: 'asked wrongly', message: 'A torque or an angle is not a number.' };
  }
  if (new Set(readings.map(({ twist }) => twist)).size < 2)
    return {
      reached: false,
      because: 'asked wrongly',
      message: 'All readings are at one angle; a rate needs two.',
    };
  const test = fitted(readings, asked.shared, asked.confidence);
  if (!(test.all.rate > 0))
    return {
      reached: false,
      because: 'asked wrongly',
      message: 'The torque does not grow with the angle: look at the signs.',
    };
  return {
    reached: true,
    test,
    ...(asked.bar === undefined
      ? {}
      : { implied: implied({ rate: test.all.rate, u: test.all.u }, asked.bar) }),
    cautions: [WOUND_BAR_CAUTION, STANDING_CAUTION],
  };
}
