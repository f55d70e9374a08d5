/**
 * The car file's JSON Schema (draft 2020-12), made from the one description, and look-ups by path in it.
 *
 * Readings carry their notes under `reading`: means, unit, range, how to measure, usual instrument. The page's
 * forms and the nearest-key help read them from here.
 */
import { z } from 'zod';
import type { FieldNotes } from './field.ts';
import { carFile } from './form/car.ts';
import { TWO_SIDED } from './spec.ts';

export interface SchemaNode {
  readonly title?: string;
  readonly description?: string;
  readonly type?: string | readonly string[];
  readonly enum?: readonly string[];
  readonly properties?: Readonly<Record<string, SchemaNode>>;
  readonly required?: readonly string[];
  readonly items?: SchemaNode;
  readonly additionalProperties?: SchemaNode | boolean;
  readonly anyOf?: readonly SchemaNode[];
  readonly reading?: FieldNotes & { readonly kind: 'amount' | 'point' };
  /** Of an amount that is decided and not measured. */
  readonly stated?: { readonly unit: string; readonly min: number; readonly max: number };
}

const STAMP = { type: 'string' } as const;

let made: SchemaNode | undefined;

/** The published schema of the car file. */
export function carFileSchema(): SchemaNode {
  made ??= z.toJSONSchema(carFile, {
    io: 'input',
    unrepresentable: 'any',
    override: ({ jsonSchema }) => {
      const { reading } = jsonSchema as SchemaNode;
      if (reading === undefined) return;
      Object.assign(jsonSchema, {
        anyOf: [
          { type: reading.si === '1' ? ['string', 'number'] : 'string' },
          {
            type: 'object',
            properties: {
              is: { type: reading.si === '1' ? ['string', 'number'] : 'string' },
              with: STAMP,
              by: STAMP,
              on: { type: 'string', format: 'date' },
              note: STAMP,
            },
            required: ['is'],
            additionalProperties: false,
          },
        ],
      });
    },
  }) as SchemaNode;
  return allowMirrored(made);
}

/** On the right-hand side any part may be the word `mirrored`. */
function allowMirrored(schema: SchemaNode): SchemaNode {
  const side = (axle: SchemaNode): SchemaNode => ({
    ...axle,
    properties: { ...axle.properties, right: mirrorable(axle.properties!.right!) },
  });
  const sides = Object.fromEntries(TWO_SIDED.map((part) => [part, side(schema.properties![part]!)]));
  return { ...schema, properties: { ...schema.properties, ...sides } };
}

/**
 * `properties`, `required` and `items` say nothing of a word, so a mapping or list that may be `mirrored` keeps
 * them and only widens what it may be: the schema stays the size of the file's form.
 */
function mirrorable(node: SchemaNode): SchemaNode {
  // a reading may be any word, and then this one
  if (node.reading !== undefined) return node;
  if (node.enum !== undefined) return { ...node, enum: [...node.enum, 'mirrored'] };
  const { type, ...rest } = node;
  if (type === undefined) return { ...rest, anyOf: [{ enum: ['mirrored'] }, ...(node.anyOf ?? [])] };
  const properties =
    node.properties === undefined
      ? {}
      : {
          properties: Object.fromEntries(
            Object.entries(node.properties).map(([key, each]) => [key, mirrorable(each)]),
          ),
        };
  return { ...rest, ...properties, anyOf: [{ enum: ['mirrored'] }, { type }] };
}

export type Path = readonly (string | number)[];

/** The part of the schema that describes this place, or undefined where there is none. */
export function schemaAt(path: Path): SchemaNode | undefined {
  let node: SchemaNode | undefined = carFileSchema();
  for (const key of path) {
    if (node === undefined) return undefined;
    if (typeof key === 'number') node = node.items;
    else if (node.properties !== undefined && Object.hasOwn(node.properties, key))
      node = node.properties[key];
    else node = typeof node.additionalProperties === 'object' ? node.additionalProperties : undefined;
  }
  return node;
}

/** Keys that may stand at this place. */
export const keysAt = (path: Path): readonly string[] => Object.keys(schemaAt(path)?.properties ?? {});
