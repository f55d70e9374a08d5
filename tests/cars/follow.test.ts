/** The force followed: every sentence speaks of the figures that loads, case and joint tell, and says where they go. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import {
  caseForces,
  followForce,
  jointOf,
  LOAD_PATH,
  loadsOf,
  USUAL_DOINGS,
  usualDoing,
  type Wheel,
} from '../../src/questions/index.ts';
import { spokenAmount } from '../../src/units/show.ts';
import { demo } from './demo.ts';

const CAR = demo('fenwold-201');
const REAR: Wheel = { end: 'rear', side: 'left' };
const newtons = (value: number): string => spokenAmount(Math.abs(value), 'N', 0);

const { doing } = usualDoing('rear-kerb')!;
const said = (stop: (typeof LOAD_PATH)[number], wheel = REAR): string =>
  followForce(CAR, stop, { doing, wheel, joint: 'engineToTub' }).says;

test('at the corner: ground, outer joints, the rod with its way, spring and pivot', () => {
  const answer = loadsOf(CAR, doing, { spread: false, wheels: [REAR] });
  assert.ok(answer.reached);
  const of = (id: string): number => answer.wheels[0]!.figures.find((each) => each.id === id)!.value;
  const has = (stop: (typeof LOAD_PATH)[number], words: string): void =>
    assert.ok(said(stop).includes(words), `${stop}: "${words}" in "${said(stop)}"`);
  has('tyre', `${newtons(of('tyreLoad'))} upward`);
  has('upright', `${newtons(of('lowerBallJoint'))} at its lower one`);
  has('links', `${newtons(of('tension.rod'))} of ${of('tension.rod') < 0 ? 'push' : 'pull'} to the rocker`);
  has('links', 'to the gear case');
  has('rocker', newtons(of('rockerPivotForce')));
  has('spring', newtons(of('unitForceUnderLoad')));
  assert.ok(
    followForce(CAR, 'links', {
      doing,
      wheel: { end: 'front', side: 'left' },
      joint: 'engineToTub',
    }).says.includes('to the tub'),
  );
});

test('behind the corners: the greatest on the case, the worst stud, what the joint brings to the tub', () => {
  const onCase = caseForces(CAR, doing);
  assert.ok(onCase.reached);
  assert.ok(said('case').includes(newtons(Math.max(...onCase.forces.map(({ size }) => size)))));
  const joint = jointOf(CAR, 'engineToTub', doing, { spread: false });
  assert.ok(joint.reached);
  const worst = joint.face.studs.find(({ name }) => name === joint.worst)!;
  assert.ok(said('studs').includes(`least is left at ${worst.name}, ${newtons(worst.left)}`));
  assert.ok(said('tub').includes('nothing is left over'));
});

test('pulled apart or pressed together, which side opens: by the figures, and by which pads keep less', () => {
  const seen = { apart: new Set<boolean>(), lower: new Set<boolean>() };
  // with the rear wheels all but in the air under full downforce the wing hangs on the case
  const hanging = {
    ...usualDoing('full-downforce')!.doing,
    contacts: { rearLeft: { up: 50 }, rearRight: { up: 50 } },
  };
  for (const { doing: each } of [...USUAL_DOINGS, { doing: hanging }]) {
    for (const joint of ['engineToTub', 'caseToEngine'] as const) {
      const is = jointOf(CAR, joint, each, { spread: false });
      assert.ok(is.reached);
      const of = (id: string): number => is.figures.find((figure) => figure.id === id)!.value;
      const words = followForce(CAR, 'studs', { doing: each, wheel: REAR, joint }).says;
      assert.equal(words.includes('pulls it apart'), of('pull') > 0, words);
      const share = (side: 1 | -1): number => {
        const own = is.face.studs.filter(({ z }) => side * z > 0);
        return own.reduce((sum, { left, pressed }) => sum + left / pressed, 0) / own.length;
      };
      // bending alone would open the side that keeps less; a pull alike everywhere does not change which
      if (Math.abs(share(1) - share(-1)) > 0.02) {
        assert.equal(words.includes('opens its lower side'), share(-1) < share(1), `${joint}: ${words}`);
        seen.lower.add(share(-1) < share(1));
      }
      seen.apart.add(of('pull') > 0);
    }
  }
  assert.equal(seen.apart.size, 2);
  assert.equal(seen.lower.size, 2);
});

test('pounds where pounds are spoken; a car without a body is told why at every stop', () => {
  const pounds = followForce(CAR, 'tyre', {
    doing,
    wheel: REAR,
    joint: 'engineToTub',
    speech: 'in-lbf',
  }).says;
  assert.match(pounds, /lbf upward/);
  for (const stop of LOAD_PATH) {
    assert.match(
      followForce(demo('pellmoor-7b'), stop, { doing, wheel: REAR, joint: 'engineToTub' }).says,
      /no body/,
    );
  }
});
