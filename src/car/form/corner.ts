/**
 * One corner of the car as the file describes it: points, rod, wheel, springing, joints, adjusters.
 *
 * Points are in car axes (ISO 8855: x forward, y left, z up; origin in the centre plane on the ground under the
 * front axle line), at the stated static heights on the flat patch.
 */
import { z } from 'zod';
import { amount, choice, point, words } from '../field.ts';
import { adjusters, pitch, TUBE_ENDS, turning } from './adjuster.ts';
import { rockerBearings, sphericals, wheelBearings } from './bearing.ts';
import { bumpRubber, damper } from './damper.ts';
import { members } from './member.ts';
import { coilSpring, torsionBar } from './spring.ts';

const ball =
  'Centre of the ball: probe the bolt head and nut face and take the middle, or the bore with the bolt out.';

export const cornerPoints = z.strictObject({
  upperFront: point('upper wishbone, front inner joint', ball),
  upperRear: point('upper wishbone, rear inner joint', ball),
  upperOuter: point('upper outer ball joint', ball),
  lowerFront: point('lower wishbone, front inner joint', ball),
  lowerRear: point('lower wishbone, rear inner joint', ball),
  lowerOuter: point('lower outer ball joint', ball),
  toeInner: point('track rod or toe link, inner joint', ball),
  toeOuter: point('track rod or toe link, outer joint', ball),
  rodOuter: point('pushrod or pullrod, outer joint', ball),
  rodInner: point('pushrod or pullrod, joint at the rocker', ball),
  rockerPivot: point('rocker pivot', 'Centre of the rocker bearing, on its axis.'),
  rockerAxis: point(
    'second point on the rocker axis',
    'A point on the axis of the rocker bolt, as far from the pivot as the bolt allows.',
  ),
  barAnchor: point(
    'torsion bar, where the anchor holds it',
    'Middle of the anchor spline, on the axis of the bar. With the rocker pivot it says which way the bar runs.',
  ).optional(),
  wheelCentre: point(
    'wheel centre',
    'Centre of the hub face on the wheel axis, in the middle plane of the tyre.',
  ),
  damperRocker: point('damper or spring unit, eye at the rocker', ball).optional(),
  damperTub: point('damper or spring unit, eye at tub or case', ball).optional(),
  dropLinkRocker: point('anti-roll bar drop link, joint at the rocker', ball).optional(),
  dropLinkArm: point('anti-roll bar drop link, joint at the bar arm', ball).optional(),
  heaveRocker: point('heave element, eye at the rocker', ball).optional(),
});

/** @param ends  as they are called, of a tube with a left and a right thread */
export const threadOf = <const E extends readonly [string, string]>(ends: E) =>
  z.strictObject({
    size: words('thread, such as M10x1.25 or 3/8-24 UNF').optional(),
    pitch: pitch('thread pitch'),
    visible: amount({
      means: 'visible thread between end and lock nut',
      measure: 'Vernier from the nut face to the end of the thread.',
      unit: 'mm',
      si: 'm',
      min: 0,
      max: 120,
      usual: 'vernier',
    }),
    engaged: amount({
      means: 'thread engaged in the tube',
      measure: 'Whole thread length less the visible part.',
      unit: 'mm',
      si: 'm',
      min: 0,
      max: 150,
      usual: 'vernier',
    }),
    least: amount({
      means: 'least thread that must stay engaged',
      measure: 'Maker of the rod end; 1.5 times the thread diameter is usual (common practice, no source).',
      unit: 'mm',
      si: 'm',
      min: 3,
      max: 100,
      usual: 'maker',
    }),
    ...turning(ends),
  });

const joint = z.strictObject({
  limit: amount({
    means: 'angle that the spherical bearing allows to each side',
    measure:
      'Maker of the bearing, with the bolt and spacers fitted; or tilt it on the bench with a protractor.',
    unit: 'deg',
    si: 'rad',
    min: 1,
    max: 45,
    usual: 'protractor',
  }),
  asSurveyed: amount({
    means: 'angle already turned in the surveyed position',
    measure: 'Protractor between bolt and ring; 0 when it stands square.',
    unit: 'deg',
    si: 'rad',
    min: 0,
    max: 45,
    usual: 'protractor',
  }).optional(),
});

export const corner = z.strictObject({
  points: cornerPoints,
  rod: z.strictObject({
    kind: choice('pushrod or pullrod', ['pushrod', 'pullrod']),
    on: choice('what the rod stands on', ['lower wishbone', 'upper wishbone', 'upright']),
    thread: threadOf(TUBE_ENDS.rod).optional(),
  }),
  toeLink: z.strictObject({ thread: threadOf(TUBE_ENDS.toeLink).optional() }).optional(),
  wheel: z.strictObject({
    camber: amount({
      means: 'camber (negative: top leans inboard)',
      measure: 'Camber gauge or inclinometer on the set-up plate, car at its static heights.',
      unit: 'deg',
      si: 'rad',
      min: -10,
      max: 5,
      usual: 'inclinometer',
    }),
    toe: amount({
      means: 'toe of this wheel (positive: in)',
      measure: 'String line; in millimetres over the rim it is first turned into degrees.',
      unit: 'deg',
      si: 'rad',
      min: -5,
      max: 5,
      usual: 'string line',
    }),
    loadedRadius: amount({
      means: 'loaded radius',
      measure: 'Wheel centre to ground with the car standing, along the wheel plane.',
      unit: 'mm',
      si: 'm',
      min: 150,
      max: 450,
      usual: 'height gauge',
    }),
    rimDiameter: amount({
      means: 'diameter at which toe is read',
      measure: 'Tape over the rim or set-up plate.',
      unit: 'mm',
      si: 'm',
      min: 250,
      max: 700,
      usual: 'steel rule',
    }),
    tyreWidth: amount({
      means: 'width of the tyre',
      measure: 'Rule over the tread; only drawn, the contact point stays in the middle plane.',
      unit: 'mm',
      si: 'm',
      min: 100,
      max: 500,
      usual: 'steel rule',
    }),
    tyreRate: amount({
      means: 'vertical rate of the tyre at running pressure',
      measure: 'Maker of the tyre, or load against loaded radius on the scale.',
      unit: 'N/mm',
      si: 'N/m',
      min: 50,
      max: 800,
      usual: 'estimate',
    }),
  }),
  scale: amount({
    means: 'mass on this wheel scale, car as surveyed',
    measure: 'Wheel scale, level pads, driver and fuel as the spec says, bars disconnected, three readings.',
    unit: 'kg',
    si: 'kg',
    min: 20,
    max: 500,
    usual: 'corner scale',
  }),
  unsprung: amount({
    means: 'unsprung mass of this corner',
    measure: 'Wheel, upright, brake and half of each link on the bench scale.',
    unit: 'kg',
    si: 'kg',
    min: 5,
    max: 80,
    usual: 'weighing scale',
  }),
  coil: coilSpring.optional(),
  bar: torsionBar.optional(),
  damper: damper.optional(),
  bumpRubber: bumpRubber.optional(),
  joints: z
    .strictObject({
      upperOuter: joint.optional(),
      lowerOuter: joint.optional(),
      toeInner: joint.optional(),
      toeOuter: joint.optional(),
      rodOuter: joint.optional(),
      rodInner: joint.optional(),
    })
    .optional(),
  members: members.optional(),
  sphericals: sphericals.optional(),
  wheelBearings: wheelBearings.optional(),
  rockerBearings: rockerBearings.optional(),
  adjusters: adjusters.optional(),
});
