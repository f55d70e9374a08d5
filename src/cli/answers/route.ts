/** Forms of the answers about equal primaries. Lengths in mm and angles in degrees, as in the exchange form. */
import { z } from 'zod';

const cause = z.strictObject({
  code: z.string().meta({ description: 'never changes; scripts may hang on it' }),
  says: z.string(),
  pipes: z.array(z.int()).optional().meta({ description: 'ports, counted from 0 as in the problem' }),
  needs: z.number().optional().meta({ description: 'mm' }),
  has: z.number().optional().meta({ description: 'mm' }),
});

export const routeForm = z.strictObject({
  flatpatch: z.string(),
  answer: z.literal('route'),
  ending: z.enum(['solved', 'impossible', 'not found']),
  id: z.string().optional(),
  seconds: z.strictObject({
    ready: z.number().meta({ description: 's, until the problem was read and held possible' }),
    first: z.number().optional().meta({ description: 's, until the first answer that stood the check' }),
    total: z.number(),
  }),
  threads: z.int().meta({ description: 'threads that looked' }),
  work: z.int().meta({ description: 'times that all residuals were added up' }),
  starts: z.int(),
  pipes: z
    .array(
      z.strictObject({
        port: z.int().meta({ description: 'counted from 1' }),
        inlet: z.int().meta({ description: 'counted from 1' }),
        bends: z.int(),
        turnDeg: z.number(),
        lengthMm: z.number(),
      }),
    )
    .optional(),
  causes: z.array(cause).optional().meta({ description: 'why it cannot be' }),
  nearest: z
    .strictObject({
      by: z.number().meta({ description: 'mm' }),
      what: z.string(),
      pipe: z.int(),
      other: z.int(),
    })
    .optional()
    .meta({ description: 'what is breached most in what came nearest; ports counted from 0, -1 for none' }),
  cautions: z.array(z.string()),
});
