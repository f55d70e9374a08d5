/**
 * How far each spherical joint has swung from where it was measured.
 *
 * In    a prepared corner, a solved position, and the bolt axes where they are known
 * Out   for each joint the angle, rad, to be held against the limit of its bearing
 * Axes  directions at the surveyed position, tub axes; either way round
 * Not   the angle that a joint already had when it was measured, unless its bolt axis is given
 *
 * The rule, LP-21. A spherical bearing turns freely about its bolt and swings by the angle between the bolt and
 * the axis of its ring; the limit of the bearing is on the swing.
 *   Wishbone outer joints: the bolt goes with the upright, the ring with the wishbone. The ring's axis is taken
 *   as the bolt's axis at survey. Without a bolt axis the kingpin's own direction stands for it.
 *   Rods: the ring sits on the rod and the bolt on the body. A rod may roll about its own length until its ring
 *   faces the bolt, so its least swing is how far the bolt is off square to the rod: |asin(u·b)|. With a bolt
 *   axis given the swing is that. Without one, the bolt is taken to lie as it nearly always does (along the axis
 *   of the rocker, of the wishbone that carries the rod, along the kingpin at the steering arm) and the swing is
 *   the change of asin(u·b) since survey: turning about the bolt costs nothing. Where no such habit is known (the
 *   inner end of the track rod, a rod on the upright) it is the angle through which the rod's direction has
 *   turned as seen from the body since survey: an upper bound.
 */
import { cross, dot, length, sub, turned, unit, type Vec3 } from '../../maths/vec3.ts';
import type { Radian } from '../../units/quantity.ts';
import type { Corner } from './prepare.ts';
import { type CornerState, solveCorner } from './solve.ts';

export type JointName = 'upperOuter' | 'lowerOuter' | 'toeInner' | 'toeOuter' | 'rodOuter' | 'rodInner';

/** Directions of bolts at the surveyed position, unit vectors. */
export type BoltAxes = Readonly<Partial<Record<JointName, Vec3>>>;

export interface JointSwing {
  /** Angle from the surveyed position, or from square to the bolt where the bolt's axis is known. */
  readonly swing: Radian;
  readonly from: 'the surveyed position' | 'the surveyed position, across the bolt' | 'square to the bolt';
}

/** A direction fixed in a body, seen in tub axes now. */
type Carry = (atSurvey: Vec3) => Vec3;

/** Angle between two directions, exact also where they nearly agree. */
const angleBetween = (a: Vec3, b: Vec3): Radian => Math.atan2(length(cross(a, b)), dot(a, b));

/** Body directions at survey: first exactly along `first`, second in the plane of the two. */
function triad(first: Vec3, second: Vec3): readonly [Vec3, Vec3, Vec3] {
  const a = unit(first);
  const c = unit(cross(a, second));
  return [a, cross(c, a), c];
}

/** Carries directions with the upright, which its two outer joints and its toe joint tell. */
function uprightCarry(surveyed: CornerState, now: CornerState): Carry {
  const of = (s: CornerState) => {
    const { upperOuter, lowerOuter, toeOuter } = s.points;
    return triad(sub(upperOuter, lowerOuter), sub(toeOuter, lowerOuter));
  };
  const [a0, b0, c0] = of(surveyed);
  const [a, b, c] = of(now);
  return (v) => {
    const x = dot(v, a0);
    const y = dot(v, b0);
    const z = dot(v, c0);
    return [x * a[0] + y * b[0] + z * c[0], x * a[1] + y * b[1] + z * c[1], x * a[2] + y * b[2] + z * c[2]];
  };
}

/** Swing of every spherical joint of the corner at a solved position. */
export function jointSwings(
  corner: Corner,
  state: CornerState,
  bolts: BoltAxes = {},
): Readonly<Record<JointName, JointSwing>> {
  const surveyed = solveCorner(corner, { travel: 0 });
  const withTub: Carry = (v) => v;
  const withUpright = uprightCarry(surveyed, state);
  const withLower: Carry = (v) => turned(v, corner.lowerAxis, state.lowerAngle.value);
  const withUpper: Carry = (v) => turned(v, corner.upperAxis, state.upperAngle.value);
  const withRocker: Carry = (v) => turned(v, corner.rockerAxis, state.rockerAngle.value);
  const rodOn = corner.geometry.rodOn;
  const withRod =
    rodOn === 'lower wishbone' ? withLower : rodOn === 'upper wishbone' ? withUpper : withUpright;

  const p0 = surveyed.points;
  const p = state.points;
  const kingpin = unit(sub(p0.upperOuter, p0.lowerOuter));
  const outer = (name: 'upperOuter' | 'lowerOuter', withWishbone: Carry): JointSwing => {
    const bolt = bolts[name] ?? kingpin;
    return { swing: angleBetween(withUpright(bolt), withWishbone(bolt)), from: 'the surveyed position' };
  };
  /** Directions in which bolts nearly always lie, at the surveyed position. */
  const usual: BoltAxes = {
    rodInner: corner.rockerAxis,
    toeOuter: kingpin,
    ...(rodOn === 'lower wishbone' ? { rodOuter: corner.lowerAxis } : {}),
    ...(rodOn === 'upper wishbone' ? { rodOuter: corner.upperAxis } : {}),
  };
  const offSquare = (direction: Vec3, bolt: Vec3): Radian =>
    Math.asin(Math.max(-1, Math.min(1, dot(unit(direction), bolt))));
  const rod = (name: JointName, carry: Carry, before: Vec3, now: Vec3): JointSwing => {
    const bolt = bolts[name];
    if (bolt !== undefined) {
      return { swing: Math.abs(offSquare(now, carry(bolt))), from: 'square to the bolt' };
    }
    const likely = usual[name];
    if (likely !== undefined) {
      const swing = Math.abs(offSquare(now, carry(likely)) - offSquare(before, likely));
      return { swing, from: 'the surveyed position, across the bolt' };
    }
    return { swing: angleBetween(carry(unit(before)), unit(now)), from: 'the surveyed position' };
  };

  const toe0 = sub(p0.toeOuter, p0.toeInner);
  const toe = sub(p.toeOuter, p.toeInner);
  const rod0 = sub(p0.rodInner, p0.rodOuter);
  const rodNow = sub(p.rodInner, p.rodOuter);
  return {
    upperOuter: outer('upperOuter', withUpper),
    lowerOuter: outer('lowerOuter', withLower),
    toeInner: rod('toeInner', withTub, toe0, toe),
    toeOuter: rod('toeOuter', withUpright, toe0, toe),
    rodOuter: rod('rodOuter', withRod, rod0, rodNow),
    rodInner: rod('rodInner', withRocker, rod0, rodNow),
  };
}
