/**
 * The planar four-bar linkage, whose closed form is in every book of mechanisms.
 *
 * [N] R. L. Norton, Design of Machinery, ch. 4, 6 and 7 (from memory): Freudenstein's equation, the tangent of
 *     the half angle, velocities and accelerations; Example 4-1: a = 40, b = 120, c = 80, d = 100 mm, θ2 = 40°
 *     gives θ4 = 57.33° open and −98.01° crossed (from memory, not seen; the closed form gives 57.325, −98.005).
 *
 * The lower wishbone is the crank a, the line of the outer joints the coupler b, the upper wishbone the rocker c;
 * the frame d runs straight up between the inner hinges. Angles are measured from it, towards outboard.
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { moveWheel, placeWheel } from '../../src/loadpath/corner/chain.ts';
import { CLOSED, UPPER_HINGE } from '../../src/loadpath/corner/layout.ts';
import { prepareCorner } from '../../src/loadpath/corner/prepare.ts';
import { cornerState } from '../../src/loadpath/corner/solve.ts';
import { planarCorner } from '../identities/planarcorner.ts';

const [a, b, c, d] = [0.04, 0.12, 0.08, 0.1];
const degree = Math.PI / 180;
type Assembly = 'open' | 'crossed';

/** θ4 by Freudenstein's equation and the half-angle tangent [N, ch. 4]. */
function rockerOf(theta2: number, assembly: Assembly): number {
  const K1 = d / a;
  const K2 = d / c;
  const K3 = (a * a - b * b + c * c + d * d) / (2 * a * c);
  const cos2 = Math.cos(theta2);
  const A = cos2 - K1 - K2 * cos2 + K3;
  const B = -2 * Math.sin(theta2);
  const C = K1 - (K2 + 1) * cos2 + K3;
  const root = Math.sqrt(B * B - 4 * A * C) * (assembly === 'open' ? -1 : 1);
  const angle = 2 * Math.atan2(-B + root, 2 * A);
  return Math.atan2(Math.sin(angle), Math.cos(angle));
}

/** ω4/ω2 and α4/ω2² for a crank turning evenly [N, ch. 6 and 7]. */
function ratesOf(theta2: number, theta4: number) {
  const theta3 = Math.atan2(
    c * Math.sin(theta4) - a * Math.sin(theta2),
    d + c * Math.cos(theta4) - a * Math.cos(theta2),
  );
  const w3 = (a * Math.sin(theta4 - theta2)) / (b * Math.sin(theta3 - theta4));
  const w4 = (a * Math.sin(theta2 - theta3)) / (c * Math.sin(theta4 - theta3));
  const A = c * Math.sin(theta4);
  const B = b * Math.sin(theta3);
  const C = a * Math.cos(theta2) + b * w3 * w3 * Math.cos(theta3) - c * w4 * w4 * Math.cos(theta4);
  const D = c * Math.cos(theta4);
  const E = b * Math.cos(theta3);
  const F = -a * Math.sin(theta2) - b * w3 * w3 * Math.sin(theta3) + c * w4 * w4 * Math.sin(theta4);
  return { w4, a4: (C * E - B * F) / (A * E - B * D) };
}

/** The upper wishbone's angle and rates with the crank at θ2, by the chain, surveyed at another crank angle. */
function byChain(surveyedAt: number, theta2: number, assembly: Assembly) {
  const theta4 = rockerOf(surveyedAt, assembly);
  const inner = { y: 0.4, z: 0.2 };
  const corner = prepareCorner(
    planarCorner({
      lowerInner: inner,
      lowerOuter: { y: inner.y + a * Math.sin(surveyedAt), z: inner.z + a * Math.cos(surveyedAt) },
      upperInner: { y: inner.y, z: inner.z + d },
      upperOuter: { y: inner.y + c * Math.sin(theta4), z: inner.z + d + c * Math.cos(theta4) },
      rockerPivot: { y: 0.2, z: 0.6 },
      rodInner: { y: 0.25, z: 0.65 },
    }),
  );
  const s = cornerState(corner);
  // the hinge turns about +x or −x; +x carries outboard upward, which lessens an angle measured from the vertical
  const lower = -(corner.lowerAxis[0] ?? 0);
  const upper = -(corner.upperAxis[0] ?? 0);
  assert.equal(placeWheel(corner.constants, s, lower * (theta2 - surveyedAt), 0), CLOSED);
  moveWheel(corner.constants, s);
  const turned = Math.atan2(s[UPPER_HINGE + 1] ?? 0, s[UPPER_HINGE] ?? 0);
  return {
    theta4: theta4 + upper * turned,
    w4: (s[UPPER_HINGE + 2] ?? 0) * upper * lower,
    a4: (s[UPPER_HINGE + 3] ?? 0) * upper,
  };
}

test('Norton, Example 4-1: the rocker stands at 57.33° with the linkage open', () => {
  const { theta4 } = byChain(70 * degree, 40 * degree, 'open');
  assert.ok(Math.abs(theta4 / degree - 57.33) <= 0.01, `${theta4 / degree}`); // the last printed digit
});

test('Norton, Example 4-1: and at −98.01° with the linkage crossed', () => {
  const { theta4 } = byChain(55 * degree, 40 * degree, 'crossed');
  assert.ok(Math.abs(theta4 / degree + 98.01) <= 0.01, `${theta4 / degree}`);
});

for (const assembly of ['open', 'crossed'] as const) {
  test(`position, velocity and acceleration are those of the closed form, ${assembly}`, () => {
    for (let angle = 30; angle <= 110; angle += 5) {
      const theta2 = angle * degree;
      const theta4 = rockerOf(theta2, assembly);
      const book = ratesOf(theta2, theta4);
      const mine = byChain(assembly === 'open' ? 70 * degree : 55 * degree, theta2, assembly);
      // 1e-12: angles of size one, a few dozen operations
      assert.ok(Math.abs(mine.theta4 - theta4) < 1e-12, `position at ${angle}°`);
      assert.ok(Math.abs(mine.w4 - book.w4) < 1e-12, `velocity at ${angle}°: ${mine.w4} ${book.w4}`);
      assert.ok(Math.abs(mine.a4 - book.a4) < 1e-11, `acceleration at ${angle}°: ${mine.a4} ${book.a4}`);
    }
  });
}
