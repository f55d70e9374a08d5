/**
 * The hand of a corner's torsion bar: which way bump twists it, and whether a preset bar belongs there.
 *
 * In    a sprung corner whose file says where the anchor holds the bar
 * Out   hand in bump; hand for which the file's bar was preset, if it was; whether the two agree
 * Axes  see presetting.ts: the helix that a line scribed along the bar becomes under its working torque
 *
 * The direction from rocker to anchor comes from the measured anchor and from nothing else: the two points that
 * give the rocker's axis may stand in either order along it.
 */
import { sub, type Vec3 } from '../maths/vec3.ts';
import type { Numbers } from './numbers.ts';
import { type Hand, workingHand } from './spring/presetting.ts';
import type { SprungCorner } from './sprung-corner.ts';
import { turnInBump } from './torque-curves.ts';

export interface BarHand {
  readonly works: Hand;
  /** Hand for which the bar in the file was preset. */
  readonly presetFor?: Hand;
  /** False when a bar preset for the other side is fitted here. */
  readonly agrees: boolean;
  /** From the rocker pivot to the anchor. */
  readonly towardsAnchor: Vec3;
}

/** Undefined where the file does not say where the anchor is. */
export function handOfBar(of: SprungCorner, numbers: Numbers): BarHand | undefined {
  const { points, bar } = of.form;
  if (points.barAnchor === undefined) return undefined;
  const towardsAnchor = sub(numbers.point(points.barAnchor), numbers.point(points.rockerPivot));
  const works = workingHand(turnInBump(of.corner.rockerAxis, towardsAnchor));
  if (bar === undefined || bar.preset === 'not preset') return { works, agrees: true, towardsAnchor };
  // left and right of a car twist their bars opposite ways: a bar for the other side is of the other hand
  const here = bar.preset === `for the ${of.side} side`;
  const other: Hand = works === 'right' ? 'left' : 'right';
  return { works, presetFor: here ? works : other, agrees: here, towardsAnchor };
}
