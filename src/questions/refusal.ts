/** What a linkage or a search refuses: to be told to the one who asked, and no mistake of ours. */
import { BarOpen } from '../loadpath/axle/anti-roll-bar.ts';
import { DegenerateCorner } from '../loadpath/corner/prepare.ts';
import { Unreachable } from '../loadpath/corner/reach.ts';
import { NotSettled } from '../loadpath/loads/car-equilibrium.ts';

export const isRefusal = (reason: unknown): reason is Error =>
  reason instanceof Unreachable ||
  reason instanceof DegenerateCorner ||
  reason instanceof BarOpen ||
  reason instanceof NotSettled;
