/**
 * The whole car under load: what the four tyres carry against Newton's laws written out again, against the formulas of
 * load transfer (Gillespie, Fundamentals of Vehicle Dynamics, ch. 1 and 6; Milliken & Milliken, ch. 18; from memory),
 * and every force followed to tub and case.
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { attitudeOf } from '../../src/loadpath/corner/attitude.ts';
import { type CarStanding, carStanding } from '../../src/loadpath/loads/car-equilibrium.ts';
import { cornerLoads } from '../../src/loadpath/loads/corner-loads.ts';
import { type Doing, endOf, STANDING, sideOf, WHEEL_NAMES } from '../../src/loadpath/loads/doing.ts';
import { resultantAt } from '../../src/loadpath/loads/wrench.ts';
import { Numbers } from '../../src/loadpath/numbers.ts';
import { length, sub } from '../../src/maths/vec3.ts';
import { type Figure, loadsOf, USUAL_DOINGS } from '../../src/questions/index.ts';
import { near } from '../near.ts';
import { demo, demoSource, opened } from './demo.ts';

const g = 9.80665;
const NAMES = ['fenwold-201', 'ashgarth-501'] as const;

const stand = (name: string, doing: Partial<Doing>, spec?: string): CarStanding => {
  const car = demo(name, spec);
  return carStanding(car.form, { ...STANDING, ...doing }, new Numbers(car.values));
};

const sum = (values: readonly number[]): number => values.reduce((all, each) => all + each, 0);
const onGround = (of: CarStanding, axis: 0 | 1 | 2): number[] =>
  WHEEL_NAMES.map((name) => of.wheels[name].ground[axis]);

/** Mass on the four scales and where it stands along the car. */
function weighed(name: string) {
  const car = demo(name);
  const numbers = new Numbers(car.values);
  const mass = WHEEL_NAMES.map((wheel) => numbers.of(car.form[endOf(wheel)][sideOf(wheel)].scale));
  return { car, numbers, mass, total: sum(mass), height: numbers.of(car.form.body!.centreOfGravityHeight) };
}

test('at rest a car that is sprung by its scales stands as surveyed, on its own corner weights', () => {
  const { mass } = weighed('fenwold-201');
  const of = stand('fenwold-201', {});
  onGround(of, 2).forEach((load, k) => {
    near(load, mass[k]! * g, 1e-3);
  });
  for (const wheel of WHEEL_NAMES) near(of.wheels[wheel].travel, 0, 1e-8);
});

test('Newton: the ground carries weight and downforce, and pushes with mass times acceleration', () => {
  for (const name of NAMES) {
    const { total, car, numbers } = weighed(name);
    for (const { name: what, doing } of USUAL_DOINGS) {
      if (Object.keys(doing.strikes).length > 0) continue;
      const of = stand(name, doing);
      const air = car.form.air!;
      const times = (doing.speed / numbers.of(air.speed)) ** 2;
      const where = `${name} ${what}`;
      near(
        sum(onGround(of, 2)),
        total * (g + doing.vertical) + times * numbers.of(air.downforce),
        1e-4,
        where,
      );
      near(sum(onGround(of, 0)), total * doing.longitudinal + times * numbers.of(air.drag), 1e-6, where);
      near(sum(onGround(of, 1)), total * doing.lateral, 1e-6, where);
      assert.ok(of.residual < 1e-6, `${where}: ${of.residual}`);
    }
  }
});

test('the sharing rule: brakes by their share and alike left and right, drive at the two rear wheels alike', () => {
  for (const name of NAMES) {
    const { total, car, numbers } = weighed(name);
    const share = numbers.of(car.form.brakes!.frontShare);
    const forward = (doing: Partial<Doing>): number[] => onGround(stand(name, doing), 0);
    const byHand = (force: number, front: number): number[] =>
      [front, front, 1 - front, 1 - front].map((part) => (part * force) / 2);
    const same = (found: number[], expected: number[], what: string): void =>
      found.forEach((force, k) => {
        near(force, expected[k]!, 1e-6, `${name} ${what} ${WHEEL_NAMES[k]}`);
      });
    // a turn loads the outer tyres more, and the rule does not look at it
    same(forward({ longitudinal: -g, lateral: 0.5 * g }), byHand(-g * total, share), 'braking');
    same(forward({ longitudinal: -g, frontBrakes: 0.7 }), byHand(-g * total, 0.7), 'braking at 70 %');
    same(forward({ longitudinal: 0.6 * g, lateral: 0.5 * g }), byHand(0.6 * g * total, 0), 'driving');
  }
});

