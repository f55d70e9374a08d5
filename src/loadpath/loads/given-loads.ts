/**
 * Loads of tyres that are given and not found: a kerb's, or as typed or logged.
 *
 * In    what the car is doing; with all four given, where each tyre is and what its give says
 * Out   the loads given; the three equations by which the ground then lies
 * Axes  tub axes
 *
 * LL-n are the equations of docs/theory/loads.md.
 */
import { sub, type Vec3 } from '../../maths/vec3.ts';
import type { Newton } from '../../units/quantity.ts';
import { type Doing, WHEEL_NAMES, type Wheels } from './doing.ts';

/** Loads that are not found but given: a kerb's, or as typed. */
export type Given = Partial<Wheels<Newton>>;

/** With all four loads given no tyre tells where the ground is: it lies as their give fits it best.  [LL-18] */
export const isFitted = (given: Given): boolean => Object.keys(given).length === WHEEL_NAMES.length;

export const typedLoads = ({ contacts }: Doing): Given =>
  Object.fromEntries(
    WHEEL_NAMES.flatMap((wheel) => {
      const typed = contacts[wheel];
      return typed === undefined ? [] : [[wheel, typed.up]];
    }),
  );

/** What the tyres' give says more than the loads given: nothing in the sum and about both axes.  [LL-18] */
export function fitOf(
  places: Wheels<{ readonly at: Vec3; readonly over: Newton }>,
  about: Vec3,
): readonly [number, number, number] {
  return WHEEL_NAMES.reduce<readonly [number, number, number]>(
    ([lift, pitch, roll], wheel) => {
      const { at, over } = places[wheel];
      const [x, y] = sub(at, about);
      return [lift + over, pitch - x * over, roll + y * over];
    },
    [0, 0, 0],
  );
}
