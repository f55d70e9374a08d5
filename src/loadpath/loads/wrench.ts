/**
 * Forces with their lines of action, and their sum at a point.
 *
 * In    forces at points, free moments
 * Out   the resultant force and its moment about a point
 * Axes  ISO 8855, those in which the forces are given
 */
import { add, cross, sub, type Vec3, ZERO } from '../../maths/vec3.ts';

/** A force at a point, and a moment that has no line of action of its own. N and N m. */
export interface AppliedForce {
  readonly at: Vec3;
  readonly force: Vec3;
  readonly moment?: Vec3;
}

export interface Resultant {
  readonly force: Vec3;
  /** About the point that was asked for. */
  readonly moment: Vec3;
}

export function resultantAt(point: Vec3, forces: readonly AppliedForce[]): Resultant {
  let force = ZERO;
  let moment = ZERO;
  for (const each of forces) {
    force = add(force, each.force);
    moment = add(add(moment, cross(sub(each.at, point), each.force)), each.moment ?? ZERO);
  }
  return { force, moment };
}
