/** Every force on the tub: front suspension, what comes through the engine joint, its own weight, the air. */
import type { Car } from '../car/read.ts';
import { standingOf } from '../loadpath/figures/loads.ts';
import { forcesBehind, frameOf } from '../loadpath/joint/joint-of-car.ts';
import { restOfSprung, weightOfRest } from '../loadpath/joint/tub-rest.ts';
import { airOnTub } from '../loadpath/loads/air-by-part.ts';
import type { Doing } from '../loadpath/loads/doing.ts';
import { resultantAt } from '../loadpath/loads/wrench.ts';
import { Numbers } from '../loadpath/numbers.ts';
import { show } from '../units/show.ts';
import {
  type BodyForcesAnswer,
  bodyForce,
  greatest,
  leftOver,
  type NamedForce,
  noBody,
  suspensionOn,
} from './body-forces.ts';
import { LOAD_CAUTION, STANDING_CAUTION } from './cautions.ts';
import { isRefusal } from './refusal.ts';

const FRONT = ['frontLeft', 'frontRight'] as const;

/** The name under which all that hangs behind the engine joint stands in the list. */
export const THROUGH_THE_JOINT = 'through the engine joint';

/** The resultant, about the middle of the engine joint's studs, is what is left over: the list is the whole balance. */
export function tubForces(car: Car, doing: Doing): BodyForcesAnswer {
  const no = (message: string): BodyForcesAnswer => ({ reached: false, doing, message });
  const { form } = car;
  const without = noBody(form);
  if (without !== undefined) return no(without);
  const { masses } = form;
  if (masses === undefined) {
    return no(
      'The file tells no masses of gear case and engine: without them what the tub itself weighs is not known. Weigh them and write them under masses.',
    );
  }
  const studs = form.joints?.engineToTub?.studs;
  if (studs === undefined) {
    return no(
      'The file does not describe the joint engine to tub: write where its studs stand under joints, engineToTub. What comes from behind acts there.',
    );
  }
  const numbers = new Numbers(car.values);
  try {
    const standing = standingOf(form, doing, numbers);
    const rest = restOfSprung(form, standing, numbers);
    if (rest.mass <= 0) {
      return no(
        'Gear case and engine weigh more than all that the springs carry. Read masses, scale and unsprung again.',
      );
    }
    const { origin } = frameOf(studs.map(({ at }) => numbers.point(at)));
    const all: readonly NamedForce[] = [
      ...suspensionOn(standing, FRONT),
      {
        name: THROUGH_THE_JOINT,
        at: origin,
        ...resultantAt(origin, forcesBehind('engineToTub', form, standing, numbers)),
      },
      { name: 'weight and inertia of the rest', ...weightOfRest(form, standing, numbers) },
      ...airOnTub(form, standing, numbers),
    ];
    const together = resultantAt(origin, all);
    return {
      reached: true,
      doing,
      forces: all.map(bodyForce),
      resultant: together,
      residual: leftOver(together, greatest(all)),
      notes: [
        `The rest is all that is sprung and is neither gear case nor engine: tub, driver, fuel, nose, radiators; ${show(rest.mass, 'kg').text} kg, centre ${show(rest.at[0], 'm').text} mm forward and ${show(rest.at[2], 'm').text} mm up in the axes of the car. In a strike it also resists being turned, by a couple.`,
        'All front suspension and all drag are taken to act on the tub. Belts, seat, pedals and radiators are not parted from it: which insert carries what of their load is not in this list.',
      ],
      cautions: [LOAD_CAUTION, STANDING_CAUTION],
    };
  } catch (reason) {
    if (isRefusal(reason)) return no(reason.message);
    throw reason;
  }
}
