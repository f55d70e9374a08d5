/** `axle --json`, `car --json`. */
import { z } from 'zod';
import { about, figure, remarks } from './form.ts';

export const stance = z
  .strictObject({
    front: z.strictObject({ left: z.number(), right: z.number() }),
    rear: z.strictObject({ left: z.number(), right: z.number() }),
    rack: z.number(),
  })
  .meta({
    id: 'stance',
    description: 'travel of each wheel, bump positive, and of the rack, positive to the left; m',
  });

const answered = z.discriminatedUnion('reached', [
  z.strictObject({ reached: z.literal(true), figures: z.array(figure), ...remarks }),
  z.strictObject({ reached: z.literal(false), message: z.string() }),
]);

export const axleForm = z.strictObject({
  ...about('axle'),
  end: z.enum(['front', 'rear']),
  at: stance,
  is: answered,
});

export const figuresForm = z.strictObject({
  ...about('figures'),
  groups: z.array(
    z.strictObject({
      of: z.string().meta({ description: 'a wheel (front left), an axle (front), or the car' }),
      figures: z.array(figure),
    }),
  ),
  cautions: z.array(z.string()),
});

export const carForm = z.strictObject({ ...about('car'), is: answered });
