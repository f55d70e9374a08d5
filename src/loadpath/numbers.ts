/**
 * The car's numbers as one computation sees them: as filed, or with one moved by its uncertainty.
 *
 * A computation asks for readings through here, so that it can be told which readings it leaned on, and so that a
 * part of it that none of the moved numbers touches is not worked out again.
 */
import type { PointReading } from '../car/place.ts';
import type { Vec3 } from '../maths/vec3.ts';
import type { Reading } from '../measured/reading.ts';
import type { Origin } from '../working/working.ts';

interface Kept<T> {
  readonly part: T;
  readonly leaned: ReadonlySet<number>;
}

/** Parts that outlive a question, by the readings as filed, the name of the part, and which number moved to where. */
const LASTING = new WeakMap<Float64Array, Map<string, Map<string, unknown>>>();
const MOST_LASTING = 24;

function lastingParts(filed: Float64Array, name: string): Map<string, unknown> {
  const names = LASTING.get(filed) ?? new Map<string, Map<string, unknown>>();
  LASTING.set(filed, names);
  const here = names.get(name) ?? new Map<string, unknown>();
  // as the newest
  names.delete(name);
  names.set(name, here);
  if (names.size > MOST_LASTING) names.delete(names.keys().next().value!);
  return here;
}

export class Numbers {
  readonly #values: Float64Array;
  readonly #moved: { readonly index: number; readonly from: Numbers } | undefined;
  readonly #kept = new Map<string, Kept<unknown>>();
  readonly #shared = new Map<string, unknown>();
  /**
   * One set for each part being worked out; the outermost is what the whole leaned on. Numbers with one moved are
   * only ever worked through, never taken over from, so nothing is written down for them.
   */
  readonly #leaning: Set<number>[] = [new Set()];

  /** @param moved  which number differs from those of `from`, whose parts may be taken over */
  constructor(values: Float64Array, moved?: { readonly index: number; readonly from: Numbers }) {
    this.#values = values;
    this.#moved = moved;
  }

  /** Indices of all readings that were asked for. */
  get leaned(): ReadonlySet<number> {
    return this.#leaning[0]!;
  }

  of(reading: Reading): number {
    if (this.#moved === undefined) this.#leaning.at(-1)!.add(reading.index);
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

  /**
   * A part of the computation under a name of its own: worked out once, and taken over from the numbers as filed
   * where it did not lean on the one that moved. The part must hang on nothing but readings and its name.
   */
  part<T>(name: string, work: () => T): T {
    if (this.#moved !== undefined) return this.#takenOver<T>(name)?.part ?? this.#onceMoved(name, work);
    const here = this.#kept.get(name) ?? this.#keep(name, work);
    for (const index of here.leaned) this.#leaning.at(-1)!.add(index);
    return here.part as T;
  }

  /**
   * With one number moved: a part of the numbers as filed, such as a place to begin a search from. Undefined for the
   * numbers as filed themselves.
   */
  asFiled<T>(name: string, work: (filed: Numbers) => T): T | undefined {
    const from = this.#moved?.from;
    return from?.part(name, () => work(from));
  }

  /**
   * A part that is small and dear: with one number moved it outlives the question, so that the next one about the
   * same readings finds it. The oldest go when there are many.
   */
  lasting<T>(name: string, work: () => T): T {
    if (this.#moved === undefined) return this.part(name, work);
    const { index, from } = this.#moved;
    const kept = this.#takenOver<T>(name);
    if (kept !== undefined) return kept.part;
    const byMove = lastingParts(from.#values, name);
    const move = `${index}: ${this.#values[index]!}`;
    if (!byMove.has(move)) byMove.set(move, work());
    return byMove.get(move) as T;
  }

  #keep<T>(name: string, work: () => T): Kept<T> {
    const leaned = new Set<number>();
    this.#leaning.push(leaned);
    try {
      const kept = { part: work(), leaned };
      this.#kept.set(name, kept);
      return kept;
    } finally {
      this.#leaning.pop();
    }
  }

  /** With one number moved a part is still shared by all that ask for it. */
  #onceMoved<T>(name: string, work: () => T): T {
    const here = this.#shared.get(name);
    if (here !== undefined) return here as T;
    const part = work();
    this.#shared.set(name, part);
    return part;
  }

  #takenOver<T>(name: string): Kept<T> | undefined {
    const { index, from } = this.#moved!;
    const kept = from.#kept.get(name);
    return kept === undefined || kept.leaned.has(index) ? undefined : (kept as Kept<T>);
  }
}

/** The origin that a working shows for a reading. */
export const fromReading = (reading: Reading): Origin => ({ kind: 'reading', path: reading.path });

/** Origin of an optional reading, or of the table that stands for it. */
export const fromReadingOr = (reading: Reading | undefined, table: string): Origin =>
  reading === undefined ? { kind: 'table', name: table } : fromReading(reading);
