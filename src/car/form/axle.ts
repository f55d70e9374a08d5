/** One axle as the file describes it: its two corners and what joins them. */
import { z } from 'zod';
import { amount, choice, point, words } from '../field.ts';
import { TUBE_ENDS } from './adjuster.ts';
import { corner, threadOf } from './corner.ts';
import { helperSpring } from './spring.ts';

const shearModulus = amount({
  means: 'shear modulus of the bar',
  measure: 'From the maker or the material table.',
  unit: 'GPa',
  si: 'Pa',
  min: 15,
  max: 100,
  usual: 'table',
});

const roundBar = z.strictObject({
  diameter: amount({
    means: 'outside diameter of the anti-roll bar',
    measure: 'Micrometer, paint off.',
    unit: 'mm',
    si: 'm',
    min: 4,
    max: 60,
    usual: 'micrometer',
  }),
  bore: amount({
    means: 'bore of the anti-roll bar',
    measure: 'Vernier at an open end; leave out for a solid bar.',
    unit: 'mm',
    si: 'm',
    min: 0,
    max: 56,
    usual: 'vernier',
  }).optional(),
  activeLength: amount({
    means: 'length that twists',
    measure: 'Rule between the arms, or of the stem of a T-bar.',
    unit: 'mm',
    si: 'm',
    min: 20,
    max: 1500,
    usual: 'steel rule',
  }),
  material: words('material, by its name in the material table').optional(),
  shearModulus: shearModulus.optional(),
  rate: amount({
    means: 'rate of the bar as measured, arms clamped',
    measure: 'Lever and known masses. Given, it rules over the rate from the dimensions.',
    unit: 'N m/deg',
    si: 'N m/rad',
    min: 0.5,
    max: 5000,
    usual: 'lever and mass',
  }).optional(),
});

const blade = z.strictObject({
  length: amount({
    means: 'length of the blade that bends',
    measure: 'Rule from the clamp to the drop link joint.',
    unit: 'mm',
    si: 'm',
    min: 20,
    max: 400,
    usual: 'steel rule',
  }),
  thickness: amount({
    means: 'thickness of the blade',
    measure: 'Micrometer at mid length.',
    unit: 'mm',
    si: 'm',
    min: 1,
    max: 20,
    usual: 'micrometer',
  }),
  width: amount({
    means: 'width of the blade',
    measure: 'Vernier at mid length.',
    unit: 'mm',
    si: 'm',
    min: 5,
    max: 80,
    usual: 'vernier',
  }),
  youngsModulus: amount({
    means: "Young's modulus of the blade",
    measure: 'From the material table.',
    unit: 'GPa',
    si: 'Pa',
    min: 40,
    max: 230,
    usual: 'table',
  }),
  setting: amount({
    means: 'blade setting (0: flat, soft; 90: on edge, stiff)',
    measure: 'Protractor at the blade, or the lever position worked back.',
    unit: 'deg',
    si: 'rad',
    min: 0,
    max: 90,
    usual: 'protractor',
  }),
});

export const antiRollBar = z.strictObject({
  kind: choice('kind of anti-roll bar', ['U-bar', 'T-bar']),
  axisLeft: point(
    'bar axis, left: the left bearing of a U-bar, or the left end of the axis on which a T-bar nods',
    'Centre of the bearing.',
  ),
  axisRight: point(
    'bar axis, right: the right bearing of a U-bar, or the right end of the axis on which a T-bar nods',
    'Centre of the bearing.',
  ),
  stemTop: point(
    'T-bar alone: where the stem meets the cross arm',
    'Middle of the cross arm, on the axis of the stem.',
  ).optional(),
  bar: roundBar,
  leftBlade: blade.optional(),
  rightBlade: blade.optional(),
  leftLink: z
    .strictObject({ thread: threadOf(TUBE_ENDS.dropLink) })
    .meta({ title: 'left drop link' })
    .optional(),
  rightLink: z
    .strictObject({ thread: threadOf(TUBE_ENDS.dropLink) })
    .meta({ title: 'right drop link' })
    .optional(),
});

export const heaveElement = z.strictObject({
  rate: amount({
    means: 'rate of the heave spring',
    measure: 'Spring press.',
    unit: 'N/mm',
    si: 'N/m',
    min: 0,
    max: 3000,
    usual: 'spring press',
  }),
  gap: amount({
    means: 'gap before the heave spring takes load, surveyed position (negative: preloaded)',
    measure: 'Vernier or feeler, car at its static heights.',
    unit: 'mm',
    si: 'm',
    min: -40,
    max: 100,
    usual: 'vernier',
  }),
  helper: helperSpring.optional(),
});

/** A right-hand side is either described, or `mirrored`: then every reading of the left counts for it too. */
export const axle = z.strictObject({
  left: corner,
  right: corner,
  steering: z
    .strictObject({
      rackTravel: amount({
        means: 'rack travel from straight ahead to one lock',
        measure: 'Vernier at the rack end, both ways, mean.',
        unit: 'mm',
        si: 'm',
        min: 5,
        max: 120,
        usual: 'vernier',
      }),
      pinion: amount({
        means: 'rack travel for one turn of the steering wheel',
        measure: 'Vernier at the rack end over one whole turn.',
        unit: 'mm/turn',
        si: 'm/rad',
        min: 10,
        max: 200,
        usual: 'vernier',
      }).optional(),
    })
    .optional(),
  antiRollBar: antiRollBar.optional(),
  heave: heaveElement.optional(),
});
