/** Load transfer and heights of the demo cars: parts that add up, the handbook beside it, fuel, spread, workings. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { loadParts } from '../../src/flatfloor/under-way/parts.ts';
import { carStanding } from '../../src/loadpath/loads/car-equilibrium.ts';
import { STANDING, WHEEL_NAMES } from '../../src/loadpath/loads/doing.ts';
import { Numbers } from '../../src/loadpath/numbers.ts';
import {
  type Doing,
  floorId,
  heightsAgainstSpeed,
  transferUnder,
  type UnderWayAsked,
} from '../../src/questions/index.ts';
import { near } from '../near.ts';
import { demo, demoSource, everyDemo, opened } from './demo.ts';
import { amountOf, reachedFloor, workingsHold } from './floor-workings.ts';

const G = 9.80665;
const CAR = 'fenwold-201';
/** Without the height of the centre of gravity there is no load transfer. */
const weighed = () => everyDemo().filter(({ car }) => car.form.body !== undefined);
const doing = (of: Partial<Doing>): Doing => ({ ...STANDING, ...of });
const CORNER = doing({ lateral: 1.5 * G, longitudinal: -0.4 * G, speed: 40 });

test('every working of load transfer stands and ends in its figure', () => {
  const asked: UnderWayAsked = { doing: CORNER, fuel: { value: 0.01, text: '10 l' }, spread: false };
  workingsHold((working) => transferUnder(demo(CAR), working === undefined ? asked : { ...asked, working }));
});

test('every working of the heights stands and ends in its figure', () => {
  const asked = { doing: STANDING, speeds: [0, 60], clearance: 0, spread: false };
  workingsHold((working) =>
    heightsAgainstSpeed(demo(CAR), working === undefined ? asked : { ...asked, working }),
  );
});

test('springs, links and unsprung parts make up the load of every tyre, in every demo car and case', () => {
  for (const { name, car } of weighed()) {
    for (const each of [
      doing({}),
      CORNER,
      doing({ longitudinal: -2 * G, speed: 55 }),
      doing({ lateral: -1.2 * G }),
    ]) {
      const numbers = new Numbers(car.values);
      const parts = loadParts(car.form, carStanding(car.form, each, numbers), numbers);
      for (const wheel of WHEEL_NAMES) {
        const { load, springs, links, unsprung } = parts[wheel];
        if (load === 0) continue;
        // the equilibrium is closed to 1e-7 N
        near(springs + links + unsprung, load, 1e-5, `${name} ${wheel}`);
      }
    }
  }
});

test('a gentle turn without air: the handbook and the car in equilibrium agree', () => {
  for (const { name, car } of weighed()) {
    const found = transferUnder(car, { doing: doing({ lateral: 0.05 * G }), spread: false });
    const [whole, book] = (['lateral', 'handbookLateral'] as const).map(
      (id) => amountOf(found, `front.${id}`) + amountOf(found, `rear.${id}`),
    ) as [number, number];
    // common practice, no source: the sum is a moment over a track, and two tracks differ by some per cent
    near(whole / book, 1, 0.03, `${name}, both axles`);
    // tests/cars/turn-by-free-bodies tells which terms part the two
    for (const end of ['front', 'rear'])
      near(
        amountOf(found, `${end}.lateral`) / amountOf(found, `${end}.handbookLateral`),
        1,
        0.12,
        `${name}, ${end}`,
      );
  }
});

test('braking without air: what the front axle gains is m a h over the wheelbase', () => {
  const car = demo('ashgarth-501');
  const { air: _, ...form } = car.form;
  const found = transferUnder({ ...car, form }, { doing: doing({ longitudinal: -0.1 * G }), spread: false });
  // the body dives by tenths of a millimetre: 1 %
  near(amountOf(found, 'front.axle') / -amountOf(found, 'car.handbookLongitudinal'), 1, 0.01);
  near(amountOf(found, 'front.axle') + amountOf(found, 'rear.axle'), 0, 1e-5);
});

