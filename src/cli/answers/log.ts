/** Form of a log's answer. */
import { z } from 'zod';
import { about } from './form.ts';

export const logForm = z.strictObject({
  ...about('log'),
  log: z.string().meta({ description: 'name of the log in the car file' }),
  rows: z.number(),
  channels: z.array(z.string()),
  hardest: z.array(
    z.strictObject({
      name: z.string().meta({ description: 'as --at takes it' }),
      line: z.number(),
      time: z.number().optional().meta({ description: 's' }),
      doing: z.string(),
    }),
  ),
  doubts: z.array(
    z.strictObject({
      code: z.string(),
      message: z.string(),
      line: z.number().optional(),
      remedy: z.string().optional(),
    }),
  ),
});
