/**
 * What each tyre's load comes through: springs, links, unsprung mass.
 *
 * In    the car standing under a load
 * Out   for each wheel three parts that make up its load
 *
 * Virtual work at the wheel (LL-5), taken apart: the tyre's upward force is what springs and bars ask for, less what
 * the sideways and the fore and aft force do along the path of the contact point, less what weight and inertia of the
 * unsprung parts do along theirs. Exact at the place where the car stands: no roll centre is assumed.
 *
 * UW-n are the equations of docs/theory/under-way.md.
 */
import type { CarForm } from '../../car/read.ts';
import { asSurveyed, sideIn, velocityOf } from '../../loadpath/loads/as-surveyed.ts';
import type { CarStanding } from '../../loadpath/loads/car-equilibrium.ts';
import { eachWheel, type Wheels } from '../../loadpath/loads/doing.ts';
import { resistingOf } from '../../loadpath/loads/resisting.ts';
import type { Numbers } from '../../loadpath/numbers.ts';
import { dot, scale, ZERO } from '../../maths/vec3.ts';
import type { Newton } from '../../units/quantity.ts';

export interface LoadParts {
  /** Load of the tyre on the ground. */
  readonly load: Newton;
  /** Springs, stops, bar and heave element. */
  readonly springs: Newton;
  /** Side force and fore and aft force, through the links. */
  readonly links: Newton;
  /** Weight and inertia of the unsprung parts. */
  readonly unsprung: Newton;
}

/** [UW-7] */
export function loadParts(car: CarForm, standing: CarStanding, numbers: Numbers): Wheels<LoadParts> {
  const start = asSurveyed(car, numbers);
  const resisting = resistingOf(standing.axles, start.offsets);
  const { forward, left, up } = standing.ground;
  return eachWheel((wheel) => {
    const { state } = sideIn(standing.axles, wheel);
    const { at, ground, shaft, unsprung } = standing.wheels[wheel];
    const [F_x, F_y, load] = ground;
    const velocity = velocityOf(state, at);
    const rise = dot(up, velocity);
    // a wheel in the air has no load and no part
    if (load === 0) return { load, springs: 0, links: 0, unsprung: 0 };
    const along = F_x * dot(forward, velocity) + F_y * dot(left, velocity);
    const turning = dot(shaft, state.uprightTurn.perTravel);
    const own =
      dot(unsprung.force, velocityOf(state, unsprung.at)) +
      dot(unsprung.moment ?? scale(ZERO, 1), state.uprightTurn.perTravel);
    return {
      load,
      springs: resisting[wheel] / rise,
      links: -(along + turning) / rise,
      unsprung: -own / rise,
    };
  });
}
