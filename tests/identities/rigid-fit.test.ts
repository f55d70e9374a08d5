import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { fitRigid, moved } from '../../src/geometry/rigid-fit.ts';
import { NO_TURN, rotated, turnedBy } from '../../src/geometry/rotation.ts';
import { distance, length, scale, type Vec3 } from '../../src/maths/vec3.ts';
import { real } from '../draw.ts';

const upTo = (size: number): fc.Arbitrary<number> => real(-size, size);
const point = (size: number): fc.Arbitrary<Vec3> => fc.tuple(upTo(size), upTo(size), upTo(size));
const BODY: readonly Vec3[] = [
  [0, 0, 0],
  [1.2, 0.1, 0],
  [0.3, 0.9, 0.2],
  [-0.4, 0.2, 0.8],
];

test('any turn and shift is found again, and nothing is left over', () =>
  fc.assert(
    fc.property(point(3), point(5), point(0.1), (turn, shift, stray) => {
      const motion = { rotation: turnedBy(NO_TURN, turn), translation: shift };
      const body: readonly Vec3[] = [...BODY, stray];
      const fit = fitRigid(body.map((from) => ({ from, to: moved(motion, from) })));
      assert.ok(fit.ok);
      // 1e-12: points of a few metres, sixteen digits, a hundred operations
      assert.ok(fit.is.rms < 1e-12);
      for (const p of body) assert.ok(distance(moved(fit.is, p), moved(motion, p)) < 1e-12);
      assert.ok(Math.abs(fit.is.scale - 1) < 1e-12);
      assert.equal(fit.is.looksMirrored, false);
    }),
  ));

test('a turn keeps lengths', () =>
  fc.assert(
    fc.property(point(3), point(2), (turn, v) => {
      assert.ok(Math.abs(length(rotated(turnedBy(NO_TURN, turn), v)) - length(v)) < 1e-14 * 10);
    }),
  ));

test('no other motion fits better: every small change makes the squares larger', () =>
  fc.assert(
    fc.property(fc.array(point(0.05), { minLength: 4, maxLength: 4 }), point(1), point(1), (off, dt, dr) => {
      fc.pre(length(dt) + length(dr) > 0.1);
      const pairs = BODY.map((from, k) => ({
        from,
        to: [from[0] + off[k]![0], from[1] + off[k]![1], from[2] + off[k]![2]] as Vec3,
        weight: k + 1,
      }));
      const fit = fitRigid(pairs);
      assert.ok(fit.ok);
      const squares = (m: { rotation: typeof NO_TURN; translation: Vec3 }): number =>
        pairs.reduce((sum, p) => sum + p.weight * distance(p.to, moved(m, p.from)) ** 2, 0);
      const best = { rotation: fit.is.rotation, translation: fit.is.translation };
      const s = 1e-3;
      const other = {
        rotation: turnedBy(best.rotation, scale(dr, s)),
        translation: [
          best.translation[0] + s * dt[0],
          best.translation[1] + s * dt[1],
          best.translation[2] + s * dt[2],
        ] as Vec3,
      };
      assert.ok(squares(other) >= squares(best));
    }),
  ));

test('a case by hand: a quarter turn about z and one metre up', () => {
  const from: readonly Vec3[] = [
    [0, 0, 0],
    [2, 0, 0],
    [0, 1, 0],
  ];
  const to: readonly Vec3[] = [
    [0, 0, 1],
    [0, 2, 1],
    [-1, 0, 1],
  ];
  const fit = fitRigid(from.map((p, k) => ({ from: p, to: to[k]! })));
  assert.ok(fit.ok);
  assert.ok(distance(moved(fit.is, [1, 1, 0]), [-1, 1, 1]) < 1e-14); // rounding
});

test('wrong units and a left-handed frame are told', () => {
  const inch = fitRigid(BODY.map((p) => ({ from: p, to: scale(p, 25.4) })));
  assert.ok(inch.ok && Math.abs(inch.is.scale - 25.4) < 1e-9); // rounding
  assert.equal(inch.ok && inch.is.looksMirrored, false);
  const mirror = fitRigid(BODY.map((p) => ({ from: p, to: [p[0], -p[1], p[2]] })));
  assert.equal(mirror.ok && mirror.is.looksMirrored, true);
});

test('two points, and points on one line, are refused', () => {
  assert.deepEqual(fitRigid(BODY.slice(0, 2).map((p) => ({ from: p, to: p }))), {
    ok: false,
    why: 'too-few',
  });
  const line = [0, 1, 2, 3].map((k): Vec3 => [k, 2 * k, -k]);
  assert.deepEqual(fitRigid(line.map((p) => ({ from: p, to: p }))), { ok: false, why: 'on-one-line' });
});
