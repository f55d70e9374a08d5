/** Stops of a day out: what each is, and the fields that are typed there. */
import type { Car, DayName } from '../../questions/index.ts';
import type { Field, FieldGroup } from '../asked/fields.ts';

export type { DayName } from '../../questions/index.ts';

export const DAY_STOPS = [
  'hot-pressures',
  'ratios',
  'brakes',
  'fuel',
  'transfer',
  'at-speed',
] as const satisfies readonly DayName[];

interface Words {
  /** On the line of stops. */
  readonly name: string;
  readonly title: string;
  readonly is: string;
  /** Whether the file tells enough. */
  readonly told: (form: Car['form']) => boolean;
}

export const DAY_WORDS: Readonly<Record<DayName, Words>> = {
  'hot-pressures': {
    name: 'hot tyres',
    title: 'Cold for hot',
    is: 'What to set the tyres to, cold, for the pressure that is wanted hot, and what to bleed a warm one to.',
    told: ({ pressures }) => pressures !== undefined,
  },
  ratios: {
    name: 'ratios',
    title: 'Ratios',
    is: 'Road speed of each gear, drops between them, thrust, and the pairs of the stock nearest to speeds wanted.',
    told: ({ gearbox, rolling }) => gearbox !== undefined && rolling !== undefined,
  },
  brakes: {
    name: 'brakes',
    title: 'Brakes',
    is: 'Front share by bores, bar and pads against the loads of the axles, line pressures, and laps of wear left.',
    told: ({ brakes, body }) => brakes?.system !== undefined && body !== undefined,
  },
  fuel: {
    name: 'fuel',
    title: 'Fuel',
    is: 'What to put in for a session, what it weighs, and the weights of the wheels full and burnt down.',
    told: ({ fuel }) => fuel !== undefined,
  },
  transfer: {
    name: 'transfer',
    title: 'Load transfer',
    is: 'What goes from wheel to wheel, and how much of it through springs, links and unsprung parts; roll and pitch.',
    told: ({ body }) => body !== undefined,
  },
  'at-speed': {
    name: 'at speed',
    title: 'Heights at speed',
    is: 'The underside under downforce: heights, ride frequencies as the car then stands, and where it touches.',
    told: ({ body, underside }) => body !== undefined && underside !== undefined,
  },
};

const WHEELS = [
  ['frontLeft', 'front left'],
  ['frontRight', 'front right'],
  ['rearLeft', 'rear left'],
  ['rearRight', 'rear right'],
] as const;

const atWheels = (kind: string, such: string): readonly Field[] =>
  WHEELS.map(([key, name]) => ({ key: `${kind}.${key}`, name, such, long: true }));

const OF_CAR = 'that of the file';

const DOING: readonly Field[] = [
  { key: 'longitudinal', name: 'forward, braking negative', such: '−1.2 g' },
  { key: 'lateral', name: 'sideways, left turn positive', such: '1.8 g' },
];

const FUEL: Field = { key: 'fuel', name: 'fuel aboard', usual: 'that of the survey', such: '15 l' };

