/** `check --json`, and what any command gives under `--json` when its input is wrong. */
import { z } from 'zod';
import { problem } from './form.ts';

const readingsState = z.strictObject({
  total: z.int(),
  stated: z.int().meta({ description: 'readings whose spread the file states' }),
  byInstrument: z
    .int()
    .meta({ description: 'readings whose spread is that usual for the instrument they name' }),
  usual: z.int().meta({ description: 'readings with neither: the spread usual for such a reading applies' }),
  exact: z.int(),
  mirrored: z.int().meta({ description: 'readings taken from the other side' }),
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

export type ReadingsState = z.infer<typeof readingsState>;