test('braking moves m a h / L to the front axle, within what the car dives', () => {
  for (const name of NAMES) {
    const { total, height } = weighed(name);
    const [still, braking] = [stand(name, {}), stand(name, { longitudinal: -1.5 * g })];
    const front = (of: CarStanding): number => sum(onGround(of, 2).slice(0, 2));
    const wheelbase = still.wheels.frontLeft.at[0] - still.wheels.rearLeft.at[0];
    const transfer = (total * 1.5 * g * height) / wheelbase;
    near(front(braking) - front(still), transfer, 0.03 * transfer, name);
  }
});

test('cornering moves m a h / t across, and the axles part it as roll centres and roll rates say', () => {
  for (const name of NAMES) {
    const { total, height, car, numbers } = weighed(name);
    // gentle, so that the two tyres of an axle still push nearly alike, as the handbook's sums take them to
    const a = 0.05 * g;
    const [still, turning] = [stand(name, {}), stand(name, { lateral: a })];
    const rows = (['front', 'rear'] as const).map((end) => {
      const axle = still.axles[end];
      const sides = [axle.left, axle.right];
      const track = sum(sides.map(({ state }) => attitudeOf(state).halfTrack.value));
      const at = end === 'front' ? 0 : 2;
      const [left, right] = [onGround(turning, 2)[at]!, onGround(turning, 2)[at + 1]!];
      const [left0, right0] = [onGround(still, 2)[at]!, onGround(still, 2)[at + 1]!];
      return { transfer: (right - left - right0 + left0) / 2, track, axle };
    });
    const moment = sum(rows.map(({ transfer, track }) => transfer * track));
    near(moment, total * a * height, 0.02 * total * a * height, name);
    // elastic by roll rates, geometric by roll centre, unsprung by its own height; all three lean on the tyres, whose
    // give therefore turns the axle under the tub by the two direct parts as well
    const rates = rows.map(({ axle, track }) => {
      const K = [axle.left, axle.right].map(({ now }) => now.elastic + now.byForce);
      const bar = axle.bar?.stiffness ?? { leftLeft: 0, leftRight: 0, rightRight: 0 };
      const both = sum(K) / 2 + (bar.leftLeft - 2 * bar.leftRight + bar.rightRight) / 2;
      const tyre = numbers.of(axle.left.of.form.wheel.tyreRate);
      const half = (track * track) / 2;
      return { series: half * ((both * tyre) / (both + tyre)), tyre: half * tyre };
    });
    const centres = rows.map(({ axle }) => {
      const slope = (of: typeof axle.left): number => {
        const v = of.state.contactVelocity.path;
        return Math.abs(v[1] / v[2]) * Math.sign((v[1] / v[2]) * of.state.points.contact[1]);
      };
      const half = (of: typeof axle.left): number => Math.abs(of.state.points.contact[1]);
      return (slope(axle.left) * half(axle.left) + slope(axle.right) * half(axle.right)) / 2;
    });
    const unsprung = (end: 'front' | 'rear'): number =>
      sum([car.form[end].left, car.form[end].right].map((corner) => numbers.of(corner.unsprung)));
    const masses = [unsprung('front'), unsprung('rear')];
    const radius = 0.32;
    const sprung = total - sum(masses);
    const hs = (total * height - radius * sum(masses)) / sprung;
    const frontLoad = sum(onGround(still, 2).slice(0, 2)) / (total * g);
    const shares = [frontLoad, 1 - frontLoad];
    const axis = sum(centres.map((centre, k) => centre * shares[k]!));
    const rolling = sprung * a * (hs - axis);
    const direct = ([0, 1] as const).map(
      (k) => sprung * shares[k]! * a * centres[k]! + masses[k]! * a * radius,
    );
    const lean = ([0, 1] as const).map((k) => direct[k]! / rates[k]!.tyre);
    // the leaning weight turns on with m g h φ
    const stiff = sum(rates.map(({ series }) => series)) - sprung * g * (hs - axis);
    const roll = (rolling + sum(rates.map(({ series }, k) => series * lean[k]!))) / stiff;
    const expected = (k: 0 | 1): number =>
      (rates[k]!.series * (roll - lean[k]!) + direct[k]!) / rows[k]!.track;
    // 3 %: the sums take the sides as alike and each axle's wheels as one body with it, as on a rigid axle
    near(rows[0]!.transfer, expected(0), 0.03 * expected(0), `${name} front`);
    near(rows[1]!.transfer, expected(1), 0.03 * expected(1), `${name} rear`);
  }
});

