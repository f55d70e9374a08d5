/**
 * Two bearings on one axis: what each carries of a force and a couple, and how near that is to its static rating.
 *
 * In    force and moment on the body that turns, about a point of the axis; where the bearings stand along it
 * Out   radial force of each bearing on the body, axial force in each, equivalent static load
 * Axes  those of the force; places and axial force along the axis
 * Not   a third bearing, bending of the spindle, a tight fit, heat
 *
 * The bearings are points at which the axis is held across: an angular contact or taper bearing where its lines of
 * contact meet the axis. LL-n are the equations of docs/theory/loads.md.
 */
import { add, along, cross, dot, scale, sub, type Vec3 } from '../../maths/vec3.ts';
import type { Metre, Newton, Radian, Ratio } from '../../units/quantity.ts';
import { formula } from '../../working/working.ts';
import type { Resultant } from './wrench.ts';

export type BearingKind = 'deep groove' | 'angular contact' | 'taper roller' | 'needle roller';
export type Two<T> = readonly [T, T];

/**
 * Radial forces of the bearings on the body, so that with them nothing but a push along the axis and a torque about
 * it is left.  [LL-31]
 *
 * @param at  of the two bearings, along the axis from the point about which the moment is told; never alike
 */
export function radialForces(axis: Vec3, at: Two<Metre>, { force, moment }: Resultant): Two<Vec3> {
  const across = along(force, axis, -dot(force, axis));
  const second = scale(add(cross(axis, moment), scale(across, at[0])), 1 / (at[1] - at[0]));
  return [sub(scale(across, -1), second), second];
}

export interface PairHeld {
  readonly kind: BearingKind;
  /** Of an angular pair: the lines of contact part along the axis (back to back) or close (face to face). */
  readonly backToBack: boolean;
  /** Of an angular pair: which rings are on the body that turns. */
  readonly innerRingsTurn: boolean;
  /** Of a deep groove pair: which one is held both ways. */
  readonly locating: 0 | 1;
  readonly preload: Newton;
  readonly contactAngle: Two<Radian>;
  readonly pitchDiameter: Two<Metre>;
}

const isAngular = (kind: BearingKind): boolean => kind === 'angular contact' || kind === 'taper roller';

/** Where the axis is held across: at the middle of the bearing, or where its lines of contact meet the axis.  [LL-30] */
export function pressureCentres(at: Two<Metre>, of: PairHeld): Two<Metre> {
  if (!isAngular(of.kind)) return at;
  const apart = Math.sign(at[1] - at[0]) * (of.backToBack ? 1 : -1);
  const shift = (k: 0 | 1): Metre => (apart * of.pitchDiameter[k] * Math.tan(of.contactAngle[k])) / 2;
  return [at[0] - shift(0), at[1] + shift(1)];
}

/**
 * Push along the axis that a radial force brings about in an angular bearing of no play, half its balls or rollers
 * carrying, as a part of F_r tan α: Sjövall's integrals for point and line contact.  [LL-32]
 */
export const INDUCED = { point: 1.2158, line: 1.2596 } as const;

/** Axial force in each bearing, never negative.  [LL-32, LL-33] */
export function axialForces(of: PairHeld, at: Two<Metre>, radial: Two<Newton>, push: Newton): Two<Newton> {
  const whole = Math.abs(push);
  // needle rollers let the body slide: the push goes to thrust faces, not to them
  if (of.kind === 'needle roller') return [0, 0];
  if (of.kind === 'deep groove') return of.locating === 0 ? [whole, 0] : [0, whole];
  const factor = of.kind === 'taper roller' ? INDUCED.line : INDUCED.point;
  const induced = (k: 0 | 1): Newton => factor * radial[k] * Math.tan(of.contactAngle[k]);
  // the bearing ahead in the direction of the push takes it where it stops the turning ring from that side
  const ahead: 0 | 1 = Math.sign(at[1] - at[0]) * push > 0 ? 1 : 0;
  const byAhead = of.backToBack !== of.innerRingsTurn;
  const taker: 0 | 1 = byAhead ? ahead : ((1 - ahead) as 0 | 1);
  const other = (1 - taker) as 0 | 1;
  // two alike springs share it about their preload until the other one is unloaded
  const taken = Math.max(of.preload + whole / 2, induced(taker), induced(other) + whole);
  return taker === 0 ? [taken, taken - whole] : [taken - whole, taken];
}

/** Y0 of ISO 76 for one row of an angular contact ball bearing, X0 0.5, by contact angle in degrees. */
const Y0_ANGULAR: readonly Two<number>[] = [
  [5, 0.52],
  [10, 0.5],
  [15, 0.46],
  [20, 0.42],
  [25, 0.38],
  [30, 0.33],
  [35, 0.29],
  [40, 0.26],
  [45, 0.22],
];

export interface StaticFactors {
  readonly X0: Ratio;
  readonly Y0: Ratio;
}

/** Factors of the equivalent static load, between the rows of ISO 76 by straight lines.  [LL-34] */
export function staticFactors(kind: BearingKind, contactAngle: Radian): StaticFactors {
  if (kind === 'deep groove') return { X0: 0.6, Y0: 0.5 };
  if (kind === 'needle roller') return { X0: 1, Y0: 0 };
  if (kind === 'taper roller') return { X0: 0.5, Y0: 0.22 / Math.tan(contactAngle) };
  const degrees = (contactAngle * 180) / Math.PI;
  const above = Math.max(
    1,
    Y0_ANGULAR.findIndex(([angle]) => angle >= degrees),
  );
  const [[low, atLow], [high, atHigh]] = [Y0_ANGULAR[above - 1]!, Y0_ANGULAR[above]!];
  return { X0: 0.5, Y0: atLow + ((atHigh - atLow) * (degrees - low)) / (high - low) };
}

export const equivalentLoad = formula({
  symbol: 'P_0',
  means: 'equivalent static load of the bearing',
  is: 'max(X_0*F_r + Y_0*F_a, F_r)',
  unit: 'N',
  terms: {
    X_0: { unit: '1', means: 'radial factor' },
    F_r: { unit: 'N', means: 'radial force on the bearing' },
    Y_0: { unit: '1', means: 'axial factor' },
    F_a: { unit: 'N', means: 'axial force in the bearing' },
  },
  source: 'LL-34; ISO 76',
});

export const ratingShare = formula({
  symbol: 'p',
  means: 'equivalent static load over the static rating',
  is: 'P_0/C_0',
  unit: 'share',
  terms: {
    P_0: { unit: 'N', means: 'equivalent static load of the bearing' },
    C_0: { unit: 'N', means: 'static radial rating' },
  },
  source: 'LL-35',
  holds: 'standing or turning slowly; life is another question',
});
