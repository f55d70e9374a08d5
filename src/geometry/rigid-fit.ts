/**
 * The rigid motion that best lays one set of points on another: turn and shift, no stretch, no mirror.
 *
 * In    matched points, each with a weight if wanted
 * Out   rotation and translation, what is left over at each point, and two warnings that the motion cannot
 *       hide: the scale between the two sets (inches read as millimetres) and whether a mirrored set would
 *       have fitted far better (a left-handed frame)
 * Axes  right-handed in both frames; moved = R·from + t
 * Not   fewer than three points, or points on one line: refused, since a turn about the line stays free
 *
 * [K]   W. Kabsch, Acta Cryst. A32 (1976) 922 and A34 (1978) 827: rotation from the singular values (from memory)
 * [H]   B. K. P. Horn, J. Opt. Soc. Am. A 4 (1987) 629: centroids drop out, symmetric scale, section 2.D (from memory)
 */
import { Matrix, SingularValueDecomposition } from 'ml-matrix';
import { add, along, dot, scale as scaled, sub, type Vec3, ZERO } from '../maths/vec3.ts';
import type { Metre } from '../units/quantity.ts';
import { inverseOf, type Rotation, rotated } from './rotation.ts';

export interface MatchedPoint {
  readonly from: Vec3;
  readonly to: Vec3;
  /** Relative weight, 1/u² as a rule; 1 when left out. */
  readonly weight?: number;
}

export interface RigidMotion {
  readonly rotation: Rotation;
  readonly translation: Vec3;
}

export interface RigidFit extends RigidMotion {
  /** to − (R·from + t), in the order given, in the axes of `to`. */
  readonly residuals: readonly Vec3[];
  /** Root of the weighted mean square distance left over. */
  readonly rms: Metre;
  /** Size of the `to` set over size of the `from` set: 1 when both are in the same unit. */
  readonly scale: number;
  /** True when the points stand out of one plane and a mirrored `from` would fit at least ten times closer. */
  readonly looksMirrored: boolean;
  /** Root mean square extent of the `from` points along their three principal directions, largest first. */
  readonly extents: Vec3;
}

export type RigidFitResult =
  | { readonly ok: true; readonly is: RigidFit }
  | { readonly ok: false; readonly why: 'too-few' | 'on-one-line' };

/** Second extent below this share of the first: the points count as lying on one line. */
const LINE_SHARE = 1e-3;

/** R p + t. */
export const moved = (motion: RigidMotion, p: Vec3): Vec3 =>
  add(rotated(motion.rotation, p), motion.translation);

/** Rᵀ (p − t): the point as the moved frame sees it. */
export const movedBack = (motion: RigidMotion, p: Vec3): Vec3 =>
  rotated(inverseOf(motion.rotation), sub(p, motion.translation));

/** Best rigid motion from → to in the weighted least-squares sense.  [K; H] */
export function fitRigid(points: readonly MatchedPoint[]): RigidFitResult {
  if (points.length < 3) return { ok: false, why: 'too-few' };
  const total = points.reduce((sum, p) => sum + (p.weight ?? 1), 0);
  const centre = (pick: (p: MatchedPoint) => Vec3): Vec3 =>
    scaled(
      points.reduce((sum, p) => along(sum, pick(p), p.weight ?? 1), ZERO),
      1 / total,
    );
  const fromCentre = centre((p) => p.from);
  const toCentre = centre((p) => p.to);
  const H = Matrix.zeros(3, 3);
  const spread = Matrix.zeros(3, 3);
  let fromSize = 0;
  let toSize = 0;
  for (const p of points) {
    const w = (p.weight ?? 1) / total;
    const a = sub(p.from, fromCentre);
    const b = sub(p.to, toCentre);
    fromSize += w * dot(a, a);
    toSize += w * dot(b, b);
    for (let i = 0; i < 3; i += 1) {
      for (let j = 0; j < 3; j += 1) {
        H.set(i, j, H.get(i, j) + w * b[i]! * a[j]!);
        spread.set(i, j, spread.get(i, j) + w * a[i]! * a[j]!);
      }
    }
  }
  const extents = new SingularValueDecomposition(spread).diagonal.map((s) => Math.sqrt(Math.max(0, s)));
  if (!(extents[1]! > LINE_SHARE * extents[0]!)) return { ok: false, why: 'on-one-line' };

  const svd = new SingularValueDecomposition(H);
  const U = svd.leftSingularVectors;
  const V = svd.rightSingularVectors;
  const [d1, d2, d3] = svd.diagonal as [number, number, number];
  const hand = Math.sign(determinant(U) * determinant(V));
  const R = U.mmul(Matrix.diag([1, 1, hand])).mmul(V.transpose());
  const rotation: Rotation = [row(R, 0), row(R, 1), row(R, 2)];
  const motion = { rotation, translation: sub(toCentre, rotated(rotation, fromCentre)) };
  const residuals = points.map((p) => sub(p.to, moved(motion, p.from)));
  const square = points.reduce((sum, p, i) => sum + (p.weight ?? 1) * dot(residuals[i]!, residuals[i]!), 0);

  // misfit of the shapes with the scale taken out, as a share of their size: proper and mirrored
  const size = Math.sqrt(fromSize * toSize);
  const proper = Math.max(0, 1 - (d1 + d2 + hand * d3) / size);
  const mirror = Math.max(0, 1 - (d1 + d2 - hand * d3) / size);
  return {
    ok: true,
    is: {
      ...motion,
      residuals,
      rms: Math.sqrt(square / total),
      scale: Math.sqrt(toSize / fromSize),
      looksMirrored: proper > 1e-6 && mirror < proper / 100,
      extents: [extents[0]!, extents[1]!, extents[2]!],
    },
  };
}

const row = (m: Matrix, i: number): Vec3 => [m.get(i, 0), m.get(i, 1), m.get(i, 2)];

const determinant = (m: Matrix): number =>
  dot(row(m, 0), [
    m.get(1, 1) * m.get(2, 2) - m.get(1, 2) * m.get(2, 1),
    m.get(1, 2) * m.get(2, 0) - m.get(1, 0) * m.get(2, 2),
    m.get(1, 0) * m.get(2, 1) - m.get(1, 1) * m.get(2, 0),
  ]);
