/** Forces of the air at one speed; at others they go by its square. */
import { z } from 'zod';
import { amount, point } from '../field.ts';

const force = (means: string, max: number) =>
  amount({
    means,
    measure: 'From a logged straight (heights or pushrod loads against speed), a coast-down, or old papers.',
    unit: 'N',
    si: 'N',
    min: 0,
    max,
    usual: 'estimate',
  });

export const air = z.strictObject({
  speed: amount({
    means: 'speed at which the forces of the air are told',
    measure: 'From the log or the papers that tell the forces.',
    unit: 'km/h',
    si: 'm/s',
    min: 30,
    max: 400,
    usual: 'estimate',
  }),
  downforce: force('downforce at that speed', 40_000),
  frontShare: amount({
    means: 'front share of the downforce',
    measure: 'From the pushrod loads of both axles at speed.',
    unit: '%',
    si: '1',
    min: 0,
    max: 100,
    usual: 'estimate',
  }),
  drag: force('drag at that speed', 15_000),
  dragHeight: amount({
    means: 'height above the ground at which the drag acts',
    measure: 'Judged: about the height of the wheel centres with wings, a little more.',
    unit: 'mm',
    si: 'm',
    min: 50,
    max: 1000,
    usual: 'estimate',
  }),
  rearWing: z
    .strictObject({
      at: point(
        'where the force of the rear wing acts',
        'Quarter of its chord behind its leading edge, middle of the car.',
      ),
      downforce: force('downforce of the rear wing at that speed', 30_000),
      drag: force('drag of the rear wing at that speed', 10_000),
      pillars: z
        .array(point('foot of a pillar on the gear case', 'Middle of its bolts.'))
        .min(1)
        .max(6)
        .meta({ title: 'feet of its pillars on the gear case' }),
    })
    .meta({ title: 'rear wing that stands on the gear case' })
    .optional(),
});
