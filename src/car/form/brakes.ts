/** The brakes: where they sit, how they are shared, and the system of bores, bar, pads and discs behind that share. */
import { z } from 'zod';
import { amount, choice, words } from '../field.ts';

const length = (means: string, measure: string, min: number, max: number, usual: string) =>
  amount({ means, measure, unit: 'mm', si: 'm', min, max, usual });

const wear = z
  .array(
    z.strictObject({
      laps: amount({
        means: 'laps since the first reading',
        measure: 'From the run sheets.',
        unit: '1',
        si: '1',
        min: 0,
        max: 5000,
        usual: 'counted',
      }),
      pad: length(
        'thickness of the most worn pad, without its plate',
        'Vernier, both ends.',
        0,
        60,
        'vernier',
      ).optional(),
      disc: length(
        'thickness of the disc',
        'Micrometer at eight places; the least.',
        0,
        60,
        'micrometer',
      ).optional(),
    }),
  )
  .min(2)
  .meta({ title: 'wear: thickness against laps, first reading first' });

const axle = z.strictObject({
  masterCylinder: length('bore of the master cylinder', 'Cast on it, or bore gauge.', 10, 40, 'counted'),
  pistons: z
    .array(length('diameter of a piston', 'Vernier, or the maker’s sheet.', 15, 80, 'counted'))
    .min(1)
    .max(8)
    .meta({ title: 'pistons of one caliper on one side of the disc' }),
  radius: length(
    'middle radius at which the pads press',
    'Outside radius of the disc less half the height of the pad.',
    60,
    250,
    'steel rule',
  ),
  friction: amount({
    means: 'friction of pad on disc, warm',
    measure: 'From the pad maker’s curve at running temperature; 0.35 to 0.6 for most.',
    unit: '1',
    si: '1',
    min: 0.1,
    max: 0.9,
    usual: 'estimate',
  }),
  leastPad: length('least thickness of a pad', 'The pad maker’s figure.', 0, 40, 'counted').optional(),
  leastDisc: length(
    'least thickness of the disc',
    'Stamped on it, or its maker’s figure.',
    0,
    60,
    'counted',
  ).optional(),
  wear: wear.optional(),
  note: words('note').optional(),
});

const system = z.strictObject({
  pedal: amount({
    means: 'pedal ratio: travel of the pad over travel of the bar',
    measure: 'Pivot to pad over pivot to bar, pedal where it bites.',
    unit: '1',
    si: '1',
    min: 1.5,
    max: 12,
    usual: 'steel rule',
  }),
  bar: z
    .strictObject({
      width: length(
        'balance bar, clevis to clevis',
        'Rule between the middles of the clevises.',
        20,
        150,
        'steel rule',
      ),
      offset: length(
        'middle of the bar’s bearing from the middle between the clevises, towards the front cylinder’s clevis',
        'Depth gauge from each clevis: half their difference.',
        -40,
        40,
        'steel rule',
      ),
      perTurn: length(
        'movement of the bearing for a turn of the adjuster',
        'Thread pitch of the bar.',
        0.3,
        5,
        'counted',
      ).optional(),
      room: length(
        'most that the bearing may stand off the middle',
        'Until clevis or tube binds, less 2 mm.',
        0,
        40,
        'steel rule',
      ).optional(),
    })
    .meta({ title: 'balance bar' }),
  front: axle.meta({ title: 'front brakes' }),
  rear: axle.meta({ title: 'rear brakes' }),
});

export const brakes = z.strictObject({
  front: choice('front brakes sit', ['outboard', 'inboard']),
  rear: choice('rear brakes sit', ['outboard', 'inboard']),
  frontShare: amount({
    means: 'front share of the braking force',
    measure: 'From line pressures and sizes; straight, dry, at the bias as run.',
    unit: '%',
    si: '1',
    min: 30,
    max: 80,
    usual: 'estimate',
  }),
  system: system.meta({ title: 'bores, bar, pads and discs' }).optional(),
});
