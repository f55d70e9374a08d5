/**
 * Gearing against handbook arithmetic, a printed pair of shifted gears, and cases in closed form.
 *
 * [trade]   mph = rpm × diameter in inches / (336 × ratio): the constant of inch and mile is 336.135; common practice
 * [pair]    bolsover.com, profile shifted external spur gears: m 3, 12 and 24 teeth, 56.5 mm: 26.0888°, Σx 0.960 (seen)
 * [forum]   community.cartalk.com 53231: 0.7 m wheels, 110 km/h at 3000 rpm, 1180 N, 90 %: 3.59 : 1, 53.8 hp (seen)
 * [drops]   10 500 rpm, 29:17 to 27:19: 8746.8 rpm (worked by hand from the teeth)
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { readTeeth } from '../../src/car/teeth.ts';
import { chooseSet } from '../../src/flatfloor/ratios/choose.ts';
import { engineSpeedAt, speedAt } from '../../src/flatfloor/ratios/speed.ts';
import { gearRatio, overallRatio, profileShift } from '../../src/flatfloor/ratios/teeth.ts';
import { changeSpeed, type Driving, thrustAt, topSpeed } from '../../src/flatfloor/ratios/thrust.ts';
import { pchip } from '../../src/maths/pchip.ts';
import { toSI } from '../../src/units/unit.ts';
import { near } from '../near.ts';

const rpm = (turns: number): number => toSI(turns, 'rpm');
const pair = (text: string) => readTeeth(text)!;
const STILL = { growth: 0, slip: 0 };

test('K01 (D) [trade] road speed in miles an hour by the constant 336', () => {
  const v = speedAt(rpm(8000), 4.1, { radius: (26 * 0.0254) / 2, ...STILL });
  // 336.135 to six digits: half of its last is 1.5e-6 of 151 mile/h
  near(v / 0.44704, (8000 * 26) / (336.135 * 4.1), 2.3e-4);
});

test('K02 (D) 10 000 rpm, gear 2.5, final drive 3.1, rolling radius 0.300 m: 145.93 km/h', () => {
  // printed to 0.01 km/h
  near(speedAt(rpm(10_000), 2.5 * 3.1, { radius: 0.3, ...STILL }) * 3.6, 145.93, 0.005);
});

test('9:31 final drive, 23/26 top, 2.02 m a turn, 10 500 rpm: 327 km/h; 1 % of growth is 105 rpm', () => {
  const i = overallRatio({ pair: pair('23/26'), final: pair('9/31') });
  const rolling = { radius: 2.02 / (2 * Math.PI), ...STILL };
  // printed to 1 km/h
  const v = speedAt(rpm(10_500), i, rolling);
  near(v * 3.6, 327, 0.5);
  const grown = { ...rolling, growth: 0.01 / v ** 2 };
  // 1 % over 1.01 of 10 500 is 104
  near((engineSpeedAt(v, i, rolling) - engineSpeedAt(v, i, grown)) / rpm(1), 105, 1.5);
});

test('K03 (D) [drops] from 29:17 to 27:19 at 10 500 rpm', () => {
  const [low, high] = [gearRatio(pair('17/29')), gearRatio(pair('19/27'))];
  near((10_500 * high) / low, 8746.8, 0.05);
});

test('[forum] ratio of a road car in top', () => {
  const ω = engineSpeedAt(110 / 3.6, 1, { radius: 0.35, ...STILL });
  // printed with the speed rounded to 30.6 m/s: 0.2 %
  near(rpm(3000) / ω, 3.59, 0.01);
});

test('K04 (D) a tyre that grows: v = c (1 + κ v²) holds, forward and back', () => {
  const rolling = { radius: 0.32, growth: 3e-6, slip: 0.02 };
  for (const turns of [4000, 8000, 12_000]) {
    const v = speedAt(rpm(turns), 4.5, rolling);
    const c = (rpm(turns) * 0.32 * 0.98) / 4.5;
    near(v, c * (1 + 3e-6 * v * v), 1e-12 * v, 'the root of a quadratic');
    near(engineSpeedAt(v, 4.5, rolling), rpm(turns), 1e-9);
  }
});

test('[pair] profile shift of a printed pair', () => {
  const shift = profileShift({ pair: pair('12/24'), module: 0.003, distance: 0.0565 });
  // printed to 0.001
  near(shift, 0.96, 0.0005);
  near(profileShift({ pair: pair('12/24'), module: 0.003, distance: 0.054 }), 0, 1e-12, 'standard height');
  assert.ok(Number.isNaN(profileShift({ pair: pair('12/24'), module: 0.003, distance: 0.05 })));
});

/** An engine whose torque falls straight from 400 N m at no speed to nothing at 1200 rad/s. */
const straight: Driving = {
  torque: pchip(
    Array.from({ length: 8 }, (_, k) => ({ x: 200 + 100 * k, y: 400 * (1 - (200 + 100 * k) / 1200) })),
  ),
  rolling: { radius: 0.3, ...STILL },
  efficiency: 0.9,
  limit: 900,
  resistance: (v) => 150 + 0.9 * v * v,
};

