/**
 * What the car is doing: accelerations, speed, steer, a kerb under a wheel; and what that puts on the whole car.
 *
 * In    the case as asked, the car's numbers
 * Out   masses with their centres, forces of the air
 * Axes  ISO 8855: x forward, y left, z up. A left-hand turn has lateral acceleration positive, braking has
 *       longitudinal acceleration negative
 *
 * LL-n are the equations of docs/theory/loads.md.
 */
import type { HandedOn } from '../../car/handed-on.ts';
import type { CarForm } from '../../car/read.ts';
import { add, scale, type Vec3, ZERO } from '../../maths/vec3.ts';
import type { Kilogram, Metre, MetrePerSecond, Newton, Quantity, Ratio } from '../../units/quantity.ts';
import { STANDARD_GRAVITY } from '../../units/quantity.ts';
import type { Numbers } from '../numbers.ts';

export type MetrePerSecondSquared = Quantity<'m/s^2'>;

export const WHEEL_NAMES = ['frontLeft', 'frontRight', 'rearLeft', 'rearRight'] as const;
export type WheelName = (typeof WHEEL_NAMES)[number];

/** A value for each wheel. */
export type Wheels<T> = Readonly<Record<WheelName, T>>;

export const eachWheel = <T>(of: (wheel: WheelName) => T): Wheels<T> =>
  Object.fromEntries(WHEEL_NAMES.map((name) => [name, of(name)])) as unknown as Wheels<T>;

export const endOf = (wheel: WheelName): 'front' | 'rear' => (wheel.startsWith('front') ? 'front' : 'rear');
export const sideOf = (wheel: WheelName): 'left' | 'right' => (wheel.endsWith('Left') ? 'left' : 'right');

export type { HandedOn };

/** Force of the ground on a tyre as typed or logged; what is left out follows from the sharing rule. */
export interface Contact {
  readonly up: Newton;
  readonly forward?: Newton;
  readonly left?: Newton;
  /** Left out: brake or inboard brake where the force is rearward, shaft where it is forward. */
  readonly by?: HandedOn;
}

export interface Doing {
  /** Forward positive: braking is negative. */
  readonly longitudinal: MetrePerSecondSquared;
  /** To the left positive: a left-hand turn. */
  readonly lateral: MetrePerSecondSquared;
  /** Upward positive, on top of gravity: a dip. */
  readonly vertical: MetrePerSecondSquared;
  readonly speed: MetrePerSecond;
  readonly rack: Metre;
  /** Extra load of a kerb, in loads of that wheel's own scale reading. */
  readonly strikes: Partial<Wheels<Ratio>>;
  /** Forces at these tyres, given and not found. */
  readonly contacts: Partial<Wheels<Contact>>;
  /** Front share of the brakes, where it is not the file's. */
  readonly frontBrakes?: Ratio;
  /** What was put onto the tub since the survey; a negative mass was taken off: burnt fuel. */
  readonly carried?: readonly Mass[];
}

export const STANDING: Doing = {
  longitudinal: 0,
  lateral: 0,
  vertical: 0,
  speed: 0,
  rack: 0,
  strikes: {},
  contacts: {},
};

/** Whether something is put on the wheels that the whole car does not stand in balance with. */
export const isThrown = ({ strikes, contacts }: Doing): boolean =>
  Object.values(strikes).some((each) => each !== 0) || Object.keys(contacts).length > 0;

export interface Mass {
  readonly mass: Kilogram;
  readonly at: Vec3;
}

/** Sprung mass as surveyed: what the scales and the height of the whole leave when the wheels are taken off.  [LL-1] */
export function sprungMass(
  car: CarForm,
  wheelCentres: Wheels<Vec3>,
  contacts: Wheels<Vec3>,
  numbers: Numbers,
): Mass {
  let whole = 0;
  let off = 0;
  let moment: Vec3 = ZERO;
  for (const wheel of WHEEL_NAMES) {
    const corner = car[endOf(wheel)][sideOf(wheel)];
    const onScale = numbers.of(corner.scale);
    const unsprung = numbers.of(corner.unsprung);
    const [x, y] = contacts[wheel];
    whole += onScale;
    off += unsprung;
    moment = add(moment, add(scale([x, y, 0], onScale), scale(wheelCentres[wheel], -unsprung)));
  }
  const height = numbers.of(car.body!.centreOfGravityHeight);
  moment = add(moment, [0, 0, height * whole]);
  return { mass: whole - off, at: scale(moment, 1 / (whole - off)) };
}

export interface Air {
  readonly frontDownforce: Newton;
  readonly rearDownforce: Newton;
  readonly drag: Newton;
  /** Height at which the drag acts. */
  readonly dragHeight: Metre;
}

/** Forces of the air at a speed, from those told at one speed, by its square.  [LL-2] */
export function airOf(car: CarForm, speed: MetrePerSecond, numbers: Numbers): Air {
  const { air } = car;
  if (air === undefined) return { frontDownforce: 0, rearDownforce: 0, drag: 0, dragHeight: 0 };
  const times = (speed / numbers.of(air.speed)) ** 2;
  const down = numbers.of(air.downforce) * times;
  const front = numbers.of(air.frontShare);
  return {
    frontDownforce: down * front,
    rearDownforce: down * (1 - front),
    drag: numbers.of(air.drag) * times,
    dragHeight: numbers.of(air.dragHeight),
  };
}

/** With forces given at all four tyres the accelerations follow from their sums.  [LL-19] */
export function movedBy(car: CarForm, doing: Doing, numbers: Numbers): Doing {
  const contacts = WHEEL_NAMES.map((wheel) => doing.contacts[wheel]!);
  const mass = WHEEL_NAMES.reduce(
    (sum, wheel) => sum + numbers.of(car[endOf(wheel)][sideOf(wheel)].scale),
    0,
  );
  const { frontDownforce, rearDownforce, drag } = airOf(car, doing.speed, numbers);
  const sum = (of: readonly (Newton | undefined)[]): Newton | undefined => {
    const given = of.filter((each) => each !== undefined);
    return given.length < of.length ? undefined : given.reduce((all, each) => all + each, 0);
  };
  const [forward, left] = [sum(contacts.map((each) => each.forward)), sum(contacts.map((each) => each.left))];
  const up = contacts.reduce((all, each) => all + each.up, 0);
  return {
    ...doing,
    longitudinal: forward === undefined ? doing.longitudinal : (forward - drag) / mass,
    lateral: left === undefined ? doing.lateral : left / mass,
    vertical: (up - frontDownforce - rearDownforce) / mass - STANDARD_GRAVITY,
  };
}
