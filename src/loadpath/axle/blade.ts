/**
 * A blade: the arm of an anti-roll bar that is turned about its length to set its stiffness.
 *
 * In    a blade of one rectangular section, its setting angle, its modulus
 * Out   stiffness of its end against the drop link
 * Axes  setting angle 0: edge on, the stiff way; 90°: flat, the soft way
 * Not   tapered blades, the give of the socket, shear, and twist of the blade about its length
 *
 * Unsymmetrical bending: [B] Beer & Johnston, Mechanics of Materials, ch. 4.13 and appendix D (from memory).
 */
import type { Metre, Metre4, NewtonPerMetre, Pascal, Radian } from '../../units/quantity.ts';

export interface Blade {
  readonly width: Metre;
  readonly thickness: Metre;
  /** Free length from the socket to the drop link. */
  readonly length: Metre;
  readonly youngsModulus: Pascal;
  /**
   * Whether the end may move sideways. A drop link with a joint at each end lets it ('free'): the blade then
   * slips away towards its soft side. 'held' is a blade whose end is guided in the plane of the load.
   */
  readonly tip: 'free' | 'held';
}

/** Second moments the stiff and the soft way, b h³/12. */
export const bladeSecondMoments = (blade: Blade): { readonly stiff: Metre4; readonly soft: Metre4 } => ({
  stiff: (blade.thickness * blade.width ** 3) / 12,
  soft: (blade.width * blade.thickness ** 3) / 12,
});

/**
 * The second moment that acts against a load at the setting angle.  LP-38
 * Held: I = I_stiff cos² + I_soft sin². Free: 1/I = cos²/I_stiff + sin²/I_soft. They agree at 0° and 90° only:
 * between them a free tip is much the softer.
 */
export function bladeSecondMoment(blade: Blade, setting: Radian): Metre4 {
  const { stiff, soft } = bladeSecondMoments(blade);
  const c2 = Math.cos(setting) ** 2;
  const s2 = Math.sin(setting) ** 2;
  return blade.tip === 'held' ? stiff * c2 + soft * s2 : 1 / (c2 / stiff + s2 / soft);
}

/** Stiffness of the blade's end along the drop link: a cantilever, 3 E I / L³.  LP-39 */
export const bladeTipStiffness = (blade: Blade, setting: Radian): NewtonPerMetre =>
  (3 * blade.youngsModulus * bladeSecondMoment(blade, setting)) / blade.length ** 3;
