/**
 * A quantity that hangs on the travel of both wheels of an axle, and the stiffness that it gives them.
 *
 * In    a bar's twist or an element's length with its first and second derivatives by the two travels
 * Out   generalised forces and the 2 × 2 stiffness at the wheels, with the effort × change-of-ratio term
 * Axes  travel positive in bump, each wheel its own
 * Not   what acts at one wheel alone, and the tyre
 *
 * LP-n are the equations of docs/theory/load-path.md.
 */

/** A quantity q(zL, zR) with its derivatives. */
export interface Pair {
  readonly value: number;
  readonly byLeft: number;
  readonly byRight: number;
  readonly byLeft2: number;
  readonly byRight2: number;
  readonly byBoth: number;
}

/** Symmetric 2 × 2 stiffness at the wheels, N/m: force on the left wheel per travel of the left, and so on. */
export interface AxleStiffness {
  readonly leftLeft: number;
  readonly leftRight: number;
  readonly rightRight: number;
}

/** Force that pushes each wheel down (positive: it resists bump), N. */
export interface AxleForces {
  readonly left: number;
  readonly right: number;
}

/** Effort conjugate to a quantity (torque to twist, tension to length), as forces at the wheels.  LP-30 */
export const pairForces = (q: Pair, effort: number): AxleForces => ({
  left: effort * q.byLeft,
  right: effort * q.byRight,
});

/** K = rate ∇q ∇qᵀ + effort ∇∇q: the derivative of `pairForces` by the two travels.  LP-31 */
export const pairStiffness = (q: Pair, spring: { rate: number; effort: number }): AxleStiffness => ({
  leftLeft: spring.rate * q.byLeft * q.byLeft + spring.effort * q.byLeft2,
  leftRight: spring.rate * q.byLeft * q.byRight + spring.effort * q.byBoth,
  rightRight: spring.rate * q.byRight * q.byRight + spring.effort * q.byRight2,
});

/** What the 2 × 2 stiffness is, per wheel, when both wheels rise, when they go opposite ways, and one alone. */
export const wheelRates = (k: AxleStiffness) => ({
  heave: (k.leftLeft + 2 * k.leftRight + k.rightRight) / 2,
  roll: (k.leftLeft - 2 * k.leftRight + k.rightRight) / 2,
  leftAlone: k.leftLeft,
  rightAlone: k.rightRight,
});
