/**
 * Where everything stands in the two flat arrays of the chain: its constants `k` and its state `s`.
 *
 * Flat, so that the spread can run thousands of corners without allocating. A point takes nine slots of the
 * state: place, first and second derivative by the lower wishbone's angle φ.
 */

// --- constants: a point on a hinge takes nine slots (foot on the axis; radius vector r; axis × r) ---
export const K_LOWER = 0;
export const K_UPPER = 9;
/** (r² − d²)/2 and the branch, of the kingpin length seen from the upper wishbone. */
export const K_UPPER_CLOSE = 18;
/** Along the kingpin, radius, (r² − d²)/2 and branch, inner end (3), rack direction (3). */
export const K_TOE = 20;
export const K_KINGPIN = 30;
export const K_CENTRE = 31;
export const K_AXIS = 34;
export const K_RADIUS = 37;
export const K_GROUND = 38;
export const K_ROD = 39;
export const K_INNER = 48;
export const K_INNER_CLOSE = 57;
export const K_ROCKER_POINTS = 59;

// --- state ---
export const LOWER = 0;
export const UPPER = 9;
export const TOE = 18;
export const CENTRE = 27;
export const AXIS = 36;
export const ROD_OUTER = 45;
export const ROD_INNER = 54;
/** Rotation of the upright per φ (3) and its derivative (3). */
export const SPIN = 63;
/** The upright's own directions: along the kingpin, towards the toe joint, and across (3 each). */
export const FRAME = 69;
/** Hinges: cosine, sine, first and second derivative of the angle by φ. */
export const LOWER_HINGE = 78;
export const UPPER_HINGE = 82;
export const ROCKER_HINGE = 86;
export const TOE_INNER = 90;
export const PHI = 93;
/** Travel of the contact point and its derivatives by φ. */
export const RISE = 94;
export const RACK = 97;
/** Results by travel, three slots each: value, first and second derivative. Elements follow the rocker. */
export const ROCKER = 98;
export const RESULTS_END = 101;

/** What carries the rod's outer end, as the chain knows it. */
export type CarrierCode = 0 | 1 | 2;
export const ON_LOWER = 0;
export const ON_UPPER = 1;
export const ON_UPRIGHT = 2;

/** What did not close. Negative: the link is folded back over its hinge; positive: it does not reach. */
export const CLOSED = 0;
export const UPPER_OPEN = 1;
export const TOE_OPEN = 2;
export const ROD_OPEN = 3;

/** Where the rocker points begin in the state, and where their places do in the constants. */
export interface RockerLayout {
  readonly pointCount: number;
  /** For each element the number of its rocker point. */
  readonly elementPoint: Int32Array;
}

export const rockerPointSlot = (layout: RockerLayout, i: number): number =>
  RESULTS_END + 3 * layout.elementPoint.length + 9 * i;
export const elementSlot = (i: number): number => RESULTS_END + 3 * i;
export const stateSize = (layout: RockerLayout): number => rockerPointSlot(layout, layout.pointCount);
export const constantsSize = (layout: RockerLayout): number =>
  K_ROCKER_POINTS + 9 * layout.pointCount + 3 * layout.elementPoint.length;
