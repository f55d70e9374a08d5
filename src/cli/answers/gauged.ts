/** `strings --json`, `bump-steer --json`, `scales --json` and `levels --json`. */
import { z } from 'zod';
import { about, remarks } from './form.ts';

const gauged = z.discriminatedUnion('reached', [
  z.strictObject({
    reached: z.literal(true),
    figures: z.array(
      z.strictObject({
        id: z.string(),
        of: z.string().meta({ description: 'what it belongs to: front left, front axle, +10.0 mm' }),
        words: z.string(),
        value: z.number().meta({ description: 'SI' }),
        unit: z.string(),
        u: z.number().meta({ description: 'one standard uncertainty' }),
      }),
    ),
    ...remarks,
  }),
  z.strictObject({ reached: z.literal(false), message: z.string() }),
]);

export const stringsForm = z.strictObject({ ...about('strings'), is: gauged });
export const bumpSteerForm = z.strictObject({ ...about('bump-steer'), is: gauged });
export const scalesForm = z.strictObject({ ...about('scales'), is: gauged });
export const levelsForm = z.strictObject({ ...about('levels'), is: gauged });
