/** Which readings, words and tables belong to a stop, what the car file's description says of each, and how they stand. */
import type { FieldNotes } from '../../car/field.ts';
import { type SchemaNode, schemaAt } from '../../car/schema.ts';
import type { Reading } from '../../measured/reading.ts';
import type { Stop, Wheel } from '../../questions/figure.ts';
import type { Car } from '../../questions/index.ts';

export type Path = readonly (string | number)[];

export interface ReadingOf {
  readonly kind: 'amount' | 'point';
  readonly path: Path;
  readonly notes: FieldNotes;
  /** As it stands in the file; undefined where the file has none. */
  readonly reading?: Reading | undefined;
  readonly surveyed: boolean;
}

export interface WordOf {
  readonly kind: 'word';
  readonly path: Path;
  readonly means: string;
  /** What may be chosen; left out where any word will do. */
  readonly of?: readonly string[];
  readonly stands?: string | undefined;
}

export interface TableOf {
  readonly kind: 'table';
  readonly path: Path;
  readonly means: string;
  readonly columns: readonly { readonly key: string; readonly notes: FieldNotes }[];
  readonly rows: readonly Readonly<Record<string, Reading>>[];
}

/** A part that the file does not have and may have. */
export interface PartOf {
  readonly kind: 'part';
  readonly path: Path;
  readonly node: SchemaNode;
}

export type Field = ReadingOf | WordOf | TableOf | PartOf;

const points = (...names: string[]): readonly string[] => names.map((name) => `points.${name}`);
const joints = (...names: string[]): readonly string[] => names.map((name) => `joints.${name}`);

/** Below the wheel's own part of the file. */
const OF_CORNER: Readonly<Partial<Record<Stop, readonly string[]>>> = {
  tyre: ['wheel', 'scale', 'unsprung'],
  upright: [
    ...points('upperOuter', 'lowerOuter', 'toeOuter', 'wheelCentre'),
    ...joints('upperOuter', 'lowerOuter'),
  ],
  links: [
    'rod',
    ...points('upperFront', 'upperRear', 'lowerFront', 'lowerRear', 'toeInner', 'rodOuter', 'dropLinkArm'),
    'toeLink',
    ...joints('toeInner', 'toeOuter', 'rodOuter', 'rodInner'),
  ],
  rocker: points('rockerPivot', 'rockerAxis', 'rodInner', 'damperRocker', 'dropLinkRocker', 'heaveRocker'),
  spring: ['bar', 'coil', 'damper', 'bumpRubber', ...points('damperTub', 'barAnchor')],
};

/** Below the axle's. */
const OF_AXLE: Readonly<Partial<Record<Stop, readonly string[]>>> = {
  links: ['steering'],
  spring: ['antiRollBar', 'heave'],
};

/** Fields of the stop for one wheel: those of parts that the car has, then the parts that it could have. */
export function fieldsOf(car: Car, stop: Stop, { end, side }: Wheel): readonly Field[] {
  const of = (above: Path, roots: readonly string[] = []): readonly Field[] =>
    roots.flatMap((root) => fieldsAt(car, [...above, ...root.split('.')]));
  const all = [...of([end, side], OF_CORNER[stop]), ...of([end], OF_AXLE[stop])];
  return [...all.filter((field) => field.kind !== 'part'), ...all.filter((field) => field.kind === 'part')];
}

function fieldsAt(car: Car, path: Path): readonly Field[] {
  const node = schemaAt(path);
  if (node === undefined) return [];
  const there = valueAt(car.form, path);
  if (node.reading !== undefined) return [readingOf(node.reading, path, there)];
  const word = wordOf(node);
  if (word !== undefined) return [{ kind: 'word', path, ...word, stands: there as string | undefined }];
  if (node.items !== undefined) return tableOf(node, path, there);
  if (there === undefined && leavesOf(node).length > 0) return [{ kind: 'part', path, node }];
  return Object.keys(node.properties ?? {}).flatMap((key) => fieldsAt(car, [...path, key]));
}

function readingOf(
  { kind, ...notes }: NonNullable<SchemaNode['reading']>,
  path: Path,
  there: unknown,
): ReadingOf {
  const placed = there as { x?: Reading; surveyed?: boolean } | undefined;
  const reading = kind === 'point' ? placed?.x : (there as Reading | undefined);
  return { kind, path, notes, reading, surveyed: placed?.surveyed === true };
}

/** A word out of a list, or any word; `mirrored` is no choice of its own here. */
export function wordOf(node: SchemaNode): Pick<WordOf, 'means' | 'of'> | undefined {
  if (node.reading !== undefined || node.title === undefined || node.items !== undefined) return undefined;
  if (node.enum !== undefined)
    return { means: node.title, of: node.enum.filter((each) => each !== 'mirrored') };
  return node.properties === undefined ? { means: node.title } : undefined;
}

function tableOf(node: SchemaNode, path: Path, there: unknown): readonly TableOf[] {
  const columns = columnsOf(node);
  if (columns.length === 0) return [];
  const rows = (there ?? []) as TableOf['rows'];
  return [{ kind: 'table', path, means: node.title ?? '', columns, rows }];
}

export const columnsOf = (node: SchemaNode): TableOf['columns'] =>
  Object.entries(node.items?.properties ?? {}).flatMap(([key, { reading: notes }]) =>
    notes === undefined ? [] : [{ key, notes }],
  );

/** A leaf that a new part must have, or may. */
export interface Leaf {
  readonly path: Path;
  readonly node: SchemaNode;
}

/** What must be given for a part to stand, down to its readings, words and tables. */
export function leavesOf(node: SchemaNode, above: Path = []): readonly Leaf[] {
  return (node.required ?? []).flatMap((key) => {
    const child = node.properties?.[key];
    if (child === undefined) return [];
    const path = [...above, key];
    return child.properties === undefined ? [{ path, node: child }] : leavesOf(child, path);
  });
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
