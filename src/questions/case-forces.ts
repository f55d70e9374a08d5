/** Every force on the gear case: suspension, drive shafts, its own weight, the air; and what goes on through the joint. */
import type { Car } from '../car/read.ts';
import { standingOf } from '../loadpath/figures/loads.ts';
import { crankBehind } from '../loadpath/joint/crank.ts';
import { forcesBehind } from '../loadpath/joint/joint-of-car.ts';
import type { Doing } from '../loadpath/loads/doing.ts';
import { resultantAt } from '../loadpath/loads/wrench.ts';
import { Numbers } from '../loadpath/numbers.ts';
import { sub, type Vec3 } from '../maths/vec3.ts';
import { type BodyForcesAnswer, bodyForce, greatest, leftOver, noBody, suspensionOn } from './body-forces.ts';
import { LOAD_CAUTION, STANDING_CAUTION } from './cautions.ts';
import { isRefusal } from './refusal.ts';

const REAR = ['rearLeft', 'rearRight'] as const;

/** The resultant is about the middle of the rear axle line; what is left over compares it with ground and wheels. */
export function caseForces(car: Car, doing: Doing): BodyForcesAnswer {
  const no = (message: string): BodyForcesAnswer => ({ reached: false, doing, message });
  const without = noBody(car.form);
  if (without !== undefined) return no(without);
  const numbers = new Numbers(car.values);
  try {
    const standing = standingOf(car.form, doing, numbers);
    const suspension = suspensionOn(standing, REAR);
    const outside = REAR.flatMap((wheel) => [standing.wheels[wheel], standing.wheels[wheel].unsprung]);
    const about: Vec3 = [(outside[0]!.at[0] + outside[2]!.at[0]) / 2, 0, 0];
    const [list, met] = [resultantAt(about, suspension), resultantAt(about, outside)];
    // beside the corners: what the case weighs and what the air puts on it
    const own = forcesBehind('caseToEngine', car.form, standing, numbers).slice(outside.length);
    const named = own.map((each) => ({ name: 'weight and inertia of the case', ...each }));
    const crank = crankBehind('caseToEngine', car.form, standing, numbers).map((each) => ({
      ...each,
      name: 'torque of the crank, from the engine',
    }));
    const all = [...suspension, ...named, ...crank];
    return {
      reached: true,
      doing,
      forces: all.map(bodyForce),
      resultant: resultantAt(about, all),
      residual: leftOver(
        { force: sub(list.force, met.force), moment: sub(list.moment, met.moment) },
        greatest(suspension),
      ),
      notes: [
        'All rear suspension is taken to stand on the case. The force along the line of a wishbone\u2019s two inner joints is shared by the stiffness of its legs (LL-15).',
        ...(car.form.air !== undefined && car.form.air.rearWing === undefined
          ? [
              'The file does not say where the rear wing stands, so all of the rear downforce is taken to press on the case at the axle line.',
            ]
          : []),
        ...(car.form.masses === undefined
          ? ['The file tells no mass of the case, so its own weight is not in the list.']
          : []),
      ],
      cautions: [LOAD_CAUTION, STANDING_CAUTION],
    };
  } catch (reason) {
    if (isRefusal(reason)) return no(reason.message);
    throw reason;
  }
}
