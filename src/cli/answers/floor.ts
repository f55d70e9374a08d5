/** `floor --json`, `adjusters --json` and `set-up --json`. */
import { z } from 'zod';
import type { ReadingWorking } from '../../questions/index.ts';
import { readingForm, readingOut, stepForm, stepOut } from './corner.ts';
import { about, remarks } from './form.ts';

const notReached = z.strictObject({ reached: z.literal(false), message: z.string() });
const stops = z.strictObject({ up: z.string(), down: z.string() });

const working = z
  .strictObject({
    figure: z.string(),
    steps: z.array(stepForm),
    readings: z.record(z.string(), readingForm),
  })
  .optional();

/** An answer as it is told, the working of one of its figures in the published form. */
export function withWorkingOut<T extends { readonly working?: ReadingWorking }>(of: T) {
  const { working: told, ...rest } = of;
  if (told === undefined) return rest;
  const readings = Object.entries(told.readings).map(([path, each]) => [path, readingOut(each)]);
  return {
    ...rest,
    working: {
      figure: told.figure,
      steps: told.steps.map(stepOut),
      readings: Object.fromEntries(readings),
    },
  };
}

export const floorForm = z.strictObject({
  ...about('floor'),
  is: z.discriminatedUnion('reached', [
    z.strictObject({
      reached: z.literal(true),
      readings: z.array(
        z.strictObject({
          id: z.string(),
          words: z.string(),
          value: z.number().meta({ description: 'SI' }),
          unit: z.string(),
          u: z.number().optional().meta({ description: 'one standard uncertainty, from the car file' }),
        }),
      ),
      residual: z.number().meta({ description: 'N, left over in the equations of rest' }),
      working,
      ...remarks,
    }),
    notReached,
  ]),
});

export const adjustersForm = z.strictObject({
  ...about('adjusters'),
  is: z.discriminatedUnion('reached', [
    z.strictObject({
      reached: z.literal(true),
      readings: z.array(z.strictObject({ id: z.string(), words: z.string(), unit: z.string() })),
      adjusters: z.array(
        z.strictObject({
          name: z.string(),
          kind: z.string(),
          unit: z.string(),
          step: z.number().meta({ description: 'what one unit is, SI' }),
          stepUnit: z.string(),
          down: z.number().meta({ description: 'units left downward' }),
          up: z.number().meta({ description: 'units left upward' }),
          stops,
          effects: z
            .array(z.number())
            .meta({ description: 'change of each reading by one unit, SI, in the order of the readings' }),
        }),
      ),
      ...remarks,
    }),
    notReached,
  ]),
});

export const setUpForm = z.strictObject({
  ...about('set-up'),
  is: z.discriminatedUnion('reached', [
    z.strictObject({
      reached: z.literal(true),
      sheets: z.array(z.string()),
      doubts: z.array(
        z.strictObject({
          code: z.string(),
          message: z.string(),
          remedy: z.string(),
          paths: z.array(z.string()),
          weight: z.enum(['error', 'warning']),
        }),
      ),
      moves: z.array(
        z.strictObject({
          adjuster: z.string(),
          kind: z.string(),
          units: z.number(),
          unit: z.string(),
          words: z.string(),
        }),
      ),
      readings: z.array(
        z.strictObject({
          id: z.string(),
          words: z.string(),
          unit: z.string(),
          wanted: z.number(),
          tolerance: z.number(),
          toleranceStated: z.boolean(),
          before: z.number().meta({ description: 'on a level floor, from the readings taken' }),
          after: z.number().meta({ description: 'on a level floor, after the moves' }),
          willRead: z.number().meta({ description: 'what this floor will show after the moves' }),
          u: z.number().meta({ description: 'one standard uncertainty of the forecast' }),
          inTolerance: z.boolean(),
        }),
      ),
      fits: z
        .array(
          z.strictObject({
            sheet: z.string(),
            id: z.string(),
            words: z.string(),
            unit: z.string(),
            value: z.number(),
            u: z.number(),
            fitted: z.number(),
            w: z.number().meta({ description: 'residual over its own standard uncertainty' }),
          }),
        )
        .meta({ description: 'every reading of the sheets as the fit has it' }),
      standing: z.array(
        z.strictObject({
          id: z.string(),
          words: z.string(),
          unit: z.string(),
          found: z.number().meta({ description: 'as found, on this floor' }),
          after: z.number().meta({ description: 'after the moves, on a level floor' }),
          onThisFloor: z.number().meta({ description: 'after the moves, on this floor' }),
          u: z.number().meta({ description: 'one standard uncertainty of the forecast' }),
        }),
      ),
      outOfReach: z.array(z.string()),
      proved: z.boolean().meta({ description: 'whether it is proved that no fewer moves would do' }),
      leastWork: z
        .boolean()
        .meta({ description: 'whether it is proved that as few moves would not do with less work' }),
      next: z.array(
        z.strictObject({
          id: z.string(),
          words: z.string(),
          takes: z.number().meta({ description: 'part of the variance of the answer that it takes off' }),
          again: z.boolean(),
        }),
      ),
      learnt: z.array(
        z.strictObject({
          wheel: z.string(),
          of: z.enum(['tyre', 'spring']),
          stiffer: z.number().meta({ description: 'than the file says, as a part of it' }),
          u: z.number(),
        }),
      ),
      ...remarks,
    }),
    notReached,
  ]),
});

export const weighingForm = z.strictObject({
  ...about('weighing'),
  is: z.discriminatedUnion('reached', [
    z.strictObject({
      reached: z.literal(true),
      figures: z.array(
        z.strictObject({
          id: z.string(),
          words: z.string(),
          value: z.number().meta({ description: 'SI' }),
          unit: z.string(),
          u: z.number().meta({ description: 'one standard uncertainty' }),
        }),
      ),
      working,
      ...remarks,
    }),
    notReached,
  ]),
});
