/**
 * What each reading ought to read, given where the points and the arm frames are, and how that changes when
 * they move.
 *
 * In    a reading or a datum rule; the present points (car axes, m) and frames
 * Out   equations: reading − computed, the standard uncertainty, and the closed-form derivatives
 * Axes  a frame takes arm co-ordinates to car axes: p = R a + t; its small turn is a rotation vector in car axes
 *
 * Numbers SU-… are those of docs/theory/survey.md.
 */
import type { RigidMotion } from '../geometry/rigid-fit.ts';
import { movedBack } from '../geometry/rigid-fit.ts';
import { inverseOf } from '../geometry/rotation.ts';
import { cross, scale, sub, unit, type Vec3 } from '../maths/vec3.ts';
import { AXES, type AxisName, CAR_SET, type DatumRule, datumId, type SurveyReading } from './network.ts';

/** Where everything is thought to be. */
export interface State {
  readonly points: ReadonlyMap<string, Vec3>;
  readonly frames: ReadonlyMap<string, RigidMotion>;
}

/** Derivative with respect to a point's co-ordinates, a frame's shift or a frame's small turn. */
export interface Slope {
  readonly of: 'point' | 'shift' | 'turn';
  readonly name: string;
  readonly by: Vec3;
}

/** One line of the adjustment. */
export interface Equation {
  /** Id of the reading, or of the datum rule. */
  readonly id: string;
  readonly component: AxisName | 'length';
  readonly read: number;
  readonly computed: number;
  readonly u: number;
  readonly slopes: readonly Slope[];
}

export const axisIndex = (axis: AxisName): 0 | 1 | 2 => (axis === 'x' ? 0 : axis === 'y' ? 1 : 2);
export const axisVector = (axis: AxisName, size = 1): Vec3 => [
  axis === 'x' ? size : 0,
  axis === 'y' ? size : 0,
  axis === 'z' ? size : 0,
];

const at = (state: State, name: string): Vec3 => {
  const p = state.points.get(name);
  if (p === undefined) throw new Error(`the survey has no place for point "${name}"`);
  return p;
};

const alongLine = (from: string, to: string, direction: Vec3): readonly Slope[] => [
  { of: 'point', name: from, by: scale(direction, -1) },
  { of: 'point', name: to, by: direction },
];

/** Unit vector, or zero where the two points fall together and the length has no direction. */
const directionOf = (v: Vec3, size: number): Vec3 => (size > 0 ? unit(v) : [0, 0, 0]);

/** The one or three equations of a reading.  [SU-1 … SU-6] */
export function equationsOf(reading: SurveyReading, state: State): readonly Equation[] {
  const { id, u } = reading;
  const line = (computed: number, slopes: readonly Slope[], value: number): readonly Equation[] => [
    { id, component: 'length', read: value, computed, u, slopes },
  ];
  switch (reading.kind) {
    case 'point':
      return pointEquations(reading, state);
    case 'distance': {
      const v = sub(at(state, reading.to), at(state, reading.from));
      const d = Math.hypot(...v);
      return line(d, alongLine(reading.from, reading.to, directionOf(v, d)), reading.value);
    }
    case 'plumb': {
      const v = sub(at(state, reading.to), at(state, reading.from));
      const d = Math.hypot(v[0], v[1]);
      return line(d, alongLine(reading.from, reading.to, directionOf([v[0], v[1], 0], d)), reading.value);
    }
    case 'rise': {
      const computed = at(state, reading.to)[2] - at(state, reading.from)[2];
      return line(computed, alongLine(reading.from, reading.to, [0, 0, 1]), reading.value);
    }
    case 'height':
      return line(
        at(state, reading.point)[2],
        [{ of: 'point', name: reading.point, by: [0, 0, 1] }],
        reading.value,
      );
    case 'offset':
      return line(
        at(state, reading.point)[axisIndex(reading.axis)],
        [{ of: 'point', name: reading.point, by: axisVector(reading.axis) }],
        reading.value,
      );
  }
}

function pointEquations(reading: SurveyReading & { kind: 'point' }, state: State): readonly Equation[] {
  const { id, u, point, set } = reading;
  const p = at(state, point);
  if (set === CAR_SET) {
    return AXES.map((axis, k) => {
      const slopes: readonly Slope[] = [{ of: 'point', name: point, by: axisVector(axis) }];
      return { id, component: axis, read: reading.xyz[k]!, computed: p[k]!, u, slopes };
    });
  }
  const frame = state.frames.get(set);
  if (frame === undefined) throw new Error(`the survey has no frame for set "${set}"`);
  const seen = movedBack(frame, p); // SU-2: a = Rᵀ (p − t)
  const columns = inverseOf(frame.rotation);
  const lever = sub(p, frame.translation);
  return AXES.map((axis, k) => {
    const r = columns[k]!; // k-th column of R: the arm's axis seen from the car
    return {
      id,
      component: axis,
      read: reading.xyz[k]!,
      computed: seen[k]!,
      u,
      slopes: [
        { of: 'point', name: point, by: r },
        { of: 'shift', name: set, by: scale(r, -1) },
        { of: 'turn', name: set, by: cross(r, lever) }, // SU-3: r·(lever × δ) = δ·(r × lever)
      ] satisfies readonly Slope[],
    };
  });
}

/** The equation of a datum rule; `u` is 0 for one that holds exactly. All rules are linear. */
export function equationOfRule(rule: DatumRule, state: State): Equation {
  const k = axisIndex(rule.axis);
  const slope = (name: string, size: number): Slope => ({
    of: 'point',
    name,
    by: axisVector(rule.axis, size),
  });
  const common = { id: datumId(rule), component: rule.axis, u: rule.u ?? 0 };
  if ('point' in rule) {
    return { ...common, read: rule.at, computed: at(state, rule.point)[k], slopes: [slope(rule.point, 1)] };
  }
  const [a, b] = 'pair' in rule ? rule.pair : rule.level;
  const pair = 'pair' in rule;
  const pa = at(state, a)[k];
  const pb = at(state, b)[k];
  return {
    ...common,
    read: pair ? rule.mean : rule.difference,
    computed: pair ? (pa + pb) / 2 : pa - pb,
    slopes: pair ? [slope(a, 0.5), slope(b, 0.5)] : [slope(a, 1), slope(b, -1)],
  };
}
