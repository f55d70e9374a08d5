/** What of the force is drawn: members between their points with their sign, arrows in balance, studs where they are. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { add, distance, length, type Vec3 } from '../../src/maths/vec3.ts';
import { drawnForces, type FollowAsked, jointOf, loadsOf, usualDoing } from '../../src/questions/index.ts';
import { near } from '../near.ts';
import { demo } from './demo.ts';

const CAR = demo('fenwold-201');
const asked = (name: string, over: Partial<FollowAsked> = {}): FollowAsked => ({
  doing: usualDoing(name)!.doing,
  wheel: { end: 'rear', side: 'left' },
  joint: 'engineToTub',
  ...over,
});
const figure = (name: string, id: string): number => {
  const is = loadsOf(CAR, usualDoing(name)!.doing, {
    spread: false,
    wheels: [{ end: 'rear', side: 'left' }],
  });
  assert.ok(is.reached);
  return is.wheels[0]!.figures.find((each) => each.id === id)!.value;
};

test('a spring that is pressed is drawn as pushed, the rod as its figure has it, between the points of the file', () => {
  const { members } = drawnForces(CAR, 'rocker', asked('standing'));
  const spring = members.find(({ name }) => name === 'spring unit')!;
  assert.ok(figure('standing', 'unitForceUnderLoad') > 0);
  near(spring.tension, -figure('standing', 'unitForceUnderLoad'), 1e-9);
  const rod = members.find(({ name }) => name === 'rod')!;
  near(rod.tension, figure('standing', 'tension.rod'), 1e-9);
  const { points } = CAR.form.rear.left;
  near(distance(rod.from, points.rodInner.value), 0, 1e-6);
  near(distance(rod.to, points.rodOuter.value), 0, 1e-6);
});

test('links: six members with the signs of their figures', () => {
  const { members } = drawnForces(CAR, 'links', asked('rear-kerb'));
  assert.equal(members.length, 6);
  for (const { name, tension } of members) near(tension, figure('rear-kerb', `tension.${name}`), 1e-9, name);
});

test('upright: what is drawn on it leaves no more than the wheel weighs and the rod brings', () => {
  const { arrows } = drawnForces(CAR, 'upright', asked('standing'));
  assert.equal(arrows.length, 4);
  const left = arrows.reduce((sum, { force }) => add(sum, force), [0, 0, 0] as Vec3);
  // the rod stands on a wishbone here, so the joints carry it: the weight of the wheel alone is not drawn
  near(length(left), CAR.form.rear.left.unsprung.value * 9.80665, 0.5);
});

test('tyre, case, tub and studs: one arrow, the lists, the studs at their filed places; nothing without a body', () => {
  assert.equal(drawnForces(CAR, 'tyre', asked('braking')).arrows.length, 1);
  for (const stop of ['case', 'tub'] as const)
    assert.ok(drawnForces(CAR, stop, asked('dip')).arrows.length > 10);
  const { studs } = drawnForces(CAR, 'studs', asked('dip'));
  const filed = CAR.form.joints!.engineToTub!.studs;
  const is = jointOf(CAR, 'engineToTub', usualDoing('dip')!.doing, { spread: false });
  assert.ok(is.reached);
  studs.forEach(({ name, at, worst }, k) => {
    // in the plane through all of them: a few tenths off what is filed
    near(distance(at, filed[k]!.at.value), 0, 1e-3, name);
    assert.equal(worst, name === is.worst);
  });
  assert.deepEqual(drawnForces(demo('pellmoor-7b'), 'case', asked('dip')), {
    members: [],
    arrows: [],
    studs: [],
  });
});
