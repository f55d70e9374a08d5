/** `survey --json`. */
import { z } from 'zod';
import { about, number } from './form.ts';

const vec = z.tuple([number('x, m'), number('y, m'), number('z, m')]);

const reading = z.strictObject({
  id: z.string(),
  means: z.string().meta({ description: 'what was read, its points in words' }),
  components: z.array(
    z.strictObject({
      component: z.string(),
      read: z.number(),
      adjusted: z.number(),
      residual: z.number().meta({ description: 'adjusted less read, m' }),
      u: z.number(),
      redundancy: z.number(),
      standardised: number('residual over its own standard deviation').optional(),
    }),
  ),
  statistic: number('chi-square of its residuals'),
  freedom: z.number(),
  p: number('chance of a worse one'),
  checked: z.enum(['wholly', 'partly', 'not at all']),
  detectable: number('m, error that would be found').optional(),
});

const tested = {
  name: z.string(),
  p: number('chance of a difference as large from the readings alone'),
  corrected: number('the same, corrected for the number of comparisons (Holm)'),
  differs: z.boolean(),
  detectable: number('m, a difference above this would have been found'),
  sentence: z.string(),
};

const comparison = z.strictObject({
  pairs: z.array(
    z.strictObject({
      ...tested,
      difference: vec,
      u: vec,
      pByAxis: vec,
      statistic: number('chi-square'),
      freedom: z.number(),
      heldByDatum: z.array(z.enum(['x', 'y', 'z'])),
    }),
  ),
  lengths: z.array(z.strictObject({ ...tested, difference: number('left less right, m'), u: number('m') })),
  level: z.number(),
  differs: z.boolean(),
  notInPlane: z.array(z.string()),
  widenedBy: z.number(),
  sentence: z.string(),
});

export const surveyForm = z.strictObject({
  ...about('survey'),
  said: z.array(z.string()),
  points: z.array(
    z.strictObject({
      name: z.string(),
      at: vec,
      u: vec,
      covariance: z.array(z.array(z.number())).meta({ description: 'm^2' }),
    }),
  ),
  readings: z.array(reading),
  outliers: z.array(
    z.strictObject({
      id: z.string(),
      misfit: number('m'),
      statistic: number('chi-square'),
      p: number('chance'),
      alike: z.array(z.string()),
      excluded: z.boolean(),
      sentence: z.string(),
    }),
  ),
  whole: z.strictObject({
    statistic: number('chi-square'),
    freedom: z.number(),
    lower: number('bound'),
    upper: number('bound'),
    level: z.number(),
    verdict: z.enum(['as claimed', 'worse than claimed', 'better than claimed', 'no check']),
    varianceFactor: number('1 when the claimed uncertainties are true'),
    sentence: z.string(),
  }),
  undetermined: z.array(z.strictObject({ point: z.string(), why: z.string() })),
  comparison: comparison.optional(),
  notes: z.array(z.string()),
});