test('a right-hand turn is the left-hand turn with its sides changed, within what the sides differ', () => {
  const [left, right] = [stand('fenwold-201', { lateral: g }), stand('fenwold-201', { lateral: -g })];
  for (const [a, b] of [
    ['frontLeft', 'frontRight'],
    ['rearLeft', 'rearRight'],
  ] as const) {
    near(left.wheels[a].ground[2], right.wheels[b].ground[2], 90);
    near(left.wheels[b].ground[1], -right.wheels[a].ground[1], 120);
  }
});

test('what the four corners put on tub and case is what ground, wheels and their weight put on them, to 1e-9', () => {
  for (const name of NAMES) {
    for (const { name: what, doing } of USUAL_DOINGS) {
      const of = stand(name, doing);
      const corners = WHEEL_NAMES.map((wheel) => cornerLoads(of, wheel));
      const inside = resultantAt(
        [0, 0, 0],
        corners.flatMap(({ onTub }) => onTub),
      );
      const outside = resultantAt(
        [0, 0, 0],
        WHEEL_NAMES.flatMap((wheel) => [of.wheels[wheel], of.wheels[wheel].unsprung]),
      );
      const largest = Math.max(...corners.flatMap(({ onTub }) => onTub.map(({ force }) => length(force))));
      near(length(sub(inside.force, outside.force)), 0, 1e-9 * largest, `${name} ${what} force`);
      near(length(sub(inside.moment, outside.moment)), 0, 1e-9 * largest, `${name} ${what} moment`);
      // the springing, found by virtual work, balances the rod, found by six equations
      for (const { rocker, members, wheel } of corners) {
        if (Math.abs(members.tension.rod) > 500) near(rocker.residual, 0, 5e-3, `${name} ${what} ${wheel}`);
      }
    }
  }
});

test('an inboard brake or a drive shaft takes force times wheel radius to the case; an outboard brake takes nothing', () => {
  const shaft = (of: CarStanding) => {
    const { onTub } = cornerLoads(of, 'rearLeft');
    return length(onTub.find(({ name }) => name.startsWith('drive shaft'))?.moment ?? [0, 0, 0]);
  };
  const turning = (of: CarStanding): number => {
    const { state } = of.axles.rear.left;
    return Math.abs(of.wheels.rearLeft.ground[0]) * (state.points.wheelCentre[2] - of.wheels.rearLeft.at[2]);
  };
  const braked = stand('fenwold-201', { longitudinal: -g });
  near(shaft(braked), 0, 0);
  const driven = stand('fenwold-201', { longitudinal: 0.8 * g });
  near(shaft(driven), turning(driven), 0.01 * turning(driven));
  const car = opened(demoSource('fenwold-201', (text) => text.replace('rear: outboard', 'rear: inboard')));
  const inboard = carStanding(car.form, { ...STANDING, longitudinal: -g }, new Numbers(car.values));
  near(shaft(inboard), turning(inboard), 0.01 * turning(inboard));
  // the upright feels the brake: side view, moments about the lower joint, upper joint pulled the other way
  const pulled = (of: CarStanding): number => cornerLoads(of, 'rearLeft').members.onUpright.upper.force[0];
  const { upperOuter, lowerOuter } = braked.axles.rear.left.state.points;
  // 15 %: toe link and rod, which the plane picture leaves out
  const more = turning(braked) / (upperOuter[2] - lowerOuter[2]);
  near(pulled(inboard) - pulled(braked), Math.sign(pulled(inboard) - pulled(braked)) * more, 0.15 * more);
});

