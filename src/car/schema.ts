/**
 * The car file's JSON Schema (draft 2020-12), made from the one description, and look-ups by path in it.
 *
 * Readings carry their notes under `reading`: means, unit, range, how to measure, usual instrument. The page's
 * forms and the nearest-key help read them from here.
 */
import { z } from 'zod';
import type { FieldNotes } from './field.ts';
import { carFile } from './form/car.ts';

export interface SchemaNode {
  readonly title?: string;
  readonly description?: string;
  readonly type?: string;
  readonly enum?: readonly string[];
  readonly properties?: Readonly<Record<string, SchemaNode>>;
  readonly required?: readonly string[];
  readonly items?: SchemaNode;
  readonly additionalProperties?: SchemaNode | boolean;
  readonly anyOf?: readonly SchemaNode[];
  readonly reading?: FieldNotes & { readonly kind: 'amount' | 'point' };
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
  const { front, rear } = schema.properties!;
  return { ...schema, properties: { ...schema.properties, front: side(front!), rear: side(rear!) } };
}

function mirrorable(node: SchemaNode): SchemaNode {
  const inner: SchemaNode =
    node.reading === undefined && node.properties !== undefined
      ? { ...node, properties: Object.fromEntries(Object.entries(node.properties).map(([key, each]) => [key, mirrorable(each)])) }
      : node;
  const { title, description, reading, properties } = inner;
  return {
    ...(title === undefined ? {} : { title }),
    ...(description === undefined ? {} : { description }),
    ...(reading === undefined ? {} : { reading }),
    ...(properties === undefined ? {} : { properties }),
    anyOf: [{ enum: ['mirrored'] }, inner],
  };
}

export type Path = readonly (string | number)[];

/** The part of the schema that describes this place, or undefined where there is none. */
export function schemaAt(path: Path): SchemaNode | undefined {
  let node: SchemaNode | undefined = carFileSchema();
  for (const key of path) {
    if (node === undefined) return undefined;
    if (typeof key === 'number') node = node.items;
    else if (node.properties?.[key] !== undefined) node = node.properties[key];
    else node = typeof node.additionalProperties === 'object' ? node.additionalProperties : undefined;
  }
  return node;
}

/** Keys that may stand at this place. */
export const keysAt = (path: Path): readonly string[] => Object.keys(schemaAt(path)?.properties ?? {});
