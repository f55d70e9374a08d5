/**
 * Alignment by strings, plates and a gauge: rim distances into angles, and bump steer as read against the geometry's.
 *
 * In    distances from the string to the rim, front and rear; toe gauge over the travel
 * Out   toe with its spread, what the linkage itself does
 * Axes  toe positive in, one wheel; travel positive in bump
 *
 * FF-n: docs/theory/flat-floor.md.
 */
import { type Attitude, attitudeOf } from '../loadpath/corner/attitude.ts';
import type { Corner } from '../loadpath/corner/prepare.ts';
import { solveCorner } from '../loadpath/corner/solve.ts';
import type { Metre, Radian } from '../units/quantity.ts';
import { formula, type Working } from '../working/working.ts';
import type { Measured } from './weighing.ts';

const toeByString = formula({
  symbol: 'δ',
  means: 'toe of the wheel by strings (positive: in)',
  is: 'asin((d_f - d_r)/D)',
  unit: 'rad',
  terms: {
    d_f: { unit: 'm', means: 'string to the front edge of the rim' },
    d_r: { unit: 'm', means: 'string to the rear edge of the rim' },
    D: { unit: 'm', means: 'distance of the two places on the rim' },
  },
  source: 'FF-36',
});

/**
 * Toe from a string outside the wheel, parallel to the car's centre plane: a front edge further from the string than
 * the rear one is toe-in.  [FF-36]
 */
export function toeFromString(
  read: { readonly front: Measured; readonly rear: Measured; readonly across: Measured },
  working?: Working,
): Measured {
  const value = toeByString({ d_f: read.front.value, d_r: read.rear.value, D: read.across.value }, working);
  const level = Math.cos(value) * read.across.value;
  return {
    value,
    u: Math.hypot(
      read.front.u / level,
      read.rear.u / level,
      (Math.tan(value) * read.across.u) / read.across.value,
    ),
  };
}

const yawOfString = formula({
  symbol: 'ψ_s',
  means: 'how far the string opens forward from the centre plane',
  is: 'asin((c_f - c_r)/L)',
  unit: 'rad',
  terms: {
    c_f: { unit: 'm', means: 'centre plane to the string at the front axle' },
    c_r: { unit: 'm', means: 'centre plane to the string at the rear axle' },
    L: { unit: 'm', means: 'wheelbase' },
  },
  source: 'FF-39',
});

/** Distances of a string from the car's centre plane at the two axles, and the wheelbase between them. */
export interface StringLine {
  readonly front: Measured;
  readonly rear: Measured;
  readonly wheelbase: Measured;
}

/**
 * Yaw of a string that is not parallel to the centre plane: positive where it opens forward. What a string that opens
 * reads as toe-in is taken off.  [FF-39]
 */
export function stringYaw({ front, rear, wheelbase }: StringLine, working?: Working): Measured {
  const value = yawOfString({ c_f: front.value, c_r: rear.value, L: wheelbase.value }, working);
  const level = Math.cos(value) * wheelbase.value;
  return {
    value,
    u: Math.hypot(front.u / level, rear.u / level, (Math.tan(value) * wheelbase.u) / wheelbase.value),
  };
}

/** Middle of the outer rim face from the centre plane: the string's distance there less the mean of both rim readings.  [FF-40] */
export function rimFromCentre(
  string: Measured,
  read: { readonly front: Measured; readonly rear: Measured },
): Measured {
  return {
    value: string.value - (read.front.value + read.rear.value) / 2,
    u: Math.hypot(string.u, read.front.u / 2, read.rear.u / 2),
  };
}

/**
 * Toe from plates held against both wheels of an axle: the tape in front of them and behind, at a distance apart.
 * Plates give the axle's toe, half of it each.  [FF-37]
 */
export function toeFromPlates(read: {
  readonly front: Measured;
  readonly rear: Measured;
  readonly apart: Measured;
}): Measured {
  const value = Math.asin((read.rear.value - read.front.value) / 2 / read.apart.value);
  const level = 2 * Math.cos(value) * read.apart.value;
  return {
    value,
    u: Math.hypot(
      read.front.u / level,
      read.rear.u / level,
      (Math.tan(value) * read.apart.u) / read.apart.value,
    ),
  };
}

export interface BumpSteerRow {
  readonly travel: Metre;
  /** Change of toe from the first row with no travel, as read and as the linkage has it. */
  readonly read: Radian;
  readonly geometry: Radian;
  readonly apart: Radian;
}

/**
 * Bump steer by a gauge of two feelers a distance apart on a plate at the wheel, against the geometry.  [FF-38]
 *
 * @param rows  travel, and front and rear feeler as they read, growing as the plate comes nearer
 * @throws Unreachable
 */
export function bumpSteer(
  corner: Corner,
  rows: readonly { readonly travel: Metre; readonly front: Metre; readonly rear: Metre }[],
  feelersApart: Metre,
): readonly BumpSteerRow[] {
  const toe = (travel: Metre): Attitude['toe']['value'] =>
    attitudeOf(solveCorner(corner, { travel })).toe.value;
  const standing = rows.reduce((best, row) => (Math.abs(row.travel) < Math.abs(best.travel) ? row : best));
  // the gauge stands outboard: a front edge that goes in leaves its feeler
  const leaves = (row: (typeof rows)[number]): Metre => row.rear - row.front;
  return rows.map((row) => {
    const read = Math.asin((leaves(row) - leaves(standing)) / feelersApart);
    const geometry = toe(row.travel) - toe(standing.travel);
    return { travel: row.travel, read, geometry, apart: read - geometry };
  });
}
