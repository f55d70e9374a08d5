/**
 * An invented car and an invented day's readings of it, for the tests of the survey. No real car stands behind it.
 */
import { movedBack, type RigidMotion } from '../../src/geometry/rigid-fit.ts';
import { NO_TURN, turnedBy } from '../../src/geometry/rotation.ts';
import { add, distance, scale, type Vec3 } from '../../src/maths/vec3.ts';
import type { DatumRule, Survey, SurveyReading } from '../../src/survey/network.ts';

/** Seeded generator (Park & Miller minimal standard) and normal deviates by the polar method. */
export function seeded(seed: number): { uniform: () => number; normal: () => number } {
  let state = (seed * 7919 + 17) % 2147483647;
  const uniform = (): number => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
  const normal = (): number => {
    for (;;) {
      const a = 2 * uniform() - 1;
      const b = 2 * uniform() - 1;
      const s = a * a + b * b;
      if (s > 0 && s < 1) return a * Math.sqrt((-2 * Math.log(s)) / s);
    }
  };
  for (let k = 0; k < 10; k += 1) uniform();
  return { uniform, normal };
}

/** Left side, m: the right is its mirror. */
const LEFT: Readonly<Record<string, Vec3>> = {
  'front upper front': [0.19, 0.21, 0.38],
  'front upper rear': [-0.17, 0.22, 0.37],
  'front lower front': [0.23, 0.12, 0.13],
  'rear upper front': [-2.45, 0.18, 0.39],
  'rear lower front': [-2.38, 0.11, 0.12],
  'rear lower rear': [-2.85, 0.1, 0.14],
};

export const PAIRS = Object.keys(LEFT).map((name) => ({
  name,
  left: `left ${name}`,
  right: `right ${name}`,
}));

export function trueCar(bend: Readonly<Record<string, Vec3>> = {}): Map<string, Vec3> {
  const car = new Map<string, Vec3>();
  for (const [name, p] of Object.entries(LEFT)) {
    car.set(`left ${name}`, p);
    car.set(`right ${name}`, [p[0], -p[1], p[2]]);
  }
  for (const [name, by] of Object.entries(bend)) car.set(name, add(car.get(name)!, by));
  return car;
}

export const ARM_FRAME: RigidMotion = {
  rotation: turnedBy(turnedBy(NO_TURN, [0.1, -0.2, 2.1]), [0.3, 0, 0]),
  translation: [-1.1, 1.4, 0.6],
};
export const SECOND_FRAME: RigidMotion = {
  rotation: turnedBy(NO_TURN, [0.02, 0.05, -0.9]),
  translation: [-1.3, -1.2, 0.8],
};

/** Ground by three heights' worth of rules, centre plane by two pairs, x by one pair. */
export const DATUM: readonly DatumRule[] = [
  { pair: ['left front lower front', 'right front lower front'], axis: 'y', mean: 0 },
  { pair: ['left rear lower front', 'right rear lower front'], axis: 'y', mean: 0 },
  { pair: ['left front lower front', 'right front lower front'], axis: 'x', mean: 0.23 },
];

export interface Spreads {
  readonly arm: number;
  readonly tape: number;
  readonly height: number;
}

const HEIGHTS = [
  'left front lower front',
  'right front lower front',
  'left rear lower rear',
  'right rear lower rear',
];

const LENGTHS: readonly (readonly [string, string])[] = [
  ['left front lower front', 'left rear lower rear'],
  ['right front lower front', 'right rear lower rear'],
  ['left front lower front', 'right rear lower rear'],
  ['right front lower front', 'left rear lower rear'],
  ['left front upper front', 'right front upper front'],
  ['left rear upper front', 'right front upper rear'],
  ['left rear lower front', 'right rear upper front'],
];

/** A day's readings with normal errors of the spreads named. */
export function daysReadings(
  car: ReadonlyMap<string, Vec3>,
  spreads: Spreads,
  normal: () => number,
): readonly SurveyReading[] {
  const touched = (set: string, frame: RigidMotion, names: readonly string[]): SurveyReading[] =>
    names.map((point) => {
      const noise: Vec3 = [normal(), normal(), normal()];
      const xyz = add(movedBack(frame, car.get(point)!), scale(noise, spreads.arm));
      return { kind: 'point', id: `${set}: ${point}`, point, set, xyz, u: spreads.arm };
    });
  const names = [...car.keys()];
  return [
    ...touched(
      'A',
      ARM_FRAME,
      names.filter((name) => name.startsWith('left') || name.includes('lower front')),
    ),
    ...touched(
      'B',
      SECOND_FRAME,
      names.filter((name) => name.startsWith('right') || name.includes('upper front')),
    ),
    ...HEIGHTS.map((point): SurveyReading => {
      const value = car.get(point)![2] + spreads.height * normal();
      return { kind: 'height', id: `height of ${point}`, point, value, u: spreads.height };
    }),
    ...LENGTHS.map(([from, to]): SurveyReading => {
      const value = distance(car.get(from)!, car.get(to)!) + spreads.tape * normal();
      return { kind: 'distance', id: `${from} to ${to}`, from, to, value, u: spreads.tape };
    }),
  ];
}

export const SPREADS: Spreads = { arm: 0.1e-3, tape: 0.5e-3, height: 0.2e-3 };

export const surveyOf = (
  car: ReadonlyMap<string, Vec3>,
  normal: () => number,
  spreads: Spreads = SPREADS,
): Survey => ({ readings: daysReadings(car, spreads, normal), datum: DATUM });
