/**
 * Spherical bearings and rod ends: the part of the joint's force along the axis of its housing, and its rating.
 *
 * In    force of the joint, axis of the housing where the file gives it, ratings
 * Out   radial and axial part, their shares added
 * Not   wear, the angle at which the bearing stands, its bolt in bending
 *
 * The housing of a wishbone's joint turns with the wishbone. Shares are added, as if both wore out the same place:
 * common practice, no source, on the hard side. LL-n are the equations of docs/theory/loads.md.
 */
import { dot, length, turned, type Vec3 } from '../../maths/vec3.ts';
import type { Newton } from '../../units/quantity.ts';
import { formula } from '../../working/working.ts';
import type { CornerState } from '../corner/state.ts';

export interface SphericalForce {
  readonly radial: Newton;
  readonly axial: Newton;
}

/** Where the wishbone carries the axis of a housing that was read at the surveyed position. */
export const axisNow = (state: CornerState, wishbone: 'upper' | 'lower', surveyed: Vec3): Vec3 =>
  wishbone === 'upper'
    ? turned(surveyed, state.upperAxis, state.upperAngle.value)
    : turned(surveyed, state.lowerAxis, state.lowerAngle.value);

/** Parts of a joint's force square to its axis and along it; without an axis all of it counts as square to it.  [LL-37] */
export function partsOf(force: Vec3, axis: Vec3 | undefined): SphericalForce {
  if (axis === undefined) return { radial: length(force), axial: 0 };
  const axial = Math.abs(dot(force, axis));
  return { radial: Math.sqrt(Math.max(0, dot(force, force) - axial * axial)), axial };
}

const RADIAL = {
  F_q: { unit: 'N', means: 'force of the joint square to the axis of its housing' },
  R_r: { unit: 'N', means: 'static radial rating' },
} as const;

export const radialShare = formula({
  symbol: 'r',
  means: 'force over the static rating',
  is: 'F_q/R_r',
  unit: 'share',
  terms: RADIAL,
  source: 'LL-37',
});

export const bothShares = formula({
  symbol: 'r',
  means: 'force over the static ratings, radial and axial added',
  is: 'F_q/R_r + F_p/R_a',
  unit: 'share',
  terms: {
    ...RADIAL,
    F_p: { unit: 'N', means: 'force of the joint along the axis of its housing' },
    R_a: { unit: 'N', means: 'static axial rating' },
  },
  source: 'LL-37',
});
