/**
 * What the tub feels: every force on it closes, whatever the car does; at rest by the lever rule; in a strike the couple
 * of the rest against the inertia of the file.
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { restOfSprung } from '../../src/loadpath/joint/tub-rest.ts';
import { carStanding } from '../../src/loadpath/loads/car-equilibrium.ts';
import { type Doing, endOf, STANDING, sideOf, WHEEL_NAMES } from '../../src/loadpath/loads/doing.ts';
import { Numbers } from '../../src/loadpath/numbers.ts';
import {
  type BodyForcesReached,
  jointOf,
  THROUGH_THE_JOINT,
  tubForces,
  USUAL_DOINGS,
} from '../../src/questions/index.ts';
import { near } from '../near.ts';
import { demo, demoSource, opened } from './demo.ts';

const CAR = 'fenwold-201';
const g = 9.80665;

function on(doing: Partial<Doing>, car = demo(CAR)): BodyForcesReached {
  const answer = tubForces(car, { ...STANDING, ...doing });
  assert.ok(answer.reached, answer.reached ? '' : answer.message);
  return answer;
}

const named = (of: BodyForcesReached, name: string) => of.forces.find((each) => each.name === name)!;

test('in every usual case, and in cases by chance, the forces on the tub close to 1e-9 of the largest', () => {
  const car = demo(CAR);
  const closes = (doing: Doing, name: string): void => {
    const { residual } = on(doing, car);
    assert.ok(residual < 1e-9, `${name}: ${residual}`);
  };
  for (const { name, doing } of USUAL_DOINGS) closes(doing, name);
  const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  const any = fc.record({
    longitudinal: between(-2 * g, 0.8 * g),
    lateral: between(-1.8 * g, 1.8 * g),
    vertical: between(0, 2 * g),
    speed: between(0, 70),
    strikes: fc.oneof(fc.constant({}), fc.record({ frontLeft: between(0.5, 3) })),
  });
  fc.assert(
    fc.property(any, (doing) => closes({ ...STANDING, ...doing }, JSON.stringify(doing))),
    { numRuns: 15 },
  );
});

test('at rest: the rest weighs what scales, wheels, case and engine leave, and stands on two supports by the lever rule', () => {
  const car = demo(CAR);
  const numbers = new Numbers(car.values);
  const { front, rear, masses } = car.form;
  const corners = [front.left, front.right, rear.left, rear.right];
  const mass =
    corners.reduce((sum, { scale, unsprung }) => sum + numbers.of(scale) - numbers.of(unsprung), 0) -
    numbers.of(masses!.case.mass) -
    numbers.of(masses!.engine.mass);
  const still = on({}, car);
  // the tub's plane and the ground are a hair apart, so 1 part in a million
  near(named(still, 'weight and inertia of the rest').size, mass * g, 1e-6 * mass * g);
  const joint = named(still, THROUGH_THE_JOINT);
  const axle = corners.slice(0, 2).reduce((sum, { points }) => sum + points.wheelCentre.value[0], 0) / 2;
  const rest = named(still, 'weight and inertia of the rest');
  // moments about the front axle line: weight at its lever, joint at its lever with its couple
  const about = rest.force[2] * (rest.at[0] - axle) + joint.force[2] * (joint.at[0] - axle) - joint.couple[1];
  // 0.5 %: wheel centre for contact point
  near(about, 0, 0.005 * Math.abs(joint.couple[1]));
});

test('what comes through the engine joint is what its studs are asked to bear', () => {
  const { doing } = USUAL_DOINGS.find(({ name }) => name === 'turning-in')!;
  const joint = named(on(doing), THROUGH_THE_JOINT);
  const studs = jointOf(demo(CAR), 'engineToTub', doing, { spread: false });
  assert.ok(studs.reached);
  const of = (id: string): number => studs.figures.find((each) => each.id === id)!.value;
  near(joint.size, Math.hypot(of('pull'), of('shear')), 1e-6);
  near(joint.moment, Math.hypot(of('bending'), of('sideways'), of('turning')), 1e-6);
});

test('a kerb under the front: the rest resists being turned by its own share of the inertia', () => {
  const car = demo(CAR);
  const numbers = new Numbers(car.values);
  const doing = { ...STANDING, strikes: { frontLeft: 3 } };
  const standing = carStanding(car.form, doing, numbers);
  const { sprung } = standing;
  const rest = restOfSprung(car.form, standing, numbers);
  const { masses, body } = car.form;
  const lumps = [
    rest,
    ...[masses!.case, masses!.engine].map(({ mass, at }) => ({
      mass: numbers.of(mass),
      at: numbers.point(at),
    })),
  ];
  // pitch: the file's inertia of the whole less that of three lumps about the common centre, by Steiner
  const steiner = lumps.reduce((sum, { mass, at }) => {
    const [x, z] = [at[0] - sprung.at[0], at[2] - sprung.at[2]];
    return sum + mass * (x * x + z * z);
  }, 0);
  const own = numbers.of(body!.pitchInertia!) - steiner;
  // what the four tyres carry more than their scales, struck wheel and those that its anti-roll bar lifts
  const moment = WHEEL_NAMES.reduce((sum, wheel) => {
    const { at, ground } = standing.wheels[wheel];
    const more = ground[2] - numbers.of(car.form[endOf(wheel)][sideOf(wheel)].scale) * g;
    return sum - (at[0] - sprung.at[0]) * more;
  }, 0);
  const spin = moment / numbers.of(body!.pitchInertia!);
  const couple = named(on(doing, car), 'weight and inertia of the rest').couple[1];
  // 1 %: the wheel's own weight stands where it has gone, and the tub's plane and the ground are a hair apart
  near(couple, -own * spin, 0.01 * Math.abs(own * spin));
});

test('a car that does not tell its masses or its joint is asked for them', () => {
  const without = (part: RegExp) => opened(demoSource(CAR, (text) => text.replace(part, '')));
  const noMass = tubForces(without(/\nmasses:\n(?: +.*\n)+/), STANDING);
  assert.ok(!noMass.reached && /masses/.test(noMass.message));
  const noJoint = tubForces(demo('ashgarth-501'), STANDING);
  assert.ok(!noJoint.reached);
});
