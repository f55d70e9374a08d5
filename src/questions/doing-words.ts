/**
 * What the car is doing, by a name: cases in the manner of published design practice, and those of the car file.
 *
 * Multiples of weight are common practice, no source: several g of bump, braking and cornering with the downforce of
 * the speed. None of them is a limit of the car.
 */
import type { Car } from '../car/read.ts';
import { type Contact, type Doing, STANDING, WHEEL_NAMES, type WheelName } from '../loadpath/loads/doing.ts';
import { STANDARD_GRAVITY } from '../units/quantity.ts';
import { type Speech, spokenAmount } from '../units/show.ts';

const g = STANDARD_GRAVITY;
const kmh = 1 / 3.6;

export interface NamedDoing {
  readonly name: string;
  readonly means: string;
  readonly doing: Doing;
}

const named = (name: string, means: string, of: Partial<Doing>): NamedDoing => ({
  name,
  means,
  doing: { ...STANDING, ...of },
});

export const USUAL_DOINGS: readonly NamedDoing[] = [
  named('standing', 'at rest on level ground', {}),
  named('braking', 'braking at 2.5 g from 200 km/h', { longitudinal: -2.5 * g, speed: 200 * kmh }),
  named('driving', 'driving at 1 g at 100 km/h', { longitudinal: 1 * g, speed: 100 * kmh }),
  named('cornering', 'left-hand turn at 2 g and 150 km/h', { lateral: 2 * g, speed: 150 * kmh }),
  named('turning-in', 'left-hand turn at 1.6 g while braking at 1.5 g, 150 km/h', {
    lateral: 1.6 * g,
    longitudinal: -1.5 * g,
    speed: 150 * kmh,
  }),
  named('dip', 'bottom of a dip: 2 g upward on top of the weight, 150 km/h', {
    vertical: 2 * g,
    speed: 150 * kmh,
  }),
  named('kerb', 'left front wheel on a kerb: three times its scale load on top', {
    strikes: { frontLeft: 3 },
    speed: 100 * kmh,
  }),
  named('rear-kerb', 'left rear wheel on a kerb: three times its scale load on top', {
    strikes: { rearLeft: 3 },
    speed: 100 * kmh,
  }),
  named('full-downforce', 'straight ahead at 250 km/h', { speed: 250 * kmh }),
];

/** A case of the car file takes the place of a usual one of its name. */
export function doingsOf(car: Car): readonly NamedDoing[] {
  const own = Object.entries(car.form.cases ?? {}).map(([name, filed]): NamedDoing => {
    const { means, kerb, contacts, frontBrakes, ...rest } = filed;
    const doing: Doing = {
      ...STANDING,
      ...given(rest),
      strikes: given(kerb ?? {}),
      contacts: given(contacts ?? {}) as Doing['contacts'],
      ...(frontBrakes === undefined ? {} : { frontBrakes }),
    };
    return { name, means: means ?? spokenDoing(doing), doing };
  });
  const named = new Set(own.map(({ name }) => name));
  return [...USUAL_DOINGS.filter(({ name }) => !named.has(name)), ...own];
}

/** Without what is not given. */
const given = <T extends object>(of: T): { [K in keyof T]: Exclude<T[K], undefined> } =>
  Object.fromEntries(Object.entries(of).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]: Exclude<T[K], undefined>;
  };

const WHEEL_WORDS: Readonly<Record<WheelName, string>> = {
  frontLeft: 'front left',
  frontRight: 'front right',
  rearLeft: 'rear left',
  rearRight: 'rear right',
};

/** What the car is doing in a line of words and numbers. */
export function spokenDoing(doing: Doing, speech: Speech = 'mm-N'): string {
  const say = (value: number, unit: string): string =>
    spokenAmount(value, unit, unit === 'N' ? 0 : unit === 'm' ? 1 : 2, speech);
  const axis = (value: number, more: string, less: string): string[] =>
    value === 0 ? [] : [`${say(Math.abs(value), 'm/s^2')} ${value > 0 ? more : less}`];
  const words = [
    ...axis(doing.longitudinal, 'forward', 'of braking'),
    ...axis(doing.lateral, 'to the left', 'to the right'),
    ...axis(doing.vertical, 'upward', 'downward'),
    ...(doing.speed === 0 ? [] : [`${(doing.speed / kmh).toFixed(0)} km/h`]),
    ...(doing.rack === 0 ? [] : [`rack ${say(doing.rack, 'm')}`]),
    ...(doing.frontBrakes === undefined
      ? []
      : [`${(100 * doing.frontBrakes).toFixed(0)} % of the brakes at the front`]),
    ...WHEEL_NAMES.flatMap((wheel) => {
      const times = doing.strikes[wheel] ?? 0;
      return times === 0 ? [] : [`kerb at the ${WHEEL_WORDS[wheel]}: ${times} scale loads on top`];
    }),
    ...WHEEL_NAMES.flatMap((wheel) => {
      const typed = doing.contacts[wheel];
      return typed === undefined ? [] : [`${WHEEL_WORDS[wheel]} tyre: ${contactWords(typed, say)}`];
    }),
  ];
  return words.length === 0 ? 'standing on level ground' : words.join(', ');
}

const contactWords = (
  { up, forward, left, by }: Contact,
  say: (value: number, unit: string) => string,
): string =>
  [
    `${say(up, 'N')} up`,
    ...(forward === undefined
      ? []
      : [`${say(Math.abs(forward), 'N')} ${forward < 0 ? 'rearward' : 'forward'}`]),
    ...(left === undefined ? [] : [`${say(Math.abs(left), 'N')} to the ${left < 0 ? 'right' : 'left'}`]),
    ...(by === undefined ? [] : [`taken by ${by === 'spin' ? 'the spin of the wheel' : `the ${by}`}`]),
  ].join(' ');

export const usualDoing = (name: string): NamedDoing | undefined =>
  USUAL_DOINGS.find((each) => each.name === name);
