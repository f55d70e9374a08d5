/**
 * A measured corner made ready to be moved: checked, its fixed lengths and branches worked out once.
 *
 * In    a `CornerGeometry`
 * Out   a `Corner`, or every problem of the geometry at once
 * Axes  ISO 8855, fixed to the tub; each hinge's axis is turned so that its angle grows with bump
 * Not   plausible sizes and the units of the readings: the car file checks those
 */
import { along, cross, distance, dot, length, scale, sub, unit, type Vec3 } from '../../maths/vec3.ts';
import { moveRocker, moveWheel, placeRocker, placeWheel } from './chain.ts';
import { type GeometryProblem, geometryProblems, NEARLY_SINGULAR } from './check.ts';
import type { CornerGeometry } from './geometry.ts';
import {
  type CarrierCode,
  CLOSED,
  constantsSize,
  K_AXIS,
  K_CENTRE,
  K_GROUND,
  K_INNER,
  K_INNER_CLOSE,
  K_KINGPIN,
  K_LOWER,
  K_RADIUS,
  K_ROCKER_POINTS,
  K_ROD,
  K_TOE,
  K_UPPER,
  K_UPPER_CLOSE,
  ON_LOWER,
  ON_UPPER,
  ON_UPRIGHT,
  RISE,
  ROCKER_HINGE,
  type RockerLayout,
  stateSize,
} from './layout.ts';

/** A corner ready to be moved. Plain data; made by `prepareCorner` alone. */
export interface Corner extends RockerLayout {
  readonly geometry: CornerGeometry;
  readonly rodOn: CarrierCode;
  /** Unit directions of the hinges, each turned so that a positive angle is bump. */
  readonly lowerAxis: Vec3;
  readonly upperAxis: Vec3;
  readonly rockerAxis: Vec3;
  /** Height of the ground at the surveyed position: the contact point's z. */
  readonly ground: number;
  readonly pointNames: readonly string[];
  readonly elementNames: readonly string[];
  readonly constants: Float64Array;
  /** The state at the surveyed position. */
  readonly surveyed: Float64Array;
}

/** The geometry cannot be worked with; `problems` says all that is wrong with it. */
export class DegenerateCorner extends Error {
  readonly problems: readonly GeometryProblem[];
  constructor(problems: readonly GeometryProblem[]) {
    super(problems.map((p) => `${p.message} [${p.code}]`).join('\n'));
    this.name = 'DegenerateCorner';
    this.problems = problems;
  }
}

const put = (k: Float64Array, at: number, ...vectors: readonly Vec3[]): void => {
  vectors.forEach((v, i) => {
    k.set(v, at + 3 * i);
  });
};

/** Foot on the axis, radius vector, and axis × radius of a point on a hinge.  LP-2 */
function putOnHinge(k: Float64Array, at: number, p: Vec3, origin: Vec3, axis: Vec3): void {
  const foot = along(origin, axis, dot(sub(p, origin), axis));
  const r = sub(p, foot);
  put(k, at, foot, r, cross(axis, r));
}

/** (r² − d²)/2 and the branch of a hinge whose point p keeps its distance from q.  LP-4 */
function putClosure(k: Float64Array, at: number, p: Vec3, q: Vec3, origin: Vec3, axis: Vec3): void {
  const foot = along(origin, axis, dot(sub(p, origin), axis));
  const r = sub(p, foot);
  const d = sub(p, q);
  k[at] = (dot(r, r) - dot(d, d)) / 2;
  k[at + 1] = Math.sign(dot(axis, cross(r, sub(q, foot))));
}

/** The axis through two points, turned so that a positive angle lifts `outer`. */
function liftingAxis(front: Vec3, rear: Vec3, outer: Vec3): Vec3 {
  const axis = unit(sub(front, rear));
  return cross(axis, sub(outer, rear))[2] >= 0 ? axis : scale(axis, -1);
}

/** Height of the lowest point of the wheel's circle of the loaded radius.  LP-10 */
const lowestPoint = (g: CornerGeometry, axis: Vec3): number =>
  g.wheelCentre[2] - g.loadedRadius * Math.sqrt(1 - axis[2] * axis[2]);

/**
 * Checks a corner and works out what never changes while it moves.
 * @throws DegenerateCorner with every problem found: a zero arm, an axis without direction, a link in line
 */
