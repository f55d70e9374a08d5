/** A load case of the car's own: what it does, decided and not measured. */
import { z } from 'zod';
import { choice, stated, words } from '../field.ts';
import { HANDED_ON } from '../handed-on.ts';

const acceleration = (means: string, measure: string) =>
  stated({ means, measure, unit: 'gn', si: 'm/s^2', min: -6, max: 6 });

const force = (means: string, measure: string, min: number) =>
  stated({ means, measure, unit: 'N', si: 'N', min, max: 60_000 });

const share = (means: string) =>
  stated({ means, measure: 'As set for this case.', unit: '%', si: '1', min: 0, max: 100 });

const strike = (wheel: string) =>
  stated({
    means: `load of a kerb under the ${wheel} wheel, in loads of its own scale reading, on top`,
    measure: 'Judged: 2 to 4 (common practice, no source).',
    unit: '1',
    si: '1',
    min: 0,
    max: 20,
  }).optional();

const contact = z
  .strictObject({
    up: force('load of the tyre', 'From a log or a sum of your own.', 0),
    forward: force(
      'fore and aft force on the tyre',
      'Forward positive; left out, by the sharing rule.',
      -60_000,
    ).optional(),
    left: force(
      'side force on the tyre',
      'To the left positive; left out, by the sharing rule.',
      -60_000,
    ).optional(),
    by: choice('what takes the torque of the fore and aft force', HANDED_ON).optional(),
  })
  .optional();

export const loadCase = z.strictObject({
  means: words('what the car does, in words').optional(),
  longitudinal: acceleration(
    'fore and aft acceleration',
    'Forward positive: braking is negative.',
  ).optional(),
  lateral: acceleration('sideways acceleration', 'To the left positive: a left-hand turn.').optional(),
  vertical: acceleration('upward acceleration, on top of gravity', 'A dip is positive.').optional(),
  speed: stated({
    means: 'speed, for the forces of the air',
    measure: 'As driven.',
    unit: 'km/h',
    si: 'm/s',
    min: 0,
    max: 400,
  }).optional(),
  rack: stated({
    means: 'rack travel',
    measure: 'To the left positive.',
    unit: 'mm',
    si: 'm',
    min: -120,
    max: 120,
  }).optional(),
  frontBrakes: share('front share of the brakes, where it is not that of the file').optional(),
  kerb: z
    .strictObject({
      frontLeft: strike('front left'),
      frontRight: strike('front right'),
      rearLeft: strike('rear left'),
      rearRight: strike('rear right'),
    })
    .optional(),
  contacts: z
    .strictObject({ frontLeft: contact, frontRight: contact, rearLeft: contact, rearRight: contact })
    .optional(),
});
