/**
 * The damper as measured: force against velocity, bump and rebound.
 *
 * In    the bench curve of each way, velocities and forces positive (SI)
 * Out   force at a velocity, the damping by chord and by tangent, and the knee with the slope on either side
 * Axes  velocity positive as the damper shortens (bump); force positive against bump
 * Not   gas force on the rod, friction, hysteresis, fade: put the gas force to the spring
 *
 * A curve with a knee has two damping numbers, and a damping ratio means little without saying which.
 * See docs/theory/springs.md, SP-55 to SP-57.
 */
import { pchip } from '../maths/pchip.ts';
import type { MetrePerSecond, Newton, NewtonSecondPerMetre } from '../units/quantity.ts';

export interface DamperPoint {
  readonly velocity: MetrePerSecond;
  readonly force: Newton;
}

export interface DamperCurves {
  /** Both with rising velocity from above nothing, both positive. */
  readonly bump: readonly DamperPoint[];
  readonly rebound: readonly DamperPoint[];
}

export interface Knee {
  readonly velocity: MetrePerSecond;
  readonly force: Newton;
  /** Slope below and above it. */
  readonly lowSpeed: NewtonSecondPerMetre;
  readonly highSpeed: NewtonSecondPerMetre;
  /** Root mean square distance of the points from the two lines, over the greatest force. */
  readonly misfit: number;
}

export interface Damper {
  /** Signed: against the motion. */
  force(velocity: MetrePerSecond): Newton;
  /** Force over velocity: the line from the origin to the curve. */
  secant(velocity: MetrePerSecond): NewtonSecondPerMetre;
  /** Slope of the curve itself. */
  tangent(velocity: MetrePerSecond): NewtonSecondPerMetre;
  /** Whether the bench went as fast as this. */
  measuredAt(velocity: MetrePerSecond): boolean;
  /** Undefined with fewer than four points: two lines always fit three. */
  readonly bumpKnee: Knee | undefined;
  readonly reboundKnee: Knee | undefined;
}

/** Makes the two curves into one law through the origin. The tables have been checked: velocities rise. */
export function damper(curves: DamperCurves): Damper {
  const through = (points: readonly DamperPoint[]) =>
    pchip([{ x: 0, y: 0 }, ...points.map((point) => ({ x: point.velocity, y: point.force }))]);
  const bump = through(curves.bump);
  const rebound = through(curves.rebound);
  const side = (velocity: number) => (velocity < 0 ? rebound : bump);
  const tangent = (velocity: number): number => side(velocity).slope(Math.abs(velocity));
  return {
    force: (velocity) => Math.sign(velocity) * side(velocity).value(Math.abs(velocity)),
    secant: (velocity) =>
      velocity === 0 ? tangent(0) : side(velocity).value(Math.abs(velocity)) / Math.abs(velocity),
    tangent,
    measuredAt: (velocity) => Math.abs(velocity) <= side(velocity).last.x,
    bumpKnee: knee(curves.bump),
    reboundKnee: knee(curves.rebound),
  };
}

/**
 * The knee: of all ways to part the points, the one in which a line through the origin below and a line joined
 * to it above lie nearest.  [SP-57]
 *
 * For a knee at velocity v the law is a·min(V, v) + b·max(0, V − v): linear in the two slopes, so each candidate
 * is one 2 × 2 least-squares problem; the knee is then refined between its neighbours by golden section.
 */
export function knee(points: readonly DamperPoint[]): Knee | undefined {
  if (points.length < 4) return undefined;
  const inner = points.slice(0, -1).map((point) => point.velocity);
  const best = inner.reduce((a, b) => (twoSlopes(points, b).square < twoSlopes(points, a).square ? b : a));
  const at = inner.indexOf(best);
  let low = at === 0 ? best * 0.5 : inner[at - 1]!;
  let high = inner[at + 1] ?? best;
  const golden = (Math.sqrt(5) - 1) / 2;
  // 60 steps shrink any bracket by 3e-13: to the last digit that means anything
  for (let step = 0; step < 60; step += 1) {
    const a = high - golden * (high - low);
    const b = low + golden * (high - low);
    if (twoSlopes(points, a).square < twoSlopes(points, b).square) high = b;
    else low = a;
  }
  const velocity = (low + high) / 2;
  const { lowSpeed, highSpeed, square } = twoSlopes(points, velocity);
  const greatest = Math.max(...points.map((point) => point.force));
  const misfit = Math.sqrt(square / points.length) / greatest;
  return { velocity, force: lowSpeed * velocity, lowSpeed, highSpeed, misfit };
}

function twoSlopes(
  points: readonly DamperPoint[],
  kneeAt: MetrePerSecond,
): { readonly lowSpeed: number; readonly highSpeed: number; readonly square: number } {
  let pp = 0;
  let pq = 0;
  let qq = 0;
  let pf = 0;
  let qf = 0;
  for (const { velocity, force } of points) {
    const p = Math.min(velocity, kneeAt);
    const q = Math.max(0, velocity - kneeAt);
    pp += p * p;
    pq += p * q;
    qq += q * q;
    pf += p * force;
    qf += q * force;
  }
  const determinant = pp * qq - pq * pq;
  const lowSpeed = (pf * qq - qf * pq) / determinant;
  const highSpeed = (qf * pp - pf * pq) / determinant;
  const square = points.reduce((sum, { velocity, force }) => {
    const fitted = lowSpeed * Math.min(velocity, kneeAt) + highSpeed * Math.max(0, velocity - kneeAt);
    return sum + (force - fitted) ** 2;
  }, 0);
  return { lowSpeed, highSpeed, square };
}
