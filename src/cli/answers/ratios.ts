/** `ratios --json`. */
import { z } from 'zod';
import type { RatiosAnswer } from '../../questions/index.ts';
import { floorAnswered, floorOut } from './floor-figures.ts';
import { about } from './form.ts';

const points = z.array(z.strictObject({ speed: z.number(), force: z.number() }));

export const ratiosForm = z.strictObject({
  ...about('ratios'),
  is: floorAnswered,
  set: z
    .strictObject({
      at: z.number().meta({ description: 'rad/s, engine speed at which gears are changed' }),
      final: z.string(),
      pairs: z.array(z.string()).meta({ description: 'driver/driven, first gear first' }),
      chosen: z
        .array(
          z.strictObject({
            final: z.string(),
            pairs: z.array(z.string()),
            speeds: z.array(z.number()).meta({ description: 'm/s' }),
            miss: z.number().meta({ description: 'root mean square of the relative misses' }),
            changed: z.array(z.number()).meta({ description: 'gears that differ from those fitted' }),
          }),
        )
        .optional()
        .meta({ description: 'where speeds were wanted: nearest set first' }),
      chart: z
        .array(z.strictObject({ engine: z.number(), speeds: z.array(z.number()) }))
        .meta({ description: 'road speed, m/s, by engine speed, rad/s, a column a gear' }),
      thrust: z.array(z.strictObject({ gear: z.number(), points })).meta({ description: 'm/s and N' }),
      resistance: points,
    })
    .optional(),
});

export function ratiosOut(of: RatiosAnswer) {
  if (!of.reached) return { is: floorOut(of) };
  const { at, final, pairs, chosen, chart, thrust, resistance } = of;
  const text = (each: { readonly text: string }): string => each.text;
  return {
    is: floorOut(of),
    set: {
      at,
      final: final.text,
      pairs: pairs.map(text),
      ...(chosen === undefined
        ? {}
        : {
            chosen: chosen.map((each) => ({
              final: each.final.text,
              pairs: each.pairs.map(text),
              speeds: [...each.speeds],
              miss: each.miss,
              changed: [...each.changed],
            })),
          }),
      chart: chart.map((row) => ({ engine: row.engine, speeds: [...row.speeds] })),
      thrust: thrust.map((line) => ({ gear: line.gear, points: [...line.points] })),
      resistance: [...resistance],
    },
  };
}
