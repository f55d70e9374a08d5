/**
 * Bounce and pitch of a body on two springs: the pair of modes in closed form.
 *
 * In    mass, moment of inertia, ride rate and distance of each axle
 * Out   circular frequency of each mode and the point of the body that stands still in it
 * Not   unsprung masses and damping
 */

export interface BouncePitch {
  /** Mass on the springs, kg; moment of inertia in pitch, kg m². */
  readonly mass: number;
  readonly inertia: number;
  /** Ride rate of each axle (both wheels), N/m; its distance from the centre of gravity, m, both positive. */
  readonly front: { readonly rate: number; readonly distance: number };
  readonly rear: { readonly rate: number; readonly distance: number };
}

/** One mode: its frequency in rad/s, and the still point, metres ahead of the centre of gravity. */
export interface Mode {
  readonly omega: number;
  readonly node: number;
}

/**
 * The two modes of a body on two springs.  [LP-57]
 *
 * m z″ + (k_f + k_r) z − (k_f a − k_r b) θ = 0, I θ″ − (k_f a − k_r b) z + (k_f a² + k_r b²) θ = 0,
 * θ nose down positive, so that the front drops by a θ.
 */
export function bouncePitchModes(of: BouncePitch): readonly [Mode, Mode] {
  const { mass, inertia, front, rear } = of;
  const heave = (front.rate + rear.rate) / mass;
  const coupling = front.rate * front.distance - rear.rate * rear.distance;
  const pitch = (front.rate * front.distance ** 2 + rear.rate * rear.distance ** 2) / inertia;
  const middle = (heave + pitch) / 2;
  const apart = Math.sqrt(((heave - pitch) / 2) ** 2 + coupling ** 2 / (mass * inertia));
  const mode = (square: number): Mode => ({
    omega: Math.sqrt(square),
    // in the mode (heave − ω²) m z = c θ; a point x ahead moves by z − x θ, and stands still at x = z/θ
    node:
      coupling === 0
        ? Math.sign(square - pitch) * Number.POSITIVE_INFINITY
        : coupling / (mass * (heave - square)),
  });
  return [mode(middle - apart), mode(middle + apart)];
}
