/**
 * One point found from its neighbours: by an arm set whose frame is known, or by lengths, heights and offsets.
 *
 * In    the survey, the point's name, what is placed already, roughly where it lies if anyone has said
 * Out   its place; or why it cannot be had and which reading would do
 */
import { Matrix } from 'ml-matrix';
import { extentOf, meanOf } from '../geometry/extent.ts';
import { linearFit } from '../maths/linear-fit.ts';
import { add, distance, scale, type Vec3 } from '../maths/vec3.ts';
import { type Equation, equationsOf, type State } from './equations.ts';
import { pointsOf, type Survey, type SurveyReading } from './network.ts';

export interface Located {
  readonly at?: Vec3;
  readonly why?: string;
}

/** Kinds that mean the same in any frame: they serve before the points are laid on the car's axes. */
const IN_ANY_FRAME: readonly SurveyReading['kind'][] = ['distance'];

/** Two minima closer than this are the same place, m. */
const SAME_PLACE = 2e-3;
/** Weighted squares by which a second place must be worse to be ruled out: five standard uncertainties. */
const CLEARLY_WORSE = 25;

export function locate(
  survey: Survey,
  point: string,
  state: State,
  roughly?: Vec3,
  inCarAxes = true,
): Located {
  const readings = survey.readings.filter(
    (r) =>
      pointsOf(r).includes(point) &&
      r.kind !== 'point' &&
      (inCarAxes || IN_ANY_FRAME.includes(r.kind)) &&
      pointsOf(r).every((name) => name === point || state.points.has(name)),
  );
  if (readings.length < 3) return { why: tooFew(point, readings) };
  const known = [...state.points.values()];
  const size = known.length > 1 ? extentOf(known) : 1;
  const reach = Math.max(...readings.map((r) => (r.kind === 'point' ? 0 : Math.abs(r.value))), 0.1 * size);
  const middle = known.length > 0 ? meanOf(known) : ([0, 0, 0] as Vec3);
  const starts = roughly === undefined ? DIRECTIONS.map((d) => add(middle, scale(d, reach))) : [roughly];
  const found = starts
    .map((from) => settle(readings, point, state, from, reach))
    .sort((a, b) => a.misfit - b.misfit);
  const best = found[0]!;
  if (best.loose && roughly === undefined) return { why: tooFew(point, readings) };
  const rival = found.find(
    (f) => distance(f.at, best.at) > SAME_PLACE && f.misfit < best.misfit + CLEARLY_WORSE,
  );
  if (rival !== undefined) {
    return {
      why:
        `The readings of ${point} fit two places, ${(1000 * distance(rival.at, best.at)).toFixed(0)} mm apart. ` +
        'Give its approximate place, or one more reading from a point out of the plane of the others.',
    };
  }
  return { at: best.at };
}

const tooFew = (point: string, readings: readonly SurveyReading[]): string => {
  const has = readings.length === 0 ? 'no reading' : readings.map((r) => r.id).join(', ');
  return (
    `${point} has ${has} to points whose place is known; three that cross are needed. ` +
    'Touch it with the arm, or take lengths to three known points that are not on one line.'
  );
};

/** Corners and faces of a cube: no start lies in a plane of symmetry of all the others. */
const DIRECTIONS: readonly Vec3[] = [-1, 0, 1].flatMap((x) =>
  [-1, 0, 1].flatMap((y) =>
    [-1, 0, 1].filter((z) => x !== 0 || y !== 0 || z !== 0).map((z): Vec3 => [x + 0.07, y - 0.05, z + 0.03]),
  ),
);

interface Settled {
  readonly at: Vec3;
  readonly misfit: number;
  readonly loose: boolean;
}

/** Gauss–Newton on three unknowns with the step held to the reach of the readings. */
function settle(
  readings: readonly SurveyReading[],
  point: string,
  state: State,
  from: Vec3,
  reach: number,
): Settled {
  let at = from;
  let loose = false;
  const evaluate = (p: Vec3): readonly Equation[] => {
    const here: State = { points: new Map(state.points).set(point, p), frames: state.frames };
    return readings.flatMap((r) => equationsOf(r, here));
  };
  for (let round = 0; round < 60; round += 1) {
    const equations = evaluate(at);
    const A = new Matrix(
      equations.map((e) => (e.slopes.find((s) => s.name === point)?.by ?? [0, 0, 0]).map((v) => v / e.u)),
    );
    const fit = linearFit(
      A,
      equations.map((e) => (e.read - e.computed) / e.u),
    );
    loose = fit.rank < 3;
    const size = Math.hypot(...fit.x);
    const held = size > 0.5 * reach ? (0.5 * reach) / size : 1;
    at = add(at, scale([fit.x[0]!, fit.x[1]!, fit.x[2]!], held));
    if (size < 1e-9) break;
  }
  const misfit = evaluate(at).reduce((sum, e) => sum + ((e.read - e.computed) / e.u) ** 2, 0);
  return { at, misfit, loose };
}
