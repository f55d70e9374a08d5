/** The underside: points that come nearest to the road. */
import { z } from 'zod';
import { point } from '../field.ts';

export const underside = z.strictObject({
  points: z
    .record(
      z.string(),
      point(
        'a point of the underside that comes near the road',
        'Lowest edge there: front and rear end of the floor, plank, end plates; height by gauge on the patch.',
      ),
    )
    .meta({ title: 'points of the underside, by a name of your own' }),
});
