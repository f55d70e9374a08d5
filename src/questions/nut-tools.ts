/** Tools for the nuts of the flanges, in the millimetres of whoever lays them about a nut. */
import type { RingSize, SocketSize, SpannerSize } from '../gaspath/hand/tools.ts';
import { openSpannerFor, ringSpannerFor, STUBBY, socketsFor } from '../materials/spanner.ts';
import type { Metre } from '../units/quantity.ts';

export interface NutTools {
  /** The smallest drive first. `drive`: its square, metres. */
  readonly sockets: readonly (SocketSize & { readonly drive: Metre })[];
  /** Of usual length first, then a stubby one where that is shorter. */
  readonly open: readonly SpannerSize[];
  readonly rings: readonly RingSize[];
}

const MM = 1000;

/** @param flats  across flats; none of the tools where the table has no socket for it */
export function nutTools(flats: Metre): NutTools {
  const open = openSpannerFor(flats);
  const ring = ringSpannerFor(flats);
  const lengths = (usual: Metre): readonly Metre[] => (usual > STUBBY ? [usual, STUBBY] : [usual]);
  return {
    sockets: socketsFor(flats).map(({ drive, atNut, atDrive, length, bar, ratchet }) => ({
      drive,
      atNut: atNut * MM,
      atDrive: atDrive * MM,
      length: length * MM,
      bar: {
        ends: bar.ends * MM,
        shank: bar.shank * MM,
        lengths: bar.lengths.map((long) => long * MM),
      },
      ratchet: {
        across: ratchet.across * MM,
        high: ratchet.high * MM,
        handle: ratchet.handle * MM,
        thick: ratchet.thick * MM,
      },
    })),
    open: lengths(open.length).map((length) => ({
      flats: flats * MM,
      width: open.width * MM,
      thickness: open.thickness * MM,
      handle: open.handle * MM,
      length: length * MM,
    })),
    rings: lengths(ring.length).map((length) => ({
      across: ring.across * MM,
      high: ring.high * MM,
      handle: ring.handle * MM,
      thickness: ring.thickness * MM,
      length: length * MM,
      riseDeg: ring.riseDeg,
    })),
  };
}
