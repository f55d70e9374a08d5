/**
 * The whole car file, version 1. This is the only description of it: reading, checking, the JSON Schema, the
 * page's forms and the error messages are all made from here.
 */
import { z } from 'zod';
import { INSTRUMENT_CLASSES } from '../../measured/instrument.ts';
import { amount, day, words, yesNo } from '../field.ts';
import { air } from './air.ts';
import { axle } from './axle.ts';
import { brakes } from './brakes.ts';
import { loadCase } from './case.ts';
import { engine } from './engine.ts';
import { exhaust } from './exhaust.ts';
import { floor } from './floor.ts';
import { fuel } from './fuel.ts';
import { gearbox, rolling } from './gearbox.ts';
import { joint, masses } from './joint.ts';
import { log } from './log.ts';
import { pressures } from './pressures.ts';
import { survey } from './survey.ts';
import { underside } from './underside.ts';

export const CAR_FILE_VERSION = 1;

const instrument = z.strictObject({
  class: z
    .enum(INSTRUMENT_CLASSES.map((each) => each.name) as [string, ...string[]])
    .meta({ title: 'kind of instrument' }),
  spread: words('standard uncertainty of one reading where it is known better, such as 0.05 mm').optional(),
  checked: day('day of its last check').optional(),
  due: day('day on which that check runs out').optional(),
  mark: words('number or mark that it carries').optional(),
  note: words('note').optional(),
});

/** A spec's changes are a JSON Merge Patch (RFC 7396) on the file: what is null goes, what is there is set. */
const spec = z.strictObject({
  from: words('the spec that this one starts from; left out, the file itself').optional(),
  by: words('who proposed it').optional(),
  on: day('day').optional(),
  note: words('why').optional(),
  changes: z
    .record(z.string(), z.unknown())
    .meta({ title: 'changes, written as the part of the file that differs' }),
});

export const carFile = z.strictObject({
  flatpatch: z.literal(CAR_FILE_VERSION).meta({ title: 'version of the form of this file' }),
  car: z.strictObject({
    name: words('name of the car'),
    chassis: words('chassis number').optional(),
    manner: words('year in whose manner the car is built').optional(),
    engine: words('engine in words').optional(),
    invented: yesNo('an invented example, not a real car').optional(),
    owner: words('owner').optional(),
    note: words('note').optional(),
  }),
  spec: words('name of the state that the file itself describes').optional(),
  instruments: z.record(z.string(), instrument).optional(),
  body: z
    .strictObject({
      centreOfGravityHeight: amount({
        means: 'height of the centre of gravity, whole car',
        measure: 'Raised-axle test with solid links for dampers.',
        unit: 'mm',
        si: 'm',
        min: 100,
        max: 800,
        usual: 'estimate',
      }),
      rollInertia: amount({
        means: 'moment of inertia of the sprung mass in roll, about its centre of gravity',
        measure: 'Swing test, or judged from the masses.',
        unit: 'kg m^2',
        si: 'kg m^2',
        min: 5,
        max: 500,
        usual: 'estimate',
      }).optional(),
      pitchInertia: amount({
        means: 'moment of inertia of the sprung mass in pitch, about its centre of gravity',
        measure: 'Swing test, or judged from the masses.',
        unit: 'kg m^2',
        si: 'kg m^2',
        min: 50,
        max: 3000,
        usual: 'estimate',
      }).optional(),
    })
    .optional(),
  brakes: brakes.optional(),
  air: air.optional(),
  masses: masses.optional(),
  engine: engine.optional(),
  joints: z.strictObject({ caseToEngine: joint.optional(), engineToTub: joint.optional() }).optional(),
  exhaust: exhaust.optional(),
  pressures: pressures.optional(),
  gearbox: gearbox.optional(),
  rolling: rolling.optional(),
  underside: underside.optional(),
  fuel: fuel.optional(),
  front: axle,
  rear: axle,
  floor: floor.optional(),
  cases: z
    .record(z.string(), loadCase)
    .meta({ title: 'load cases of this car, by a name of your own' })
    .optional(),
  logs: z.record(z.string(), log).meta({ title: 'logs, by a name of your own' }).optional(),
  survey: survey.optional(),
  specs: z.record(z.string(), spec).optional(),
});

export type RawCar = z.output<typeof carFile>;
