/** What to set the tyres to, cold, for what is wanted hot; what to bleed to; what moisture and height do to it. */

import type { Car } from '../car/read.ts';
import {
  type Around,
  type Fill,
  type PressureReadings,
  putPressures,
  type Tyre,
} from '../flatfloor/pressures/put-pressures.ts';
import { STANDARD_SEA_LEVEL } from '../flatfloor/pressures/water-vapour.ts';
import type { AskedAmount } from '../measured/asked-reading.ts';
import type { Reading } from '../measured/reading.ts';
import { AIR_AROUND, GAS, GAUGE_PRESSURE, outOfLimits, SHARE, WEATHER } from './asked-limits.ts';
import { GAS_TYRE_CAUTION, STANDING_CAUTION } from './cautions.ts';
import type { End, Wheel } from './figure.ts';
import { AskedList, floorAnswer, floorRefused, type ToldAnswer, type ToldOptions } from './floor-answer.ts';

/** `front` for both front tyres, or one tyre. */
export interface TyrePlace {
  readonly end: End;
  readonly side?: Wheel['side'];
}

export interface RunRead {
  readonly place: TyrePlace;
  /** Gauge pressure cold, temperature of the gas then, gauge pressure hot. */
  readonly cold: AskedAmount;
  readonly at: AskedAmount;
  readonly hot: AskedAmount;
}

export interface NowRead {
  readonly place: TyrePlace;
  readonly pressure: AskedAmount;
  readonly temperature: AskedAmount;
}

export interface PressuresAsked extends ToldOptions {
  readonly air: AskedAmount;
  /** Temperature of the gas when it is set; left out, that of the air. */
  readonly set?: AskedAmount;
  readonly humidity?: AskedAmount;
  readonly barometer?: AskedAmount;
  readonly seaLevel?: AskedAmount;
  readonly height?: AskedAmount;
  /** Where it is set, if not at the track. */
  readonly barometerSet?: AskedAmount;
  readonly heightSet?: AskedAmount;
  readonly fill?: 'compressed air' | 'dry nitrogen';
  readonly receiver?: AskedAmount;
  readonly receiverTemperature?: AskedAmount;
  readonly water?: AskedAmount;
  readonly purges?: number;
  readonly hot?: readonly { readonly place: TyrePlace; readonly amount: AskedAmount }[];
  readonly gas?: readonly { readonly place: TyrePlace; readonly amount: AskedAmount }[];
  readonly runs?: readonly RunRead[];
  readonly now?: readonly NowRead[];
}

export const tyreWords = ({ end, side }: TyrePlace): string => (side === undefined ? end : `${end} ${side}`);

const ENDS = ['front', 'rear'] as const;

/** The tyres asked about: all four where one is named, else the two axles. */
function placesOf(asked: PressuresAsked): TyrePlace[] {
  const named = [...(asked.hot ?? []), ...(asked.gas ?? []), ...(asked.runs ?? []), ...(asked.now ?? [])];
  return named.some(({ place }) => place.side !== undefined)
    ? ENDS.flatMap((end) => [
        { end, side: 'left' as const },
        { end, side: 'right' as const },
      ])
    : ENDS.map((end) => ({ end }));
}

/** The last that was asked of this tyre: by itself, else by its axle. */
const asOf = <T extends { readonly place: TyrePlace }>(
  list: readonly T[] | undefined,
  { end, side }: TyrePlace,
): { readonly found: T; readonly k: number } | undefined => {
  const all = (list ?? []).map((found, k) => ({ found, k }));
  const here = all.filter(({ found }) => found.place.end === end);
  return (
    here.findLast(({ found }) => found.place.side === side) ??
    here.findLast(({ found }) => found.place.side === undefined)
  );
};

const AIR = { unit: 'Pa', usual: 'barometer' } as const;
const TEMPERATURE = { unit: 'K', usual: 'thermometer' } as const;
const GAUGE = { unit: 'Pa', usual: 'pressure gauge' } as const;

/** Where nothing is said of the weather: the standard air, and how far weather moves it. */
const STANDARD_AIR: AskedAmount = { value: STANDARD_SEA_LEVEL, u: 1000, text: 'standard air' };
const SEA_LEVEL: AskedAmount = { value: 0, u: 0, text: 'sea level' };
/** A receiver of which nothing is said. */
const USUAL_RECEIVER: AskedAmount = { value: 8e5, u: 1e5, text: '8 bar, taken as usual' };
const HALF_DAMP: AskedAmount = { value: 0.6, u: 0.2, text: '60 %, taken as usual' };

