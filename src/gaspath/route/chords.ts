/** The nearest place to a point on a line of samples, chord by chord. */

/** What was found last: how far off, and how far along its chord. */
export const near = { gap: 0, share: 0 };

/** Number of the nearest chord among those from sample `from` up to sample `to`. */
export function nearestChord(
  at: Float64Array,
  from: number,
  to: number,
  x: number,
  y: number,
  z: number,
): number {
  let best = Infinity;
  let chord = -1;
  for (let k = from; k < to; k++) {
    const o = 3 * k;
    const ux = at[o + 3]! - at[o]!;
    const uy = at[o + 4]! - at[o + 1]!;
    const uz = at[o + 5]! - at[o + 2]!;
    const px = x - at[o]!;
    const py = y - at[o + 1]!;
    const pz = z - at[o + 2]!;
    const uu = ux * ux + uy * uy + uz * uz;
    let t = uu > 0 ? (px * ux + py * uy + pz * uz) / uu : 0;
    t = t < 0 ? 0 : Math.min(t, 1);
    const dx = px - t * ux;
    const dy = py - t * uy;
    const dz = pz - t * uz;
    const d2 = dx * dx + dy * dy + dz * dz;
    if (d2 < best) {
      best = d2;
      chord = k;
      near.share = t;
    }
  }
  near.gap = Math.sqrt(best);
  return chord;
}
