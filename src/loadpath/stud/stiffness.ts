/**
 * How a stud gives and how what it clamps gives: the two that share every load on the joint.
 *
 * In    the stud as pieces of its length, the clamped parts as layers from the nut down
 * Out   compliances, metres for each newton, and the load factor
 * Not   bending of stud and flange; a seat that is not flat gives more
 *
 * Cone of pressure after Rötscher with a half angle of 30° as in Shigley, 10th ed., 8-5; the cone stops at the edge
 * of the part. ST-n are the equations of docs/theory/studs.md.
 */
import type { Metre, Pascal, Radian, Ratio, SquareMetre } from '../../units/quantity.ts';
import { formula, type Working } from '../../working/working.ts';

/** A piece of the stud between nut and parent. */
export interface StudPiece {
  readonly length: Metre;
  readonly area: SquareMetre;
}

/** Compliance of pieces one behind the other: Σ l/(E A).  [ST-11] */
export const studCompliance = (pieces: readonly StudPiece[], modulus: Pascal): number =>
  pieces.reduce((sum, { length, area }) => sum + length / (modulus * area), 0);

export interface Layer {
  readonly thickness: Metre;
  readonly youngsModulus: Pascal;
}

export interface Clamped {
  /** Layers from one end of the grip to the other. */
  readonly layers: readonly Layer[];
  /** Outer diameter of the nut or washer face at the first layer, and of what bears at the last. */
  readonly faces: readonly [Metre, Metre];
  readonly hole: Metre;
  /** Diameter beyond which the part ends. */
  readonly edge: Metre;
  /**
   * The far end holds the stud by its thread: the cone only widens from the nut, and the layers end where half the
   * thread's diameter is in the parent.
   */
  readonly tapped?: boolean;
}

const HALF_ANGLE: Radian = Math.PI / 6;

/** Compliance of one frustum that widens from `small`, hole `d`, or of a ring where it cannot widen.  [ST-12] */
export function frustumCompliance(
  of: { readonly length: Metre; readonly small: Metre; readonly hole: Metre; readonly youngsModulus: Pascal },
  halfAngle: Radian = HALF_ANGLE,
): number {
  const { length: t, small: D, hole: d, youngsModulus: E } = of;
  const s = 2 * t * Math.tan(halfAngle);
  return (
    Math.log(((s + D - d) * (D + d)) / ((s + D + d) * (D - d))) / (Math.PI * E * d * Math.tan(halfAngle))
  );
}

const ringCompliance = (length: Metre, outer: Metre, hole: Metre, E: Pascal): number =>
  (4 * length) / (E * Math.PI * (outer * outer - hole * hole));

/** Compliance of what is clamped: cones from both faces that meet, in layers, cut off at the edge.  [ST-12] */
export function clampedCompliance(of: Clamped, halfAngle: Radian = HALF_ANGLE): number {
  const { layers, faces, hole, edge, tapped } = of;
  const grip = layers.reduce((sum, { thickness }) => sum + thickness, 0);
  const widening = 2 * Math.tan(halfAngle);
  // where the two cones are equally wide; a tapped parent sends no cone back
  const meet =
    tapped === true ? grip : Math.min(grip, Math.max(0, (grip + (faces[1] - faces[0]) / widening) / 2));
  const part = (from: Metre, to: Metre, face: Metre, E: Pascal): number => {
    if (to <= from) return 0;
    // depth at which the cone reaches the edge
    const full = Math.max(0, (edge - face) / widening);
    const cone = Math.min(to, full);
    const ring = to - Math.max(from, full);
    return (
      (cone > from
        ? frustumCompliance(
            { length: cone - from, small: Math.min(edge, face + widening * from), hole, youngsModulus: E },
            halfAngle,
          )
        : 0) + (ring > 0 ? ringCompliance(ring, edge, hole, E) : 0)
    );
  };
  let at = 0;
  let sum = 0;
  for (const { thickness, youngsModulus } of layers) {
    const end = at + thickness;
    sum += part(at, Math.min(end, meet), faces[0], youngsModulus);
    sum += part(grip - end, grip - Math.max(at, meet), faces[1], youngsModulus);
    at = end;
  }
  return sum;
}

const loadFactorOf = formula({
  symbol: 'Φ',
  means: 'part of an outside load that the stud feels while the face is closed',
  is: 'n*δ_P/(δ_S + δ_P)',
  unit: '1',
  terms: {
    n: { unit: '1', means: 'where the load enters: 1 under nut and head, less within the parts' },
    δ_P: { unit: 'm/N', means: 'compliance of the clamped parts' },
    δ_S: { unit: 'm/N', means: 'compliance of the stud' },
  },
  source: 'ST-13; VDI 2230',
  holds: 'until the face opens; after that the stud feels all of it',
});

/** @param of compliances, and where the load enters (n) */
export const loadFactor = (
  of: { readonly stud: number; readonly parts: number; readonly entry: Ratio },
  working?: Working,
): Ratio => loadFactorOf({ n: of.entry, δ_P: of.parts, δ_S: of.stud }, working);
