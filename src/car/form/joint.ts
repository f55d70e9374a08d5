/** A bolted joint of the load path: case to engine, engine to tub. Its studs, what they clamp, how they are tightened. */
import { z } from 'zod';
import { amount, choice, point, words } from '../field.ts';

const length = (means: string, measure: string, min: number, max: number, usual = 'vernier') =>
  amount({ means, measure, unit: 'mm', si: 'm', min, max, usual });

const friction = (means: string) =>
  amount({
    means,
    measure: 'On a bench with a load cell, with the nuts, washers and paste of this build.',
    unit: '1',
    si: '1',
    min: 0.03,
    max: 0.5,
    usual: 'estimate',
  });

const torque = (means: string, min: number) =>
  amount({
    means,
    measure: 'Torque wrench within its calibration.',
    unit: 'N m',
    si: 'N m',
    min,
    max: 400,
    usual: 'torque wrench',
  });

const builder = z.strictObject({
  torque: torque('torque at the nut by the engine builder', 1),
  lubricant: words('lubricant that his figure is for, by its name in the table').optional(),
  source: words('where his figure stands: sheet, page, day'),
});

const sort = z.strictObject({
  thread: words('thread, such as M10x1.25, 3/8-24 UNF or 3/8 BSF'),
  material: words('property class or material of the stud, by its name in the table'),
  rolled: choice('thread rolled', ['before heat treatment', 'after heat treatment']).optional(),
  shankDiameter: length(
    'shank of the stud within the grip, where it is not thread',
    'Micrometer at the thinnest place.',
    2,
    40,
    'micrometer',
  ).optional(),
  shankLength: length('length of that shank within the grip', 'Vernier.', 1, 400).optional(),
  layers: z
    .array(
      z.strictObject({
        material: words('material of the layer, by its name in the table'),
        thickness: length('thickness of the layer', 'Vernier at the hole.', 0.5, 300),
      }),
    )
    .min(1)
    .meta({ title: 'what is clamped, from the nut down to the parent thread' }),
  parent: words('material that the stud is screwed into, by its name in the table'),
  engaged: length('thread engaged in the parent', 'Depth of the hole less what stands free.', 3, 80),
  depth: length('depth of the tapped hole', 'Depth gauge to the last full thread.', 3, 150).optional(),
  length: length('length of the stud, end to end', 'Vernier, out of the car.', 8, 500).optional(),
  free: length('how far the stud stands out of the parent', 'Depth gauge, nut off.', 4, 450).optional(),
  nutFace: length('outer diameter of the nut or washer face', 'Vernier over the bright ring.', 4, 60),
  hole: length('hole that the stud passes', 'Vernier.', 3, 50),
  pad: length('diameter of the part round the stud that bears at the joint face', 'Vernier.', 6, 200),
  torque: torque('torque set on the wrench', 1).optional(),
  stretch: length(
    'stretch of the stud, end to end, in place of a torque',
    'Micrometer over both ends, slack and tight, both at one warmth; spread by reading it again.',
    0.005,
    2,
    'micrometer',
  ).optional(),
  angle: amount({
    means: 'angle that the nut is turned past snug, in place of a torque',
    measure: 'Protractor on the nut, from where the snug torque or preload is reached.',
    unit: 'deg',
    si: 'rad',
    min: 1,
    max: 360,
    usual: 'estimate',
  }).optional(),
  snug: torque('snug torque, from which the angle is turned', 0.5).optional(),
  snugPreload: amount({
    means: 'preload from which the angle is turned, where it is known and not set by a torque',
    measure: 'Load cell under the nut on a bench.',
    unit: 'N',
    si: 'N',
    min: 0,
    max: 100_000,
    usual: 'estimate',
  }).optional(),
  running: torque('running torque of the nut', 0).optional(),
  lubricant: words('lubricant on thread and nut face, by its name in the table').optional(),
  threadFriction: friction('friction of the thread as measured').optional(),
  faceFriction: friction('friction of the nut face as measured').optional(),
  wrench: length('wrench, square drive to middle of the grip', 'Rule.', 80, 1500, 'steel rule').optional(),
  crowfoot: length(
    'how far a crowfoot stands beyond the square drive',
    'Rule.',
    0,
    200,
    'steel rule',
  ).optional(),
  entry: amount({
    means: 'where the load enters: 1 under the nut, less within the parts',
    measure: 'From the shape of the flange: half way down its height is about 0.5 (VDI 2230).',
    unit: '1',
    si: '1',
    min: 0.1,
    max: 1,
    usual: 'estimate',
  }),
  builder: builder.optional(),
});

export const joint = z.strictObject({
  sorts: z.record(z.string(), sort).meta({ title: 'sorts of stud, by a name of your own' }),
  studs: z
    .array(
      z.strictObject({
        name: words('name of the stud as on the card'),
        at: point('stud, where its axis passes the face of the joint', 'Centre of the hole at the face.'),
        sort: words('which sort of stud'),
      }),
    )
    .min(1),
  dowels: z
    .array(
      z.strictObject({
        name: words('name of the dowel'),
        at: point('dowel, centre at the face', 'Centre of the hole at the face.'),
      }),
    )
    .optional(),
  plates: z
    .array(
      z.strictObject({
        name: words('name of the plate or link that lets the engine grow'),
        at: point('plate or link, where it passes the plane of the face', 'Middle of its section.'),
        stiffness: amount({
          means: 'stiffness of the plate along the car',
          measure: 'Section times modulus over its free length.',
          unit: 'N/mm',
          si: 'N/m',
          min: 1000,
          max: 2_000_000,
          usual: 'estimate',
        }),
        thickness: length('thickness of the plate, the way it bends', 'Micrometer.', 0.5, 30).optional(),
        free: length('length of the plate that bends, between its fixings', 'Rule.', 5, 500).optional(),
        across: length(
          'length of engine that grows across the plate, from where the engine is held',
          'Rule, from the lower studs to the plate.',
          20,
          900,
          'steel rule',
        ).optional(),
        material: words('material of the plate, by its name in the table').optional(),
        grows: words('material of what grows, by its name in the table').optional(),
      }),
    )
    .optional(),
  friction: amount({
    means: 'friction of the face itself',
    measure: 'Dry, clean metal on metal: 0.10 to 0.20 (common practice, no source).',
    unit: '1',
    si: '1',
    min: 0.02,
    max: 0.6,
    usual: 'estimate',
  }),
  warm: amount({
    means: 'how much warmer the joint runs than it was tightened',
    measure: 'Stick-on strips beside the studs after a run.',
    unit: 'K',
    si: 'K',
    min: 0,
    max: 150,
    usual: 'estimate',
  }).optional(),
});

const lump = (means: string) =>
  z.strictObject({
    mass: amount({
      means: `mass of the ${means}`,
      measure: 'Hanging scale, as it is bolted in.',
      unit: 'kg',
      si: 'kg',
      min: 5,
      max: 300,
      usual: 'weighing scale',
    }),
    at: point(`centre of gravity of the ${means}`, 'Balanced on an edge two ways, or hung.'),
  });

export const masses = z.strictObject({
  case: lump('gear case with all that it carries'),
  engine: lump('engine'),
});
