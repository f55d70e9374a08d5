/**
 * The straight line that lies nearest to a torque over the rocker's travel, and what it leaves.
 *
 * In    torque over rocker angle, with weights where one part of the travel counts for more
 * Out   rate and slack angle by weighted least squares; both, or either one held; differences at every angle
 */
import type { NewtonMetre, NewtonMetrePerRadian, Radian, Ratio } from '../../units/quantity.ts';

export interface TorquePoint {
  readonly rockerAngle: Radian;
  readonly torque: NewtonMetre;
  /** How much this angle counts, 1 unless stated. */
  readonly weight?: number;
}

export interface FittedPoint extends TorquePoint {
  readonly fitted: NewtonMetre;
  /** Fitted less asked. */
  readonly difference: NewtonMetre;
}

export interface TorqueFit {
  readonly rate: NewtonMetrePerRadian;
  /** Angle at which the fitted torque is nothing. */
  readonly slackAt: Radian;
  readonly points: readonly FittedPoint[];
  readonly worst: { readonly rockerAngle: Radian; readonly difference: NewtonMetre; readonly part: Ratio };
  /** Weighted root mean square of the differences. */
  readonly rms: NewtonMetre;
}

/**
 * torque = rate·(angle − slackAt), what is not held being free.  [SP-50, SP-51]
 *
 * @throws Error when the angles do not differ
 */
export function fitWithin(
  points: readonly TorquePoint[],
  held: { readonly rate?: NewtonMetrePerRadian; readonly slackAt?: Radian } = {},
): TorqueFit {
  let W = 0;
  let θ = 0;
  let T = 0;
  for (const point of points) {
    const w = point.weight ?? 1;
    W += w;
    θ += w * point.rockerAngle;
    T += w * point.torque;
  }
  θ /= W;
  T /= W;
  const rate = held.rate ?? bestRate(points, θ, T);
  const slackAt = held.slackAt ?? θ - T / rate;
  const fitted = points.map((point) => {
    const value = rate * (point.rockerAngle - slackAt);
    return { ...point, fitted: value, difference: value - point.torque };
  });
  const greatest = Math.max(...points.map((point) => Math.abs(point.torque)));
  const worst = fitted.reduce((a, b) => (Math.abs(b.difference) > Math.abs(a.difference) ? b : a));
  const square = fitted.reduce((sum, point) => sum + (point.weight ?? 1) * point.difference ** 2, 0);
  return {
    rate,
    slackAt,
    points: fitted,
    worst: {
      rockerAngle: worst.rockerAngle,
      difference: worst.difference,
      part: worst.difference / greatest,
    },
    rms: Math.sqrt(square / W),
  };
}

function bestRate(points: readonly TorquePoint[], meanAngle: Radian, meanTorque: NewtonMetre): number {
  let top = 0;
  let bottom = 0;
  for (const point of points) {
    const w = point.weight ?? 1;
    const from = point.rockerAngle - meanAngle;
    top += w * from * (point.torque - meanTorque);
    bottom += w * from * from;
  }
  if (!(bottom > 0)) throw new Error('the angles of a torque curve must differ');
  return top / bottom;
}
