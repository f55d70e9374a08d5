/** Damper and bump rubber as the file describes them, with their measured curves. */
import { z } from 'zod';
import { amount } from '../field.ts';

export const bumpRubber = z.strictObject({
  gap: amount({
    means: 'gap between rubber and stop in the surveyed position, without packers',
    measure: 'Vernier along the damper shaft, car at its static heights.',
    unit: 'mm',
    si: 'm',
    min: -40,
    max: 200,
    usual: 'vernier',
  }),
  packers: amount({
    means: 'packers fitted',
    measure: 'Vernier over the stack.',
    unit: 'mm',
    si: 'm',
    min: 0,
    max: 80,
    usual: 'vernier',
  }).optional(),
  curve: z
    .array(
      z.strictObject({
        compression: amount({
          means: 'compression of the rubber',
          measure: 'Spring press, second run.',
          unit: 'mm',
          si: 'm',
          min: 0,
          max: 80,
          usual: 'dial gauge',
        }),
        force: amount({
          means: 'force of the rubber',
          measure: 'Spring press, second run.',
          unit: 'N',
          si: 'N',
          min: 0,
          max: 60000,
          usual: 'spring press',
        }),
      }),
    )
    .min(3)
    .meta({ title: 'force against compression, from 0 on' }),
});

export const damper = z.strictObject({
  openLength: amount({
    means: 'damper eye to eye, fully open',
    measure: 'Tape or vernier, damper off the car; this is the droop stop.',
    unit: 'mm',
    si: 'm',
    min: 50,
    max: 700,
    usual: 'vernier',
  }),
  closedLength: amount({
    means: 'damper eye to eye, fully closed',
    measure: 'Vernier, damper off the car, rubber and packers off.',
    unit: 'mm',
    si: 'm',
    min: 40,
    max: 650,
    usual: 'vernier',
  }),
  gasForce: amount({
    means: 'force of the gas on the rod',
    measure: 'Push the rod to mid-stroke on a scale, slowly.',
    unit: 'N',
    si: 'N',
    min: 0,
    max: 1500,
    usual: 'weighing scale',
  }).optional(),
  curve: z
    .array(
      z.strictObject({
        velocity: amount({
          means: 'shaft velocity',
          measure: 'Damper bench.',
          unit: 'mm/s',
          si: 'm/s',
          min: 0,
          max: 2000,
          usual: 'damper bench',
        }),
        bump: amount({
          means: 'force in bump at this velocity',
          measure: 'Damper bench, peak velocity, gas force taken off.',
          unit: 'N',
          si: 'N',
          min: 0,
          max: 20000,
          usual: 'damper bench',
        }),
        rebound: amount({
          means: 'force in rebound at this velocity',
          measure: 'Damper bench, peak velocity, gas force taken off.',
          unit: 'N',
          si: 'N',
          min: 0,
          max: 20000,
          usual: 'damper bench',
        }),
      }),
    )
    .min(2)
    .meta({ title: 'force against velocity' })
    .optional(),
});
