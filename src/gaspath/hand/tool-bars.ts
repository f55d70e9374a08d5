/**
 * Tools on a nut as round bars and discs with flat ends. mm; angles in degrees.
 *
 * In    the nut on its stud, the tool, the way its handle points
 * Out   the bars that must be clear of all; a pipe is held off the same that a look at the nuts asks
 *
 * GP-n are the equations of docs/theory/gas-path.md.
 */
import { add, along, cross, scale, type Vec3 } from '../../maths/vec3.ts';

export interface Nut {
  /** On the axis of the stud, at the face that the nut sits on. */
  readonly at: Vec3;
  /** Unit, out along the stud. */
  readonly axis: Vec3;
  /** Unit, square to it: from which spanners are turned. */
  readonly across: Vec3;
  readonly height: number;
  /** Stud beyond the face that the nut sits on. */
  readonly standsOut: number;
}

export interface SocketSize {
  readonly atNut: number;
  readonly atDrive: number;
  readonly length: number;
  readonly bar: { readonly ends: number; readonly shank: number; readonly lengths: readonly number[] };
  readonly ratchet: {
    readonly across: number;
    readonly high: number;
    readonly handle: number;
    readonly thick: number;
  };
}

export interface SpannerSize {
  readonly flats: number;
  readonly width: number;
  readonly thickness: number;
  readonly handle: number;
  readonly length: number;
}

export interface RingSize {
  /** Outside of the ring, and its height along the stud. */
  readonly across: number;
  readonly high: number;
  /** Handle: width, thickness, from the middle of the ring to its end, and its rise from the plane of the ring. */
  readonly handle: number;
  readonly thickness: number;
  readonly length: number;
  readonly riseDeg: number;
}

/** A round bar or disc. */
export interface Bar {
  readonly a: Vec3;
  readonly axis: Vec3;
  readonly long: number;
  readonly r: number;
}

/** Air that a tool needs all round, mm. */
export const PLAY = 0.5;

/** Square to the stud, turned from `across`. */
export function wayAt({ axis, across }: Nut, degrees: number): Vec3 {
  const angle = (degrees * Math.PI) / 180;
  return add(scale(across, Math.cos(angle)), scale(cross(axis, across), Math.sin(angle)));
}

/** A socket from where it is put over the end of the stud to where it sits.  [GP-3] */
export function socketPushed({ at, axis, standsOut }: Nut, size: SocketSize): readonly Bar[] {
  const half = size.length / 2;
  return [
    { a: at, axis, long: half, r: size.atNut / 2 },
    {
      a: along(at, axis, half),
      axis,
      long: size.length + standsOut - half,
      r: Math.max(size.atNut, size.atDrive) / 2,
    },
  ];
}

/** Bar and ratchet head behind a socket that sits; a bar of 0 is the ratchet on the socket itself. */
export function socketBehind({ at, axis }: Nut, size: SocketSize, bar: number): readonly Bar[] {
  const end = along(at, axis, size.length + bar);
  return [
    ...(bar === 0
      ? []
      : [
          { a: along(at, axis, size.length), axis, long: bar, r: size.bar.shank / 2 },
          { a: along(end, axis, -size.bar.ends), axis, long: size.bar.ends, r: size.bar.ends / 2 },
        ]),
    { a: end, axis, long: size.ratchet.high, r: size.ratchet.across / 2 },
  ];
}

export function ratchetHandle({ at, axis }: Nut, size: SocketSize, bar: number, way: Vec3): Bar {
  const { ratchet } = size;
  const middle = along(at, axis, size.length + bar + ratchet.high / 2);
  return {
    a: along(middle, way, ratchet.across / 2),
    axis: way,
    long: ratchet.handle,
    r: ratchet.thick / 2,
  };
}

/** An open spanner on its nut: jaws from their tips to their root, the root between them, the flat handle.  [GP-4] */
export function openSpannerOn({ at, axis, height }: Nut, size: SpannerSize, way: Vec3): readonly Bar[] {
  const foot = along(at, axis, Math.max(PLAY, (height - size.thickness) / 2));
  const middle = along(foot, axis, size.thickness / 2);
  const jaw = (size.width - size.flats) / 4;
  const side = cross(axis, way);
  const disc = (ahead: number, aside: number): Bar => ({
    a: along(along(foot, way, ahead), side, aside),
    axis,
    long: size.thickness,
    r: jaw,
  });
  const aside = size.flats / 2 + jaw;
  const root = size.flats / 2 + 2 * jaw;
  return [
    ...[-size.flats / 2 + jaw, 0, size.flats / 2].flatMap((x) => [disc(x, aside), disc(x, -aside)]),
    ...[-1, 0, 1].map((k) => disc(size.flats / 2 + jaw, (k * size.flats) / 2)),
    ...flatBar(along(middle, way, root), way, side, size, size.length - root),
  ];
}

/** A ring from where it is put over the end of the stud to where it sits.  [GP-7] */
export const ringPushed = ({ at, axis, standsOut }: Nut, { across, high }: RingSize): Bar => ({
  a: along(at, axis, PLAY),
  axis,
  long: standsOut + high - PLAY,
  r: across / 2,
});

/** Heights of the ring over its seat: on the nut, off its hexagon to be turned back, over the end of the stud. */
const ringLifts = ({ height, standsOut }: Nut): readonly number[] => [
  PLAY,
  ...(height < standsOut ? [height] : []),
  standsOut,
];

/** Handle of a ring spanner, on the nut and as it is lifted.  [GP-7] */
export function ringHandle(nut: Nut, size: RingSize, way: Vec3): readonly Bar[] {
  const { at, axis } = nut;
  const rise = (size.riseDeg * Math.PI) / 180;
  const out = add(scale(way, Math.cos(rise)), scale(axis, Math.sin(rise)));
  const side = cross(axis, way);
  return ringLifts(nut).flatMap((lift) => {
    const middle = along(at, axis, lift + size.high / 2);
    return flatBar(along(middle, out, size.across / 2), out, side, size, size.length - size.across / 2);
  });
}

/** A flat bar as its middle and both edges. */
function flatBar(
  a: Vec3,
  axis: Vec3,
  side: Vec3,
  { handle, thickness }: { readonly handle: number; readonly thickness: number },
  long: number,
): readonly Bar[] {
  const r = thickness / 2;
  return [0, 1, -1].map((k) => ({
    a: along(a, side, k * Math.max(0, handle / 2 - r)),
    axis,
    long,
    r,
  }));
}
