/**
 * The order of tightening beside patterns that others have printed.
 *
 * Studs of a circle are numbered in turn, as flange makers do. ASME PCC-1, table of the legacy cross pattern (from
 * memory): 4 bolts 1-3-2-4; 8 bolts 1-5-3-7, 2-6-4-8; 12 bolts 1-7-4-10, 2-8-5-11, 3-9-6-12. The pattern of 8 was also
 * seen in a machine maker's maintenance manual, "Tightening hexagon socket head bolts". Five in a star 1-3-5-2-4 and
 * six crosswise 1-4-2-5-3-6: common practice, no source.
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { ROUNDS, roundTorque, tighteningOrder } from '../../src/loadpath/stud/tightening-order.ts';
import { real } from '../draw.ts';

interface Place {
  readonly y: number;
  readonly z: number;
}

const onCircle = (count: number, radius = 0.2): Place[] =>
  Array.from({ length: count }, (_, k) => {
    const angle = (2 * Math.PI * k) / count;
    return { y: -radius * Math.sin(angle), z: radius * Math.cos(angle) };
  });

const numbered = (studs: readonly Place[], dowels: readonly Place[] = []): number[] =>
  tighteningOrder(studs, dowels).map((place) => place + 1);

const PATTERNS: readonly (readonly number[])[] = [
  [1, 3, 2, 4],
  [1, 3, 5, 2, 4],
  [1, 4, 2, 5, 3, 6],
  [1, 5, 3, 7, 2, 6, 4, 8],
  [1, 7, 4, 10, 2, 8, 5, 11, 3, 9, 6, 12],
];

for (const pattern of PATTERNS) {
  test(`${pattern.length} on a circle: ${pattern.join('-')}`, () => {
    assert.deepEqual(numbered(onCircle(pattern.length)), pattern);
  });
}

/** Two millimetres: more than an arm errs, far less than studs stand apart. */
const ERROR = 0.002;
const anyErrors = fc.array(fc.tuple(real(-ERROR, ERROR), real(-ERROR, ERROR)), {
  minLength: 12,
  maxLength: 12,
});

test('what a survey errs by does not choose the order', () =>
  fc.assert(
    fc.property(fc.constantFrom(...PATTERNS), anyErrors, (pattern, errors) => {
      const moved = onCircle(pattern.length).map(({ y, z }, k) => ({
        y: y + errors[k]![0],
        z: z + errors[k]![1],
      }));
      assert.deepEqual(numbered(moved), pattern);
    }),
  ));

test('four at the corners of a face go crosswise, whichever the dowel stands by', () => {
  const corners = [
    { y: 0.196, z: -0.19 },
    { y: -0.196, z: -0.19 },
    { y: 0.215, z: 0.19 },
    { y: -0.215, z: 0.19 },
  ];
  assert.deepEqual(numbered(corners, [{ y: 0.15, z: -0.19 }]), [1, 4, 3, 2]);
  assert.deepEqual(numbered(corners, [{ y: -0.2, z: 0.15 }]), [4, 1, 2, 3]);
});

test('every stud once, wherever they stand; and of an even ring each second is opposite the one before', () =>
  fc.assert(
    fc.property(
      fc.array(fc.record({ y: real(-0.3, 0.3), z: real(-0.3, 0.3) }), { minLength: 1, maxLength: 14 }),
      fc.integer({ min: 2, max: 7 }),
      (studs, half) => {
        assert.deepEqual(
          [...numbered(studs)].sort((a, b) => a - b),
          studs.map((_, k) => k + 1),
        );
        const ring = numbered(onCircle(2 * half));
        for (let k = 0; k < ring.length; k += 2)
          assert.equal(Math.abs(ring[k]! - ring[k + 1]!), half, ring.join('-'));
      },
    ),
  ));

/**
 * Passes of 30, 60 and 100 % and then once more round at the full value until no nut turns: as flange makers print it
 * (seen: "Flange bolt torque sequence" of two fitters' pages, the same three passes in both). PCC-1 has 20 to 30,
 * 50 to 70 and 100 % (from memory).
 */
test('three rounds and one more', () => {
  assert.deepEqual(ROUNDS, [0.3, 0.6, 1, 1]);
  assert.ok(ROUNDS[0]! >= 0.2 && ROUNDS[0]! <= 0.3 && ROUNDS[1]! >= 0.5 && ROUNDS[1]! <= 0.7);
});

test('what a nut needs to run is set in full in every round', () => {
  // by hand: 62 N m with 2 N m of running: 2 + 0.3 · 60 = 20
  assert.ok(Math.abs(roundTorque(62, 2, 0.3) - 20) < 1e-12);
  assert.equal(roundTorque(62, 2, 1), 62);
});