test('a kerb: the struck wheel carries its load and the rest of its axle only what the bar brings over', () => {
  const { numbers, car } = weighed('fenwold-201');
  const [still, struck] = [stand('fenwold-201', {}), stand('fenwold-201', { strikes: { rearLeft: 2 } })];
  const scale = numbers.of(car.form.rear.left.scale) * g;
  near(struck.wheels.rearLeft.ground[2] - still.wheels.rearLeft.ground[2], 2 * scale, 1e-6);
  near(struck.wheels.frontLeft.ground[2], still.wheels.frontLeft.ground[2], 1e-6);
  assert.ok(struck.wheels.rearLeft.travel > 0.005);
});

test('an inside wheel leaves the ground and carries nothing; the others carry the car', () => {
  const of = stand('fenwold-201', { lateral: 2.3 * g });
  const loads = onGround(of, 2);
  assert.equal(Math.min(...loads), 0);
  near(sum(loads), weighed('fenwold-201').total * g, 1e-4);
  // past half the track over the height of its centre a car turns over, and that is told
  const over = loadsOf(demo('fenwold-201'), { ...STANDING, lateral: 3.5 * g }, { spread: false });
  assert.ok(!over.reached && /not found/.test(over.message));
});

test('members of the file: the pushrod by its own sizes, and more push than a member bears is told by name', () => {
  const braking = { ...STANDING, longitudinal: -2 * g };
  const wheels = [{ end: 'front', side: 'left' }] as const;
  const answer = loadsOf(demo('fenwold-201'), braking, { spread: false, wheels });
  assert.ok(answer.reached);
  const of = (id: string): number => answer.wheels[0]!.figures.find((each) => each.id === id)!.value;
  // 19.05 × 1.25 mm steel tube: A 69.9 mm², I 2783 mm⁴; length from the two points of the file, 206 GPa, Johnson
  const [D, d] = [19.05e-3, 16.55e-3];
  const A = (Math.PI / 4) * (D * D - d * d);
  const radius = Math.sqrt(D * D + d * d) / 4;
  const length = Math.hypot(-2.2 + 28.0, 714.7 - 262.2, 222.0 - 556.0) / 1e3;
  const slenderness = length / radius;
  const critical = A * 520e6 * (1 - (520e6 * slenderness ** 2) / (4 * Math.PI ** 2 * 205e9));
  // 0.1 %: the survey's points as filed, a rod that keeps its length
  near(of('bucklingShare.rod'), -of('tension.rod') / critical, 1e-3 * of('bucklingShare.rod'));
  near(of('bucklingShare.upperRear'), 0, 0);
  const thin = opened(
    demoSource('fenwold-201', (text) =>
      text.replace(
        'upperFront: { outside: 15.9 mm, wall: 1.2 mm',
        'upperFront: { outside: 9 mm, wall: 0.8 mm',
      ),
    ),
  );
  const weak = loadsOf(thin, { ...STANDING, longitudinal: -2.5 * g }, { spread: false, wheels });
  assert.ok(
    weak.reached && weak.notes.some((note) => /buckle: front left upper wishbone, front leg/.test(note)),
  );
});

test('the question: figures with spread at four wheels, notes where something is missing, refusal without a body', () => {
  const car = demo('fenwold-201');
  const answer = loadsOf(car, { ...STANDING, longitudinal: -2 * g });
  assert.ok(answer.reached);
  assert.equal(answer.wheels.length, 4);
  const rod = (figures: readonly Figure[]): Figure => figures.find(({ id }) => id === 'tension.rod')!;
  for (const { figures } of answer.wheels) {
    assert.ok(rod(figures).value < 0, 'a pushrod is in compression');
    assert.ok(rod(figures).spread!.u > 0 && rod(figures).spread!.u < 0.1 * Math.abs(rod(figures).value));
  }
  const bare = opened(demoSource('fenwold-201', (text) => text.replace(/\nbody:\n( {2}.*\n)+/, '\n')));
  const none = loadsOf(bare, STANDING);
  assert.ok(!none.reached && /raised axle/.test(none.message));
});
