/**
 * A bend moved by hand with the length held, against plane geometry.
 *
 * [1]  Apollonius, Conics, book III: a point of an ellipse has a constant sum of distances to the foci (prop. 52), and
 *      its tangent makes equal angles with the lines to them (prop. 48); from memory
 * [2]  two equal bends between parallel straights: offset and length by the right triangle of the leaning straight,
 *      common practice, no source
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { ByHand, type Kept, NOTHING_KEPT } from '../../src/gaspath/by-hand.ts';
import type { Layout } from '../../src/gaspath/route/layout.ts';
import type { RouteProblem } from '../../src/gaspath/route/problem.ts';
import { type Site, siteOf } from '../../src/gaspath/route/site.ts';
import { cross, distance, length, sub, unit, type Vec3 } from '../../src/maths/vec3.ts';
import { near } from '../near.ts';

/** One pipe along x from the origin to a mouth, with nothing about it. */
const lone = (mouth: Vec3, target: number): Site =>
  siteOf({
    tube: { od: 40, wall: 1, densityKgM3: 8000 },
    radii: [70],
    limits: {
      maxBends: 6,
      minStraightFlange: 5,
      minStraightCollector: 5,
      minStraightBetween: 0,
      maxBendDeg: 150,
    },
    length: { target, tol: 0.05 },
    ports: [{ p: [0, 0, 0], d: [1, 0, 0] }],
    collector: { mode: 'fixed', n: 1, ringRadius: 0, origin: mouth, axis: [1, 0, 0], ref: [0, 1, 0] },
    collectorBody: { length: 0, radiusAdd: 0 },
    order: { mode: 'free' },
    shell: { vertices: new Float64Array(0), triangles: new Uint32Array(0) },
    solids: [],
    clearance: { shell: 5, solid: 5, pipe: 5, self: 5, collectorZone: 100, pipeInZone: 1, flangeZone: 40 },
    bounds: { min: [-900, -900, -900], max: [1900, 900, 900] },
  } satisfies RouteProblem);

const laid = (mouth: Vec3, radius: number, x: readonly number[]): Layout => ({
  origin: mouth,
  axis: [1, 0, 0],
  ref: [0, 1, 0],
  pipes: [{ inlet: 0, corners: 2 + (x.length - 2) / 3, radius: Array((x.length + 4) / 3).fill(radius), x }],
});

const LAST_KEPT: Kept = { ...NOTHING_KEPT, bends: [{ pipe: 0, corner: 3 }] };

/**
 * With bends of no radius the middle corner between two fixed ones lies on an ellipse round them. The first corner is
 * pulled along its line and the last one kept: the middle one must come to the ellipse of the new foci, and by the
 * least way, which is square to the ellipse: it halves the angle between the lines to the foci.
 */
test('[1] the corner between two others stays on the ellipse that the length gives, by the shortest way', () => {
  const radius = 1e-7;
  const mouth: Vec3 = [600, 40, -30];
  const [a, b] = [120, 90];
  const middle: Vec3 = [320, 160, 75];
  const [first, last] = [[a, 0, 0] as Vec3, [600 - b, 40, -30] as Vec3];
  const target = a + distance(first, middle) + distance(middle, last) + b;
  const site = lone(mouth, target);
  for (const by of [-40, -12, 9, 35]) {
    const hand = new ByHand(site, laid(mouth, radius, [a, b, ...middle]), LAST_KEPT);
    const moved = hand.pull({ kind: 'bend', pipe: 0, corner: 1, to: [a + by, 0, 0] });
    assert.equal(moved.stop, undefined);
    const focus: Vec3 = [a + by, 0, 0];
    const [, , x, y, z] = moved.layout.pipes[0]!.x;
    const corner: Vec3 = [x!, y!, z!];
    // 1e-6: bends of 1e-7 mm save that much
    near(distance(focus, corner) + distance(corner, last), target - b - a - by, 1e-6);
    const way = unit(sub(corner, middle));
    const normal = unit(
      [0, 1, 2].map((c) => unit(sub(corner, focus))[c]! + unit(sub(corner, last))[c]!) as unknown as Vec3,
    );
    // the descent ends when no number would move by 1e-7 mm
    assert.ok(length(cross(way, normal)) < 1e-5, `leans by ${length(cross(way, normal))}`);
  }
});

/**
 * An offset h between parallel ends leans by one angle for a given length whatever its place: the first corner pulled
 * along its line by d takes the second one with it by d, and no more than the straights at the ends let it.
 */
test('[2] an offset of two bends slides as a whole, until the straight at its end is at its least', () => {
  const [R, theta, s] = [70, 0.6, 90];
  const tangent = R * Math.tan(theta / 2);
  const h = 2 * R * (1 - Math.cos(theta)) + s * Math.sin(theta);
  const way = 2 * R * Math.sin(theta) + s * Math.cos(theta);
  const mouth: Vec3 = [way + 30 + 50, h, 0];
  const [a, b] = [30 + tangent, 50 + tangent];
  const site = lone(mouth, 30 + 2 * R * theta + s + 50);
  const hand = new ByHand(site, laid(mouth, R, [a, b]), NOTHING_KEPT);
  const to = (d: number): Vec3 => [a + d, 0, 0];
  const slid = hand.pull({ kind: 'bend', pipe: 0, corner: 1, to: to(20) });
  assert.equal(slid.stop, undefined);
  near(slid.layout.pipes[0]!.x[0]!, a + 20, 1e-9);
  near(slid.layout.pipes[0]!.x[1]!, b - 20, 1e-6);
  // 45 of the 50 mm may go: the least straight at the collector is 5 mm
  const stopped = hand.pull({ kind: 'bend', pipe: 0, corner: 1, to: to(80) });
  assert.deepEqual(stopped.stop, { kind: 'shape', pipe: 0, bar: { what: 'straight', at: 2, limit: 5 } });
  // a step of 15 mm halved nine times
  near(stopped.layout.pipes[0]!.x[0]!, a + 45, 0.03);
  // to one side of its line there is nothing to go to
  const aside = hand.pull({ kind: 'bend', pipe: 0, corner: 1, to: [a + 20, 33, -8] });
  near(aside.layout.pipes[0]!.x[0]!, a + 20, 1e-9);
});
