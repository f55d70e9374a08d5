/**
 * Which part of the car has which part of the air's forces: the gear case what the wing's pillars bring, the tub the
 * rest.
 *
 * In    the air as it stands on the whole car, the rear wing of the file
 * Out   forces by name, on the case and on the tub; together they are those on the whole car
 * Axes  tub axes
 * Not   how stiff the pillars are: they carry alike, a stated rule
 *
 * LL-n are the equations of docs/theory/loads.md.
 */
import type { CarForm } from '../../car/read.ts';
import { add, cross, scale, sub, ZERO } from '../../maths/vec3.ts';
import type { Numbers } from '../numbers.ts';
import type { CarStanding } from './car-equilibrium.ts';
import { type AppliedForce, resultantAt } from './wrench.ts';

export type NamedAir = AppliedForce & { readonly name: string };

/** What the wing has, at its own place; nothing where the file has no wing. Goes by the square of the speed. [LL-46] */
function onWing(car: CarForm, { doing, ground }: CarStanding, numbers: Numbers): AppliedForce | undefined {
  const { air } = car;
  if (air?.rearWing === undefined) return undefined;
  const times = (doing.speed / numbers.of(air.speed)) ** 2;
  return {
    at: numbers.point(air.rearWing.at),
    force: add(
      scale(ground.up, -numbers.of(air.rearWing.downforce) * times),
      scale(ground.forward, -numbers.of(air.rearWing.drag) * times),
    ),
  };
}

/** Without a wing in the file the case has all of the rear downforce. */
export function airOnCase(car: CarForm, standing: CarStanding, numbers: Numbers): readonly NamedAir[] {
  const wing = onWing(car, standing, numbers);
  if (wing === undefined) return [{ name: 'rear downforce', ...standing.airForces[1]! }];
  const feet = car.air!.rearWing!.pillars.map((foot) => numbers.point(foot));
  const part = 1 / feet.length;
  const middle = scale(
    feet.reduce((sum, each) => add(sum, each), ZERO),
    part,
  );
  // each alike: its part of the force at its foot, and of what the force turns about the middle of the feet
  const couple = scale(cross(sub(wing.at, middle), wing.force), part);
  return feet.map((at, k) => ({
    name: feet.length === 1 ? 'wing pillar' : `wing pillar ${k + 1}`,
    at,
    force: scale(wing.force, part),
    moment: couple,
  }));
}

export function airOnTub(car: CarForm, standing: CarStanding, numbers: Numbers): readonly NamedAir[] {
  const [front, rear, drag] = standing.airForces;
  const own = [
    { name: 'front downforce', ...front! },
    { name: 'drag', ...drag! },
  ];
  const wing = onWing(car, standing, numbers);
  if (wing === undefined) return own;
  const rest = resultantAt(rear!.at, [rear!, { at: wing.at, force: scale(wing.force, -1) }]);
  return [...own, { name: 'rear downforce and drag that are not the wing\u2019s', at: rear!.at, ...rest }];
}
