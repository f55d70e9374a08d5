/** The rear wing on its pillars: statics by hand, and the air on the whole car left as it was. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { airOnCase, airOnTub } from '../../src/loadpath/loads/air-by-part.ts';
import { carStanding } from '../../src/loadpath/loads/car-equilibrium.ts';
import { STANDING } from '../../src/loadpath/loads/doing.ts';
import { resultantAt } from '../../src/loadpath/loads/wrench.ts';
import { Numbers } from '../../src/loadpath/numbers.ts';
import { dot, length, sub } from '../../src/maths/vec3.ts';
import { caseForces, jointOf, usualDoing } from '../../src/questions/index.ts';
import { near } from '../near.ts';
import { demo, demoSource, opened } from './demo.ts';

const CAR = demo('fenwold-201');
const FAST = { ...STANDING, speed: 250 / 3.6 };

test('pillars bring force and moment of the wing at its place, by the square of the speed', () => {
  const numbers = new Numbers(CAR.values);
  const standing = carStanding(CAR.form, FAST, numbers);
  const pillars = airOnCase(CAR.form, standing, numbers);
  assert.equal(pillars.length, 2);
  const times = (250 / 200) ** 2;
  const { force, moment } = resultantAt([0, 0, 0], pillars);
  near(dot(force, standing.ground.up), -2300 * times, 1e-9);
  near(dot(force, standing.ground.forward), -780 * times, 1e-9);
  // about the origin: z forward of x for the drag at 905 mm, lift arm 3210 mm; to the left axis
  near(moment[1], 0.905 * force[0] + 3.21 * force[2], 1e-6);
  const [one, other] = pillars;
  near(length(sub(one!.force, other!.force)), 0, 1e-9);
});

test('the air on case and tub together is the air on the whole car', () => {
  for (const car of [CAR, demo('ashgarth-501')]) {
    const numbers = new Numbers(car.values);
    const standing = carStanding(car.form, { ...FAST, longitudinal: -15, lateral: 12 }, numbers);
    const parts = resultantAt(
      [0, 0, 0],
      [...airOnCase(car.form, standing, numbers), ...airOnTub(car.form, standing, numbers)],
    );
    const whole = resultantAt([0, 0, 0], standing.airForces);
    near(length(sub(parts.force, whole.force)), 0, 1e-9 * length(whole.force));
    near(length(sub(parts.moment, whole.moment)), 0, 1e-9 * length(whole.moment));
  }
});

test('the list of the case names its pillars, and the wing behind the axle bends the joint more than on it', () => {
  const { doing } = usualDoing('full-downforce')!;
  const without = opened(
    demoSource('fenwold-201', (text) => text.replace(/ {2}rearWing:[\s\S]*?\n\n/, '\n')),
  );
  const names = (car: typeof CAR): string[] => {
    const is = caseForces(car, doing);
    assert.ok(is.reached);
    return is.forces.map(({ name }) => name);
  };
  assert.ok(names(CAR).includes('wing pillar 1') && !names(CAR).includes('rear downforce'));
  assert.ok(names(without).includes('rear downforce'));
  const bending = (car: typeof CAR): number => {
    const is = jointOf(car, 'caseToEngine', doing, { spread: false });
    assert.ok(is.reached);
    return is.figures.find(({ id }) => id === 'bending')!.value;
  };
  // about the face's studs, in the side view: down at a lever behind it and back above it both open its upper side,
  // where bending is positive
  const studs = CAR.form.joints!.caseToEngine!.studs.map(({ at }) => at.value);
  const mean = (axis: 0 | 2): number => studs.reduce((sum, at) => sum + at[axis], 0) / studs.length;
  const times = (250 / 200) ** 2;
  const axle = CAR.form.rear.left.points.wheelCentre.value[0];
  const wing = 2300 * (mean(0) + 3.21) + 780 * (0.905 - mean(2));
  const atAxle = 5400 * 0.59 * (mean(0) - axle);
  const byHand = times * (wing - atAxle);
  // 2 %: the plane of the studs and the car's pitch, which the hand leaves out
  near(bending(CAR) - bending(without), byHand, Math.abs(0.02 * times * wing));
});
