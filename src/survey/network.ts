/**
 * A survey: readings between named points, and the rules that say where the car's axes lie.
 *
 * In    what was read on the car: portable arm, tape, trammel, level, plumb bob, string line
 * Out   types only
 * Axes  car axes after ISO 8855: x forward, y left, z up; z = 0 is the flat patch when heights are read from it
 */
import type { Vec3 } from '../maths/vec3.ts';
import type { Metre } from '../units/quantity.ts';

export type AxisName = 'x' | 'y' | 'z';
export const AXES: readonly AxisName[] = ['x', 'y', 'z'];

/** The set whose points are already in car axes. Any other set has a free frame of its own. */
export const CAR_SET = 'car';

interface Read {
  /** A name of its own: the residual table speaks of it. */
  readonly id: string;
  /** One standard uncertainty of the reading (of each co-ordinate, for a point). */
  readonly u: Metre;
}

interface Between {
  readonly from: string;
  readonly to: string;
  readonly value: Metre;
}

/** One point of an arm set-up. All points of one `set` share one frame; moving the arm starts another set. */
export interface PointReading extends Read {
  readonly kind: 'point';
  readonly point: string;
  readonly set: string;
  readonly xyz: Vec3;
}

/** Straight length between two points: tape or trammel. */
export interface DistanceReading extends Read, Between {
  readonly kind: 'distance';
}

/** Height above the flat patch: z. */
export interface HeightReading extends Read {
  readonly kind: 'height';
  readonly point: string;
  readonly value: Metre;
}

/** Height of `to` above `from`: level, water level, or straight edge and slip gauges. */
export interface RiseReading extends Read, Between {
  readonly kind: 'rise';
}

/** Distance on the flat patch between the plumb-bob marks of two points. */
export interface PlumbReading extends Read, Between {
  readonly kind: 'plumb';
}

/** Co-ordinate of a point to a string line or plane of the car axes. */
export interface OffsetReading extends Read {
  readonly kind: 'offset';
  readonly point: string;
  readonly axis: AxisName;
  readonly value: Metre;
}

export type SurveyReading =
  | PointReading
  | DistanceReading
  | HeightReading
  | RiseReading
  | PlumbReading
  | OffsetReading;

/**
 * What fixes the car's axes. Without `u` a rule holds exactly; with `u` it takes part like a reading and has a
 * residual. Six rules that do not repeat one another just fix the axes; more than six check each other.
 */
export type DatumRule =
  | { readonly point: string; readonly axis: AxisName; readonly at: Metre; readonly u?: Metre }
  | {
      /** Left first. Half the sum of the two co-ordinates is `mean`: 0 along y puts the pair astride the centre plane. */
      readonly pair: readonly [left: string, right: string];
      readonly axis: AxisName;
      readonly mean: Metre;
      readonly u?: Metre;
    }
  | {
      /** The first point's co-ordinate is the second's plus `difference`: squares the axes to a line. */
      readonly level: readonly [string, string];
      readonly axis: AxisName;
      readonly difference: Metre;
      readonly u?: Metre;
    };

export interface Survey {
  readonly readings: readonly SurveyReading[];
  readonly datum: readonly DatumRule[];
  /**
   * Roughly where points lie in car axes (a hand's breadth will do). Needed only where the readings leave it
   * open which way round something stands; three points not on one line settle a whole arm set.
   */
  readonly approximate?: Readonly<Record<string, Vec3>>;
}

export const datumId = (rule: DatumRule): string =>
  'point' in rule
    ? `datum ${rule.axis} of ${rule.point}`
    : `datum ${rule.axis} of ${('pair' in rule ? rule.pair : rule.level).join(' and ')}`;

export const pointsOfRule = (rule: DatumRule): readonly string[] =>
  'point' in rule ? [rule.point] : 'pair' in rule ? rule.pair : rule.level;

export const pointsOf = (reading: SurveyReading): readonly string[] =>
  'point' in reading ? [reading.point] : [reading.from, reading.to];

/** All points that a reading touches, in order of first mention. */
export const pointNames = (survey: Survey): readonly string[] => [
  ...new Set(survey.readings.flatMap(pointsOf)),
];

/** Names of the free arm sets, in order of first mention. */
export const freeSets = (survey: Survey): readonly string[] => [
  ...new Set(survey.readings.flatMap((r) => (r.kind === 'point' && r.set !== CAR_SET ? [r.set] : []))),
];

/** A point as the adjustment places it. */
export interface AdjustedPoint {
  readonly name: string;
  readonly at: Vec3;
  /** Standard uncertainty of each co-ordinate. */
  readonly u: Vec3;
  /** Covariance of x, y, z, m². */
  readonly covariance: readonly (readonly number[])[];
}
