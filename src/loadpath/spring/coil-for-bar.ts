/**
 * Coil for bar: the coil spring whose torque at the rocker comes nearest to the bar's over the whole travel.
 *
 * In    the bar's torque over the travel; how far the coil's seats have come together, and how fast, there
 * Out   rate and preload that fit best, or the best of the coils on the rack; both curves and what is left
 * Axes  angle, compression and torque positive in bump
 *
 * The coil's torque is R·(q − q_0)·dq/dθ: linear in R and in R·q_0, so the fit is one 2 × 2 system.  [SP-53]
 */
import type {
  Metre,
  Newton,
  NewtonMetre,
  NewtonPerMetre,
  Quantity,
  Radian,
  Ratio,
} from '../../units/quantity.ts';

export interface SeatPoint {
  readonly rockerAngle: Radian;
  /** What the bar does there. */
  readonly torque: NewtonMetre;
  /** How far the seats have come together from the length `seatLength`. */
  readonly compression: Metre;
  /** Compression per rocker angle, dq/dθ. */
  readonly compressionPerAngle: Quantity<'m/rad'>;
  readonly weight?: number;
}

export interface RackCoil {
  readonly name: string;
  readonly rate: NewtonPerMetre;
  readonly freeLength: Metre;
  readonly solidLength: Metre;
}

export interface CoilFit {
  readonly name?: string;
  readonly rate: NewtonPerMetre;
  /** Compression at which the coil is free. */
  readonly freeAt: Metre;
  /** Free length, from the distance of the seats at no compression; for a rack coil where the platform must go. */
  readonly freeLength: Metre;
  /** Distance of the seats, at compression 0, at which this coil does best. */
  readonly seatLength: Metre;
  readonly points: readonly {
    readonly rockerAngle: Radian;
    readonly bar: NewtonMetre;
    readonly coil: NewtonMetre;
    readonly difference: NewtonMetre;
  }[];
  readonly worst: { readonly rockerAngle: Radian; readonly difference: NewtonMetre; readonly part: Ratio };
  readonly rms: NewtonMetre;
  readonly greatestForce: Newton;
  /** Angle below which the coil would have to pull: there it comes off its seat. Undefined when it never does. */
  readonly unseatsBelow: Radian | undefined;
  /** Length left at full bump before the coils meet; undefined where the solid length is not known. */
  readonly bindMargin: Metre | undefined;
}

/** The best coil there could be: rate and free length by weighted least squares.  [SP-53] */
export function coilForBar(points: readonly SeatPoint[], seatLength: Metre): CoilFit {
  let aa = 0;
  let ab = 0;
  let bb = 0;
  let at = 0;
  let bt = 0;
  for (const point of points) {
    const w = point.weight ?? 1;
    const a = point.compression * point.compressionPerAngle;
    const b = -point.compressionPerAngle;
    aa += w * a * a;
    ab += w * a * b;
    bb += w * b * b;
    at += w * a * point.torque;
    bt += w * b * point.torque;
  }
  const determinant = aa * bb - ab * ab;
  if (!(determinant > 1e-12 * aa * bb)) throw new Error('the compressions along the travel must differ');
  const rate = (at * bb - bt * ab) / determinant;
  const freeAt = (bt * aa - at * ab) / determinant / rate;
  return judged(points, { rate, freeAt, freeLength: seatLength - freeAt, seatLength });
}

/** Coils of the rack, best first, each with the seat that suits it best. */
export function coilsOfRack(points: readonly SeatPoint[], rack: readonly RackCoil[]): readonly CoilFit[] {
  const fits = rack.map((coil) => {
    let top = 0;
    let bottom = 0;
    for (const point of points) {
      const w = (point.weight ?? 1) * point.compressionPerAngle;
      // least squares in freeAt alone: the derivative of the torque by it is −R·dq/dθ
      top += w * (coil.rate * point.compression * point.compressionPerAngle - point.torque);
      bottom += w * coil.rate * point.compressionPerAngle;
    }
    const freeAt = top / bottom;
    return judged(points, {
      name: coil.name,
      rate: coil.rate,
      freeAt,
      freeLength: coil.freeLength,
      seatLength: coil.freeLength + freeAt,
      solidLength: coil.solidLength,
    });
  });
  return fits.sort((a, b) => a.rms - b.rms);
}

function judged(
  points: readonly SeatPoint[],
  coil: Pick<CoilFit, 'rate' | 'freeAt' | 'freeLength' | 'seatLength'> & {
    readonly name?: string;
    readonly solidLength?: Metre;
  },
): CoilFit {
  const rows = points.map((point) => {
    const force = coil.rate * (point.compression - coil.freeAt);
    const torque = force * point.compressionPerAngle;
    return {
      rockerAngle: point.rockerAngle,
      bar: point.torque,
      coil: torque,
      difference: torque - point.torque,
      force,
      weight: point.weight ?? 1,
    };
  });
  const worst = rows.reduce((a, b) => (Math.abs(b.difference) > Math.abs(a.difference) ? b : a));
  const greatest = Math.max(...rows.map((row) => Math.abs(row.bar)));
  const square = rows.reduce((sum, row) => sum + row.weight * row.difference ** 2, 0);
  const weights = rows.reduce((sum, row) => sum + row.weight, 0);
  const pulling = rows.filter((row) => row.force < 0).map((row) => row.rockerAngle);
  const shortest = coil.seatLength - Math.max(...points.map((point) => point.compression));
  return {
    ...(coil.name === undefined ? {} : { name: coil.name }),
    rate: coil.rate,
    freeAt: coil.freeAt,
    freeLength: coil.freeLength,
    seatLength: coil.seatLength,
    points: rows.map(({ rockerAngle, bar, coil: torque, difference }) => ({
      rockerAngle,
      bar,
      coil: torque,
      difference,
    })),
    worst: {
      rockerAngle: worst.rockerAngle,
      difference: worst.difference,
      part: worst.difference / greatest,
    },
    rms: Math.sqrt(square / weights),
    greatestForce: Math.max(...rows.map((row) => row.force)),
    unseatsBelow: pulling.length === 0 ? undefined : Math.max(...pulling),
    bindMargin: coil.solidLength === undefined ? undefined : shortest - coil.solidLength,
  };
}
