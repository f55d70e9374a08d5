/** What stands against the travel of each wheel: springs and stops of the corner, bar and heave element of the axle. */
import type { Newton } from '../../units/quantity.ts';
import { pairForces } from '../axle/pair.ts';
import type { AxleState } from '../axle-of-car.ts';
import { sideIn } from './as-surveyed.ts';
import { eachWheel, endOf, sideOf, type Wheels } from './doing.ts';

/** What springs, stops, bar and heave element put against the travel of each wheel, with what the survey leaves over. */
export function resistingOf(
  axles: { readonly front: AxleState; readonly rear: AxleState },
  offsets: Wheels<number>,
): Wheels<Newton> {
  const barAndHeave = (end: 'front' | 'rear'): { readonly left: number; readonly right: number } => {
    const { bar, heave } = axles[end];
    const byBar = bar === undefined ? { left: 0, right: 0 } : pairForces(bar.twist, bar.torque);
    const closing = heave === undefined ? 0 : heave.length.byLeft + heave.length.byRight <= 0 ? 1 : -1;
    const byHeave =
      heave === undefined ? { left: 0, right: 0 } : pairForces(heave.length, -closing * heave.force);
    return { left: byBar.left + byHeave.left, right: byBar.right + byHeave.right };
  };
  const joined = { front: barAndHeave('front'), rear: barAndHeave('rear') };
  return eachWheel(
    (wheel) => sideIn(axles, wheel).now.force + joined[endOf(wheel)][sideOf(wheel)] + offsets[wheel],
  );
}
