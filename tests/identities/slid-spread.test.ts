/**
 * Spread under a slider: taken between knots, against the law of propagation written out and against the spread in full.
 *
 * [GUM] JCGM 100:2008, 5.1.2, equation (10): u² is the sum of the squares of slope times uncertainty.
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { spreadBetween, spreadOf } from '../../src/measured/spread.ts';
import {
  type Figure,
  jointOf,
  knotsOf,
  knotsRound,
  loadsOf,
  SLID,
  slideRange,
  slidTo,
  USUAL_DOINGS,
  usualDoing,
  withSpreadBetween,
} from '../../src/questions/index.ts';
import { demo, demoSource, opened } from '../cars/demo.ts';
import { near } from '../near.ts';

const [UX, UY] = [0.3, 0.05];

/** Spread of t·x + (1 − 2t)·y at x = 4, y = 7. */
const at = (t: number) =>
  spreadOf(
    Float64Array.from([4, 7]),
    [
      { label: 'x', path: 'x', moves: [[0, UX]] },
      { label: 'y', path: 'y', moves: [[1, UY]] },
    ],
    (values, out) => {
      out[0] = t * values[0]! + (1 - 2 * t) * values[1]!;
    },
    1,
  )[0]!;

test('contributions that run straight are met everywhere between, through the change of sign of one', () => {
  for (const part of [0, 0.2, 0.5, 0.9, 1]) {
    const { u, shares } = spreadBetween(at(0), at(1), part);
    near(u, Math.hypot(part * UX, (1 - 2 * part) * UY), 1e-12);
    near(
      shares.reduce((sum, { share }) => sum + share, 0),
      1,
      1e-12,
    );
  }
  // halfway y counts for nothing: two spreads of the ends taken together would have said otherwise
  assert.deepEqual(
    spreadBetween(at(0), at(1), 0.5).shares.map(({ path }) => path),
    ['x'],
  );
});

test('what is unknown at either end is unknown between', () => {
  const { unknown, u } = spreadBetween({ ...at(0), unknown: ['z'] }, at(1), 0.5);
  assert.deepEqual(unknown, ['z']);
  near(u, 0.5 * UX, 1e-12);
});

test('halfway between knots the spread is that in full, within a tenth for nineteen figures of twenty', () => {
  const car = demo('fenwold-201');
  const { doing } = usualDoing('braking')!;
  const wheel = { end: 'front', side: 'left' } as const;
  const figures = (slid: (typeof SLID)[number], value: number, spread = true): readonly Figure[] => {
    const to = slidTo(doing, slid, value);
    const of = loadsOf(car, to, { spread, wheels: [wheel] });
    const joint = jointOf(car, 'engineToTub', to, { spread });
    assert.ok(of.reached && joint.reached);
    return [...of.wheels[0]!.figures, ...joint.figures];
  };
  // at 0.84 g of braking the toe link goes from pull to push, and the shares of its strength have a corner there
  for (const [slid, k] of [
    ['longitudinal', 9],
    ['lateral', 11],
  ] as const) {
    const knots = knotsOf(slideRange(car, slid, doing[slid]));
    const value = (knots[k]! + knots[k + 1]!) / 2;
    const [below, above] = knotsRound(knots, value);
    const between = withSpreadBetween(
      figures(slid, value, false),
      value,
      { knot: below, figures: figures(slid, below) },
      { knot: above, figures: figures(slid, above) },
    );
    const full = new Map(figures(slid, value).map((figure) => [figure.id, figure]));
    const apart = between
      .filter(({ spread, value: is }) => spread !== undefined && spread.u > 1e-6 * Math.abs(is))
      .map(({ id, value: is, spread }) => {
        assert.equal(is, full.get(id)!.value, id);
        return Math.abs(spread!.u / full.get(id)!.spread!.u - 1);
      })
      .sort((a, b) => a - b);
    assert.ok(apart.length > 100, `${apart.length}`);
    if (slid === 'longitudinal') {
      const share = between.find(({ id }) => id === 'endShare.toeLink')!;
      assert.equal(share.spread, undefined, 'what lies between would be told eight times too small');
    }
    const nineteenth = apart[Math.floor(0.95 * apart.length)]!;
    assert.ok(nineteenth < 0.1, `${slid}: ${nineteenth}`);
  }
});

test('a slide takes in every usual case; the rack goes from lock to lock of the file; what is typed beyond widens it', () => {
  for (const name of ['fenwold-201', 'ashgarth-501']) {
    const car = demo(name);
    for (const { doing } of USUAL_DOINGS) {
      for (const slid of SLID) {
        const { low, high } = slideRange(car, slid, 0);
        assert.ok(doing[slid] >= low && doing[slid] <= high, `${name} ${slid}`);
      }
    }
    const lock = car.values[car.form.front.steering!.rackTravel.index]!;
    const { low, high } = slideRange(car, 'rack', 0);
    assert.deepEqual([low, high], [-lock, lock]);
  }
  const { text, ...source } = demoSource('fenwold-201');
  const without = opened({ ...source, text: text.replace(/\n {2}steering:\n(?: {4}.*\n)+/, '\n') });
  assert.equal(slideRange(without, 'rack', 0).high, 0.03);
  assert.equal(slideRange(demo('fenwold-201'), 'speed', 150).high, 150);
});

test('at a knot both knots are that knot; beyond the ends the end is taken', () => {
  const knots = [0, 1, 2];
  assert.deepEqual(knotsRound(knots, 1), [1, 1]);
  assert.deepEqual(knotsRound(knots, 1.25), [1, 2]);
  assert.deepEqual(knotsRound(knots, 2.5), [2, 2]);
});
