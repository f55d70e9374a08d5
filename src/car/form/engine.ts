/** How the crank twists the gear case: which way it turns, by what its torque is known, and how far it turns. */
import { z } from 'zod';
import { amount, choice } from '../field.ts';

export const engine = z.strictObject({
  turns: choice('crank turns', ['clockwise from the front', 'anticlockwise from the front']),
  overall: amount({
    means: 'turns of the crank for one of the wheel, in the gear that is looked at',
    measure: 'Plugs out, in gear, both rear wheels turned once: count the crank.',
    unit: '1',
    si: '1',
    min: 1,
    max: 40,
    usual: 'estimate',
  }).optional(),
  torque: amount({
    means: 'torque of the crank while the car is driven',
    measure: 'From the builder’s brake sheet. Given, it rules over the turns.',
    unit: 'N m',
    si: 'N m',
    min: 1,
    max: 1500,
    usual: 'estimate',
  }).optional(),
  limit: amount({
    means: 'most that the engine may turn',
    measure: 'The builder’s figure, as set in the ignition.',
    unit: 'rpm',
    si: 'rad/s',
    min: 2000,
    max: 22_000,
    usual: 'counted',
  }).optional(),
  brakeSheet: z
    .array(
      z.strictObject({
        speed: amount({
          means: 'engine speed',
          measure: 'From the builder’s brake sheet.',
          unit: 'rpm',
          si: 'rad/s',
          min: 500,
          max: 22_000,
          usual: 'counted',
        }),
        torque: amount({
          means: 'torque at full throttle',
          measure: 'From the builder’s brake sheet, as corrected there.',
          unit: 'N m',
          si: 'N m',
          min: 1,
          max: 1500,
          usual: 'brake',
        }),
      }),
    )
    .min(3)
    .meta({ title: 'torque against engine speed, from the brake' })
    .optional(),
});
