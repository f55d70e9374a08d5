/** What the gear case hands forward through a plane across the car. */
import type { Car } from '../car/read.ts';
import { standingOf } from '../loadpath/figures/loads.ts';
import { forcesOnCase, type Plane, throughPlane } from '../loadpath/loads/case-forces.ts';
import type { Doing } from '../loadpath/loads/doing.ts';
import { Numbers } from '../loadpath/numbers.ts';
import type { Vec3 } from '../maths/vec3.ts';
import { isRefusal } from './refusal.ts';

export type { Plane };

export type PlaneAnswer =
  | {
      readonly reached: true;
      readonly plane: Plane;
      readonly force: Vec3;
      readonly moment: Vec3;
      /** How many forces act behind it. */
      readonly count: number;
    }
  | { readonly reached: false; readonly message: string };

/** @param plane  x as the file's points: forward of the front axle, so negative at the rear */
export function caseAtPlane(car: Car, doing: Doing, plane: Plane): PlaneAnswer {
  if (car.form.body === undefined) {
    return {
      reached: false,
      message: 'The file has no body: without the height of the centre of gravity the loads are not known.',
    };
  }
  const numbers = new Numbers(car.values);
  try {
    const forces = forcesOnCase(car.form, standingOf(car.form, doing, numbers), numbers);
    const count = forces.filter(({ at }) => at[0] < plane.x).length;
    return { reached: true, plane, count, ...throughPlane(forces, plane) };
  } catch (reason) {
    if (isRefusal(reason)) return { reached: false, message: reason.message };
    throw reason;
  }
}