export function pressuresFor(car: Car, asked: PressuresAsked): ToldAnswer {
  const form = car.form.pressures;
  const cannot = outOfLimits([
    ['temperature of the air', asked.air, WEATHER],
    ['temperature of the gas when it is set', asked.set, GAS],
    ['temperature of the receiver', asked.receiverTemperature, WEATHER],
    ['relative humidity', asked.humidity, SHARE],
    ['barometer at the track', asked.barometer, AIR_AROUND],
    ['pressure at sea level', asked.seaLevel, AIR_AROUND],
    ['barometer where it is set', asked.barometerSet, AIR_AROUND],
    ...(asked.hot ?? []).map(
      ({ place, amount }) => [`pressure wanted hot, ${tyreWords(place)}`, amount, GAUGE_PRESSURE] as const,
    ),
    ...(asked.gas ?? []).map(
      ({ place, amount }) => [`temperature of the gas hot, ${tyreWords(place)}`, amount, GAS] as const,
    ),
  ]);
  if (cannot !== undefined) return floorRefused(cannot);
  const places = placesOf(asked);
  for (const place of places) {
    if (form !== undefined) break;
    const [hot, gas] = [asOf(asked.hot, place), asOf(asked.gas, place) ?? asOf(asked.runs, place)];
    if (hot === undefined || gas === undefined) {
      return floorRefused(
        `Nothing says what the ${tyreWords(place)} tyres are to read hot and how hot their gas then is. Write both under pressures in the car file, or ask with --hot and --gas, or with a --run of theirs.`,
      );
    }
  }
  const list = new AskedList();
  const air = list.add(asked.air, { name: 'air', means: 'temperature of the air', ...TEMPERATURE });
  const set = list.add(asked.set, {
    name: 'set',
    means: 'temperature of the gas when it is set',
    ...TEMPERATURE,
  });
  const humidity = list.add(asked.humidity ?? HALF_DAMP, {
    name: 'humidity',
    means: 'relative humidity',
    unit: 'share',
    usual: 'estimate',
  });
  const aroundOf = (
    name: string,
    where: string,
    barometer: AskedAmount | undefined,
    height: AskedAmount | undefined,
  ): ((read: (name: string | undefined) => Reading | undefined) => Around) => {
    const direct = list.add(barometer, {
      name: `barometer${name}`,
      means: `pressure of the air ${where}`,
      ...AIR,
    });
    if (direct !== undefined) return (read) => ({ kind: 'barometer', pressure: read(direct)! });
    const sea = list.add(asked.seaLevel ?? STANDARD_AIR, {
      name: `seaLevel${name}`,
      means: 'pressure of the air at sea level',
      ...AIR,
    });
    const high = list.add(height ?? SEA_LEVEL, {
      name: `height${name}`,
      means: `height above the sea ${where}`,
      unit: 'm',
      usual: 'estimate',
    });
    return (read) => ({ kind: 'height', seaLevel: read(sea)!, height: read(high)! });
  };
  const track = aroundOf('', 'at the track', asked.barometer, asked.height);
  const elsewhere = asked.barometerSet !== undefined || asked.heightSet !== undefined;
  const setting = elsewhere
    ? aroundOf('Set', 'where it is set', asked.barometerSet, asked.heightSet)
    : undefined;
  const fill = asked.fill ?? form?.fill ?? 'compressed air';
  const receiver =
    fill === 'dry nitrogen'
      ? undefined
      : list.add(asked.receiver ?? USUAL_RECEIVER, {
          name: 'receiver',
          means: 'gauge pressure in the receiver',
          ...GAUGE,
        });
  const receiverTemperature =
    fill === 'dry nitrogen'
      ? undefined
      : list.add(asked.receiverTemperature ?? asked.air, {
          name: 'receiverTemperature',
          means: 'temperature of the receiver',
          ...TEMPERATURE,
        });
  const water = list.add(asked.water, {
    name: 'water',
    means: 'water left in each tyre',
    unit: 'kg',
    usual: 'estimate',
  });
  const listed = places.map((place) => {
    const words = tyreWords(place);
    const name = (what: string): string => `${what} ${words}`;
    const hot = asOf(asked.hot, place)?.found;
    const gas = asOf(asked.gas, place)?.found;
    const run = gas === undefined ? asOf(asked.runs, place)?.found : undefined;
    const now = asOf(asked.now, place)?.found;
    return {
      place,
      hot: list.add(hot?.amount, {
        name: name('hot'),
        means: `${words}: gauge pressure wanted hot`,
        unit: 'Pa',
        usual: 'counted',
      }),
      gas: list.add(gas?.amount, {
        name: name('gas'),
        means: `${words}: temperature of the gas hot`,
        ...TEMPERATURE,
      }),
      run: run && {
        cold: list.add(run.cold, { name: name('run cold'), means: `${words}: read cold`, ...GAUGE }),
        at: list.add(run.at, { name: name('run at'), means: `${words}: gas when read cold`, ...TEMPERATURE }),
        hot: list.add(run.hot, { name: name('run hot'), means: `${words}: read hot`, ...GAUGE }),
      },
      now: now && {
        pressure: list.add(now.pressure, { name: name('now'), means: `${words}: reads now`, ...GAUGE }),
        temperature: list.add(now.temperature, {
          name: name('now at'),
          means: `${words}: gas now`,
          ...TEMPERATURE,
        }),
      },
    };
  });
  const { numbers, asked: read } = list.on(car);
  const tyres = listed.map(({ place, hot, gas, run, now }): Tyre => {
    const filed = form?.[place.end];
    return {
      of: tyreWords(place),
      hot: read(hot) ?? filed!.hot,
      gas:
        run === undefined
          ? (read(gas) ?? filed!.gas)
          : { cold: read(run.cold)!, at: read(run.at)!, hot: read(run.hot)! },
      ...(filed?.grown === undefined ? {} : { grown: filed.grown }),
      ...(filed?.volume === undefined ? {} : { volume: filed.volume }),
      ...(now === undefined
        ? {}
        : { now: { pressure: read(now.pressure)!, temperature: read(now.temperature)! } }),
    };
  });
  const wet = read(water);
  if (wet !== undefined && tyres.some(({ volume }) => volume === undefined)) {
    return floorRefused(
      'Water in a tyre is counted by the volume of its gas: write volume for front and rear tyres under pressures in the car file.',
    );
  }
  const where = setting?.(read);
  const on: PressureReadings = {
    air: read(air)!,
    humidity: read(humidity)!,
    set: read(set) ?? read(air)!,
    around: track(read),
    ...(where === undefined ? {} : { aroundSet: where }),
    fill: fillOf(read(receiver), read(receiverTemperature)),
    purges: asked.purges ?? 0,
    ...(wet === undefined ? {} : { water: wet }),
    tyres,
  };
  return floorAnswer(
    numbers,
    (each, put, working) => putPressures(on, each, put, working),
    asked,
    (figures) => ({
      notes: notesOn(car, asked, fill, figures),
      cautions: [GAS_TYRE_CAUTION, STANDING_CAUTION],
    }),
  );
}

