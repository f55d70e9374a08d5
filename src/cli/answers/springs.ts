/** `bar-for-coil`, `coil-for-bar`, `ladder`, `bench-test` under --json, and the answer that there is none. */
import { z } from 'zod';
import { quantity } from '../quantity.ts';
import { about, figure, number, wheel } from './form.ts';

const curve = z.array(number('SI; one for each travel'));
const remarks = { notes: z.array(z.string()), cautions: z.array(z.string()) };

const along = {
  travel: z.array(z.number()).meta({ description: 'm' }),
  rockerAngle: z.array(z.number()).meta({ description: 'rad, from the surveyed position, bump positive' }),
};

const proposedBar = z.strictObject({
  name: z.string().optional(),
  material: z.string(),
  hand: z.string().optional(),
  quantities: z.array(quantity),
  teeth: z
    .strictObject({ rocker: z.int(), anchor: z.int() })
    .optional()
    .meta({ description: 'teeth to move at each end, signed' }),
  torque: curve.meta({ description: 'N m about the rocker axis' }),
  wheelRate: curve.meta({ description: 'N/m' }),
});

export const barForCoilForm = z.strictObject({
  ...about('bar-for-coil'),
  wheel,
  ...along,
  coil: z.strictObject({ quantities: z.array(quantity), torque: curve, wheelRate: curve }),
  bars: z.array(proposedBar).meta({ description: 'best first' }),
  figures: z.array(figure).meta({ description: 'of the corner with the first bar in, with their spread' }),
  change: z.unknown().meta({
    description: 'what puts the first bar in the place of the coil: changes of a spec of the car file',
  }),
  ...remarks,
});

export const coilForBarForm = z.strictObject({
  ...about('coil-for-bar'),
  wheel,
  ...along,
  bar: z.strictObject({ quantities: z.array(quantity), torque: curve, wheelRate: curve }),
  coils: z.array(
    z.strictObject({
      name: z.string().optional(),
      quantities: z.array(quantity),
      torque: curve,
      wheelRate: curve,
    }),
  ),
  ...remarks,
});

export const ladderForm = z.strictObject({
  ...about('ladder'),
  wheel,
  even: z.enum(['difference', 'ratio']),
  rungs: z.array(z.strictObject({ quantities: z.array(quantity) })),
  steps: z.array(quantity),
  ...remarks,
});

export const benchTestForm = z.strictObject({
  flatpatch: z.string(),
  answer: z.literal('bench-test'),
  quantities: z.array(quantity),
  confidence: z.number(),
  told: z.array(z.string()),
  implied: z
    .array(quantity)
    .optional()
    .meta({ description: 'what each size would be for this rate, the others as stated' }),
  cautions: z.array(z.string()),
});

export const noneForm = z.strictObject({
  flatpatch: z.string(),
  answer: z.literal('none'),
  message: z.string().meta({ description: 'why what was asked for cannot be' }),
});
