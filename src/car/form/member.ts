/**
 * What the six members of a corner and its drop link are made of: round tubes or bars, a streamlined tube by its
 * thinner way, and the screwed ends that hold them.
 */
import { z } from 'zod';
import { amount, words } from '../field.ts';

const screwedEnd = z.strictObject({
  thread: words(
    'thread, such as M10x1.25 or 3/8-24 UNF; of rod and toeLink their own where left out',
  ).optional(),
  engaged: amount({
    means: 'thread engaged; of rod and toeLink their own where left out',
    measure: 'Whole thread length less what stands out.',
    unit: 'mm',
    si: 'm',
    min: 3,
    max: 150,
    usual: 'vernier',
  }).optional(),
  yield: amount({
    means: 'yield of the screwed shank',
    measure: 'Maker of the rod end, or hardness.',
    unit: 'MPa',
    si: 'Pa',
    min: 80,
    max: 1600,
    usual: 'estimate',
  }),
  parent: words('what it is screwed into: a name from the table of clamped materials'),
});

const member = z.strictObject({
  outside: amount({
    means: 'outside diameter of the member',
    measure: 'Micrometer, paint off; of a streamlined tube the thinner way.',
    unit: 'mm',
    si: 'm',
    min: 5,
    max: 60,
    usual: 'micrometer',
  }),
  wall: amount({
    means: 'wall of the tube',
    measure: 'Ultrasonic gauge, or a drilled end; leave out for a solid bar.',
    unit: 'mm',
    si: 'm',
    min: 0.4,
    max: 15,
    usual: 'vernier',
  }).optional(),
  youngsModulus: amount({
    means: "Young's modulus of the member",
    measure: 'From the material table: steel about 205, titanium 114, aluminium 71.',
    unit: 'GPa',
    si: 'Pa',
    min: 40,
    max: 230,
    usual: 'table',
  }),
  yield: amount({
    means: 'yield of the member, beside its welds',
    measure: 'Certificate or hardness; beside a weld the annealed value.',
    unit: 'MPa',
    si: 'Pa',
    min: 80,
    max: 1600,
    usual: 'estimate',
  }),
  bow: amount({
    means: 'how far its middle stands off the line of its joints',
    measure: 'Straight edge and feeler, or rolled on the flat patch.',
    unit: 'mm',
    si: 'm',
    min: 0,
    max: 10,
    usual: 'dial gauge',
  }).optional(),
  effective: amount({
    means: 'part of its length that buckles as if pinned',
    measure: '1 between ball joints; less where an end is welded stiff (0.7, common practice, no source).',
    unit: '1',
    si: '1',
    min: 0.5,
    max: 2,
    usual: 'estimate',
  }).optional(),
  end: screwedEnd.optional(),
});

export const members = z.strictObject({
  upperFront: member.optional(),
  upperRear: member.optional(),
  lowerFront: member.optional(),
  lowerRear: member.optional(),
  toeLink: member.optional(),
  rod: member.optional(),
  dropLink: member.optional(),
});