const fillOf = (receiver: Reading | undefined, temperature: Reading | undefined): Fill =>
  receiver === undefined || temperature === undefined
    ? { kind: 'dry' }
    : { kind: 'compressor', receiver, temperature };

function notesOn(
  car: Car,
  asked: PressuresAsked,
  fill: string,
  figures: readonly { readonly of: string; readonly id: string; readonly value: number }[],
): string[] {
  const below = figures.filter(({ of, id, value }) => {
    const least = car.form.pressures?.[of.startsWith('front') ? 'front' : 'rear'].least;
    return id === 'coldPressure' && least !== undefined && value < least.value;
  });
  const nothing = figures.filter(({ id, value }) => id === 'coldPressure' && value <= 0);
  const told: readonly (readonly [boolean, string])[] = [
    [
      below.length > 0,
      `Below the least cold pressure of the tyre maker: ${below.map(({ of }) => of).join(', ')}. Do not run it: warm the tyres first, or take a higher hot pressure.`,
    ],
    [
      nothing.length > 0,
      'A cold pressure of nothing or less: the hot target cannot be reached from here; look at the temperatures again.',
    ],
    [
      asked.set === undefined,
      'The gas is taken to be as warm as the air when it is set. A tyre in the sun, out of its blankets or just off the car is warmer: tell its temperature with --set.',
    ],
    [
      asked.barometer === undefined && asked.seaLevel === undefined,
      'No barometer was read: the standard air is taken, and its ± is what weather does to it.',
    ],
    [asked.humidity === undefined, 'No humidity was told: 60 % is taken.'],
    [
      fill === 'compressed air' && asked.receiver === undefined,
      'Compressed air is taken from a drained receiver at 8 bar, as warm as the air.',
    ],
    [
      (asked.purges ?? 0) === 0,
      'The air of the mounting is still in the tyre; --purges tells how often it was filled and let down before.',
    ],
    [
      asked.water !== undefined && asked.runs !== undefined,
      'A run of a wet tyre reads hotter than its gas was: the water is in its rise. Count either the run or the water, not both.',
    ],
    [
      asked.water === undefined,
      'No water is counted that mounting left in the tyre: a spoonful of 5 g in 60 l is worth about 0.12 bar hot, and differs from tyre to tyre. Wipe the tyre out.',
    ],
  ];
  return told.filter(([holds]) => holds).map(([, each]) => each);
}
