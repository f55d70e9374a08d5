/**
 * What can differ between the car as surveyed and the car as it stands: the variables of the flat floor, by name.
 *
 * In    names of ballast places and of what can be aboard
 * Out   a number for each variable, and a list of their values to be filled
 *
 * Everything is counted from the survey, where all are nothing. Metres, radians, pascals, kilograms.
 */
import { eachWheel, type WheelName, type Wheels } from '../loadpath/loads/doing.ts';

export type EndName = 'front' | 'rear';
export const ENDS: readonly EndName[] = ['front', 'rear'];

/** At each wheel: links, shims, springs, tyre, pad; and how much stiffer tyre and spring are than the file says. */
export const WHEEL_CHANGES = [
  'rod',
  'toe',
  'camber',
  'caster',
  'platform',
  'anchor',
  'pressure',
  'pad',
  'tyre',
  'spring',
] as const;
export type WheelChange = (typeof WHEEL_CHANGES)[number];

/** At each axle: drop links longer than surveyed. */
export const END_CHANGES = ['leftLink', 'rightLink'] as const;
export type EndChange = (typeof END_CHANGES)[number];

/** Of the whole: mass unknown to the survey with its two first moments, and the floor's slopes. */
export const CAR_CHANGES = ['mass', 'massForward', 'massLeft', 'risesForward', 'risesLeft'] as const;
export type CarChange = (typeof CAR_CHANGES)[number];

export class ChangeNames {
  readonly names: readonly string[];
  readonly wheel: Wheels<Readonly<Record<WheelChange, number>>>;
  readonly end: Readonly<Record<EndName, Readonly<Record<EndChange, number>>>>;
  readonly car: Readonly<Record<CarChange, number>>;
  /** Point masses that differ from the survey, by their names. */
  readonly masses: ReadonlyMap<string, number>;

  constructor(masses: readonly string[]) {
    const names: string[] = [];
    const put = (name: string): number => names.push(name) - 1;
    const each = <K extends string>(keys: readonly K[], of: string): Record<K, number> =>
      Object.fromEntries(keys.map((key) => [key, put(of === '' ? key : `${of}.${key}`)])) as Record<
        K,
        number
      >;
    this.wheel = eachWheel((wheel: WheelName) => each(WHEEL_CHANGES, wheel));
    this.end = { front: each(END_CHANGES, 'front'), rear: each(END_CHANGES, 'rear') };
    this.car = each(CAR_CHANGES, '');
    this.masses = new Map(masses.map((name) => [name, put(`mass.${name}`)]));
    this.names = names;
  }

  get count(): number {
    return this.names.length;
  }

  none(): Float64Array {
    return new Float64Array(this.count);
  }

  /** @throws Error where there is no such variable: our own slip */
  index(name: string): number {
    const at = this.names.indexOf(name);
    if (at < 0) throw new Error(`no such variable of the flat floor: ${name}`);
    return at;
  }
}
