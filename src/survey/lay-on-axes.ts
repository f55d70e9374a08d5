/**
 * The whole surveyed body laid on the car's axes: by approximate places, or by the datum rules and the
 * heights and offsets read from the axes.
 *
 * In    the survey, points in some frame of their own, points known roughly in car axes
 * Out   the rigid motion into car axes; or which way the axes are left free; or that two ways round fit alike
 *
 * A pair is named left first, so its first point has the larger y; and a car stands above the flat patch, not
 * under it. These two facts choose between ways round that the rules alone do not tell apart.
 */
import { Matrix, SingularValueDecomposition } from 'ml-matrix';
import { apart, extentOf, meanOf } from '../geometry/extent.ts';
import { fitRigid, moved, type RigidMotion } from '../geometry/rigid-fit.ts';
import { rotated, squareTurns, turnedBy } from '../geometry/rotation.ts';
import { linearFit } from '../maths/linear-fit.ts';
import { add, cross, scale, sub, type Vec3 } from '../maths/vec3.ts';
import type { Problem } from '../measured/problem.ts';
import { leftHanded, unitProblem } from './check.ts';
import { type Equation, equationOfRule, equationsOf, type State } from './equations.ts';
import { CAR_SET, pointsOf, pointsOfRule, type Survey } from './network.ts';

export type LaidResult =
  | { readonly ok: true; readonly is: RigidMotion }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Standard uncertainty given to an exact rule while looking for the way round, m. */
const RULE_SPREAD = 1e-3;
const SAME_POSE = 5e-3;
/** A point lower than this is under the ground, m. */
const UNDER_GROUND = 5e-3;

export function layOnAxes(
  survey: Survey,
  body: ReadonlyMap<string, Vec3>,
  known: ReadonlyMap<string, Vec3>,
  set: string,
): LaidResult {
  const shared = [...body].flatMap(([name, p]) =>
    known.has(name) ? [{ from: p, to: known.get(name)! }] : [],
  );
  const fit = fitRigid(shared);
  if (fit.ok) {
    const unit = unitProblem(set, fit.is.scale, 'the approximate places');
    if (unit !== undefined) return { ok: false, problems: [unit] };
    if (fit.is.looksMirrored) return { ok: false, problems: [leftHanded(set, 'the approximate places')] };
    return { ok: true, is: fit.is };
  }
  return byRules(survey, body);
}

/** Equations that notice when the whole car moves, as far as their points are placed. */
export function axisEquations(survey: Survey, state: State): readonly Equation[] {
  const placed = (names: readonly string[]): boolean => names.every((name) => state.points.has(name));
  return [
    ...survey.datum
      .filter((rule) => placed(pointsOfRule(rule)))
      .map((rule) => {
        const equation = equationOfRule(rule, state);
        return { ...equation, u: Math.max(equation.u, RULE_SPREAD) };
      }),
    ...survey.readings
      .filter(
        (r) => r.kind !== 'distance' && (r.kind !== 'point' || r.set === CAR_SET) && placed(pointsOf(r)),
      )
      .flatMap((r) => equationsOf(r, state)),
  ];
}

/** How an equation changes with a shift of the whole car and a turn about `centre`.  [SU-10] */
function bodySlopes(equation: Equation, points: ReadonlyMap<string, Vec3>, centre: Vec3): readonly number[] {
  let shift: Vec3 = [0, 0, 0];
  let turn: Vec3 = [0, 0, 0];
  for (const slope of equation.slopes) {
    shift = add(shift, slope.by);
    turn = add(turn, cross(sub(points.get(slope.name)!, centre), slope.by));
  }
  return [...shift, ...turn];
}

/** Ways in which the whole car may move without any rule or reading noticing; empty when the axes are fixed. */
export function freeMotions(survey: Survey, points: ReadonlyMap<string, Vec3>): readonly string[] {
  const equations = axisEquations(survey, { points, frames: new Map() });
  const places = [...points.values()];
  const centre = meanOf(places);
  const size = extentOf(places) || 1;
  const rows = equations.map((e) => bodySlopes(e, points, centre).map((v, k) => (k < 3 ? v : v / size)));
  while (rows.length < 6) rows.push([0, 0, 0, 0, 0, 0]);
  const svd = new SingularValueDecomposition(new Matrix(rows as number[][]));
  return svd.diagonal.flatMap((s, k) =>
    s > 1e-4 * Math.max(1, svd.diagonal[0]!) ? [] : [named(svd.rightSingularVectors.getColumn(k))],
  );
}

const MOTIONS = [
  'shift along x',
  'shift along y',
  'shift along z',
  'roll about x',
  'pitch about y',
  'yaw about z',
];