export function prepareCorner(geometry: CornerGeometry): Corner {
  const problems = geometryProblems(geometry);
  if (problems.length > 0) throw new DegenerateCorner(problems);

  const g = geometry;
  const pointNames = Object.keys(g.rockerPoints);
  const elementNames = Object.keys(g.elements);
  const elementPoint = Int32Array.from(elementNames, (name) =>
    pointNames.indexOf(g.elements[name]?.rockerPoint ?? ''),
  );
  const layout: RockerLayout = { pointCount: pointNames.length, elementPoint };
  const rodOn: CarrierCode =
    g.rodOn === 'lower wishbone' ? ON_LOWER : g.rodOn === 'upper wishbone' ? ON_UPPER : ON_UPRIGHT;
  const lowerAxis = liftingAxis(g.lowerFront, g.lowerRear, g.lowerOuter);
  const upperAxis = liftingAxis(g.upperFront, g.upperRear, g.upperOuter);
  const wheelAxis = unit(g.wheelAxis);
  const ground = lowestPoint(g, wheelAxis);

  const k = new Float64Array(constantsSize(layout));
  putOnHinge(k, K_LOWER, g.lowerOuter, g.lowerRear, lowerAxis);
  putOnHinge(k, K_UPPER, g.upperOuter, g.upperRear, upperAxis);
  putClosure(k, K_UPPER_CLOSE, g.upperOuter, g.lowerOuter, g.upperRear, upperAxis);

  const kingpin = sub(g.upperOuter, g.lowerOuter);
  const kHat = unit(kingpin);
  const toe = sub(g.toeOuter, g.lowerOuter);
  const h = dot(toe, kHat);
  const toeArm = along(toe, kHat, -h);
  const r = length(toeArm);
  const link = sub(g.toeOuter, g.toeInner);
  const w = sub(g.toeInner, along(g.lowerOuter, kHat, h));
  const branch = Math.sign(dot(kHat, cross(w, toeArm)));
  k.set([h, r, (r * r - dot(link, link)) / 2, branch], K_TOE);
  put(k, K_TOE + 4, g.toeInner, g.rackDirection === undefined ? [0, 0, 0] : unit(g.rackDirection));
  k[K_KINGPIN] = 1 / length(kingpin);

  const fHat = unit(toeArm);
  const gHat = cross(kHat, fHat);
  const inFrame = (v: Vec3): Vec3 => [dot(v, kHat), dot(v, fHat), dot(v, gHat)];
  put(k, K_CENTRE, inFrame(sub(g.wheelCentre, g.lowerOuter)));
  put(k, K_AXIS, inFrame(wheelAxis));
  k[K_RADIUS] = g.loadedRadius;
  k[K_GROUND] = ground;
  if (rodOn === ON_UPRIGHT) put(k, K_ROD, inFrame(sub(g.rodOuter, g.lowerOuter)));
  else if (rodOn === ON_LOWER) putOnHinge(k, K_ROD, g.rodOuter, g.lowerRear, lowerAxis);
  else putOnHinge(k, K_ROD, g.rodOuter, g.upperRear, upperAxis);

  elementNames.forEach((name, i) => {
    put(k, K_ROCKER_POINTS + 9 * layout.pointCount + 3 * i, g.elements[name]?.tub ?? [0, 0, 0]);
  });
  const putRocker = (axis: Vec3): void => {
    putOnHinge(k, K_INNER, g.rodInner, g.rockerPivot, axis);
    putClosure(k, K_INNER_CLOSE, g.rodInner, g.rodOuter, g.rockerPivot, axis);
    pointNames.forEach((name, i) => {
      putOnHinge(k, K_ROCKER_POINTS + 9 * i, g.rockerPoints[name] ?? [0, 0, 0], g.rockerPivot, axis);
    });
  };

  const surveyed = new Float64Array(stateSize(layout));
  const move = (): void => {
    if (placeWheel(k, surveyed, 0, 0) !== CLOSED || placeRocker(k, surveyed, rodOn) !== CLOSED) {
      throw new Error('the surveyed position does not close although the geometry was checked');
    }
    moveWheel(k, surveyed);
    moveRocker(k, surveyed, rodOn);
  };
  let rockerAxis = unit(g.rockerAxis);
  putRocker(rockerAxis);
  move();
  if (surveyed[ROCKER_HINGE + 2] < 0) {
    rockerAxis = scale(rockerAxis, -1);
    putRocker(rockerAxis);
    move();
  }
  const still = stillProblems(g, surveyed);
  if (still.length > 0) throw new DegenerateCorner(still);
  return {
    ...layout,
    geometry,
    rodOn,
    lowerAxis,
    upperAxis,
    rockerAxis,
    ground,
    pointNames,
    elementNames,
    constants: k,
    surveyed,
  };
}

/** What can only be seen once the corner moves: a wheel that does not rise, a rocker that does not turn. */
function stillProblems(g: CornerGeometry, s: Float64Array): GeometryProblem[] {
  const problems: GeometryProblem[] = [];
  const lowerArm = distance(g.lowerOuter, g.lowerRear);
  if (!(s[RISE + 1] > NEARLY_SINGULAR * lowerArm)) {
    problems.push({
      code: 'corner/wheel-does-not-rise',
      message: 'At the surveyed position the wheel does not rise when the lower wishbone turns upward.',
      points: ['lowerFront', 'lowerRear', 'lowerOuter', 'upperFront', 'upperRear', 'upperOuter'],
    });
  }
  if (!(Math.abs(s[ROCKER_HINGE + 2]) > NEARLY_SINGULAR)) {
    problems.push({
      code: 'corner/rocker-stands-still',
      message: 'At the surveyed position the rod does not turn the rocker when the wheel moves.',
      points: ['rodOuter', 'rodInner', 'rockerPivot'],
    });
  }
  return problems;
}
