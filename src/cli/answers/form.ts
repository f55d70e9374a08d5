/**
 * The forms that every `--json` answer is made of. They are published as JSON Schema (`flatpatch schema --of
 * answers`), and the tests hold each answer against them.
 */
import { z } from 'zod';
import type { Figure } from '../../questions/figure.ts';
import { LOAD_PATH } from '../../questions/figure.ts';

/** A number in SI; null where there is none. */
export const number = (means: string) => z.number().nullable().meta({ description: means });

export const wheel = z
  .strictObject({ end: z.enum(['front', 'rear']), side: z.enum(['left', 'right']) })
  .meta({ id: 'wheel', description: 'one wheel of the car' });

export const position = z
  .strictObject({
    travel: z.number().meta({
      description: 'm, vertical movement of the contact point from the surveyed position, bump positive',
    }),
    rack: z.number().meta({ description: 'm, rack movement, positive to the left' }),
  })
  .meta({ id: 'position' });

const share = z.strictObject({
  path: z
    .string()
    .meta({ description: 'path of the reading in the car file, or the name of what several readings share' }),
  label: z.string(),
  contribution: z.number().meta({
    description: 'contribution to the standard uncertainty, with its sign, in the unit of the figure',
  }),
  share: z.number().meta({ description: 'part of the variance, 0 to 1' }),
});

export const spread = z
  .strictObject({
    u: z.number().meta({ description: 'one standard uncertainty, in the unit of the figure' }),
    shares: z.array(share).meta({ description: 'what it is made of, worst first' }),
    unknown: z
      .array(z.string())
      .meta({ description: 'readings whose move put the figure out of reach: their part is not in u' }),
  })
  .meta({ id: 'spread' });

export const figure = z
  .strictObject({
    id: z.string(),
    stop: z.enum(LOAD_PATH).meta({ description: 'stop of the load path that the figure belongs to' }),
    means: z.string(),
    symbol: z.string(),
    value: number('in SI; null where the figure does not exist here'),
    unit: z.string().meta({ description: 'SI unit; 1 for a pure number' }),
    spread: spread.optional(),
    say: z.string().optional().meta({ description: 'what must be said beside the figure' }),
  })
  .meta({ id: 'figure' });

const event = z
  .strictObject({ travel: z.number(), what: z.string(), kind: z.enum(['stop', 'free', 'limit', 'joint']) })
  .meta({ id: 'event', description: 'something that happens on the way up or down; travel in m' });

export const events = z.array(event);

export const range = z
  .strictObject({ bump: number('m'), droop: number('m'), bumpBy: z.string(), droopBy: z.string() })
  .meta({ id: 'range', description: 'how far the wheel goes, and what ends it' });

export const remarks = {
  notes: z.array(z.string()),
  cautions: z.array(z.string()),
};

export const problem = z
  .strictObject({
    code: z.string().meta({ description: 'never changes; scripts may hang on it' }),
    message: z.string(),
    remedy: z.string().optional(),
    path: z.string(),
    file: z.string().optional(),
    line: z.int().optional(),
    column: z.int().optional(),
    weight: z.enum(['error', 'warning']),
  })
  .meta({ id: 'problem' });

export const carNamed = z
  .strictObject({
    file: z.string(),
    name: z.string(),
    spec: z.string(),
    specs: z.array(z.string()),
    invented: z.boolean(),
  })
  .meta({ id: 'car' });

/** An answer about a car: which program, which question, which car. */
export const about = <const N extends string>(name: N) => ({
  flatpatch: z.string().meta({ description: 'version of the program' }),
  answer: z.literal(name),
  car: carNamed,
});

/** A figure as it is handed out: the page's own hints stay behind. */
export function figureOut(of: Figure): z.input<typeof figure> {
  const { id, stop, means, symbol, unit, say } = of;
  const value = Number.isFinite(of.value) ? of.value : null;
  return {
    id,
    stop,
    means,
    symbol,
    value,
    unit,
    ...(of.spread === undefined ? {} : { spread: structuredClone(of.spread) as z.input<typeof spread> }),
    ...(say === undefined ? {} : { say }),
  };
}

export const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);
