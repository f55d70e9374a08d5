/**
 * What the car is doing, by a name: cases in the manner of published design practice, and those of the car file.
 *
 * Multiples of weight are common practice, no source: several g of bump, braking and cornering with the downforce of
 * the speed. None of them is a limit of the car.
 */
import { type Doing, STANDING } from '../loadpath/loads/doing.ts';
import { STANDARD_GRAVITY } from '../units/quantity.ts';

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

export const usualDoing = (name: string): NamedDoing | undefined =>
  USUAL_DOINGS.find((each) => each.name === name);
