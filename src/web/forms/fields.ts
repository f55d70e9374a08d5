/** Which readings belong to a stop, what the car file's description says of each, and how they stand now. */
import type { FieldNotes } from '../../car/field.ts';
import { type SchemaNode, schemaAt } from '../../car/schema.ts';
import type { Reading } from '../../measured/reading.ts';
import type { Stop, Wheel } from '../../questions/figure.ts';
import type { Car } from '../../questions/index.ts';

export type Path = readonly (string | number)[];

export interface Field {
  readonly path: Path;
  readonly kind: 'amount' | 'point';
  readonly notes: FieldNotes;
  /** As it stands in the file; undefined where the file has none. */
  readonly reading?: Reading | undefined;
  readonly surveyed: boolean;
}

const points = (...names: string[]): readonly string[] => names.map((name) => `points.${name}`);

const ROOTS: Readonly<Partial<Record<Stop, readonly string[]>>> = {
  tyre: ['wheel', 'scale', 'unsprung'],
  upright: [
    ...points('upperOuter', 'lowerOuter', 'toeOuter', 'wheelCentre'),
    'joints.upperOuter',
    'joints.lowerOuter',
  ],
  links: [
    ...points('upperFront', 'upperRear', 'lowerFront', 'lowerRear', 'toeInner', 'rodOuter', 'dropLinkArm'),
    'rod',
    'toeLink',
    'joints.toeInner',
    'joints.toeOuter',
    'joints.rodOuter',
    'joints.rodInner',
  ],
  rocker: points('rockerPivot', 'rockerAxis', 'rodInner', 'damperRocker', 'dropLinkRocker', 'heaveRocker'),
  spring: ['bar', 'coil', 'damper', 'bumpRubber', ...points('damperTub')],
};

/** Fields of the stop for one wheel, those of parts that the car has. */
export function fieldsOf(car: Car, stop: Stop, wheel: Wheel): readonly Field[] {
  return (ROOTS[stop] ?? []).flatMap((root) => {
    const path = [wheel.end, wheel.side, ...root.split('.')];
    const there = valueAt(car.form, path);
    const node = schemaAt(path);
    // a part that the car does not have asks for nothing
    if (node === undefined || (there === undefined && node.reading === undefined)) return [];
    return fieldsUnder(car, path, node);
  });
}

function fieldsUnder(car: Car, path: Path, node: SchemaNode): readonly Field[] {
  const { reading: notes } = node;
  if (notes !== undefined) {
    const value = valueAt(car.form, path);
    const placed = value as { x?: Reading; surveyed?: boolean } | undefined;
    const reading = notes.kind === 'point' ? placed?.x : (value as Reading | undefined);
    return [{ path, kind: notes.kind, notes, reading, surveyed: placed?.surveyed === true }];
  }
  return Object.entries(node.properties ?? {}).flatMap(([key, child]) =>
    child.items === undefined && valueAt(car.form, path) !== undefined
      ? fieldsUnder(car, [...path, key], child)
      : [],
  );
}

function valueAt(form: unknown, path: Path): unknown {
  let at = form;
  for (const key of path) {
    if (typeof at !== 'object' || at === null) return undefined;
    at = (at as Record<string | number, unknown>)[key];
  }
  return at;
}

/** Where a change is written: in the file itself, or among the changes of the spec that is open. */
export const keptAt = (car: Car, path: Path): Path =>
  car.spec === car.specs[0] ? path : ['specs', car.spec, 'changes', ...path];