test('change where both gears push alike: straight torque in closed form, v = r ω_0/(i_1 + i_2)', () => {
  const v = changeSpeed(8, 6, straight);
  // halved until 1e-10 m/s
  near(v, (0.3 * 1200) / 14, 1e-9);
  near(thrustAt(v, 8, straight), thrustAt(v, 6, straight), 1e-6);
});

test('change at the limit where the next gear never pushes as hard', () => {
  const flat = {
    ...straight,
    torque: pchip([
      { x: 100, y: 300 },
      { x: 500, y: 300 },
      { x: 900, y: 300 },
    ]),
  };
  near(changeSpeed(8, 6, flat), (900 * 0.3) / 8, 1e-9);
});

test('top speed in closed form: a T straight in v against a + b v²', () => {
  const i = 5;
  const { speed, gear, byLimit } = topSpeed([8, i], straight);
  // 0.9·400·i/r (1 − v i/(r ω_0)) = 150 + 0.9 v²
  const F = (0.9 * 400 * i) / 0.3;
  const slope = (F * i) / (0.3 * 1200);
  const v = (-slope + Math.sqrt(slope ** 2 + 4 * 0.9 * (F - 150))) / (2 * 0.9);
  near(speed, v, 1e-8);
  assert.deepEqual([gear, byLimit], [1, false]);
  const [short] = [topSpeed([9], straight)];
  near(short.speed, (900 * 0.3) / 9, 1e-9, 'held by the limit');
  assert.equal(short.byLimit, true);
});

test('the set chosen from a stock is the best of all sets, counted one by one', () => {
  const stock = ['13/38', '14/38', '15/36', '16/36', '17/35', '18/34', '19/33', '20/32'].map((text, k) => ({
    pair: pair(text),
    ...(k < 2 ? { gears: [1] } : {}),
  }));
  const fitted = ['13/38', '16/36', '18/34'].map(pair);
  const speedOf = (of: { readonly driver: number; readonly driven: number }): number =>
    (100 * of.driver) / of.driven;
  const ratios = stock.map((each) => ({ ...each, speed: speedOf(each.pair) }));
  for (const targets of [
    [36, 42, 50],
    [41, 44, 61],
    [30, 60, 61],
    [46, 45, 44],
  ]) {
    for (const changes of [0, 1, 2, 3]) {
      let least = Number.POSITIVE_INFINITY;
      for (const a of ratios)
        for (const b of ratios)
          for (const c of ratios) {
            const set = [a, b, c];
            const own = (k: number): boolean => set[k]!.pair.text === fitted[k]!.text;
            if (!(a.speed < b.speed && b.speed < c.speed)) continue;
            if (set.some((each, k) => !own(k) && each.gears?.includes(k + 1) === false)) continue;
            if ([0, 1, 2].filter((k) => !own(k)).length > changes) continue;
            least = Math.min(
              least,
              set.reduce((sum, each, k) => sum + (each.speed / targets[k]! - 1) ** 2, 0),
            );
          }
      const found = chooseSet({ fitted, stock, targets, speedOf, changes })!;
      near(found.miss ** 2 * 3, least, 1e-12, `${targets} with ${changes}`);
      assert.ok(found.changed.length <= changes);
    }
  }
});
