/**
 * Whether a corner's points make a linkage at all.
 *
 * In    a `CornerGeometry`
 * Out   every problem at once, with the names of the points concerned
 * Axes  ISO 8855, fixed to the tub
 * Not   whether the sizes are plausible for a car: the car file asks that
 */
import { cross, distance, dot, length, sub, unit, type Vec3 } from '../../maths/vec3.ts';
import { type CornerGeometry, outboard } from './geometry.ts';

/** One thing that is wrong with a corner's points. */
export interface GeometryProblem {
  readonly code: string;
  readonly message: string;
  readonly points: readonly string[];
}

/** Shorter than this, two points are one: a tenth of a millimetre, below what is measured. */
const SAME_POINT = 1e-4;
/** Sine of the angle below which a link counts as in line: about 0.06°. */
export const NEARLY_SINGULAR = 1e-3;

const POINTS = [
  'upperFront',
  'upperRear',
  'upperOuter',
  'lowerFront',
  'lowerRear',
  'lowerOuter',
  'toeInner',
  'toeOuter',
  'rodOuter',
  'rodInner',
  'rockerPivot',
  'rockerAxis',
  'wheelCentre',
  'wheelAxis',
] as const;

const finite = (v: Vec3): boolean => v.every(Number.isFinite);

/** Distance of p from the line through `origin` along `direction`. */
const fromLine = (p: Vec3, origin: Vec3, direction: Vec3): number =>
  length(cross(unit(direction), sub(p, origin)));

/** Sine of the angle by which a link stands off the plane of its hinge and its point: 0 is over-centre. */
export function leverage(p: Vec3, q: Vec3, origin: Vec3, axis: Vec3): number {
  const a = unit(axis);
  const r = sub(p, origin);
  const tangent = cross(a, r);
  return Math.abs(dot(unit(tangent), unit(sub(p, q))));
}

/** All that makes the points unfit to be moved as a corner; empty when nothing does. */
export function geometryProblems(g: CornerGeometry): GeometryProblem[] {
  const found: GeometryProblem[] = [];
  const tell = (code: string, message: string, ...points: string[]): void => {
    found.push({ code: `corner/${code}`, message, points });
  };

  for (const name of POINTS) {
    if (!finite(g[name])) tell('not-a-number', `Point ${name} has a coordinate that is not a number.`, name);
  }
  for (const [name, p] of Object.entries(g.rockerPoints)) {
    if (!finite(p)) tell('not-a-number', `Rocker point ${name} has a coordinate that is not a number.`, name);
  }
  for (const [name, e] of Object.entries(g.elements)) {
    if (!finite(e.tub))
      tell('not-a-number', `The tub end of ${name} has a coordinate that is not a number.`, name);
    const p = g.rockerPoints[e.rockerPoint];
    if (p === undefined) {
      tell(
        'no-such-rocker-point',
        `${name} ends on rocker point ${e.rockerPoint}, which is not there.`,
        name,
      );
    } else if (distance(p, e.tub) < SAME_POINT) {
      tell('element-without-length', `Both ends of ${name} are at one place.`, name, e.rockerPoint);
    }
  }
  if (!(g.loadedRadius > SAME_POINT && Number.isFinite(g.loadedRadius))) {
    tell('no-radius', 'The loaded radius of the wheel must be above zero.');
  }
  if (found.length > 0) return found;

  const wishbone = (which: 'upper' | 'lower', front: Vec3, rear: Vec3, outer: Vec3): void => {
    const names = [`${which}Front`, `${which}Rear`];
    if (distance(front, rear) < SAME_POINT) {
      tell(
        'axis-without-length',
        `The two inner joints of the ${which} wishbone are at one place.`,
        ...names,
      );
    } else if (fromLine(outer, rear, sub(front, rear)) < SAME_POINT) {
      tell(
        'arm-zero',
        `The outer joint of the ${which} wishbone lies on its inner axis.`,
        ...names,
        `${which}Outer`,
      );
    }
  };
  wishbone('upper', g.upperFront, g.upperRear, g.upperOuter);
  wishbone('lower', g.lowerFront, g.lowerRear, g.lowerOuter);
  const kingpin = sub(g.upperOuter, g.lowerOuter);
  if (length(kingpin) < SAME_POINT) {
    tell('kingpin-without-length', 'The two outer joints are at one place.', 'upperOuter', 'lowerOuter');
  } else if (fromLine(g.toeOuter, g.lowerOuter, kingpin) < SAME_POINT) {
    tell('toe-arm-zero', 'The outer toe joint lies on the line through the outer joints.', 'toeOuter');
  }
  if (distance(g.toeInner, g.toeOuter) < SAME_POINT) {
    tell(
      'toe-link-without-length',
      'Both ends of the track rod or toe link are at one place.',
      'toeInner',
      'toeOuter',
    );
  }
  if (distance(g.rodInner, g.rodOuter) < SAME_POINT) {
    tell(
      'rod-without-length',
      'Both ends of the pushrod or pullrod are at one place.',
      'rodInner',
      'rodOuter',
    );
  }
  if (g.rackDirection !== undefined && !(Math.abs(length(g.rackDirection) - 1) < 1e-6)) {
    tell('rack-direction', 'The direction of rack travel must be a unit vector.');
  }
  if (!(Math.abs(length(g.rockerAxis) - 1) < 1e-6)) {
    tell(
      'rocker-axis-without-direction',
      'The direction of the rocker axis must be a unit vector.',
      'rockerAxis',
    );
  } else if (fromLine(g.rodInner, g.rockerPivot, g.rockerAxis) < SAME_POINT) {
    tell('rocker-arm-zero', 'The inner end of the rod lies on the rocker axis.', 'rodInner', 'rockerPivot');
  }
  if (!(Math.abs(length(g.wheelAxis) - 1) < 1e-6) || g.wheelAxis[1] * outboard(g.side) <= 0.5) {
    tell('wheel-axis', 'The wheel axis must be a unit vector that points outboard.', 'wheelAxis');
  }
  if (found.length > 0) return found;

  if (leverage(g.upperOuter, g.lowerOuter, g.upperRear, sub(g.upperFront, g.upperRear)) < NEARLY_SINGULAR) {
    const names = ['upperFront', 'upperRear', 'upperOuter', 'lowerOuter'];
    tell(
      'upper-wishbone-in-line',
      'The kingpin line lies in the plane of the upper wishbone: it can turn either way.',
      ...names,
    );
  }
  if (leverage(g.toeOuter, g.toeInner, g.lowerOuter, kingpin) < NEARLY_SINGULAR) {
    const names = ['toeInner', 'toeOuter', 'upperOuter', 'lowerOuter'];
    tell(
      'toe-link-in-line',
      'The toe link is in line with the kingpin: it does not hold the wheel.',
      ...names,
    );
  }
  if (leverage(g.rodInner, g.rodOuter, g.rockerPivot, g.rockerAxis) < NEARLY_SINGULAR) {
    const names = ['rodOuter', 'rodInner', 'rockerPivot'];
    tell(
      'rod-in-line',
      'The rod is in line with the rocker axis or the rocker arm: it does not turn the rocker.',
      ...names,
    );
  }
  return found;
}
