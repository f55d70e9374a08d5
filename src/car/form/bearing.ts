/**
 * Rolling bearings in pairs, of a wheel and of a rocker, and spherical bearings with their ratings. All of it may be
 * left out; then nothing is said of it.
 */
import { z } from 'zod';
import { amount, choice, point } from '../field.ts';

const bearing = (at: { readonly means: string; readonly measure: string }) =>
  z.strictObject({
    at: amount({ ...at, unit: 'mm', si: 'm', min: -150, max: 200, usual: 'vernier' }),
    staticRating: amount({
      means: 'static radial rating C0 of the bearing',
      measure: 'Maker of the bearing, by the number on its ring.',
      unit: 'kN',
      si: 'N',
      min: 0.5,
      max: 500,
      usual: 'maker',
    }).optional(),
    contactAngle: amount({
      means: 'contact angle of the bearing',
      measure: 'Maker of the bearing; of a taper roller half the angle of the cup.',
      unit: 'deg',
      si: 'rad',
      min: 5,
      max: 45,
      usual: 'maker',
    }).optional(),
    pitchDiameter: amount({
      means: 'diameter of the circle on which the balls or rollers run',
      measure: 'Bore and outside diameter of the bearing, their mean.',
      unit: 'mm',
      si: 'm',
      min: 8,
      max: 250,
      usual: 'vernier',
    }).optional(),
  });

const pair = {
  kind: choice('kind of both bearings', ['deep groove', 'angular contact', 'taper roller', 'needle roller']),
  arrangement: choice('how an angular contact or taper pair stands', [
    'back to back',
    'face to face',
  ]).optional(),
  turns: choice('rings that turn with wheel or rocker', ['inner rings', 'outer rings']).optional(),
  preload: amount({
    means: 'preload of an angular contact or taper pair, along the axis',
    measure: 'Maker of the bearings for that spacer, or from the running torque.',
    unit: 'N',
    si: 'N',
    min: 0,
    max: 10000,
    usual: 'estimate',
  }).optional(),
} as const;

const WHEEL_AT =
  'Vernier on the spindle from the hub face to the middle of the bearing; the middle plane of the tyre from the rim.';

export const wheelBearings = z.strictObject({
  ...pair,
  locating: choice('deep groove bearing that is held both ways', ['outer', 'inner']).optional(),
  outer: bearing({
    means: 'middle of the outer bearing, inboard of the middle plane of the wheel (outboard negative)',
    measure: WHEEL_AT,
  }),
  inner: bearing({
    means: 'middle of the inner bearing, inboard of the middle plane of the wheel (outboard negative)',
    measure: WHEEL_AT,
  }),
  turning: amount({
    means: 'mass of what turns on the wheel bearings',
    measure: 'Wheel with tyre, hub or spindle, disc and bell on the bench scale.',
    unit: 'kg',
    si: 'kg',
    min: 2,
    max: 60,
    usual: 'weighing scale',
  }),
  caliper: z
    .strictObject({
      at: amount({
        means: 'middle plane of the disc, inboard of the middle plane of the wheel (outboard negative)',
        measure: 'Vernier on the spindle from the hub face to the disc.',
        unit: 'mm',
        si: 'm',
        min: -150,
        max: 250,
        usual: 'vernier',
      }),
      radius: amount({
        means: 'radius at which the pads grip',
        measure: 'Spindle axis to the middle of the pistons.',
        unit: 'mm',
        si: 'm',
        min: 50,
        max: 200,
        usual: 'steel rule',
      }),
      angle: amount({
        means: 'where the calliper stands about the axle (0 ahead, 90 above, 180 behind)',
        measure: 'Inclinometer along the line from the spindle axis to the middle of the pistons.',
        unit: 'deg',
        si: 'rad',
        min: -180,
        max: 360,
        usual: 'protractor',
      }),
    })
    .optional(),
});

const ROCKER_AT =
  'Vernier along the rocker bolt, from the point surveyed as pivot to the middle of the bearing.';

export const rockerBearings = z.strictObject({
  ...pair,
  locating: choice('deep groove bearing that is held both ways', ['first', 'second']).optional(),
  first: bearing({
    means: 'middle of the first bearing, from the pivot towards the second point on the axis (back negative)',
    measure: ROCKER_AT,
  }),
  second: bearing({
    means:
      'middle of the second bearing, from the pivot towards the second point on the axis (back negative)',
    measure: ROCKER_AT,
  }),
});

const rated = {
  radialRating: amount({
    means: 'static radial rating of the bearing or rod end',
    measure: 'Maker; of a rod end the lower of bearing and body.',
    unit: 'kN',
    si: 'N',
    min: 1,
    max: 300,
    usual: 'maker',
  }),
} as const;

const rodEnd = z.strictObject(rated);

const inWishbone = z.strictObject({
  ...rated,
  axialRating: amount({
    means: 'static axial rating of the bearing in its housing',
    measure: 'Maker; of a staked bearing the push at which it leaves its housing.',
    unit: 'kN',
    si: 'N',
    min: 0.2,
    max: 150,
    usual: 'maker',
  }).optional(),
  axis: point(
    'second point on the axis of the housing',
    'A point on the line through the ball square to the ring that holds it, as far from the ball as can be reached.',
  ).optional(),
});

export const sphericals = z.strictObject({
  upperFront: inWishbone.optional(),
  upperRear: inWishbone.optional(),
  upperOuter: inWishbone.optional(),
  lowerFront: inWishbone.optional(),
  lowerRear: inWishbone.optional(),
  lowerOuter: inWishbone.optional(),
  toeInner: rodEnd.optional(),
  toeOuter: rodEnd.optional(),
  rodOuter: rodEnd.optional(),
  rodInner: rodEnd.optional(),
});
