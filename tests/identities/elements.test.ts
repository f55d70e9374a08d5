/** What must hold for spring elements one beside or behind the other, curves and dampers. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { damper } from '../../src/loadpath/damper.ts';
import {
  BarSpring,
  CurveSpring,
  DroopStop,
  HelperInSeries,
  LinearSpring,
  Parallel,
  SolidSpring,
  type SpringElement,
} from '../../src/loadpath/spring/elements.ts';
import { pchip } from '../../src/maths/pchip.ts';
import { integral } from '../../src/maths/quadrature.ts';
import { real } from '../draw.ts';
import { near } from '../near.ts';

/** Rate is the slope of force between kinks, and force has no jump at them. */
function checkElement(element: SpringElement, low: number, high: number): void {
  const at = element.kinks.map((kink) => kink.at);
  assert.deepEqual(
    at,
    [...at].sort((a, b) => a - b),
  );
  const cuts = [low, ...at.filter((each) => each > low && each < high), high];
  for (let i = 1; i < cuts.length; i += 1) {
    const [from, to] = [cuts[i - 1]!, cuts[i]!];
    const work = integral(element.rate, from, to);
    const rise = element.force(to) - element.force(from);
    // a rubber's curve has joints inside that the quadrature smooths over
    near(work, rise, 2e-2 * Math.max(1, Math.abs(rise)), `${element.kind} from ${from} to ${to}`);
  }
  for (const kink of at) {
    const jump = element.force(kink + 1e-12) - element.force(kink - 1e-12);
    near(jump, 0, 1e-3, `${element.kind} at ${kink}`);
  }
}

const RUBBER = [
  { compression: 0, force: 0 },
  { compression: 0.005, force: 300 },
  { compression: 0.01, force: 1000 },
  { compression: 0.015, force: 4000 },
];

test('elements: rate is the slope of force, no jumps at kinks', () => {
  const main = LinearSpring({ rate: 120e3, freeAt: -0.01 });
  const helper = HelperInSeries({ mainRate: 120e3, helperRate: 20e3, helperTravel: 0.03 });
  const rubber = CurveSpring({ table: RUBBER, gap: 0.02, packers: 0.005 });
  const droop = DroopStop({ at: -0.005 });
  const bound = SolidSpring({ spring: main, solidAt: 0.04 });
  for (const each of [main, helper, rubber, droop, bound, Parallel([bound, rubber, droop])]) {
    checkElement(each, -0.02, 0.06);
  }
  assert.equal(main.force(-0.02), 0); // it does not pull
  assert.equal(droop.force(0), 0);
  assert.ok(droop.force(-0.006) < 0);
  assert.equal(rubber.knownUpTo, 0.015 + 0.015);
  assert.equal(Parallel([main, rubber]).knownUpTo, rubber.knownUpTo);
});

test('helper: before it is solid both carry one force, after it the main spring stands alone', () => {
  const helper = HelperInSeries({ mainRate: 100e3, helperRate: 25e3, helperTravel: 0.02 });
  near(helper.rate(0.001), 20e3, 1e-9);
  const solidAt = helper.kinks[1]!.at;
  near(solidAt, 0.02 + (25e3 * 0.02) / 100e3, 1e-15); // helper's travel and the main's under its force
  near(helper.force(solidAt), 500, 1e-9);
  near(helper.rate(solidAt), 100e3, 1e-9);
});

test('a bar goes through nothing and reverses; a coil comes free', () => {
  const bar = BarSpring({ rate: 2000, freeAt: 0.1 });
  near(bar.torque(0.05), -100, 1e-9);
  assert.match(bar.kinks[0]!.what, /reverse/);
});

test('smooth curve: through its points, never past them, rising where they rise', () =>
  fc.assert(
    fc.property(fc.array(fc.tuple(real(0.1, 3), real(0, 5)), { minLength: 1, maxLength: 8 }), (steps) => {
      const points = [{ x: 0, y: 0 }];
      for (const [dx, dy] of steps) {
        const last = points.at(-1)!;
        points.push({ x: last.x + dx, y: last.y + dy });
      }
      const curve = pchip(points);
      for (let i = 1; i < points.length; i += 1) {
        const [a, b] = [points[i - 1]!, points[i]!];
        near(curve.value(b.x), b.y, 1e-12 * Math.max(1, b.y));
        let before = a.y;
        for (let t = 0.1; t < 1; t += 0.1) {
          const y = curve.value(a.x + t * (b.x - a.x));
          assert.ok(y >= before - 1e-12 * Math.max(1, b.y) && y <= b.y + 1e-12 * Math.max(1, b.y));
          before = y;
        }
      }
    }),
  ));

test('smooth curve: slope is that of the value, and a straight line stays straight', () => {
  const curve = pchip(RUBBER.map((row) => ({ x: row.compression, y: row.force })));
  for (const [from, to] of [
    [0, 0.005],
    [0.005, 0.01],
    [0.01, 0.015],
  ] as const) {
    const rise = curve.value(to) - curve.value(from);
    near(integral(curve.slope, from, to), rise, 1e-9 * rise);
  }
  const line = pchip([0, 1, 3, 4].map((x) => ({ x, y: 2 * x + 1 })));
  for (const x of [-1, 0.5, 2, 3.7, 9]) near(line.value(x), 2 * x + 1, 1e-12);
});

test('damper: a knee put in is found; chord and tangent differ above it', () => {
  const force = (v: number): number => 9000 * Math.min(v, 0.08) + 1800 * Math.max(0, v - 0.08);
  const points = [0.025, 0.05, 0.1, 0.15, 0.2, 0.25].map((velocity) => ({
    velocity,
    force: force(velocity),
  }));
  const bench = damper({ bump: points, rebound: points.slice(0, 3) });
  const knee = bench.bumpKnee!;
  near(knee.velocity, 0.08, 1e-9);
  near(knee.lowSpeed, 9000, 1e-3);
  near(knee.highSpeed, 1800, 1e-3);
  near(knee.misfit, 0, 1e-9);
  assert.equal(bench.reboundKnee, undefined);
  near(bench.secant(0.2), force(0.2) / 0.2, 1e-9);
  assert.ok(bench.tangent(0.2) < bench.secant(0.2));
  near(bench.force(-0.05), -450, 1e-9);
  assert.ok(bench.measuredAt(0.25) && !bench.measuredAt(0.3) && !bench.measuredAt(-0.2));
});
