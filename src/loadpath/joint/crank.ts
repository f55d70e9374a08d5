/**
 * The torque of the crank where it crosses the face between engine and gear case.
 *
 * In    the car as it stands, which way its crank turns, turns of crank for one of the wheel or the torque itself
 * Out   a free moment on the gear case, about the car's axis
 * Axes  tub axes; a crank that turns clockwise from the front turns about −x
 * Not   inertia of crank and gears, losses of the gears: the crank gives somewhat more
 *
 * JT-14 of docs/theory/studs.md. The shaft goes through the face and turns the case; the engine is turned the other
 * way by as much, so that before the tub the two are one body and nothing is left.
 */
import type { CarForm } from '../../car/read.ts';
import { ZERO } from '../../maths/vec3.ts';
import type { NewtonMetre } from '../../units/quantity.ts';
import type { CarStanding } from '../loads/car-equilibrium.ts';
import type { AppliedForce } from '../loads/wrench.ts';
import type { Numbers } from '../numbers.ts';
import type { JointName } from './joint-of-car.ts';

/** Torque of the crank, about the car's forward axis; undefined where the file does not tell it.  [JT-14] */
export function crankTorque(car: CarForm, standing: CarStanding, numbers: Numbers): NewtonMetre | undefined {
  const { engine } = car;
  if (engine === undefined || (engine.overall === undefined && engine.torque === undefined)) return undefined;
  const { rearLeft, rearRight } = standing.wheels;
  const driven = rearLeft.shaft[1] + rearRight.shaft[1];
  // the other way it is an inboard brake, whose torque stays in the case
  if (driven <= 0) return 0;
  const crank =
    engine.torque === undefined ? driven / numbers.of(engine.overall!) : numbers.of(engine.torque);
  return engine.turns === 'clockwise from the front' ? -crank : crank;
}

/** What the crank puts on the parts behind a face. */
export function crankBehind(
  joint: JointName,
  car: CarForm,
  standing: CarStanding,
  numbers: Numbers,
): readonly AppliedForce[] {
  const torque = joint === 'caseToEngine' ? crankTorque(car, standing, numbers) : undefined;
  return torque === undefined || torque === 0 ? [] : [{ at: ZERO, force: ZERO, moment: [torque, 0, 0] }];
}
