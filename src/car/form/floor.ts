/**
 * The flat floor: where heights are measured, what is aboard, ballast and shims at hand, the pads, the set-up sheet
 * that is wanted, and the sheets that were read.
 */
import { z } from 'zod';
import { amount, choice, day, point, words } from '../field.ts';
import { shims } from './adjuster.ts';

const mass = (means: string, measure: string, max: number, usual = 'weighing scale') =>
  amount({ means, measure, unit: 'kg', si: 'kg', min: 0, max, usual });

const length = (means: string, measure: string, usual: string, min: number, max: number) =>
  amount({ means, measure, unit: 'mm', si: 'm', min, max, usual });

const angle = (means: string, measure: string, usual: string, min: number, max: number) =>
  amount({ means, measure, unit: 'deg', si: 'rad', min, max, usual });

const eachWheel = <T extends z.ZodType>(of: (wheel: string) => T) =>
  z
    .strictObject({
      frontLeft: of('front left').optional(),
      frontRight: of('front right').optional(),
      rearLeft: of('rear left').optional(),
      rearRight: of('rear right').optional(),
    })
    .optional();

const eachEnd = <T extends z.ZodType>(of: (end: string) => T) =>
  z.strictObject({ front: of('front').optional(), rear: of('rear').optional() }).optional();

/** The readings of a sheet; on the sheet that is wanted, what follows ± is the tolerance. */
const readings = {
  height: z
    .record(
      z.string(),
      length(
        'height of a measuring point above the floor',
        'Height gauge or slip gauges under the point, driver in, tyres at pressure.',
        'height gauge',
        0,
        600,
      ),
    )
    .meta({ title: 'heights, by the names of the measuring points' })
    .optional(),
  weight: eachWheel((wheel) =>
    mass(
      `mass on the ${wheel} pad`,
      'Wheel scale, three readings, the car settled between.',
      500,
      'corner scale',
    ),
  ),
  camber: eachWheel((wheel) =>
    angle(
      `camber, ${wheel} (negative: top leans inboard)`,
      'Gauge on the set-up plate or rim.',
      'inclinometer',
      -10,
      5,
    ),
  ),
  toe: eachWheel((wheel) =>
    angle(
      `toe of the ${wheel} wheel (positive: in)`,
      'Strings along the car, rim front and rear.',
      'string line',
      -5,
      5,
    ),
  ),
  toeAtRim: eachWheel((wheel) =>
    length(
      `toe of the ${wheel} wheel over its rim (positive: in)`,
      'Strings outside the wheels: front edge of the rim less rear edge, over the diameter that the wheel gives.',
      'string line',
      -30,
      30,
    ),
  ),
  caster: eachWheel((wheel) =>
    angle(`caster, ${wheel}`, 'Caster gauge, swept between equal angles of lock.', 'inclinometer', -3, 15),
  ),
  track: eachEnd((end) =>
    length(
      `${end} track, between the middles of the tyres at the ground`,
      'Tape or trammel on the floor.',
      'tape',
      800,
      2500,
    ),
  ),
  wheelbase: z
    .strictObject({
      left: length(
        'wheelbase on the left',
        'Plumb lines from the hubs and a tape.',
        'plumb bob',
        1500,
        4500,
      ).optional(),
      right: length(
        'wheelbase on the right',
        'Plumb lines from the hubs and a tape.',
        'plumb bob',
        1500,
        4500,
      ).optional(),
    })
    .optional(),
  droop: eachWheel((wheel) =>
    length(
      `droop of the ${wheel} wheel, from standing to its stop`,
      'Rule at the wheel, tub jacked.',
      'steel rule',
      0,
      200,
    ),
  ),
};

const sheetWanted = z.strictObject({
  note: words('note').optional(),
  ...readings,
  cross: amount({
    means: 'cross weight, right front and left rear of the whole',
    measure: 'From the four pads.',
    unit: '%',
    si: '1',
    min: 30,
    max: 70,
    usual: 'estimate',
  }).optional(),
  rake: length(
    'rake: mean height of the rear measuring points less that of the front ones',
    'From the heights.',
    'height gauge',
    -100,
    200,
  ).optional(),
});

const pressure = amount({
  means: 'gauge pressure while this sheet was read',
  measure: 'Gauge, before the car was rolled onto the pads.',
  unit: 'bar',
  si: 'Pa',
  min: 0.3,
  max: 5,
  usual: 'pressure gauge',
});

const sheetRead = z.strictObject({
  state: choice('when it was read', ['as found', 'as set', 'after run']),
  on: day('day').optional(),
  by: words('who read it').optional(),
  note: words('note').optional(),
  bars: choice('anti-roll bars while it was read', ['connected', 'disconnected']).optional(),
  aboard: z
    .record(z.string(), mass('mass of it aboard while this was read', 'Scale, or gauge of the fuel.', 200))
    .meta({ title: 'what was aboard, by its name; what is not named was as surveyed' })
    .optional(),
  pressure: eachWheel(() => pressure),
  moved: z
    .record(z.string(), z.number({ error: 'must be a number of units of the adjuster' }))
    .meta({ title: 'adjusters moved since the sheet before, by name, in their own units' })
    .optional(),
  readings: z.strictObject(readings),
});

export const floor = z.strictObject({
  heights: z
    .record(
      z.string(),
      point('a measuring point for heights, fixed to the tub', 'The face that the gauge touches.'),
    )
    .meta({ title: 'measuring points for heights, by a name of your own' })
    .optional(),
  aboard: z
    .record(
      z.string(),
      z.strictObject({
        mass: mass('mass of it as surveyed', 'Weighing scale, or litres times density.', 200),
        at: point('centre of it', 'Driver: near the navel, seated; fuel: middle of the cell at this level.'),
      }),
    )
    .meta({ title: 'what can be aboard or not: driver, fuel; by name' })
    .optional(),
  ballast: z
    .record(
      z.string(),
      z.strictObject({
        at: point('place of the ballast', 'Middle of its mounting.'),
        fitted: mass('ballast fitted there as surveyed', 'Weighing scale.', 100),
        most: mass('most that may be fitted there', 'The mounting; the rules.', 100, 'maker'),
        step: mass('mass of one piece', 'Weighing scale.', 20),
      }),
    )
    .meta({ title: 'places for ballast, by name' })
    .optional(),
  shimBox: shims('shims in the box').optional(),
  patch: z
    .strictObject({
      pads: eachWheel((wheel) =>
        length(
          `height of the ${wheel} pad above the floor's plane`,
          'Water level or digital level over the four pads.',
          'height gauge',
          -50,
          300,
        ),
      ),
      risesForward: angle(
        'slope of the floor, rising forward',
        'Digital level along the car.',
        'inclinometer',
        -2,
        2,
      ).optional(),
      risesLeft: angle(
        'slope of the floor, rising to the left',
        'Digital level across the car.',
        'inclinometer',
        -2,
        2,
      ).optional(),
    })
    .optional(),
  sheet: sheetWanted
    .meta({ title: 'set-up sheet as it is wanted; what follows ± is the tolerance' })
    .optional(),
  read: z
    .record(z.string(), sheetRead)
    .meta({ title: 'sheets as they were read, the first first, by a name of your own' })
    .optional(),
});
