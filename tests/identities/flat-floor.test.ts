/** The car on four pads against the load path's own equilibrium, re-solving from scratch, virtual work and statics. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { CornerLinks } from '../../src/flatfloor/corner-links.ts';
import { floorCarOf } from '../../src/flatfloor/floor-car.ts';
import { Floor } from '../../src/flatfloor/stand.ts';
import { solveCorner } from '../../src/loadpath/corner/solve.ts';
import { carStanding } from '../../src/loadpath/loads/car-equilibrium.ts';
import { STANDING, WHEEL_NAMES } from '../../src/loadpath/loads/doing.ts';
import { Numbers } from '../../src/loadpath/numbers.ts';
import { linkageOf } from '../../src/loadpath/sprung-corner.ts';
import { demo } from '../cars/demo.ts';
import { near } from '../near.ts';

const CARS = ['fenwold-201', 'ashgarth-501'];
const BARS = { front: true, rear: true };
const OFF = { front: false, rear: false };

function floorOf(name: string) {
  const car = demo(name);
  const numbers = new Numbers(car.values);
  const floor = new Floor(floorCarOf(car.form, numbers), true);
  const changed = (by: Readonly<Record<string, number>>): Float64Array => {
    const changes = floor.car.changes.none();
    for (const [which, value] of Object.entries(by)) changes[floor.car.changes.index(which)] = value;
    return changes;
  };
  return { car, numbers, floor, changed };
}

/** Something of everything. */
const SOMEHOW = {
  'frontLeft.rod': 0.0018,
  'rearRight.platform': 0.001,
  'frontRight.toe': 0.001,
  'rearLeft.camber': 0.0012,
  'frontRight.caster': 0.001,
  'front.leftLink': 0.0009,
  'rear.rightLink': 0.0005,
  'rearRight.pad': 0.001,
  'frontLeft.anchor': 0.01,
  'rearLeft.pressure': 4000,
  risesForward: 0.002,
  risesLeft: -0.001,
  mass: 4,
  massLeft: 0.8,
  'frontLeft.tyre': 0.1,
  'rearLeft.spring': 0.05,
};

test('the joints by lengths are those of the chain by angles, derivatives too', () => {
  for (const name of [...CARS, 'pellmoor-7b']) {
    for (const end of ['front', 'rear'] as const) {
      const car = demo(name);
      const corner = linkageOf(car.form[end], 'left', new Numbers(car.values));
      const links = new CornerLinks(corner);
      for (const travel of [-0.012, 0, 0.017]) {
        const at = links.at(travel, { rod: 0, toe: 0, camber: 0, caster: 0 });
        const state = solveCorner(corner, { travel });
        const { jets } = at;
        const unit = state.elements.unit!;
        // places to a rounding of metres, derivatives to that times the inverse of the shortest arm, squared
        for (const k of [0, 1, 2] as const)
          near(jets.value(at.centre[k]), state.points.wheelCentre[k], 1e-14);
        near(jets.first(at.unitLength!, 0), unit.perTravel, 1e-12);
        near(jets.second(at.unitLength!, 0, 0), unit.perTravel2, 1e-10);
        near(jets.second(at.rockerAngle, 0, 0), state.rockerAngle.perTravel2, 1e-9);
        for (const k of [0, 1, 2] as const) near(jets.value(at.axis[k]), state.wheelAxis.value[k], 1e-14);
      }
    }
  }
});

test('at its survey the car stands where the equilibrium of the load path has it', () => {
  for (const name of CARS) {
    const { car, numbers, floor, changed } = floorOf(name);
    const here = floor.stand({ changes: changed({}), bars: BARS });
    const there = carStanding(car.form, STANDING, numbers);
    WHEEL_NAMES.forEach((wheel, k) => {
      // both are closed to a micronewton on springs of 1e5 N/m
      near(here.place.u[k]!, there.wheels[wheel].travel, 1e-10, `${name}, ${wheel}`);
      near(here.readings.get(`weight.${wheel}`)!.value * 9.80665, there.wheels[wheel].ground[2], 1e-5);
    });
  }
});

