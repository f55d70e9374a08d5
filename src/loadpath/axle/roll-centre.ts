/**
 * The roll centre of an axle, as a construction and as what loads the tyres.
 *
 * In    the two solved corners of an axle
 * Out   the geometric roll centre and the force-based height
 * Axes  front view, tub axes. The ground is the line through the two contact points; heights are square to it,
 *       the offset runs along it from the tub's centre plane, positive to the left
 * Not   the tyres' give. At large roll angles the geometric centre is a construction; what loads the tyres is the
 *       force-based height
 *
 * Both come from the movement of the real linkage, track rod included, not from wishbone planes.
 * LP-n are the equations of docs/theory/load-path.md.
 */
import type { Metre, Ratio } from '../../units/quantity.ts';
import type { CornerState } from '../corner/solve.ts';

export interface RollCentre {
  /**
   * Where the normals to the two contact points' paths cross; absent where they are parallel.
   */
  readonly geometric?: { readonly height: Metre; readonly offset: Metre };
  /** Height at which lateral force enters the tub through the links, for the given shares. */
  readonly forceHeight: Metre;
  /** Net force of the links that lifts the tub, per lateral force, for the given shares: jacking. */
  readonly jacking: Ratio;
  /** Outward movement of each contact point along the ground per rise square to it. */
  readonly slopes: { readonly left: Ratio; readonly right: Ratio };
}

/** Share of the axle's lateral force that each wheel carries; the two add up to one. */
export interface LateralShares {
  readonly left: Ratio;
  readonly right: Ratio;
  /** Way of the lateral force on the tyres: +1 to the left (a left-hand turn). */
  readonly towards?: 1 | -1;
}

/** Slopes closer than this count as parallel: their crossing lies kilometres away. */
const PARALLEL = 1e-6;

/** Roll centre of an axle from its two corners; lateral force shared equally unless told.  LP-22 to LP-24 */
export function rollCentre(
  left: CornerState,
  right: CornerState,
  shares: LateralShares = { left: 0.5, right: 0.5 },
): RollCentre {
  if (!(Math.abs(shares.left + shares.right - 1) < 1e-9))
    throw new Error('the lateral shares do not add up to one');
  const cL = left.points.contact;
  const cR = right.points.contact;
  const across = cL[1] - cR[1];
  const rise = cL[2] - cR[2];
  const track = Math.hypot(across, rise);
  const e = { y: across / track, z: rise / track }; // along the ground, to the left
  const slopeOf = (s: CornerState): number => {
    const v = s.contactVelocity.path;
    return (v[1] * e.y + v[2] * e.z) / (-v[1] * e.z + v[2] * e.y);
  };
  const sL = slopeOf(left); // leftward per rise
  const sR = slopeOf(right);
  // distances along the ground from where the centre plane cuts it
  const yL = cL[1] / e.y;
  const yR = cR[1] / e.y;

  // normals: h = −s (y − y_i)
  const offset = (sR * yR - sL * yL) / (sR - sL);
  const geometric =
    Math.abs(sR - sL) < PARALLEL ? {} : { geometric: { offset, height: -sL * (offset - yL) } };
  return {
    ...geometric,
    forceHeight: shares.left * sL * yL + shares.right * sR * yR,
    jacking: -(shares.towards ?? 1) * (shares.left * sL + shares.right * sR),
    slopes: { left: sL, right: -sR },
  };
}