export const DAY_FIELDS: Readonly<Record<DayName, readonly FieldGroup[]>> = {
  'hot-pressures': [
    {
      fields: [
        { key: 'air', name: 'temperature of the air', such: '14 degC' },
        { key: 'hot.front', name: 'wanted hot, front', usual: OF_CAR, such: '1.70 bar' },
        { key: 'hot.rear', name: 'wanted hot, rear', usual: OF_CAR, such: '1.55 bar' },
      ],
    },
    {
      title: 'Gas and weather',
      fields: [
        { key: 'gas.front', name: 'gas hot, front', usual: OF_CAR, such: '95 degC ± 5 K' },
        { key: 'gas.rear', name: 'gas hot, rear', usual: OF_CAR, such: '95 degC ± 5 K' },
        { key: 'set', name: 'gas when it is set', usual: 'as the air', such: '55 degC ± 3 K' },
        { key: 'barometer', name: 'barometer at the track', such: '1004 mbar' },
        { key: 'seaLevel', name: 'or pressure at sea level', usual: 'standard air', such: '1018 mbar' },
        { key: 'height', name: 'with it, height of the track', usual: 'sea level', such: '180 m' },
        { key: 'barometerSet', name: 'barometer where it is set', such: '1010 mbar' },
        { key: 'heightSet', name: 'or height where it is set', such: '40 m' },
        { key: 'humidity', name: 'humidity', usual: '60 %', such: '80 %' },
        {
          key: 'fill',
          name: 'filled with',
          usual: OF_CAR,
          of: ['compressed air', 'dry nitrogen'],
        },
        { key: 'purges', name: 'times filled and let down', usual: '0', such: '3' },
        { key: 'receiver', name: 'pressure in the receiver', usual: '8 bar', such: '7 bar' },
        { key: 'receiverTemperature', name: 'its temperature', usual: 'as the air', such: '25 degC' },
        { key: 'water', name: 'water left in each tyre', usual: 'none', such: '5 g' },
      ],
    },
    { title: 'Warm now: pressure, gas', fields: atWheels('now', '1.76 bar, 80 degC') },
    { title: 'A run: cold, gas then, hot', fields: atWheels('run', '1.20 bar, 15 degC, 1.72 bar') },
  ],
  ratios: [
    {
      fields: [
        { key: 'at', name: 'changed at', usual: 'the limit', such: '10500 rpm' },
        {
          key: 'targets',
          name: 'speeds wanted, first gear first',
          such: '105, 140, 175, 210, 245, 285 km/h',
        },
        { key: 'changes', name: 'most pairs to change', usual: 'all', such: '2' },
        { key: 'finals', name: 'other final drives too', of: 'tick' },
      ],
    },
    {
      title: 'These pairs instead',
      fields: [
        {
          key: 'pairs',
          name: 'pairs, first gear first',
          usual: 'those fitted',
          such: '13/35, 15/33',
          long: true,
        },
        { key: 'final', name: 'final drive', usual: 'that fitted', such: '10/31' },
      ],
    },
  ],
  brakes: [
    {
      fields: [
        { key: 'speed', name: 'speed, for the air', usual: '180 km/h', such: '90 km/h' },
        {
          key: 'decelerations',
          name: 'decelerations',
          usual: '0.5, 1, 1.5, 2 g',
          such: '0.5, 0.8, 1.2 g',
        },
      ],
    },
  ],
  fuel: [
    {
      fields: [
        { key: 'laps', name: 'racing laps', such: '12' },
        { key: 'perLap', name: 'burnt in a lap', usual: OF_CAR, such: '1.4 l ± 0.1 l' },
        { key: 'lap', name: 'length of a lap here', usual: OF_CAR, such: '5.1 km' },
        { key: 'reserve', name: 'reserve', usual: '3 l', such: '4 l' },
        { key: 'aboard', name: 'in the cell now', such: '6 l' },
      ],
    },
    {
      title: 'Slow laps, temperature',
      fields: [
        { key: 'slowLaps', name: 'laps out and in', usual: '2', such: '2' },
        { key: 'slowPart', name: 'what one burns, of a lap', usual: '70 %', such: '65 %' },
        { key: 'temperature', name: 'temperature of the fuel', such: '28 degC' },
      ],
    },
    {
      title: 'By the work of the engine',
      fields: [
        { key: 'power', name: 'mean power, throttle open', such: '300 kW' },
        { key: 'open', name: 'part of the lap it is open', such: '52 % ± 3 %' },
        { key: 'time', name: 'time of a lap', such: '86 s' },
      ],
    },
  ],
  transfer: [
    {
      fields: [
        { key: 'doing', name: 'the car is', usual: 'cornering', of: 'cases' },
        ...DOING,
        { key: 'vertical', name: 'upward, on top of the weight', such: '1 g' },
        { key: 'speed', name: 'speed, for the air', such: '180 km/h' },
        FUEL,
      ],
    },
  ],
  'at-speed': [
    {
      fields: [
        { key: 'speeds', name: 'speeds', usual: '0 to 250 km/h', such: '0, 120, 240 km/h' },
        ...DOING,
        FUEL,
        { key: 'clearance', name: 'counts as touching at', usual: '0 mm', such: '3 mm' },
      ],
    },
  ],
};