test('what a change does is what re-solving from scratch shows', () => {
  for (const name of CARS) {
    const { floor, changed } = floorOf(name);
    const changes = changed(SOMEHOW);
    const here = floor.stand({ changes, bars: BARS });
    floor.car.changes.names.forEach((change, i) => {
      const step = change.endsWith('pressure') ? 100 : change.startsWith('mass') ? 0.1 : 2e-5;
      const at = (by: number) =>
        floor.stand(
          { changes: changes.map((value, k) => (k === i ? value + by : value)), bars: BARS },
          here.place,
        );
      const [up, down] = [at(step), at(-step)];
      for (const [id, { value, by, unit }] of here.readings) {
        const found = (up.readings.get(id)!.value - down.readings.get(id)!.value) / (2 * step);
        // curvature over the step, and the closing of the equations (1e-6 N) over it
        const least =
          { kg: 0.02, 'N m': 0.02, share: 3e-5, m: 1e-5, rad: 2e-5 }[unit]! / (step / 2e-5) ** 0.5;
        near(by[i]!, found, 2e-4 * Math.abs(found) + least, `${name}: ${id} (${value}) by ${change}`);
      }
    });
  }
});

test('pads answer one another alike: work is the same whichever is raised first', () => {
  for (const name of CARS) {
    const { floor, changed } = floorOf(name);
    const here = floor.stand({
      changes: changed({ 'frontLeft.rod': 0.001, 'rearRight.platform': 0.002 }),
      bars: BARS,
    });
    const by = (reading: string, pad: string): number =>
      here.readings.get(`weight.${reading}`)!.by[floor.car.changes.index(`${pad}.pad`)]!;
    for (const a of WHEEL_NAMES)
      for (const b of WHEEL_NAMES) {
        // loads are hung from the ground's normal, contact points move with camber: a part in ten thousand
        near(by(a, b), by(b, a), 2e-4 * Math.abs(by(a, a)), `${name}: ${a}, ${b}`);
      }
  }
});

test('no adjuster but ballast changes the whole, and hardly the moments: only the cross moves', () => {
  const { floor, changed } = floorOf('fenwold-201');
  const here = floor.stand({ changes: changed({}), bars: OFF });
  for (const wheel of WHEEL_NAMES) {
    const rod = floor.car.changes.index(`${wheel}.rod`);
    near(here.readings.get('total')!.by[rod]!, 0, 1e-6);
    const millimetre = 1e-3;
    // shares move by the tub's tilt over its centre of gravity alone: a thousandth of what the cross does
    for (const share of ['frontShare', 'leftShare'])
      assert.ok(
        Math.abs(here.readings.get(share)!.by[rod]! * millimetre) <
          0.03 * Math.abs(here.readings.get('cross')!.by[rod]! * millimetre),
        `${share} by ${wheel} rod`,
      );
  }
});

/** Statics in closed form: three supports carry what the moments about their three lines say. */
test('with a wheel off its pad the car stands on three, and these carry what statics says', () => {
  const { car, numbers, floor, changed } = floorOf('fenwold-201');
  const level = floor.stand({ changes: changed({}), bars: OFF });
  let here = level;
  // let down bit by bit, as a jack would: the wheel across comes off
  for (let down = 0.01; down < 0.0751; down += 0.013)
    here = floor.stand({ changes: changed({ 'rearRight.pad': -down }), bars: OFF }, here.place);
  const load = (of: typeof here, wheel: string): number => of.readings.get(`weight.${wheel}`)!.value;
  assert.equal(load(here, 'frontLeft'), 0);
  const at = (wheel: (typeof WHEEL_NAMES)[number]) => {
    const end = wheel.startsWith('front') ? car.form.front : car.form.rear;
    return numbers.point(end[wheel.endsWith('Left') ? 'left' : 'right'].points.wheelCentre);
  };
  const total =
    load(level, 'frontLeft') + load(level, 'frontRight') + load(level, 'rearLeft') + load(level, 'rearRight');
  const height = numbers.of(car.form.body!.centreOfGravityHeight);
  // the centre of gravity moves over the floor as the car leans
  const [forward, left] = [here.place.u[5]!, here.place.u[6]!];
  const centre = [0, 1].map(
    (axis) =>
      WHEEL_NAMES.reduce((sum, wheel) => sum + load(level, wheel) * at(wheel)[axis]!, 0) / total -
      height * (axis === 0 ? -forward : -left),
  );
  const three = ['frontRight', 'rearLeft', 'rearRight'] as const;
  const area = (a: readonly number[], b: readonly number[], c: readonly number[]): number =>
    (b[0]! - a[0]!) * (c[1]! - a[1]!) - (b[1]! - a[1]!) * (c[0]! - a[0]!);
  const whole = area(at(three[0]), at(three[1]), at(three[2]));
  three.forEach((wheel, k) => {
    const [a, b] = [at(three[(k + 1) % 3]!), at(three[(k + 2) % 3]!)];
    // wheel centres for contact points, and a wheel that hangs: a hundredth of the car
    near(load(here, wheel), (total * area(centre, a, b)) / whole, 0.01 * total, wheel);
  });
  // three legs do not wobble: a pad raised only tilts the car
  const pad = floor.car.changes.index('rearRight.pad');
  const felt = (of: typeof here): number => Math.abs(of.readings.get('weight.frontRight')!.by[pad]!);
  assert.ok(felt(here) < 0.15 * felt(level), `${felt(here)} against ${felt(level)}`);
});

