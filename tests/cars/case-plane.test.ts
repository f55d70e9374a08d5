/** The gear case closes: what its pick-ups bring, and what goes through the joint, is what ground and air put on. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { crankBehind } from '../../src/loadpath/joint/crank.ts';
import { forcesBehind } from '../../src/loadpath/joint/joint-of-car.ts';
import { carStanding } from '../../src/loadpath/loads/car-equilibrium.ts';
import { forcesOnCase, throughPlane } from '../../src/loadpath/loads/case-forces.ts';
import { type Doing, STANDING } from '../../src/loadpath/loads/doing.ts';
import { resultantAt } from '../../src/loadpath/loads/wrench.ts';
import { Numbers } from '../../src/loadpath/numbers.ts';
import { length, sub } from '../../src/maths/vec3.ts';
import { USUAL_DOINGS } from '../../src/questions/index.ts';
import { near } from '../near.ts';
import { DEMO_CARS, demo } from './demo.ts';

function stands(name: string, doing: Doing) {
  const { form, values } = demo(name);
  const numbers = new Numbers(values);
  const standing = carStanding(form, doing, numbers);
  const outside = [
    ...forcesBehind('caseToEngine', form, standing, numbers),
    ...crankBehind('caseToEngine', form, standing, numbers),
  ];
  return { on: forcesOnCase(form, standing, numbers), outside };
}

function closes(name: string, doing: Doing): void {
  const { on, outside } = stands(name, doing);
  const largest = Math.max(...on.map(({ force }) => length(force)));
  // a plane ahead of all of it: newtons and newton metres alike
  const through = throughPlane(on, { x: 1, height: 0 });
  const met = resultantAt([1, 0, 0], outside);
  assert.ok(length(sub(through.force, met.force)) <= 1e-9 * largest, `${name}: force`);
  assert.ok(length(sub(through.moment, met.moment)) <= 1e-9 * largest, `${name}: moment`);
}

const carried = DEMO_CARS.filter((name) => demo(name).form.body !== undefined);

test('every default case of every demo car closes to 1e-9 of the largest force', () => {
  for (const name of carried) for (const { doing } of USUAL_DOINGS) closes(name, doing);
});

test('whatever the car does, its case closes', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...carried),
      fc.double({ min: -12, max: 6, noNaN: true }),
      fc.double({ min: -12, max: 12, noNaN: true }),
      fc.double({ min: 0, max: 12, noNaN: true }),
      fc.double({ min: 0, max: 60, noNaN: true }),
      (name, longitudinal, lateral, vertical, speed) =>
        closes(name, { ...STANDING, longitudinal, lateral, vertical, speed }),
    ),
    { numRuns: 12 },
  );
});

test('from plane to plane with no force between, the moment grows by force times distance (statics)', () => {
  const { on } = stands('fenwold-201', USUAL_DOINGS.find(({ name }) => name === 'dip')!.doing);
  const foremost = Math.max(...on.map(({ at }) => at[0]));
  const [near1, ahead] = [0.01, 0.11].map((by) => throughPlane(on, { x: foremost + by, height: 0.2 }));
  near(ahead!.force[2], near1!.force[2], 1e-9);
  // moment about the left axis: an upward force at x behind the plane bends by x of the arm
  near(ahead!.moment[1] - near1!.moment[1], 0.1 * near1!.force[2], 1e-6);
  near(throughPlane(on, { x: -9, height: 0 }).force[2], 0, 0);
});
