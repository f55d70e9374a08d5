/**
 * The rest of the sprung mass: what is left of it when gear case and engine are taken off, with its weight and inertia.
 *
 * In    the whole car's equilibrium, masses of gear case and engine from the file
 * Out   one force at the rest's own centre, and in a strike the couple with which it resists being turned
 * Axes  tub axes
 *
 * LL-n are the equations of docs/theory/loads.md.
 */
import type { CarForm } from '../../car/read.ts';
import { add, cross, scale, sub, type Vec3, ZERO } from '../../maths/vec3.ts';
import type { CarStanding } from '../loads/car-equilibrium.ts';
import { isThrown, type Mass } from '../loads/doing.ts';
import type { AppliedForce } from '../loads/wrench.ts';
import type { Numbers } from '../numbers.ts';
import { unbalanced, weightAt } from './joint-of-car.ts';

/** Tub, driver, fuel and all else that is sprung and is neither gear case nor engine.  [LL-44] */
export function restOfSprung(car: CarForm, { sprung }: CarStanding, numbers: Numbers): Mass {
  const parts = heavyParts(car, numbers);
  const mass = parts.reduce((left, part) => left - part.mass, sprung.mass);
  const moment = parts.reduce(
    (left, part) => add(left, scale(part.at, -part.mass)),
    scale(sprung.at, sprung.mass),
  );
  return { mass, at: scale(moment, 1 / mass) };
}

/** Its weight and inertia; the couple is what lumps at three centres leave of the balance of moments.  [LL-45] */
export function weightOfRest(car: CarForm, standing: CarStanding, numbers: Numbers): AppliedForce {
  const rest = restOfSprung(car, standing, numbers);
  const lump = ({ mass, at }: Mass): AppliedForce => ({
    at,
    force: scale(weightAt(standing, car, numbers, at), mass),
  });
  const own = lump(rest);
  if (!isThrown(standing.doing)) return own;
  const { sprung, sprungForce } = standing;
  const about = ({ at, force }: AppliedForce): Vec3 => cross(sub(at, sprung.at), force);
  const lumped = [own, ...heavyParts(car, numbers).map(lump)].reduce(
    (sum, each) => add(sum, about(each)),
    ZERO,
  );
  const steady = about(sprungForce);
  return { ...own, moment: sub(scale(unbalanced(standing).moment, -1), sub(lumped, steady)) };
}

const heavyParts = ({ masses }: CarForm, numbers: Numbers): readonly Mass[] =>
  masses === undefined
    ? []
    : [masses.case, masses.engine].map(({ mass, at }) => ({
        mass: numbers.of(mass),
        at: numbers.point(at),
      }));
