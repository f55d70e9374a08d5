/** Fuel for a session: what to put in, what it weighs, what it does to the weights of the wheels. */
import type { Car } from '../car/read.ts';
import { type Burn, putFuel } from '../flatfloor/fuel/put-fuel.ts';
import type { AskedAmount } from '../measured/asked-reading.ts';
import { FUEL_CAUTION, STANDING_CAUTION } from './cautions.ts';
import { AskedList, floorAnswer, floorRefused, type ToldAnswer, type ToldOptions } from './floor-answer.ts';
import type { ToldFigure } from './floor-figures.ts';

export interface FuelAsked extends ToldOptions {
  readonly laps: number;
  /** Burnt in a lap, where it is not the file's. */
  readonly perLap?: AskedAmount;
  /** Length of a lap here, where the file's lap was another. */
  readonly lap?: AskedAmount;
  /** By the work of the engine: mean power with the throttle open, the part of the lap that it is, time of a lap. */
  readonly work?: { readonly power: AskedAmount; readonly open: AskedAmount; readonly time: AskedAmount };
  /** Laps out and in; left out, one of each. */
  readonly slowLaps?: number;
  /** What one of them burns, of a racing lap; left out, 70 ± 10 %. */
  readonly slowPart?: AskedAmount;
  /** Left out, 3 l. */
  readonly reserve?: AskedAmount;
  readonly temperature?: AskedAmount;
  /** In the cell now. */
  readonly aboard?: AskedAmount;
}

const SLOW: AskedAmount = { value: 0.7, u: 0.1, text: '70 %, taken as usual' };
const RESERVE: AskedAmount = { value: 3e-3, u: 0, text: '3 l, taken as usual' };
const VOLUME = { unit: 'm^3', usual: 'measuring can' } as const;

export function fuelFor(car: Car, asked: FuelAsked): ToldAnswer {
  const { fuel } = car.form;
  if (fuel === undefined) {
    return floorRefused('The file has no fuel: write where it sits and how much was aboard at the survey.');
  }
  const { laps, work } = asked;
  const list = new AskedList();
  const perLap = list.add(asked.perLap, { name: 'perLap', means: 'fuel burnt in a lap', ...VOLUME });
  const here = list.add(asked.lap, {
    name: 'lap',
    means: 'length of a lap here',
    unit: 'm',
    usual: 'counted',
  });
  const power = list.add(work?.power, {
    name: 'power',
    means: 'mean power with the throttle open',
    unit: 'W',
    usual: 'estimate',
  });
  const open = list.add(work?.open, {
    name: 'open',
    means: 'part of the lap with the throttle open',
    unit: 'share',
    usual: 'estimate',
  });
  const time = list.add(work?.time, { name: 'time', means: 'time of a lap', unit: 's', usual: 'counted' });
  const part = list.add(asked.slowPart ?? SLOW, {
    name: 'slowPart',
    means: 'what a lap out or in burns, of a racing lap',
    unit: 'share',
    usual: 'estimate',
  });
  const reserve = list.add(asked.reserve ?? RESERVE, {
    name: 'reserve',
    means: 'reserve',
    unit: 'm^3',
    usual: 'counted',
  });
  const temperature = list.add(asked.temperature, {
    name: 'temperature',
    means: 'temperature of the fuel',
    unit: 'K',
    usual: 'thermometer',
  });
  const aboard = list.add(asked.aboard, { name: 'aboard', means: 'in the cell now', ...VOLUME });
  const { numbers, asked: read } = list.on(car);
  const burn = ((): Burn | string => {
    if (work !== undefined) {
      return fuel.specific === undefined
        ? 'By power it takes what the engine burns for its work: write specific under fuel in the car file.'
        : {
            kind: 'power',
            specific: fuel.specific,
            power: read(power)!,
            open: read(open)!,
            time: read(time)!,
          };
    }
    const known = read(perLap) ?? fuel.perLap;
    if (known === undefined) {
      return 'Nothing says what a lap burns: write perLap under fuel in the car file, or ask with --per-lap, or by --power, --open and --time.';
    }
    const [length, filed] = [read(here), fuel.lap];
    if (length === undefined || read(perLap) !== undefined) return { kind: 'read', perLap: known };
    return filed === undefined
      ? 'How long the lap was that burnt so much is not told: write lap under fuel in the car file.'
      : { kind: 'scaled', perLap: known, lap: filed, here: length };
  })();
  if (typeof burn === 'string') return floorRefused(burn);
  const [warm, cell] = [read(temperature), read(aboard)];
  return floorAnswer(
    numbers,
    (each, put, working) =>
      putFuel(
        {
          car: car.form,
          form: fuel,
          burn,
          laps,
          slow: { count: asked.slowLaps ?? 2, part: read(part)! },
          reserve: read(reserve)!,
          ...(warm === undefined ? {} : { temperature: warm }),
          ...(cell === undefined ? {} : { aboard: cell }),
        },
        each,
        put,
        working,
      ),
    asked,
    (figures) => ({ notes: notesOn(car, asked, figures), cautions: [FUEL_CAUTION, STANDING_CAUTION] }),
  );
}

function notesOn(car: Car, asked: FuelAsked, figures: readonly ToldFigure[]): string[] {
  const { tank, unusable, density } = car.form.fuel!;
  const of = (id: string): ToldFigure | undefined =>
    figures.find((each) => each.of === 'session' && each.id === id);
  const needed = of('needed')!;
  const burnt = of('burnt')!;
  const reserve = asked.reserve?.value ?? RESERVE.value;
  const litres = (value: number): string => `${(1000 * value).toFixed(1)} l`;
  const unsure = 2 * (burnt.spread?.u ?? 0);
  const told: readonly (readonly [boolean, string])[] = [
    [
      tank !== undefined && needed.value > tank.value,
      `More than the cell holds (${litres(tank?.value ?? 0)}): fewer laps, or a stop.`,
    ],
    [
      unsure > reserve,
      `The reserve of ${litres(reserve)} is less than two spreads of what is burnt (${litres(unsure)}): one session in forty and more would run dry. Take more, or read what a lap burns better.`,
    ],
    [unusable === undefined, 'No unusable rest of the cell is told: none is counted.'],
    [density === undefined, 'Density is taken as 0.745 kg/l: weigh a litre.'],
    [asked.slowPart === undefined, 'A lap out or in is taken to burn 70 % of a racing lap.'],
    [asked.reserve === undefined, 'The reserve is taken as 3 l.'],
    [
      (of('toAdd')?.value ?? 0) < 0,
      'There is more in the cell than is needed: what is to be put in is below nothing.',
    ],
    [
      car.form.body === undefined,
      'Without a height of the centre of gravity (body) no weights of the wheels are told.',
    ],
  ];
  return told.filter(([holds]) => holds).map(([, each]) => each);
}
