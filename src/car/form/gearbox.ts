/** Gear pairs by their teeth, final drive, and how the driven tyres roll. */
import { z } from 'zod';
import { amount, words } from '../field.ts';
import { teeth } from '../teeth.ts';

const stockPair = z.strictObject({
  pair: teeth('teeth of the pair, driver first'),
  gears: z
    .array(z.int().min(1).max(8))
    .meta({ title: 'gears that its hubs fit, such as [2, 3]; left out, all' })
    .optional(),
  module: amount({
    means: 'module of the pair, where it is not that of the box',
    measure: 'From its drawing, or over pins.',
    unit: 'mm',
    si: 'm',
    min: 1,
    max: 8,
    usual: 'counted',
  }).optional(),
  run: amount({
    means: 'run so far',
    measure: 'From the life card of the pair.',
    unit: 'km',
    si: 'm',
    min: 0,
    max: 50_000,
    usual: 'counted',
  }).optional(),
  note: words('note').optional(),
});

export const gearbox = z.strictObject({
  fitted: z
    .array(teeth('teeth of a gear, driver first'))
    .min(2)
    .max(8)
    .meta({ title: 'pairs fitted, first gear first' }),
  final: teeth('final drive: teeth of pinion, then of crown wheel'),
  drop: teeth('drop gears between engine and gearbox, driver first').optional(),
  finals: z
    .array(teeth('teeth of pinion, then of crown wheel'))
    .meta({ title: 'other final drives in stock' })
    .optional(),
  stock: z.array(stockPair).meta({ title: 'pairs in stock, beside those fitted' }).optional(),
  centreDistance: amount({
    means: 'distance between main shaft and layshaft',
    measure: 'Between the bearing bores, from bore gauge and depth.',
    unit: 'mm',
    si: 'm',
    min: 40,
    max: 200,
    usual: 'micrometer',
  }).optional(),
  module: amount({
    means: 'module of the pairs',
    measure: 'From a drawing, or over pins: outside diameter over teeth and two is near it.',
    unit: 'mm',
    si: 'm',
    min: 1,
    max: 8,
    usual: 'counted',
  }).optional(),
  efficiency: amount({
    means: 'part of the engine’s power that comes to the ground',
    measure: 'Mostly 90 to 95 % with a hot box; from a coast-down or two brakes.',
    unit: '%',
    si: '1',
    min: 60,
    max: 100,
    usual: 'estimate',
  }).optional(),
});

export const rolling = z.strictObject({
  distance: amount({
    means: 'distance of one turn of the driven wheels',
    measure: 'Car at its weight and hot pressures, rolled five turns along a tape; a fifth of it.',
    unit: 'mm',
    si: 'm',
    min: 1000,
    max: 3000,
    usual: 'tape',
  }),
  growth: amount({
    means: 'growth of that distance at the speed below',
    measure: 'Logged wheel speed against speed over the ground, off the throttle on a straight.',
    unit: '%',
    si: '1',
    min: 0,
    max: 12,
    usual: 'estimate',
  }).optional(),
  growthSpeed: amount({
    means: 'speed at which it has grown so much',
    measure: 'The speed of that reading.',
    unit: 'km/h',
    si: 'm/s',
    min: 50,
    max: 400,
    usual: 'counted',
  }).optional(),
  slip: amount({
    means: 'slip of the driven tyres under full power in the top gears',
    measure: 'The same log on the throttle: mostly 1 to 4 %.',
    unit: '%',
    si: '1',
    min: 0,
    max: 15,
    usual: 'estimate',
  }).optional(),
  resistance: amount({
    means: 'rolling resistance over load',
    measure: 'From a coast-down at walking pace: mostly 1.2 to 2.5 % for racing tyres.',
    unit: '%',
    si: '1',
    min: 0.3,
    max: 8,
    usual: 'estimate',
  }).optional(),
});
