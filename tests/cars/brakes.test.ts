/** Brakes of a demo car: by hand from its file, identities between its figures, wear, notes, refusals. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { brakesOf } from '../../src/questions/index.ts';
import { near } from '../near.ts';
import { demo, demoSource, opened } from './demo.ts';
import { amountOf, reachedFloor, workingsHold } from './floor-workings.ts';

const G = 9.80665;
const CAR = 'fenwold-201';
const ASKED = { speed: 50, decelerations: [1 * G, 2 * G], spread: false };
const loadedRadius = (end: 'front' | 'rear'): number => {
  const { left, right } = demo(CAR).form[end];
  return (left.wheel.loadedRadius.value + right.wheel.loadedRadius.value) / 2;
};

const changed = (from: string, to: string) =>
  opened(
    demoSource(CAR, (text) => {
      assert.ok(text.includes(from), from);
      return text.replace(from, to);
    }),
  );

test('every working stands and ends in its figure', () => {
  workingsHold((working) => brakesOf(demo(CAR), working === undefined ? ASKED : { ...ASKED, working }));
});

test('front share by hand from the sizes of the file', () => {
  const f = 0.5 + 1.5 / 62;
  // same bores and pads: pistons, radii and loaded radii alone differ
  const front = (f * (41.3 ** 2 + 38.1 ** 2) * 130) / loadedRadius('front');
  const rear = ((1 - f) * 2 * 36 ** 2 * 128) / loadedRadius('rear');
  near(amountOf(brakesOf(demo(CAR), ASKED), 'car.frontShare'), front / (front + rear), 1e-12);
});

test('pressures, torques and the ground by hand: what the two axles do is what slows the car', () => {
  const found = brakesOf(demo(CAR), ASKED);
  const force =
    (2 * amountOf(found, '2.0 g.frontTorque')) / loadedRadius('front') +
    (2 * amountOf(found, '2.0 g.rearTorque')) / loadedRadius('rear');
  const m = (['front', 'rear'] as const).reduce((sum, end) => {
    const { left, right } = demo(CAR).form[end];
    return sum + left.scale.value + right.scale.value;
  }, 0);
  const drag = 2150 * (50 / (200 / 3.6)) ** 2;
  near(force, m * 2 * G - drag, 1e-6);
  // rod forces add up to the pedal times its ratio
  const rods = (['front', 'rear'] as const).reduce(
    (sum, end) => sum + (amountOf(found, `2.0 g.${end}Pressure`) * Math.PI * 0.01905 ** 2) / 4,
    0,
  );
  near(rods, amountOf(found, '2.0 g.pedalForce') * 4.6, 1e-6);
});

test('with the bar where it is told to stand both axles ask alike', () => {
  const bar = amountOf(brakesOf(demo(CAR), ASKED), '2.0 g.barForIdeal');
  const car = changed('offset: 1.5 mm', `offset: ${(1000 * bar).toFixed(9)} mm`);
  const found = brakesOf(car, ASKED);
  // the share turns the loads of the axles a little through dive: the second time it is nearer by far
  near(amountOf(found, '2.0 g.frontGrip') / amountOf(found, '2.0 g.rearGrip'), 1, 0.005);
  const moved = brakesOf(changed('offset: 1.5 mm', 'offset: 2.5 mm'), ASKED);
  const step = amountOf(moved, 'car.frontShare') - amountOf(brakesOf(demo(CAR), ASKED), 'car.frontShare');
  // a millimetre against the slope at its beginning
  near(step / amountOf(brakesOf(demo(CAR), ASKED), 'car.perMillimetre'), 1, 0.01);
});

test('without air and dive the ideal share is that of the handbook: (m g b + m a h)/(m g L)', () => {
  const { air: _, ...form } = demo(CAR).form;
  const found = brakesOf({ ...demo(CAR), form }, { ...ASKED, speed: 0, decelerations: [0.2 * G] });
  const { front, rear, body } = form;
  const x = (axle: typeof front): number =>
    (axle.left.points.wheelCentre.value[0] + axle.right.points.wheelCentre.value[0]) / 2;
  const on = (axle: typeof front): number => axle.left.scale.value + axle.right.scale.value;
  const m = on(front) + on(rear);
  const share = on(front) / m + (0.2 * body!.centreOfGravityHeight.value) / (x(front) - x(rear));
  // the contact points lie millimetres from under the wheel centres: 0.1 %
  near(amountOf(found, '0.2 g.idealShare'), share, 0.001);
});

test('wear by hand: 18.4, 17.3 and 15.9 mm after 0, 14 and 31 laps, 8 mm at least', () => {
  const found = brakesOf(demo(CAR), { ...ASKED, spread: true });
  // by hand: l̄ = 15, s̄ = 17.2; Σ(l−l̄)(s−s̄) = −18 + (−0.1) + (−20.8) = −38.9; Σ(l−l̄)² = 225 + 1 + 256 = 482
  near(amountOf(found, 'front.padWear') * 1000, 38.9 / 482, 1e-9);
  near(amountOf(found, 'front.padLaps'), 7.9 / (38.9 / 482), 1e-6);
  const rear = reachedFloor(found).figures.find(({ of, id }) => of === 'rear' && id === 'padWear')!;
  // two readings by vernier, 0.03 mm each and 5e-5 of the scale, over 31 laps; 1 %: by differences, scale left out
  near(rear.spread!.u * 1000, (0.03 * Math.SQRT2) / 31, 1.4e-5);
});

test('what can hurt is said: rear first, a share that is not the file’s, a worn pad', () => {
  const rearward = reachedFloor(
    brakesOf(changed('offset: 1.5 mm', 'offset: -9 mm'), { ...ASKED, spread: true }),
  );
  assert.ok(rearward.notes.some((each) => each.includes('lock first, and the car spins')));
  assert.ok(rearward.notes.some((each) => each.startsWith('brakes.frontShare of the file')));
  const worn = reachedFloor(brakesOf(changed('pad: 15.9 mm', 'pad: 7.9 mm'), ASKED));
  assert.ok(worn.notes.some((each) => each.includes('front pad') && each.includes('Change before')));
  assert.ok(worn.cautions.some((each) => each.includes('Pump the pedal')));
  const plain = reachedFloor(brakesOf(demo(CAR), { ...ASKED, spread: true }));
  assert.ok(!plain.notes.some((each) => each.includes('spins')));
});

test('what cannot be asked is told', () => {
  const refused = brakesOf(demo('ashgarth-501'), ASKED);
  assert.ok(!refused.reached && refused.message.includes('brakes, system'));
  const twice = brakesOf(demo(CAR), { ...ASKED, decelerations: [G, 1.001 * G] });
  assert.ok(!twice.reached && twice.message.includes('the same'));
});