/**
 * A plate on four springs in closed form: with p the weights that every tilted plane comes to nothing with, pads
 * raised by d change the loads by p (p·d)/Σ p²/k. Rates: wheel and tyre in series, G11 of any handbook.
 */
test('a pad raised by a millimetre does what a plate on four springs does', () => {
  const { car, floor, changed } = floorOf('fenwold-201');
  const here = floor.stand({ changes: changed({}), bars: OFF });
  const numbers = new Numbers(car.values);
  const rates = WHEEL_NAMES.map((wheel) => {
    const { sprung, tyre } = floor.car.wheels[wheel];
    const now = sprung.wheelAt(0);
    const spring = now.elastic + now.byForce;
    return 1 / (1 / spring + 1 / tyre.rate);
  });
  const at = WHEEL_NAMES.map((wheel) => {
    const end = wheel.startsWith('front') ? car.form.front : car.form.rear;
    const { wheelCentre } = end[wheel.endsWith('Left') ? 'left' : 'right'].points;
    return numbers.point(wheelCentre);
  });
  const area = (i: number, j: number, k: number): number =>
    (at[j]![0] - at[i]![0]) * (at[k]![1] - at[i]![1]) - (at[j]![1] - at[i]![1]) * (at[k]![0] - at[i]![0]);
  const p = [area(1, 2, 3), -area(0, 2, 3), area(0, 1, 3), -area(0, 1, 2)];
  const compliance = p.reduce((sum, each, k) => sum + each ** 2 / rates[k]!, 0);
  WHEEL_NAMES.forEach((raised, i) => {
    WHEEL_NAMES.forEach((wheel, k) => {
      const plate = (p[k]! * p[i]!) / compliance / 9.80665;
      const found = here.readings.get(`weight.${wheel}`)!.by[floor.car.changes.index(`${raised}.pad`)]!;
      // wheels that lean, tracks that change: some per cent of a plate on upright springs
      near(found, plate, 0.04 * Math.abs(plate), `${wheel} by the ${raised} pad`);
    });
  });
});

/** Common practice, no source: with corners of 89 N/mm a millimetre on one pad is some 4.5 kg of a diagonal, 0.7 %. */
test('a millimetre on one pad is worth what the trade says, for the rates that this car has', () => {
  const { floor, changed } = floorOf('fenwold-201');
  const here = floor.stand({ changes: changed({}), bars: OFF });
  const rates = WHEEL_NAMES.map((wheel) => {
    const { sprung, tyre } = floor.car.wheels[wheel];
    const now = sprung.wheelAt(0);
    return 1 / (1 / (now.elastic + now.byForce) + 1 / tyre.rate);
  });
  // a plate with equal sides: a quarter of the millimetre goes into each of four springs in series with the others
  const inSeries = 4 / rates.reduce((sum, rate) => sum + 1 / rate, 0);
  const trade = (0.007 * inSeries) / 89e3;
  for (const wheel of WHEEL_NAMES) {
    const found = here.readings.get('cross')!.by[floor.car.changes.index(`${wheel}.pad`)]! * 1e-3;
    // tracks and rates differ front to rear, and the trade rounds
    near(Math.abs(found), trade, 0.12 * trade, wheel);
  }
});
