/**
 * Forces in the plane of a face: how a stiff body shares them out over dowels or pads.
 *
 * In    points with their stiffness in shear, a force and a turning moment at the origin
 * Out   the force on each
 * Axes  y and z in the plane; the turning moment is positive from y to z
 * Not   fits: with a slack hole one dowel may carry it all
 *
 * JT-n are the equations of docs/theory/studs.md. The rigid group of the handbooks, weighed by stiffness.
 */
import type { Newton, NewtonMetre } from '../../units/quantity.ts';
import type { FacePoint } from './face.ts';

export interface ShearPoint extends FacePoint {
  /** Stiffness, or area, or anything in proportion to it. */
  readonly weight: number;
}

export interface InPlane {
  readonly y: Newton;
  readonly z: Newton;
  readonly turning: NewtonMetre;
}

/** @param load at the origin of the points' axes  [JT-5] */
export function groupShear(
  points: readonly ShearPoint[],
  load: InPlane,
): readonly { readonly y: Newton; readonly z: Newton }[] {
  const total = points.reduce((sum, { weight }) => sum + weight, 0);
  const mean = (of: (at: ShearPoint) => number): number =>
    points.reduce((sum, at) => sum + at.weight * of(at), 0) / total;
  const centre = { y: mean((at) => at.y), z: mean((at) => at.z) };
  const polar = points.reduce(
    (sum, at) => sum + at.weight * ((at.y - centre.y) ** 2 + (at.z - centre.z) ** 2),
    0,
  );
  const turning = load.turning - (centre.y * load.z - centre.z * load.y);
  return points.map(({ y, z, weight }) => {
    const spin = polar === 0 ? 0 : (turning * weight) / polar;
    return {
      y: (load.y * weight) / total - spin * (z - centre.z),
      z: (load.z * weight) / total + spin * (y - centre.y),
    };
  });
}

/** Least of friction over demand at any point: below 1 the face slips there if nothing else holds it.  [JT-6] */
export function slipMargin(
  points: readonly (FacePoint & { readonly normal: Newton })[],
  load: InPlane,
  friction: number,
): number {
  const bearing = points.filter(({ normal }) => normal > 0);
  if (bearing.length === 0) return 0;
  const shares = groupShear(
    bearing.map(({ y, z, normal }) => ({ y, z, weight: normal })),
    load,
  );
  return Math.min(...shares.map(({ y, z }, k) => (friction * bearing[k]!.normal) / Math.hypot(y, z)));
}
