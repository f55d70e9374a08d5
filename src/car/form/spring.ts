/** Springs as the file describes them: helper, coil, torsion bar. */
import { z } from 'zod';
import { amount, choice, words } from '../field.ts';

const material = words('material, by its name in the material table');

const shearModulusOf = (measure: string) =>
  amount({
    means: 'shear modulus',
    measure,
    unit: 'GPa',
    si: 'Pa',
    min: 15,
    max: 100,
    usual: 'table',
  });

export const helperSpring = z.strictObject({
  rate: amount({
    means: 'helper spring rate',
    measure: 'Spring press over the working part of its travel.',
    unit: 'N/mm',
    si: 'N/m',
    min: 0.5,
    max: 200,
    usual: 'spring press',
  }),
  travel: amount({
    means: 'helper travel until it goes solid',
    measure: 'Free length less solid length, vernier.',
    unit: 'mm',
    si: 'm',
    min: 1,
    max: 100,
    usual: 'vernier',
  }),
});

export const coilSpring = z.strictObject({
  wireDiameter: amount({
    means: 'wire diameter',
    measure: 'Micrometer at three places, paint off.',
    unit: 'mm',
    si: 'm',
    min: 1,
    max: 25,
    usual: 'micrometer',
  }),
  meanDiameter: amount({
    means: 'mean coil diameter',
    measure: 'Outside diameter less one wire diameter.',
    unit: 'mm',
    si: 'm',
    min: 10,
    max: 200,
    usual: 'vernier',
  }),
  activeCoils: amount({
    means: 'active coils',
    measure: 'Count the coils that move; closed ends are not counted.',
    unit: '1',
    si: '1',
    min: 1.5,
    max: 40,
    usual: 'counted',
  }),
  totalCoils: amount({
    means: 'total coils',
    measure: 'Count from wire tip to wire tip.',
    unit: '1',
    si: '1',
    min: 1.5,
    max: 45,
    usual: 'counted',
  }),
  ends: choice('form of the ends', ['closed and ground', 'closed', 'open']),
  freeLength: amount({
    means: 'free length',
    measure: 'Vernier, spring standing free.',
    unit: 'mm',
    si: 'm',
    min: 20,
    max: 500,
    usual: 'vernier',
  }),
  material: material.optional(),
  shearModulus: shearModulusOf('From the maker, or the certificate of the wire.').optional(),
  rate: amount({
    means: 'spring rate as measured',
    measure:
      'Spring press over the middle third of the travel. Given, it rules over the rate from wire and coils.',
    unit: 'N/mm',
    si: 'N/m',
    min: 1,
    max: 2000,
    usual: 'spring press',
  }).optional(),
  fittedLength: amount({
    means: 'length of the main spring in the surveyed position',
    measure:
      'Vernier between the spring seats, car at its static heights. Left out, it follows from the scale.',
    unit: 'mm',
    si: 'm',
    min: 15,
    max: 500,
    usual: 'vernier',
  }).optional(),
  helper: helperSpring.optional(),
});

const barEnd = z.strictObject({
  form: choice('form of the transition from bar to head', ['radius', 'taper', 'square']),
  headDiameter: amount({
    means: 'diameter of the head at the end of the transition',
    measure: 'Vernier over the head, or the root diameter of its splines.',
    unit: 'mm',
    si: 'm',
    min: 8,
    max: 90,
    usual: 'vernier',
  }).optional(),
  size: amount({
    means: 'radius of the transition, or length of the taper',
    measure: 'Radius gauge, or vernier along the taper.',
    unit: 'mm',
    si: 'm',
    min: 0.5,
    max: 200,
    usual: 'steel rule',
  }).optional(),
  splines: amount({
    means: 'number of spline teeth',
    measure: 'Count them twice.',
    unit: '1',
    si: '1',
    min: 6,
    max: 120,
    usual: 'counted',
  }).optional(),
});

export const torsionBar = z.strictObject({
  diameter: amount({
    means: 'bar diameter',
    measure: 'Micrometer at three places and two ways round, paint off.',
    unit: 'mm',
    si: 'm',
    min: 8,
    max: 60,
    usual: 'micrometer',
  }),
  bore: amount({
    means: 'bore',
    measure: 'Bore gauge or the drill that fits; leave out for a solid bar.',
    unit: 'mm',
    si: 'm',
    min: 0,
    max: 55,
    usual: 'vernier',
  }).optional(),
  parallelLength: amount({
    means: 'parallel length between the transitions',
    measure: 'Vernier or rule between the points where the diameter begins to grow.',
    unit: 'mm',
    si: 'm',
    min: 40,
    max: 1500,
    usual: 'steel rule',
  }),
  rockerEnd: barEnd,
  anchorEnd: barEnd,
  material: material.optional(),
  shearModulus: shearModulusOf('From the maker, or from a bench twist test of this bar.').optional(),
  rate: amount({
    means: 'bar rate as measured',
    measure:
      'Lever and known masses on the bench, five points. Given, it rules over the rate from the dimensions.',
    unit: 'N m/deg',
    si: 'N m/rad',
    min: 0.5,
    max: 2000,
    usual: 'lever and mass',
  }).optional(),
  twist: amount({
    means: 'twist of the bar in the surveyed position',
    measure:
      'Clinometer on the rocker, before and after the anchor is let off. Left out, it follows from the scale.',
    unit: 'deg',
    si: 'rad',
    min: -5,
    max: 60,
    usual: 'inclinometer',
  }).optional(),
  preset: choice('which side of the car the bar was preset for', [
    'for the left side',
    'for the right side',
    'not preset',
  ]),
  surface: choice('surface of the bar', ['turned', 'ground', 'ground and shot-peened']).optional(),
});
