/** How the crank twists the gear case: which way it turns, and by what its torque is known. */
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
});
