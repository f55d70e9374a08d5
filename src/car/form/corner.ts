/**
 * One corner of the car as the file describes it: points, rod, wheel, springing, joints, adjusters.
 *
 * Points are in car axes (ISO 8855: x forward, y left, z up; origin in the centre plane on the ground under the
 * front axle line), at the stated static heights on the flat patch.
 */
import { z } from 'zod';
import { amount, choice, point, words } from '../field.ts';

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

const thread = z.strictObject({
  size: words('thread, such as M10x1.25 or 3/8-24 UNF').optional(),
  pitch: amount({
    means: 'thread pitch',
    measure: 'Thread gauge, or 25.4 mm over the threads per inch.',
    unit: 'mm',
    si: 'm',
    min: 0.3,
    max: 4,
    usual: 'counted',
  }),
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

const material = words('material, by its name in the material table');

const shearModulus = amount({
  means: 'shear modulus',
  measure: 'From the maker, or from a bench twist test of this bar.',
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
  shearModulus: shearModulus.optional(),
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
  shearModulus: shearModulus.optional(),
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
  hand: choice('hand: the side on which a preset bar belongs', ['left', 'right', 'not preset']),
  surface: choice('surface of the bar', ['turned', 'ground', 'ground and shot-peened']).optional(),
});

export const bumpRubber = z.strictObject({
  gap: amount({
    means: 'gap between rubber and stop in the surveyed position, without packers',
    measure: 'Vernier along the damper shaft, car at its static heights.',
    unit: 'mm',
    si: 'm',
    min: -40,
    max: 200,
    usual: 'vernier',
  }),
  packers: amount({
    means: 'packers fitted',
    measure: 'Vernier over the stack.',
    unit: 'mm',
    si: 'm',
    min: 0,
    max: 80,
    usual: 'vernier',
  }).optional(),
  curve: z
    .array(
      z.strictObject({
        compression: amount({
          means: 'compression of the rubber',
          measure: 'Spring press, second run.',
          unit: 'mm',
          si: 'm',
          min: 0,
          max: 80,
          usual: 'dial gauge',
        }),
        force: amount({
          means: 'force of the rubber',
          measure: 'Spring press, second run.',
          unit: 'N',
          si: 'N',
          min: 0,
          max: 60000,
          usual: 'spring press',
        }),
      }),
    )
    .min(3)
    .meta({ title: 'force against compression, from 0 on' }),
});

export const damper = z.strictObject({
  openLength: amount({
    means: 'damper eye to eye, fully open',
    measure: 'Tape or vernier, damper off the car; this is the droop stop.',
    unit: 'mm',
    si: 'm',
    min: 50,
    max: 700,
    usual: 'vernier',
  }),
  closedLength: amount({
    means: 'damper eye to eye, fully closed',
    measure: 'Vernier, damper off the car, rubber and packers off.',
    unit: 'mm',
    si: 'm',
    min: 40,
    max: 650,
    usual: 'vernier',
  }),
  gasForce: amount({
    means: 'force of the gas on the rod',
    measure: 'Push the rod to mid-stroke on a scale, slowly.',
    unit: 'N',
    si: 'N',
    min: 0,
    max: 1500,
    usual: 'weighing scale',
  }).optional(),
  curve: z
    .array(
      z.strictObject({
        velocity: amount({
          means: 'shaft velocity',
          measure: 'Damper bench.',
          unit: 'mm/s',
          si: 'm/s',
          min: 0,
          max: 2000,
          usual: 'damper bench',
        }),
        bump: amount({
          means: 'force in bump at this velocity',
          measure: 'Damper bench, peak velocity, gas force taken off.',
          unit: 'N',
          si: 'N',
          min: 0,
          max: 20000,
          usual: 'damper bench',
        }),
        rebound: amount({
          means: 'force in rebound at this velocity',
          measure: 'Damper bench, peak velocity, gas force taken off.',
          unit: 'N',
          si: 'N',
          min: 0,
          max: 20000,
          usual: 'damper bench',
        }),
      }),
    )
    .min(2)
    .meta({ title: 'force against velocity' })
    .optional(),
});

export const corner = z.strictObject({
  points: cornerPoints,
  rod: z.strictObject({
    kind: choice('pushrod or pullrod', ['pushrod', 'pullrod']),
    on: choice('what the rod stands on', ['lower wishbone', 'upper wishbone', 'upright']),
    thread: thread.optional(),
  }),
  toeLink: z.strictObject({ thread: thread.optional() }).optional(),
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
});
