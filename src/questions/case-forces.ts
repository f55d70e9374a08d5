/** Every force on the gear case: suspension, drive shafts, its own weight, the air; and what goes on through the joint. */
import type { Car } from '../car/read.ts';
import { standingOf } from '../loadpath/figures/loads.ts';
import { crankBehind } from '../loadpath/joint/crank.ts';
import { forcesBehind } from '../loadpath/joint/joint-of-car.ts';
import { cornerLoads } from '../loadpath/loads/corner-loads.ts';
import type { Doing } from '../loadpath/loads/doing.ts';
import { resultantAt } from '../loadpath/loads/wrench.ts';
import { Numbers } from '../loadpath/numbers.ts';
import { length, sub, type Vec3 } from '../maths/vec3.ts';
import { LOAD_CAUTION, STANDING_CAUTION } from './cautions.ts';
import { isRefusal } from './refusal.ts';

export interface CaseForce {
  readonly name: string;
  /** Car axes, m. */
  readonly at: Vec3;
  /** On the case: forward, left, up. */
  readonly force: Vec3;
  readonly size: number;
  /** A couple beside it, N m. */
  readonly moment: number;
}

export interface CaseReached {
  readonly reached: true;
  readonly doing: Doing;
  readonly forces: readonly CaseForce[];
  /** Of all of them, about the middle of the rear axle line on the ground. */
  readonly resultant: { readonly force: Vec3; readonly moment: Vec3 };
  /** How far the list is from what ground, wheels and their weight put on the corners, as a share of the largest. */
  readonly residual: number;
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
}

export type CaseAnswer =
  | CaseReached
  | { readonly reached: false; readonly doing: Doing; readonly message: string };

const REAR = ['rearLeft', 'rearRight'] as const;
const SIDE = { rearLeft: 'left', rearRight: 'right' } as const;

export function caseForces(car: Car, doing: Doing): CaseAnswer {
  if (car.form.body === undefined) {
    return {
      reached: false,
      doing,
      message: 'The file has no body: without the height of the centre of gravity the loads are not known.',
    };
  }
  const numbers = new Numbers(car.values);
  try {
    const standing = standingOf(car.form, doing, numbers);
    const corners = REAR.map((wheel) => cornerLoads(standing, wheel));
    const suspension = corners.flatMap((corner, k) =>
      corner.onTub.map((each) => ({ ...each, name: `${each.name}, ${SIDE[REAR[k]!]}` })),
    );
    const outside = REAR.flatMap((wheel) => [standing.wheels[wheel], standing.wheels[wheel].unsprung]);
    const about: Vec3 = [(outside[0]!.at[0] + outside[2]!.at[0]) / 2, 0, 0];
    const [list, met] = [resultantAt(about, suspension), resultantAt(about, outside)];
    const largest = Math.max(...suspension.map(({ force }) => length(force)));
    // beside the corners: what the case weighs and what the air puts on it
    const own = forcesBehind('caseToEngine', car.form, standing, numbers).slice(outside.length);
    const named = own.map((each, k) => ({
      ...each,
      name: k === own.length - 1 ? 'rear downforce' : 'weight and inertia of the case',
    }));
    const crank = crankBehind('caseToEngine', car.form, standing, numbers).map((each) => ({
      ...each,
      name: 'torque of the crank, from the engine',
    }));
    const all = [...suspension, ...named, ...crank];
    return {
      reached: true,
      doing,
      forces: all.map(({ name, at, force, moment }) => ({
        name,
        at,
        force,
        size: length(force),
        moment: moment === undefined ? 0 : length(moment),
      })),
      resultant: resultantAt(about, all),
      residual: Math.max(length(sub(list.force, met.force)), length(sub(list.moment, met.moment))) / largest,
      notes: [
        'All rear suspension is taken to stand on the case. The force along the line of a wishbone\u2019s two inner joints is shared by the stiffness of its legs (LL-15).',
        ...(car.form.masses === undefined
          ? ['The file tells no mass of the case, so its own weight is not in the list.']
          : []),
      ],
      cautions: [LOAD_CAUTION, STANDING_CAUTION],
    };
  } catch (reason) {
    if (isRefusal(reason)) return { reached: false, doing, message: reason.message };
    throw reason;
  }
}