test('fuel that was burnt: the loads fall by its weight, and its moment', () => {
  const whole = (fuel?: number) =>
    transferUnder(demo(CAR), {
      doing: doing({ longitudinal: 1e-9 }),
      spread: false,
      ...(fuel === undefined ? {} : { fuel: { value: fuel, text: 'typed' } }),
    });
  const sum = (of: ReturnType<typeof whole>): number =>
    ['front left', 'front right', 'rear left', 'rear right'].reduce(
      (all, wheel) => all + amountOf(of, `${wheel}.tyreLoad`),
      0,
    );
  // the file: surveyed with 28.2 l, 0.745 kg/l
  near(sum(whole()) - sum(whole(0.01)), 0.0182 * 745 * G, 1e-4);
  near(sum(whole(0.0282)), sum(whole()), 1e-5, 'as surveyed');
  const rear = (of: ReturnType<typeof whole>): number =>
    amountOf(of, 'rear left.tyreLoad') + amountOf(of, 'rear right.tyreLoad');
  const { front, rear: back, fuel } = demo(CAR).form;
  const x = (axle: typeof front): number =>
    (axle.left.points.wheelCentre.value[0] + axle.right.points.wheelCentre.value[0]) / 2;
  const share = (x(front) - fuel!.at.value[0]) / (x(front) - x(back));
  // contact points lie a few millimetres from under the wheel centres, and the body rises and tilts
  near((rear(whole()) - rear(whole(0.01))) / (0.0182 * 745 * G), share, 0.005);
});

test('touching: the height at that speed is the clearance, and its spread is that of a file with one reading moved', () => {
  const asked = { doing: STANDING, speeds: [0], clearance: 0.01 };
  const found = reachedFloor(heightsAgainstSpeed(demo(CAR), asked));
  const touch = found.figures.find((each) => floorId(each) === 'front of floor.touchSpeed')!;
  const there = heightsAgainstSpeed(demo(CAR), { ...asked, speeds: [touch.value], spread: false });
  const name = reachedFloor(there).figures.find(({ id }) => id === 'front of floor')!;
  // halved until 1e-9 m/s
  near(name.value, 0.01, 1e-9);
  const share = touch.spread!.shares.find(({ path }) => path === 'air.downforce')!;
  const moved = [5800, 5000].map((downforce) => {
    const car = opened(
      demoSource(CAR, (text) =>
        text.replace('downforce: { is: 5400 N ± 400 N', `downforce: { is: ${downforce} N ± 400 N`),
      ),
    );
    return amountOf(heightsAgainstSpeed(car, { ...asked, spread: false }), 'front of floor.touchSpeed');
  });
  // one step of Newton against the whole search: the height is a square of speed, its second order is 1 %
  near(share.contribution, (moved[0]! - moved[1]!) / 2, 0.02 * Math.abs(share.contribution));
});

test('heights at rest are those of the survey; downforce by the springs and tyres by hand', () => {
  const found = heightsAgainstSpeed(demo(CAR), {
    doing: STANDING,
    speeds: [0, 40],
    clearance: 0,
    spread: false,
  });
  const [still, fast] = ['0 km/h', '144 km/h'].map(
    (of) => reachedFloor(found).figures.find((each) => each.of === of && each.id === 'front of floor')!.value,
  ) as [number, number];
  near(still, 0.034, 1e-9);
  // front and rear sink by their share of downforce over the heave rate at the ground, between the axles by the lever
  const down = 5400 * (40 / (200 / 3.6)) ** 2;
  const ride = (end: 'front' | 'rear'): number => {
    const f = reachedFloor(found).figures.find(
      (each) => each.of === '144 km/h' && each.id === `${end}Frequency`,
    )!.value;
    const { left, right } = demo(CAR).form[end];
    const m = left.scale.value + right.scale.value - left.unsprung.value - right.unsprung.value;
    return (2 * Math.PI * f) ** 2 * m;
  };
  const [sinkFront, sinkRear] = [(0.41 * down) / ride('front'), (0.59 * down) / ride('rear')];
  const lever = 0.64 / 2.9;
  // the springs are not straight, drag pitches the body, the lever is to 0.1 m: 10 % of the fall
  near(still - fast, sinkFront + (sinkRear - sinkFront) * lever, 0.1 * (still - fast));
});

test('what cannot be asked is told', () => {
  const refused = (answer: ReturnType<typeof transferUnder>): string =>
    answer.reached ? '' : answer.message;
  const { fuel: _, body, ...form } = demo(CAR).form;
  const bare = { ...demo(CAR), form: { ...form, ...(body === undefined ? {} : { body }) } };
  assert.match(
    refused(transferUnder(bare, { doing: CORNER, fuel: { value: 0.01, text: '10 l' } })),
    /no fuel/,
  );
  assert.match(refused(transferUnder({ ...demo(CAR), form }, { doing: CORNER })), /no body/);
  assert.match(
    refused(transferUnder(demo(CAR), { doing: doing({ strikes: { frontLeft: 2 } }) })),
    /throw the car/,
  );
});
