/**
 * What is asked of a day out as it is typed field by field: hot pressures, gears, brakes, fuel, load transfer, heights
 * at speed.
 *
 * In    texts by the name of their field, each amount with its unit
 * Out   the question as the engine takes it, or field by field what is wrong, and what is still to be typed
 */
import type { Car } from '../car/read.ts';
import { type Doing, isThrown, STANDING } from '../loadpath/loads/doing.ts';
import { type BrakesAsked, brakesOf, USUAL_DECELERATIONS } from './brakes.ts';
import { doingsOf, type NamedDoing } from './doing-words.ts';
import { Fields, type FieldsRead, type Texts, told } from './fields.ts';
import type { Wheel } from './figure.ts';
import type { ToldAnswer } from './floor-answer.ts';
import { type FuelAsked, fuelFor } from './fuel.ts';
import { type PressuresAsked, pressuresFor, type TyrePlace } from './pressures.ts';
import { type RatiosAnswer, type RatiosAsked, ratiosOf } from './ratios.ts';
import {
  type HeightsAsked,
  heightsAgainstSpeed,
  transferUnder,
  type UnderWayAsked,
  USUAL_SPEEDS,
} from './under-way.ts';

/** Questions of a day out, by the stop where each is asked. */
export interface DayAsks {
  'hot-pressures': PressuresAsked;
  ratios: RatiosAsked;
  brakes: BrakesAsked;
  fuel: FuelAsked;
  transfer: UnderWayAsked;
  'at-speed': HeightsAsked;
}

export type DayName = keyof DayAsks;

export type DayQuestion = { [N in DayName]: { readonly name: N; readonly asked: DayAsks[N] } }[DayName];

export type DayAnswer = ToldAnswer | RatiosAnswer;

/** Nothing is asked twice otherwise than the commands ask it. */
export function dayAnswer(car: Car, { name, asked }: DayQuestion): DayAnswer {
  switch (name) {
    case 'hot-pressures':
      return pressuresFor(car, asked);
    case 'ratios':
      return ratiosOf(car, asked);
    case 'brakes':
      return brakesOf(car, asked);
    case 'fuel':
      return fuelFor(car, asked);
    case 'transfer':
      return transferUnder(car, asked);
    case 'at-speed':
      return heightsAgainstSpeed(car, asked);
  }
}

export type DayRead = FieldsRead<DayQuestion>;

/** Names of tyres among the fields: `now.frontLeft`. */
const TYRES: readonly (readonly [key: string, place: TyrePlace])[] = [
  ['front', { end: 'front' }],
  ['rear', { end: 'rear' }],
  ...(['front', 'rear'] as const).flatMap((end) =>
    (['left', 'right'] as const).map((side: Wheel['side']) => {
      const place: TyrePlace = { end, side };
      return [`${end}${side === 'left' ? 'Left' : 'Right'}`, place] as const;
    }),
  ),
];

function hotAsked(fields: Fields): PressuresAsked | undefined {
  const tyres = <T>(kind: string, read: (key: string, place: TyrePlace) => T | undefined): readonly T[] =>
    TYRES.flatMap(([name, place]) => {
      const found = read(`${kind}.${name}`, place);
      return found === undefined ? [] : [found];
    });
  const one = (kind: string, like: string) =>
    tyres(kind, (key, place) => {
      const amount = fields.amount(key, like);
      return amount === undefined ? undefined : { place, amount };
    });
  const fill = fields.text('fill');
  if (fill !== undefined && fill !== 'compressed air' && fill !== 'dry nitrogen')
    fields.no('fill', `"${fill}" is compressed air or dry nitrogen`);
  const air = fields.amount('air', 'K');
  const asked = told<Omit<PressuresAsked, 'air'>>({
    set: fields.amount('set', 'K'),
    humidity: fields.amount('humidity', '1'),
    barometer: fields.amount('barometer', 'Pa'),
    seaLevel: fields.amount('seaLevel', 'Pa'),
    height: fields.amount('height', 'm'),
    barometerSet: fields.amount('barometerSet', 'Pa'),
    heightSet: fields.amount('heightSet', 'm'),
    fill: fill as PressuresAsked['fill'],
    receiver: fields.amount('receiver', 'Pa'),
    receiverTemperature: fields.amount('receiverTemperature', 'K'),
    water: fields.amount('water', 'kg'),
    purges: fields.count('purges', 0, 9),
    hot: one('hot', 'Pa'),
    gas: one('gas', 'K'),
    runs: tyres('run', (key, place) => {
      const [cold, at, hot] = fields.amounts(key, ['Pa', 'K', 'Pa']) ?? [];
      return cold === undefined || at === undefined || hot === undefined
        ? undefined
        : { place, cold, at, hot };
    }),
    now: tyres('now', (key, place) => {
      const [pressure, temperature] = fields.amounts(key, ['Pa', 'K']) ?? [];
      return pressure === undefined || temperature === undefined
        ? undefined
        : { place, pressure, temperature };
    }),
    spread: undefined,
    working: undefined,
  });
  if (air === undefined) {
    if (fields.text('air') === undefined) fields.missing.push('air');
    return undefined;
  }
  return { ...asked, air };
}