const named = (motion: readonly number[]): string => {
  const size = Math.max(...motion.map(Math.abs));
  return motion.flatMap((v, k) => (Math.abs(v) > 0.3 * size ? [MOTIONS[k]!] : [])).join(' with ');
};

export const axesNotFixed = (motions: readonly string[]): Problem => ({
  code: 'survey/axes-not-fixed',
  path: 'datum',
  message: `The rules leave the car's axes free: ${motions.join('; ')}.`,
  remedy:
    'Fix the ground by heights of three points not on one line, the centre plane by two pairs or points along ' +
    'the car, and x by one point or pair.',
  weight: 'error',
});

interface Pose {
  readonly motion: RigidMotion;
  readonly places: readonly Vec3[];
  readonly misfit: number;
  readonly against: number;
}

function byRules(survey: Survey, body: ReadonlyMap<string, Vec3>): LaidResult {
  const poses = squareTurns()
    .map((rotation) => settle(survey, body, { rotation, translation: [0, 0, 0] }))
    .filter((pose) => Number.isFinite(pose.misfit))
    .sort((a, b) => a.misfit - b.misfit);
  const best = poses[0]!;
  const motions = freeMotions(survey, new Map([...body.keys()].map((name, k) => [name, best.places[k]!])));
  if (motions.length > 0) return { ok: false, problems: [axesNotFixed(motions)] };
  // a bent car or a slip of the pen must not decide the way round: all that fit about as well stay in
  const likely = poses
    .filter((pose) => pose.misfit <= 4 * best.misfit + 100)
    .sort((a, b) => a.against - b.against);
  const chosen = likely[0]!;
  const rival = likely.find(
    (pose) => pose.against === chosen.against && apart(pose.places, chosen.places) > SAME_POSE,
  );
  if (rival === undefined) return { ok: true, is: chosen.motion };
  const example = [...body.keys()][
    chosen.places.findIndex((p, k) => apart([p], [rival.places[k]!]) > SAME_POSE)
  ];
  return {
    ok: false,
    problems: [
      {
        code: 'survey/which-way-round',
        path: 'datum',
        message: `The rules fit two ways round; "${example}" would stand in either of two places.`,
        remedy: 'Give the approximate places, in car axes, of three points that are not on one line.',
        weight: 'error',
      },
    ],
  };
}

function settle(survey: Survey, body: ReadonlyMap<string, Vec3>, from: RigidMotion): Pose {
  let motion = from;
  // only points that a rule or reading speaks of take part in the search
  const everywhere = { points: body, frames: new Map<string, RigidMotion>() };
  const touched = new Set(
    axisEquations(survey, everywhere).flatMap((e) => e.slopes.map((slope) => slope.name)),
  );
  const held = new Map([...body].filter(([name]) => touched.has(name)));
  const middle = meanOf([...held.values()]);
  const placed = (some: ReadonlyMap<string, Vec3>): Map<string, Vec3> =>
    new Map([...some].map(([name, p]) => [name, moved(motion, p)]));
  const size = extentOf([...held.values()]) || 1;
  for (let round = 0; round < 60; round += 1) {
    const points = placed(held);
    const equations = axisEquations(survey, { points, frames: new Map() });
    if (equations.length === 0) break;
    const centre = meanOf([...points.values()]);
    const A = new Matrix(equations.map((e) => bodySlopes(e, points, centre).map((v) => v / e.u)));
    const { x } = linearFit(
      A,
      equations.map((e) => (e.read - e.computed) / e.u),
    );
    const angle = Math.hypot(x[3]!, x[4]!, x[5]!);
    const share = angle > 0.3 ? 0.3 / angle : 1;
    const turn: Vec3 = [share * x[3]!, share * x[4]!, share * x[5]!];
    const rotation = turnedBy(motion.rotation, turn);
    const home = rotated(rotation, middle); // turn about the middle, then shift
    motion = { rotation, translation: add(sub(centre, home), scale([x[0]!, x[1]!, x[2]!], share)) };
    if (angle * size + Math.hypot(x[0]!, x[1]!, x[2]!) < 1e-8) break;
  }
  const points = placed(body);
  const equations = axisEquations(survey, { points, frames: new Map() });
  const misfit = equations.reduce((sum, e) => sum + ((e.read - e.computed) / e.u) ** 2, 0);
  return { motion, places: [...points.values()], misfit, against: against(survey, points) };
}

/** How often a pose offends the plain facts: pairs with the left on the right, points under the ground. */
function against(survey: Survey, points: ReadonlyMap<string, Vec3>): number {
  const crossed = survey.datum.filter((rule) => {
    if (!('pair' in rule)) return false;
    const [left, right] = rule.pair.map((name) => points.get(name));
    return left !== undefined && right !== undefined && left[1] < right[1];
  }).length;
  return crossed + [...points.values()].filter((p) => p[2] < -UNDER_GROUND).length;
}
