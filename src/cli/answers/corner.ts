/** `corner --json` and `working --json`. */
import { z } from 'zod';
import type { Reading } from '../../measured/reading.ts';
import type { Step } from '../../working/working.ts';
import { stance } from './axle.ts';
import { about, events, figure, finite, number, position, range, remarks, wheel } from './form.ts';

const corner = z.discriminatedUnion('reached', [
  z.strictObject({
    reached: z.literal(true),
    wheel,
    at: position,
    figures: z.array(figure),
    events,
    range,
    ...remarks,
  }),
  z.strictObject({
    reached: z.literal(false),
    wheel,
    at: position,
    message: z.string(),
    range: range.optional(),
  }),
]);

export const cornerForm = z.strictObject({ ...about('corner'), corners: z.array(corner) });

const term = z.strictObject({
  symbol: z.string(),
  means: z.string(),
  value: number('SI'),
  unit: z.string(),
  from: z
    .discriminatedUnion('kind', [
      z.strictObject({ kind: z.literal('reading'), path: z.string() }),
      z.strictObject({ kind: z.literal('step'), symbol: z.string() }),
      z.strictObject({ kind: z.literal('table'), name: z.string() }),
      z.strictObject({ kind: z.literal('asked'), what: z.string() }),
      z.strictObject({ kind: z.literal('constant'), what: z.string() }),
    ])
    .optional()
    .meta({ description: 'where the number came from' }),
});

export const stepForm = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('formula'),
    symbol: z.string(),
    means: z.string(),
    formula: z.string(),
    value: number('SI'),
    unit: z.string(),
    terms: z.array(term),
    source: z.string(),
    holds: z.string().optional(),
  }),
  z.strictObject({
    kind: z.literal('solved'),
    symbol: z.string(),
    means: z.string(),
    method: z.string(),
    value: number('SI'),
    unit: z.string(),
    source: z.string(),
    residual: z.strictObject({ value: z.number(), unit: z.string(), of: z.string() }).optional(),
    terms: z.array(term),
  }),
]);

export const readingForm = z.strictObject({
  means: z.string(),
  value: z.number().meta({ description: 'SI' }),
  u: z.number().meta({ description: 'one standard uncertainty of this reading' }),
  unit: z.string(),
  text: z.string().meta({ description: 'as written in the car file' }),
  spread: z.enum(['stated', 'instrument', 'usual', 'exact']).meta({ description: 'where u comes from' }),
  instrument: z.string().optional(),
  by: z.string().optional(),
  on: z.string().optional(),
  note: z.string().optional(),
  mirrored: z.boolean(),
});

/** A reading as it is handed out: its number in the car's list stays behind. */
export function readingOut(of: Reading): z.input<typeof readingForm> {
  const { means, value, u, unit, text, spread, mirrored, instrument, by, on, note } = of;
  const stamp = Object.entries({ instrument, by, on, note }).filter(([, word]) => word !== undefined);
  return { means, value, u, unit, text, spread: spread.kind, mirrored, ...Object.fromEntries(stamp) };
}

/** A step as it is handed out: a number that is none becomes null. */
export function stepOut(step: Step) {
  const terms = step.terms.map((term) => ({ ...term, value: finite(term.value) }));
  return { ...structuredClone(step), value: finite(step.value), terms };
}

export const workingForm = z.strictObject({
  ...about('working'),
  of: z.enum(['corner', 'axle', 'car']),
  wheel: wheel.optional(),
  end: z.enum(['front', 'rear']).optional(),
  at: stance,
  figure,
  steps: z.array(stepForm),
  readings: z.record(z.string(), readingForm),
});
