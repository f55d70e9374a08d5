/** `check --json`, and what any command gives under `--json` when its input is wrong. */
import { z } from 'zod';
import { problem } from './form.ts';

const readingsState = z.strictObject({
  total: z.int(),
  stated: z
    .int()
    .meta({ description: 'readings with a spread of their own, or with that of the instrument they name' }),
  usual: z.int().meta({ description: 'readings with neither: the spread usual for such a reading applies' }),
  mirrored: z.int().meta({ description: 'readings of the left that also stand for the right' }),
});

export const checkForm = z.strictObject({
  flatpatch: z.string(),
  answer: z.literal('check'),
  file: z.string(),
  good: z.boolean(),
  specs: z.array(z.strictObject({ spec: z.string(), good: z.boolean(), readings: readingsState.optional() })),
  problems: z.array(problem),
});

export const problemsForm = z.strictObject({
  flatpatch: z.string(),
  answer: z.literal('problems'),
  problems: z.array(problem),
});
