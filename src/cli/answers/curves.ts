/** `curves --json`, `compare --json`. */
import { z } from 'zod';
import { LOAD_PATH } from '../../questions/figure.ts';
import { about, events, figure, number, position, problem, range, wheel } from './form.ts';
import { doing, joint } from './loads.ts';

export const curvesForm = z.strictObject({
  ...about('curves'),
  wheel,
  rack: z.number(),
  travel: z.array(z.number()).meta({ description: 'm; the columns have one value for each' }),
  heldBy: z
    .array(z.enum(['droop stop', 'bump rubber', 'solid coil', 'damper closed', 'linkage']).nullable())
    .meta({
      description:
        'what holds the wheel at each travel where the springs alone do not; forces there are those of the stop. At linkage the wheel does not come there',
    }),
  columns: z.array(
    z.strictObject({
      id: z.string(),
      means: z.string(),
      unit: z.string(),
      values: z.array(number('SI; null where the linkage does not reach or the figure does not exist')),
    }),
  ),
  events,
  range,
});

export const compareForm = z.strictObject({
  ...about('compare'),
  wheel: wheel
    .optional()
    .meta({ description: 'absent where every figure, all wheels or a joint is compared' }),
  at: position.optional(),
  doing: doing.optional().meta({ description: 'where the two are compared under a load' }),
  joint: joint.optional(),
  specs: z.tuple([z.string(), z.string()]),
  rows: z.array(
    z.strictObject({
      of: z
        .string()
        .optional()
        .meta({ description: 'front left, rear, car …, where every figure is compared' }),
      id: z.string(),
      means: z.string(),
      unit: z.string(),
      stop: z.enum(LOAD_PATH),
      a: figure.optional(),
      b: figure.optional(),
      difference: z.number().optional().meta({ description: 'second less first, SI' }),
    }),
  ),
  joints: z
    .array(
      z.strictObject({
        spec: z.string(),
        worst: z.string().meta({ description: 'stud whose pad keeps least' }),
        left: z.string(),
        breaksFirst: z.array(z.string()),
      }),
    )
    .optional(),
  notes: z.array(z.string()).optional(),
  cautions: z.array(z.string()).optional(),
  problems: z.array(problem),
  notReached: z.array(z.string()),
});
