/**
 * The third element: between a point of the left rocker and a point of the right one.
 *
 * In    the two moving points with their derivatives, each by its own wheel's travel
 * Out   the element's length by both travels
 * Axes  travel positive in bump. A longer element has a positive change of length
 * Not   what the element is (spring, rubber, damper, nothing)
 */
import { dot, length, sub } from '../../maths/vec3.ts';
import type { VecAlong } from '../corner/solve.ts';
import type { Pair } from './pair.ts';

/** Length of an element between two moving points and its derivatives by the two travels.  LP-32 */
export function heaveElement(left: VecAlong, right: VecAlong): Pair {
  const d = sub(left.value, right.value);
  const l = length(d);
  if (!(l > 0)) throw new Error('both ends of the heave element are at one place');
  const byLeft = dot(d, left.perTravel) / l;
  const byRight = -dot(d, right.perTravel) / l;
  const bend = (q: VecAlong, sign: 1 | -1, by: number): number =>
    (dot(q.perTravel, q.perTravel) + sign * dot(d, q.perTravel2) - by * by) / l;
  return {
    value: l,
    byLeft,
    byRight,
    byLeft2: bend(left, 1, byLeft),
    byRight2: bend(right, -1, byRight),
    byBoth: (-dot(left.perTravel, right.perTravel) - byLeft * byRight) / l,
  };
}
