/**
 * Gives every reading of the file its place in the car's list of numbers.
 *
 * The figures are worked out from that list, so that moving one number moves everything that leans on it. A
 * mirrored reading has no number of its own: it points at its original.
 */

import type { Vec3 } from '../maths/vec3.ts';
import { type InstrumentClass, instrumentClass, ownUncertainty } from '../measured/instrument.ts';
import type { Reading, SpreadOrigin } from '../measured/reading.ts';
import { readAmount } from '../units/read.ts';
import type { FieldNotes, RawAmount, RawPoint, Stamp } from './field.ts';
import type { Path } from './schema.ts';
import type { Mirrored } from './spec.ts';

/** A point whose three co-ordinates stand next to one another in the list of numbers. */
export interface PointReading {
  readonly x: Reading;
  readonly y: Reading;
  readonly z: Reading;
  readonly path: string;
  readonly means: string;
  /** As filed, metres, with y turned round on a mirrored side. */
  readonly value: Vec3;
  readonly mirrored: boolean;
  readonly surveyed: boolean;
}

/** The file's form with readings in the place of raw amounts. */
export type Placed<T> = T extends RawAmount
  ? Reading
  : T extends RawPoint
    ? PointReading
    : T extends readonly [number, number, number]
      ? T
      : T extends readonly (infer U)[]
        ? readonly Placed<U>[]
        : T extends object
          ? { readonly [K in keyof T]: Placed<T[K]> }
          : T;

export interface Instruments {
  readonly [name: string]: { readonly class: string; readonly spread?: string | undefined } | undefined;
}

export interface Placing<T> {
  readonly car: Placed<T>;
  readonly readings: readonly Reading[];
  readonly values: Float64Array;
  /** Readings that name an instrument which the file does not describe. */
  readonly unknownInstruments: readonly { readonly path: Path; readonly name: string }[];
}

export const pathText = (path: Path): string => path.join('.');

/** Where the survey's point of this name stands; called for points that the file says are `surveyed`. */
export type Surveyed = (path: string) => { readonly value: Vec3; readonly u: Vec3 } | undefined;

export function placeReadings<T>(
  raw: T,
  instruments: Instruments,
  taken: Mirrored['taken'],
  surveyed: Surveyed,
): Placing<T> {
  const readings: Reading[] = [];
  const byPath = new Map<string, Reading>();
  const unknownInstruments: { path: Path; name: string }[] = [];

  const original = (path: Path): Path | undefined => {
    const mirror = taken.find((each) => each.path.every((key, index) => key === path[index]));
    return mirror === undefined ? undefined : [...mirror.from, ...path.slice(mirror.path.length)];
  };

  /** A new reading, or the other side's under this path's name. */
  const put = (
    path: Path,
    from: Path | undefined,
    turned: boolean,
    make: () => Omit<Reading, 'index' | 'path' | 'mirrored'>,
  ): Reading => {
    const twin = from === undefined ? undefined : byPath.get(pathText(from));
    const name = pathText(path);
    if (twin !== undefined) {
      const mirrored = { ...twin, path: name, mirrored: true, value: turned ? -twin.value : twin.value };
      byPath.set(name, mirrored);
      return mirrored;
    }
    const reading = { ...make(), index: readings.length, path: name, mirrored: false };
    readings.push(reading);
    byPath.set(name, reading);
    return reading;
  };

  const quality = (
    value: number,
    stated: number | undefined,
    notes: FieldNotes,
    stamp: Stamp,
    path: Path,
  ): { u: number; shared: number; spread: SpreadOrigin } => {
    const named =
      stamp.with !== undefined && Object.hasOwn(instruments, stamp.with)
        ? instruments[stamp.with]
        : undefined;
    if (stamp.with !== undefined && named === undefined && instrumentClass(stamp.with) === undefined) {
      unknownInstruments.push({ path, name: stamp.with });
    }
    const kind = instrumentClass(named?.class ?? stamp.with ?? notes.usual) ?? instrumentClass(notes.usual)!;
    if (stated !== undefined) return { u: stated, shared: 0, spread: { kind: 'stated' } };
    return { ...uncertainty(value, kind, notes.si, named?.spread), spread: origin(stamp, kind) };
  };

  const amount = (raw: RawAmount, path: Path): Reading =>
    put(path, original(path), false, () => ({
      means: raw.notes.means,
      value: raw.value,
      unit: raw.notes.si,
      text: raw.text,
      ...quality(raw.value, raw.u, raw.notes, raw.stamp, path),
      ...stampOf(raw.stamp),
    }));

  const point = (raw: RawPoint, path: Path): PointReading => {
    const from = original(path);
    const placed = raw.value === 'surveyed' ? surveyed(pathText(from ?? path)) : undefined;
    const value: Vec3 =
      raw.value === 'surveyed' ? (placed?.value ?? [Number.NaN, Number.NaN, Number.NaN]) : raw.value;
    const axis = (name: 'x' | 'y' | 'z', k: 0 | 1 | 2): Reading =>
      put([...path, name], from === undefined ? undefined : [...from, name], name === 'y', () => ({
        means: `${raw.notes.means}, ${name}`,
        value: value[k],
        unit: 'm',
        text: raw.text,
        ...(placed === undefined
          ? quality(value[k], raw.u, raw.notes, raw.stamp, path)
          : { u: placed.u[k], shared: 0, spread: { kind: 'stated' } as const }),
        ...stampOf(raw.stamp),
      }));
    const [x, y, z] = [axis('x', 0), axis('y', 1), axis('z', 2)];
    return {
      x,
      y,
      z,
      path: pathText(path),
      means: raw.notes.means,
      value: [x.value, y.value, z.value],
      mirrored: x.mirrored,
      surveyed: raw.value === 'surveyed',
    };
  };

  const walk = (node: unknown, path: Path): unknown => {
    if (Array.isArray(node)) return node.map((each, index) => walk(each, [...path, index]));
    if (typeof node !== 'object' || node === null) return node;
    if ('kind' in node && node.kind === 'amount' && 'notes' in node) return amount(node as RawAmount, path);
    if ('kind' in node && node.kind === 'point' && 'notes' in node) return point(node as RawPoint, path);
    // the left-hand side goes first, so that a mirrored right finds its originals
    const keys = Object.keys(node).sort((a, b) => Number(a === 'right') - Number(b === 'right'));
    return Object.fromEntries(
      keys.map((key) => [key, walk((node as Record<string, unknown>)[key], [...path, key])]),
    );
  };

  const car = walk(raw, []) as Placed<T>;
  return { car, readings, values: Float64Array.from(readings, (each) => each.value), unknownInstruments };
}

function uncertainty(
  value: number,
  kind: InstrumentClass,
  si: string,
  spread?: string,
): { u: number; shared: number } {
  const known = spread === undefined ? undefined : readAmount(spread, si);
  if (known?.ok) return { u: known.is.value, shared: kind.shared };
  return { u: ownUncertainty(kind, value, si), shared: kind.shared };
}

function origin(stamp: Stamp, kind: InstrumentClass): SpreadOrigin {
  if (kind.name === 'counted') return { kind: 'exact' };
  return stamp.with === undefined
    ? { kind: 'usual', class: kind.name }
    : { kind: 'instrument', instrument: stamp.with, class: kind.name };
}

const stampOf = (stamp: Stamp) => ({
  ...(stamp.with === undefined ? {} : { instrument: stamp.with }),
  ...(stamp.by === undefined ? {} : { by: stamp.by }),
  ...(stamp.on === undefined ? {} : { on: stamp.on }),
  ...(stamp.note === undefined ? {} : { note: stamp.note }),
});
