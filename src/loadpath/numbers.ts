/**
 * The car's numbers as one computation sees them: as filed, or with some moved by their uncertainty.
 *
 * A computation asks for readings through here, so that it can also be told which readings it leaned on.
 */
import type { PointReading } from '../car/place.ts';
import type { Vec3 } from '../maths/vec3.ts';
import type { Reading } from '../measured/reading.ts';
import type { Origin } from '../working/working.ts';

export class Numbers {
  readonly #values: Float64Array;
  /** Indices of the readings that were asked for, when somebody wants to know. */
  readonly asked: Set<number> | undefined;

  constructor(values: Float64Array, asked?: Set<number>) {
    this.#values = values;
    this.asked = asked;
  }

  of(reading: Reading): number {
    this.asked?.add(reading.index);
    return this.#values[reading.index]!;
  }

  /** The reading's number, or what stands for one that the file leaves out. */
  or(reading: Reading | undefined, otherwise: number): number {
    return reading === undefined ? otherwise : this.of(reading);
  }

  point(point: PointReading): Vec3 {
    const y = this.of(point.y);
    return [this.of(point.x), point.mirrored ? -y : y, this.of(point.z)];
  }
}

/** The origin that a working shows for a reading. */
export const fromReading = (reading: Reading): Origin => ({ kind: 'reading', path: reading.path });

/** Origin of an optional reading, or of the table that stands for it. */
export const fromReadingOr = (reading: Reading | undefined, table: string): Origin =>
  reading === undefined ? { kind: 'table', name: table } : fromReading(reading);
