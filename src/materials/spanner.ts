/**
 * Hexagons of nuts, and the outside of the sockets and open spanners that go on them.
 *
 * In    a thread, or a hexagon across flats
 * Out   the standard nut; the largest socket and spanner of the standards; undefined where the table has none
 *
 * Largest outsides, so that any tool made to these standards goes where these go; a thin-walled socket goes farther.
 *
 * [ISO272]  widths across flats of hexagons: M5 8, M6 10, M8 13, M10 16, M12 18, M16 24 (seen, as reproduced); M14 21
 *           from memory
 * [ISO4032] greatest height of a hexagon nut, style 1 (from memory)
 * [B18.2.2] hexagon nuts in inches: flats and greatest height (from memory)
 * [ISO2725] largest outside of a socket, hand operated, by its square drive: 6.3, 10 and 12.5 mm (from memory)
 * [ISO3316] largest outside of an extension bar and its usual lengths (from memory)
 * [ISO3318] largest width of the head of an open spanner, 2.1 s + 7 mm (from memory); thickness and length as DIN 3110
 *           has them, near enough (from memory)
 *
 * Rings of combination spanners are usual ones, not the largest: outside 1.5 s + 1.5 mm, handle rising 15° (common
 * practice, no source).
 */
import type { Metre } from '../units/quantity.ts';
import type { Thread } from './thread.ts';

export interface Hexagon {
  readonly flats: Metre;
  readonly height: Metre;
}

export interface Socket {
  /** Square that drives it. */
  readonly drive: Metre;
  /** Largest outside over the nut, and at the drive. */
  readonly atNut: Metre;
  readonly atDrive: Metre;
  readonly length: Metre;
  /** Bar that turns it: largest outside of its ends, and of its shank. */
  readonly bar: { readonly ends: Metre; readonly shank: Metre; readonly lengths: readonly Metre[] };
  /** Ratchet: its head, and its handle square to it (usual ones; common practice, no source). */
  readonly ratchet: {
    readonly across: Metre;
    readonly high: Metre;
    readonly handle: Metre;
    readonly thick: Metre;
  };
}

export interface OpenSpanner {
  /** Across the jaws. */
  readonly width: Metre;
  readonly thickness: Metre;
  readonly length: Metre;
  readonly handle: Metre;
}

export interface RingSpanner {
  /** Outside of the ring, and its height along the stud. */
  readonly across: Metre;
  readonly high: Metre;
  readonly handle: Metre;
  readonly thickness: Metre;
  readonly length: Metre;
  /** Rise of its handle from the plane of the ring, degrees. */
  readonly riseDeg: number;
}

const MM = 1e-3;
const INCH = 0.0254;

/** Flats and height by nominal diameter, mm. */
const METRIC: Readonly<Record<number, readonly [number, number]>> = {
  5: [8, 4.7],
  6: [10, 5.2],
  8: [13, 6.8],
  10: [16, 8.4],
  12: [18, 10.8],
  14: [21, 12.8],
  16: [24, 14.8],
};

/** Flats and height by nominal diameter, inches. */
const UNIFIED: readonly (readonly [number, number, number])[] = [
  [1 / 4, 7 / 16, 0.226],
  [5 / 16, 1 / 2, 0.273],
  [3 / 8, 9 / 16, 0.337],
  [7 / 16, 11 / 16, 0.385],
  [1 / 2, 3 / 4, 0.448],
];

/** The standard nut of a thread. */
export function hexagonOf({ form, major }: Thread): Hexagon | undefined {
  if (form === 'ISO metric') {
    const row = METRIC[Math.round(major / MM)];
    return row === undefined ? undefined : { flats: row[0] * MM, height: row[1] * MM };
  }
  const row = UNIFIED.find(([size]) => Math.abs(size * INCH - major) < 1e-5);
  return form !== 'unified' || row === undefined
    ? undefined
    : { flats: row[1] * INCH, height: row[2] * INCH };
}

/** Flats, outside at the nut, mm; the same for both of the smaller drives. */
const SOCKETS: readonly (readonly [number, number])[] = [
  [6, 9.6],
  [7, 11],
  [8, 12.2],
  [9, 13.5],
  [10, 14.7],
  [11, 16],
  [12, 17.2],
  [13, 18.5],
  [14, 19.7],
  [15, 21],
  [16, 22.2],
  [17, 23.5],
  [18, 24.7],
  [19, 26],
  [21, 29.2],
  [22, 30.5],
  [24, 33],
];

/** By square drive, mm: least and largest hexagon, outside at the drive, length; bar; ratchet. */
const DRIVES = [
  {
    drive: 6.3,
    from: 6,
    to: 14,
    at: 14,
    length: 25,
    bar: { ends: 13, shank: 8, lengths: [50, 100, 150] },
    ratchet: { across: 25, high: 22, handle: 130, thick: 12 },
  },
  {
    drive: 10,
    from: 6,
    to: 19,
    at: 20,
    length: 32,
    bar: { ends: 20, shank: 12, lengths: [75, 125, 250] },
    ratchet: { across: 34, high: 28, handle: 180, thick: 16 },
  },
  {
    drive: 12.5,
    from: 21,
    to: 24,
    at: 28,
    length: 46,
    bar: { ends: 28, shank: 16, lengths: [75, 125, 250] },
    ratchet: { across: 42, high: 36, handle: 250, thick: 20 },
  },
] as const;

/** Inch hexagons take the row of the next larger one, within this. */
const NEXT = 1.1 * MM;

/** Sockets that fit, the smallest drive first. */
export function socketsFor(flats: Metre): readonly Socket[] {
  const row = SOCKETS.find(([s]) => s * MM > flats - 1e-6);
  if (row === undefined || row[0] * MM - flats > NEXT) return [];
  const [size, outside] = row;
  return DRIVES.filter(({ from, to }) => size >= from && size <= to).map(
    ({ drive, at, length, bar, ratchet }) => ({
      drive: drive * MM,
      atNut: outside * MM,
      atDrive: Math.max(at, outside) * MM,
      length: length * MM,
      bar: { ends: bar.ends * MM, shank: bar.shank * MM, lengths: bar.lengths.map((each) => each * MM) },
      ratchet: {
        across: ratchet.across * MM,
        high: ratchet.high * MM,
        handle: ratchet.handle * MM,
        thick: ratchet.thick * MM,
      },
    }),
  );
}

export const openSpannerFor = (flats: Metre): OpenSpanner => ({
  width: 2.1 * flats + 7 * MM,
  thickness: 0.35 * flats + 2 * MM,
  length: 12 * flats,
  handle: flats,
});

export const ringSpannerFor = (flats: Metre): RingSpanner => ({
  across: 1.5 * flats + 1.5 * MM,
  high: 0.5 * flats + 3 * MM,
  handle: 0.8 * flats,
  thickness: 0.3 * flats + 2 * MM,
  length: 12 * flats,
  riseDeg: 15,
});

/** A short one, as it is kept for such places (common practice, no source). */
export const STUBBY: Metre = 0.1;