function ratiosAsked(fields: Fields): RatiosAsked {
  return told<RatiosAsked>({
    at: fields.amount('at', 'rad/s'),
    targets: fields.list('targets', 'm/s'),
    changes: fields.count('changes', 0, 8),
    finals: fields.text('finals') === 'yes' ? true : undefined,
    pairs: fields.teeth('pairs'),
    final: fields.teeth('final')?.[0],
    spread: undefined,
    working: undefined,
  });
}

/** Speed at which brakes are looked at where none is asked for, m/s. */
const USUAL_BRAKING = 180 / 3.6;

const brakesAsked = (fields: Fields): BrakesAsked => ({
  speed: fields.value('speed', 'm/s') ?? USUAL_BRAKING,
  decelerations: fields.list('decelerations', 'm/s^2') ?? USUAL_DECELERATIONS,
});

function fuelAsked(fields: Fields): FuelAsked | undefined {
  const power = fields.amount('power', 'W');
  const open = fields.amount('open', '1');
  const time = fields.amount('time', 's');
  const work = power && open && time ? { power, open, time } : undefined;
  if (work === undefined) {
    for (const key of ['power', 'open', 'time'])
      if (fields.text(key) !== undefined && fields.wrong[key] === undefined)
        fields.no(key, 'by the work of the engine it takes all three: power, part of the lap, time');
  }
  const laps = fields.count('laps', 1, 500);
  const asked = told<Omit<FuelAsked, 'laps'>>({
    perLap: fields.amount('perLap', 'm^3'),
    lap: fields.amount('lap', 'm'),
    work,
    slowLaps: fields.count('slowLaps', 0, 10),
    slowPart: fields.amount('slowPart', '1'),
    reserve: fields.amount('reserve', 'm^3'),
    temperature: fields.amount('temperature', 'K'),
    aboard: fields.amount('aboard', 'm^3'),
    spread: undefined,
    working: undefined,
  });
  if (laps === undefined) {
    if (fields.text('laps') === undefined) fields.missing.push('laps');
    return undefined;
  }
  return { ...asked, laps };
}

/** Cases in which the car settles: a kerb throws it, and load transfer is not asked of it. */
export const settledDoings = (car: Car): readonly NamedDoing[] =>
  doingsOf(car).filter(({ doing }) => !isThrown(doing));

function doingAsked(fields: Fields, car: Car, usual: string): Doing {
  const name = fields.text('doing') ?? usual;
  const found = settledDoings(car).find((each) => each.name === name);
  if (found === undefined) fields.no('doing', `this car has no case "${name}" in which it settles`);
  const from = found?.doing ?? STANDING;
  const speed = fields.value('speed', 'm/s') ?? from.speed;
  if (speed < 0) fields.no('speed', 'the car goes forward here: the speed is not below nothing');
  return {
    ...from,
    longitudinal: fields.value('longitudinal', 'm/s^2') ?? from.longitudinal,
    lateral: fields.value('lateral', 'm/s^2') ?? from.lateral,
    vertical: fields.value('vertical', 'm/s^2') ?? from.vertical,
    speed,
  };
}

const fuelIn = (fields: Fields): Pick<UnderWayAsked, 'fuel'> => {
  const fuel = fields.amount('fuel', 'm^3');
  return fuel === undefined ? {} : { fuel };
};

/** The question that the fields of a stop put. */
export function readDay(name: DayName, texts: Texts, car: Car): DayRead {
  const fields = new Fields(texts);
  const question = questionOf(name, fields, car);
  const wrong = Object.keys(fields.wrong).length > 0;
  return {
    wrong: fields.wrong,
    missing: fields.missing,
    ...(wrong || question === undefined ? {} : { question }),
  };
}

function questionOf(name: DayName, fields: Fields, car: Car): DayQuestion | undefined {
  switch (name) {
    case 'hot-pressures': {
      const asked = hotAsked(fields);
      return asked && { name, asked };
    }
    case 'ratios':
      return { name, asked: ratiosAsked(fields) };
    case 'brakes':
      return { name, asked: brakesAsked(fields) };
    case 'fuel': {
      const asked = fuelAsked(fields);
      return asked && { name, asked };
    }
    case 'transfer':
      return { name, asked: { doing: doingAsked(fields, car, 'cornering'), ...fuelIn(fields) } };
    case 'at-speed':
      return {
        name,
        asked: {
          doing: doingAsked(fields, car, 'standing'),
          speeds: fields.list('speeds', 'm/s') ?? USUAL_SPEEDS,
          clearance: fields.value('clearance', 'm') ?? 0,
          ...fuelIn(fields),
        },
      };
  }
}

/** The question asked with or without spread, or for the working of one figure. */
export const askedSo = (
  { name, asked }: DayQuestion,
  how: { readonly spread?: boolean; readonly working?: string },
): DayQuestion => ({ name, asked: { ...asked, ...how } }) as DayQuestion;
