/** What a sheet that was read tells beside its readings: what was not so, where it was read, clicks, wings, tyres. */
import { z } from 'zod';
import { choice, stated, words } from '../field.ts';

/** What must be so while a car is read or before it runs, in the order of the work; their words are floor-holds.ts. */
export const HOLD_NAMES = [
  'pads',
  'rack',
  'bars',
  'aboard',
  'settled',
  'bump',
  'again',
  'springs',
  'links',
  'locks',
  'marks',
] as const;
export type HoldName = (typeof HOLD_NAMES)[number];

const temperature = (means: string, measure: string) =>
  stated({ means, measure, unit: 'degC', si: 'K', min: -30, max: 70 });

const clicks = (means: string) =>
  z
    .int({ error: 'must be a whole number of clicks' })
    .min(0, { error: 'is less than no click' })
    .max(60, { error: 'is more than 60 clicks' })
    .meta({ title: means })
    .optional();

const damperClicks = z
  .strictObject({
    bump: clicks('clicks of bump'),
    rebound: clicks('clicks of rebound'),
    fastBump: clicks('clicks of fast bump, where it has its own'),
    fastRebound: clicks('clicks of fast rebound, where it has its own'),
  })
  .optional();

export const besideReadings = {
  notSo: z
    .array(choice('a hold that was not so', HOLD_NAMES))
    .meta({ title: 'what should have been so while it was read, and was not' })
    .optional(),
  place: words('floor or patch that it was read on').optional(),
  airTemperature: temperature(
    'temperature of the air',
    'Thermometer beside the car, out of the sun.',
  ).optional(),
  floorTemperature: temperature('temperature of the floor', 'Probe on the floor beside a pad.').optional(),
  tyres: words('set of tyres').optional(),
  clicks: z
    .strictObject({
      from: choice('end from which clicks are counted', ['full soft', 'full hard']),
      frontLeft: damperClicks,
      frontRight: damperClicks,
      rearLeft: damperClicks,
      rearRight: damperClicks,
    })
    .optional(),
  wings: z
    .record(
      z.string(),
      stated({
        means: 'angle of a wing or flap to the floor, nose down positive',
        measure: 'Inclinometer on a straight edge over the chord, or the mark of its hole.',
        unit: 'deg',
        si: 'rad',
        min: -20,
        max: 60,
      }),
    )
    .meta({ title: 'angles of wings and flaps, by a name of your own' })
    .optional(),
};
