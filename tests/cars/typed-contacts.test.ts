/** Forces typed at the tyres: what the car found is found again from them, one wheel alone, a wheel that only spins up. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { forcesBehind } from '../../src/loadpath/joint/joint-of-car.ts';
import { type CarStanding, carStanding } from '../../src/loadpath/loads/car-equilibrium.ts';
import { cornerLoads } from '../../src/loadpath/loads/corner-loads.ts';
import {
  type Contact,
  type Doing,
  eachWheel,
  STANDING,
  WHEEL_NAMES,
} from '../../src/loadpath/loads/doing.ts';
import { resultantAt } from '../../src/loadpath/loads/wrench.ts';
import { Numbers } from '../../src/loadpath/numbers.ts';
import { cross, dot, length, sub } from '../../src/maths/vec3.ts';
import { jointOf, loadsOf, usualDoing } from '../../src/questions/index.ts';
import { near } from '../near.ts';
import { demo } from './demo.ts';

const g = 9.80665;

const stand = (name: string, doing: Partial<Doing>): CarStanding => {
  const car = demo(name);
  return carStanding(car.form, { ...STANDING, ...doing }, new Numbers(car.values));
};

const asTyped = (of: CarStanding): Doing['contacts'] =>
  eachWheel((wheel): Contact => {
    const [forward, left, up] = of.wheels[wheel].ground;
    return { up, forward, left };
  });

for (const [name, what] of [
  ['fenwold-201', 'braking'],
  ['fenwold-201', 'cornering'],
  ['ashgarth-501', 'turning-in'],
  ['ashgarth-501', 'dip'],
] as const) {
  test(`${name}, ${what}: the forces that were found, typed, bring the car to the same place and members`, () => {
    const { doing } = usualDoing(what)!;
    const found = stand(name, doing);
    const again = stand(name, { speed: doing.speed, rack: doing.rack, contacts: asTyped(found) });
    near(again.doing.longitudinal, doing.longitudinal, 1e-6);
    near(again.doing.lateral, doing.lateral, 1e-6);
    near(again.doing.vertical, doing.vertical, 1e-6);
    for (const wheel of WHEEL_NAMES) {
      near(again.wheels[wheel].travel, found.wheels[wheel].travel, 1e-7, `${wheel} travel`);
      const [one, other] = [cornerLoads(again, wheel), cornerLoads(found, wheel)];
      for (const [member, force] of Object.entries(other.members.tension)) {
        near(one.members.tension[member as 'rod'], force, 0.05, `${wheel} ${member}`);
      }
    }
    // nothing is thrown where the forces balance
    const car = demo(name);
    if (car.form.masses === undefined) return;
    const numbers = new Numbers(car.values);
    const at = (of: CarStanding) =>
      resultantAt([0, 0, 0], forcesBehind('engineToTub', car.form, of, numbers)).force;
    near(length(sub(at(again), at(found))), 0, 0.05, 'at the joint');
  });
}

test('Newton: accelerations are the sums of the typed forces over the mass on the scales', () => {
  const car = demo('fenwold-201');
  const numbers = new Numbers(car.values);
  const mass = (['front', 'rear'] as const)
    .flatMap((end) => [car.form[end].left, car.form[end].right])
    .reduce((sum, { scale }) => sum + numbers.of(scale), 0);
  const contacts = {
    frontLeft: { up: 2600, forward: -1500, left: 900 },
    frontRight: { up: 3400, forward: -1700, left: 2100 },
    rearLeft: { up: 1900, forward: -700, left: 1000 },
    rearRight: { up: 2800, forward: -900, left: 2000 },
  };
  const of = stand('fenwold-201', { contacts });
  near(of.doing.longitudinal, -4800 / mass, 1e-9);
  near(of.doing.lateral, 6000 / mass, 1e-9);
  near(of.doing.vertical, 10_700 / mass - g, 1e-9);
  near(of.wheels.frontRight.ground[2], 3400, 0);
  // each wheel's springing holds what it was given: the rod by six equations against springing by virtual work
  for (const wheel of WHEEL_NAMES) near(cornerLoads(of, wheel).rocker.residual, 0, 5e-3, wheel);
});

test('one wheel alone: a load typed is a kerb of the same size, and the other wheels stay', () => {
  const struck = stand('fenwold-201', { strikes: { rearLeft: 2 }, speed: 30 });
  const up = struck.wheels.rearLeft.ground[2];
  const typed = stand('fenwold-201', { contacts: { rearLeft: { up } }, speed: 30 });
  for (const wheel of WHEEL_NAMES) near(typed.wheels[wheel].travel, struck.wheels[wheel].travel, 1e-9, wheel);
  const [a, b] = [cornerLoads(typed, 'rearLeft'), cornerLoads(struck, 'rearLeft')];
  near(a.members.tension.rod, b.members.tension.rod, 1e-6);
});

test('a rearward force by the brake, by a shaft, by the spin of the wheel: who feels its torque', () => {
  const of = (by: Contact['by']) => {
    const standing = stand('fenwold-201', { contacts: { rearLeft: { up: 4000, forward: -3000, by: by! } } });
    const corner = cornerLoads(standing, 'rearLeft');
    const { state } = standing.axles.rear.left;
    const { at, force, unsprung } = standing.wheels.rearLeft;
    const torque = dot(state.wheelAxis.value, cross(sub(at, state.points.wheelCentre), force));
    const shaft = corner.onTub.find(({ name }) => name.startsWith('drive shaft'));
    // what the corner puts on the tub is what acts on it from outside, its spin with it
    const inside = resultantAt([0, 0, 0], corner.onTub);
    const outside = resultantAt([0, 0, 0], [{ at, force }, unsprung]);
    near(length(sub(inside.force, outside.force)), 0, 1e-5, `${by} force`);
    near(length(sub(inside.moment, outside.moment)), 0, 1e-5, `${by} moment`);
    return { corner, torque, shaft: length(shaft?.moment ?? [0, 0, 0]) };
  };
  const [brake, shaft, spin] = [of('brake'), of('shaft'), of('spin')];
  near(brake.shaft, 0, 0);
  // force times the height of the wheel centre, less what camber and load bring
  near(shaft.shaft, 3000 * 0.33, 60);
  near(spin.shaft, 0, 0);
  // the upright itself does not know a shaft from a spin
  for (const [member, force] of Object.entries(shaft.corner.members.tension)) {
    near(spin.corner.members.tension[member as 'rod'], force, 1e-6, member);
  }
  const change = Math.abs(brake.corner.members.tension.upperFront - spin.corner.members.tension.upperFront);
  assert.ok(change > 500, `the brake's torque is in the upper legs: ${change} N`);
});

test('with spread, and through the joint', () => {
  const car = demo('fenwold-201');
  const doing: Doing = {
    ...STANDING,
    contacts: asTyped(stand('fenwold-201', usualDoing('braking')!.doing)),
    speed: 200 / 3.6,
  };
  const answer = loadsOf(car, doing, { wheels: [{ end: 'front', side: 'left' }] });
  assert.ok(answer.reached);
  const { figures } = answer.wheels[0]!;
  const rod = figures.find(({ id }) => id === 'tension.rod')!;
  assert.ok(rod.spread!.u > 0 && rod.spread!.u < 0.1 * Math.abs(rod.value), `± ${rod.spread!.u}`);
  // what is typed has no spread of its own
  near(figures.find(({ id }) => id === 'tyreLoad')!.spread!.u, 0, 1e-9);
  const joint = jointOf(car, 'engineToTub', doing, { spread: false });
  assert.ok(joint.reached);
});
