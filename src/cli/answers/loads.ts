/** `loads --json`, `cases --json`, `studs --json`, `case --json` and `tub --json`. */
import { z } from 'zod';
import { HANDED_ON } from '../../questions/index.ts';
import { about, figure, remarks, wheel } from './form.ts';

export const doing = z
  .strictObject({
    longitudinal: z.number().meta({ description: 'm/s^2, forward positive' }),
    lateral: z.number().meta({ description: 'm/s^2, to the left positive' }),
    vertical: z.number().meta({ description: 'm/s^2, upward, on top of gravity' }),
    speed: z.number().meta({ description: 'm/s' }),
    rack: z.number().meta({ description: 'm, positive to the left' }),
    strikes: z
      .record(z.string(), z.number())
      .meta({ description: 'extra load of a kerb by wheel, in loads of its own scale reading' }),
    contacts: z
      .record(
        z.string(),
        z.strictObject({
          up: z.number(),
          forward: z.number().optional(),
          left: z.number().optional(),
          by: z
            .enum(HANDED_ON)
            .optional()
            .meta({ description: 'what takes the torque of the force forward' }),
        }),
      )
      .meta({ description: 'N, force of the ground on the tyre by wheel, as typed or logged' }),
    frontBrakes: z.number().optional().meta({ description: 'front share of the brakes, 0 to 1' }),
  })
  .meta({ id: 'doing', description: 'what the car is doing' });

export const joint = z.enum(['caseToEngine', 'engineToTub']);

export const loadsForm = z.strictObject({
  ...about('loads'),
  doing,
  is: z.discriminatedUnion('reached', [
    z.strictObject({
      reached: z.literal(true),
      wheels: z.array(z.strictObject({ wheel, figures: z.array(figure) })),
      residual: z.number().meta({ description: 'N, left over in the equations of the whole car' }),
      ...remarks,
    }),
    z.strictObject({ reached: z.literal(false), message: z.string() }),
  ]),
});

export const casesForm = z.strictObject({
  ...about('cases'),
  cases: z.array(
    z.strictObject({
      name: z.string(),
      means: z.string(),
      doing,
      wheels: z.array(z.strictObject({ wheel, figures: z.array(figure) })),
      notes: z.array(z.string()),
    }),
  ),
  without: z
    .array(z.strictObject({ name: z.string(), message: z.string() }))
    .meta({ description: 'cases that have no answer' }),
  cautions: z.array(z.string()),
});

export const followForm = z.strictObject({
  ...about('follow'),
  wheel,
  joint,
  doing,
  stops: z
    .array(z.strictObject({ stop: z.string(), says: z.string() }))
    .meta({ description: 'from the tyre to the tub' }),
});

export const studsForm = z.strictObject({
  ...about('studs'),
  joint,
  doing,
  is: z.discriminatedUnion('reached', [
    z.strictObject({
      reached: z.literal(true),
      figures: z.array(figure),
      worst: z.string().meta({ description: 'stud whose pad keeps least' }),
      ...remarks,
    }),
    z.strictObject({ reached: z.literal(false), message: z.string() }),
  ]),
});

const vector = z.tuple([z.number(), z.number(), z.number()]).meta({ description: 'forward, left, up' });

const forcesOnBody = {
  reached: z.literal(true),
  forces: z.array(
    z.strictObject({
      name: z.string(),
      at: vector,
      force: vector,
      size: z.number().meta({ description: 'N' }),
      moment: z.number().meta({ description: 'N m, a couple beside it' }),
      couple: vector,
    }),
  ),
  resultant: z.strictObject({ force: vector, moment: vector }),
  residual: z.number().meta({ description: 'share of the largest force' }),
  ...remarks,
};

const notReached = z.strictObject({ reached: z.literal(false), message: z.string() });

export const caseForm = z.strictObject({
  ...about('case'),
  doing,
  is: z.discriminatedUnion('reached', [
    z.strictObject({
      ...forcesOnBody,
      plane: z
        .strictObject({
          x: z.number().meta({ description: 'm, forward of the front axle' }),
          height: z.number().meta({ description: 'm, of the point that moments are about' }),
          force: vector,
          moment: vector,
          count: z.number().meta({ description: 'forces that act behind it' }),
        })
        .optional()
        .meta({ description: 'what the case hands forward through the plane asked for' }),
    }),
    notReached,
  ]),
});

export const tubForm = z.strictObject({
  ...about('tub'),
  doing,
  is: z.discriminatedUnion('reached', [z.strictObject(forcesOnBody), notReached]),
});
