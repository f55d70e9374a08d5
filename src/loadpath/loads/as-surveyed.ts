/**
 * The car as its survey found it: where tyres and sprung mass are, and what the scales leave over at each wheel.
 *
 * In    the car
 * Out   what its equilibrium under any load begins from
 * Axes  tub axes
 *
 * LL-n are the equations of docs/theory/loads.md.
 */
import type { CarForm } from '../../car/read.ts';
import { add, cross, sub, type Vec3 } from '../../maths/vec3.ts';
import type { Metre } from '../../units/quantity.ts';
import { STANDARD_GRAVITY } from '../../units/quantity.ts';
import { type AxleState, axleState } from '../axle-of-car.ts';
import type { Numbers } from '../numbers.ts';
import { eachWheel, endOf, type Mass, sideOf, sprungMass, type WheelName, type Wheels } from './doing.ts';

/** What hangs on the survey alone, worked out once for a car. */
export interface AsSurveyed {
  readonly contacts: Wheels<Vec3>;
  readonly sprung: Mass;
  /** What virtual work and the wheel scale leave between them as surveyed.  [LL-5] */
  readonly offsets: Wheels<number>;
}

export const sideIn = (axles: { readonly front: AxleState; readonly rear: AxleState }, wheel: WheelName) =>
  axles[endOf(wheel)][sideOf(wheel)];

/** @throws Unreachable, DegenerateCorner, BarOpen */
export const asSurveyed = (car: CarForm, numbers: Numbers): AsSurveyed =>
  numbers.lasting(START, () => worked(car, numbers));

const START = 'car as surveyed, for its equilibrium';

function worked(car: CarForm, numbers: Numbers): AsSurveyed {
  const axles = axlesAt(car, [0, 0, 0, 0], 0, numbers);
  const contacts = eachWheel((wheel) => sideIn(axles, wheel).state.points.contact);
  const centres = eachWheel((wheel) => sideIn(axles, wheel).state.points.wheelCentre);
  const offsets = eachWheel((wheel) => {
    const { state, of } = sideIn(axles, wheel);
    const corner = car[endOf(wheel)][sideOf(wheel)];
    const weight = numbers.of(corner.scale) * STANDARD_GRAVITY;
    const off = numbers.of(corner.unsprung) * STANDARD_GRAVITY;
    const velocity = (at: Vec3): Vec3 => velocityOf(state, at);
    return (
      weight * velocity(state.points.contact)[2] -
      off * velocity(state.points.wheelCentre)[2] -
      of.springing.sprungLoad
    );
  });
  return { contacts, sprung: sprungMass(car, centres, contacts, numbers), offsets };
}

/** Velocity per metre of travel of a point that moves with the upright. */
export const velocityOf = (state: AxleState['left']['state'], at: Vec3): Vec3 =>
  add(
    state.moving.wheelCentre.perTravel,
    cross(state.uprightTurn.perTravel, sub(at, state.points.wheelCentre)),
  );

/** Both axles at the travels of the four wheels, in their order. */
export const axlesAt = (car: CarForm, u: readonly Metre[], rack: Metre, numbers: Numbers) => ({
  front: axleState(car.front, { left: u[0]!, right: u[1]!, rack }, numbers),
  rear: axleState(car.rear, { left: u[2]!, right: u[3]!, rack: 0 }, numbers),
});
