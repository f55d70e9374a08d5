/**
 * A plate on springs in closed form, against the car on its pads.
 *
 * Three springs: statics alone says what each carries, whatever its rate, and each gives by its load over its rate;
 * the plate is the plane through the three. Four springs: one weight too many, told in tests/identities/flat-floor.
 * Statics of three supports and springs in series as in any textbook of mechanics (common practice, no source).
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { floorCarOf } from '../../src/flatfloor/floor-car.ts';
import { Floor } from '../../src/flatfloor/stand.ts';
import { WHEEL_NAMES } from '../../src/loadpath/loads/doing.ts';
import { Numbers } from '../../src/loadpath/numbers.ts';
import { demo } from '../cars/demo.ts';
import { near } from '../near.ts';

const OFF = { front: false, rear: false };
type Place = readonly [number, number];

const area = (a: Place, b: Place, c: Place): number =>
  (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

function carOf(name: string) {
  const { form, values } = demo(name);
  const numbers = new Numbers(values);
  const floor = new Floor(floorCarOf(form, numbers));
  const centre = (k: number): Place => {
    const wheel = WHEEL_NAMES[k]!;
    const end = wheel.startsWith('front') ? form.front : form.rear;
    const [x, y] = numbers.point(end[wheel.endsWith('Left') ? 'left' : 'right'].points.wheelCentre);
    return [x, y];
  };
  const rate = (k: number, travel: number): number => {
    const { sprung, tyre } = floor.car.wheels[WHEEL_NAMES[k]!];
    const now = sprung.wheelAt(travel);
    return 1 / (1 / (now.elastic + now.byForce) + 1 / tyre.rate);
  };
  return { floor, centre, rate };
}

test('three springs and a plate: a mass put on loads and lowers the car as statics and three rates say', () => {
  const { floor, centre, rate } = carOf('fenwold-201');
  const changes = floor.car.changes.none();
  let here = floor.stand({ changes, bars: OFF });
  const pad = floor.car.changes.index('rearRight.pad');
  // let down bit by bit until the wheel across hangs
  for (let down = 0.01; down < 0.0751; down += 0.013) {
    const lowered = Float64Array.from(changes);
    lowered[pad] = -down;
    here = floor.stand({ changes: lowered, bars: OFF }, here.place);
  }
  const loaded = [1, 2, 3];
  assert.equal(here.readings.get('weight.frontLeft')!.value, 0);
  const [a, b, c] = loaded.map(centre) as [Place, Place, Place];
  const whole = area(a, b, c);
  for (const { name, at } of floor.car.masses) {
    const put: Place = [at[0], at[1]];
    const shares = [area(put, b, c), area(a, put, c), area(a, b, put)].map((each) => each / whole);
    const mass = floor.car.changes.masses.get(name)!;
    const sinks = loaded.map((k, i) => {
      const found = here.readings.get(`weight.${WHEEL_NAMES[k]!}`)!.by[mass]!;
      // contact points for wheel centres, and the tub's lean: two hundredths of the mass
      near(found, shares[i]!, 0.02, `${name} on ${WHEEL_NAMES[k]}`);
      return (shares[i]! * 9.80665) / rate(k, here.place.u[k]!);
    });
    for (const [line, x] of [
      ['ride.front', 0],
      ['ride.rear', floor.car.wheels.rearLeft.links.geometry.wheelCentre[0]],
    ] as const) {
      const at: Place = [x, 0];
      const parts = [area(at, b, c), area(a, at, c), area(a, b, at)].map((each) => each / whole);
      const sunk = parts.reduce((sum, part, i) => sum + part * sinks[i]!, 0);
      const largest = Math.max(...sinks.map(Math.abs));
      // wheels that lean and tracks that change with travel: some per cent of the largest give
      near(-here.readings.get(line)!.by[mass]!, sunk, 0.05 * largest, `${line} by ${name}`);
    }
  }
});

/**
 * A millimetre on one pad of a plate on four springs, in per cent of cross weight: with p the weights that every
 * tilted plane comes to nothing with, it moves |p_i| (p_fr + p_rl)/Σ p²/k of the whole.
 */
test('a millimetre on one pad in per cent of cross weight, for the rates that each car has', () => {
  for (const name of ['fenwold-201', 'ashgarth-501']) {
    const { floor, centre, rate } = carOf(name);
    const here = floor.stand({ changes: floor.car.changes.none(), bars: OFF });
    const [fl, fr, rl, rr] = [0, 1, 2, 3].map(centre) as [Place, Place, Place, Place];
    const p = [area(fr, rl, rr), -area(fl, rl, rr), area(fl, fr, rr), -area(fl, fr, rl)];
    const gives = p.reduce((sum, each, k) => sum + each ** 2 / rate(k, here.place.u[k]!), 0);
    const weight = here.readings.get('total')!.value * 9.80665;
    WHEEL_NAMES.forEach((wheel, k) => {
      const plate = ((p[k]! * (p[1]! + p[2]!)) / gives / weight) * 1e-3;
      const found = here.readings.get('cross')!.by[floor.car.changes.index(`${wheel}.pad`)]! * 1e-3;
      // wheels that lean: some per cent of a plate on upright springs
      near(found, plate, 0.05 * Math.abs(plate), `${name}, ${wheel}`);
      // the trade's range for such cars: half a per cent to one and a half (common practice, no source)
      assert.ok(Math.abs(found) > 0.004 && Math.abs(found) < 0.015, `${name}, ${wheel}: ${100 * found} %`);
    });
  }
});
