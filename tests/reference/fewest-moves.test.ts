/**
 * The fewest whole moves, and of as few the least effort, against SciPy's milp (HiGHS) on problems of the size of a
 * small set-up: flats of one effort each, and stacks whose effort goes up and down with the thickness.
 *
 * To remake the record (wants Python 3 with NumPy and SciPy):
 *   FLATPATCH_REMAKE=1 node --import tsx --test tests/reference/fewest-moves.test.ts
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { fewestMoves, type MovesProblem, type Place } from '../../src/maths/fewest-moves.ts';
import { drawn } from '../draw.ts';
import { answeredByPython } from './recorded.ts';

interface Theirs {
  readonly proved: boolean;
  readonly none: boolean;
  readonly moved?: number;
  readonly effort?: number;
}

const ROWS = 14;
const PROBLEMS = 10;

function drawnProblem(random: () => number): MovesProblem {
  const columns = 7 + Math.floor(random() * 3);
  const from = (low: number, high: number): number => low + Math.floor(random() * (high - low + 1));
  const flats = (): Place[] => {
    const [low, high] = [-from(3, 30), from(3, 30)];
    return Array.from({ length: high - low + 1 }, (_, k) => ({ x: low + k, effort: Math.abs(low + k) }));
  };
  // thicknesses that the pieces make, and how many pieces each takes
  const stack = (): Place[] => {
    const xs = new Set([0]);
    while (xs.size < 9) xs.add(from(-12, 12));
    return [...xs].sort((p, q) => p - q).map((x) => ({ x, effort: x === 0 ? 0 : 4 * from(1, 4) }));
  };
  const places = Array.from({ length: columns }, (_, j) => (j % 3 === 2 ? stack() : flats()));
  const a = Array.from({ length: ROWS }, () =>
    Float64Array.from({ length: columns }, () => (random() < 0.35 ? 0 : 1.6 * (random() - 0.5))),
  );
  const meant = places.map((each) => (random() < 0.45 ? 0 : each[from(0, each.length - 1)]!.x));
  const d = Float64Array.from(
    a,
    (row) => 1.2 * (random() - 0.5) - row.reduce((sum, value, j) => sum + value * meant[j]!, 0),
  );
  return { a, d, places };
}

test('as few moves as HiGHS, and as little effort, wherever both prove it', (t) => {
  const random = drawn(4014);
  const problems = Array.from({ length: PROBLEMS }, () => drawnProblem(random));
  const { answers, from } = answeredByPython<readonly Theirs[]>({
    script: 'tests/reference/fewest_moves_milp.py',
    record: 'tests/reference/fewest-moves.json',
    remake: 'FLATPATCH_REMAKE=1 node --import tsx --test tests/reference/fewest-moves.test.ts',
    cars: {},
    asked: JSON.stringify({
      problems: problems.map(({ a, d, places }) => ({ a: a.map((row) => [...row]), d: [...d], places })),
      seconds: 30,
    }),
    digits: 12,
  });
  t.diagnostic(`HiGHS of ${from}`);
  let compared = 0;
  problems.forEach((problem, k) => {
    const theirs = answers[k]!;
    assert.ok(theirs.proved, `problem ${k}: HiGHS did not end`);
    const ours = fewestMoves({ ...problem, mostPrograms: 200_000 });
    if (theirs.none) {
      assert.ok(ours.worst > 1, `problem ${k}: HiGHS has no answer within the ranges`);
      return;
    }
    compared += 1;
    assert.ok(ours.proved && ours.leastEffort, `problem ${k} is not proved`);
    assert.ok(ours.worst <= 1 + 1e-6, `problem ${k}: ${ours.worst} tolerances`);
    // efforts are whole numbers
    assert.deepEqual([ours.moved, ours.effort], [theirs.moved, theirs.effort], `problem ${k}`);
    // within the nodes that a page waits for: all are brought home, and none is called proved that is not
    const quick = fewestMoves(problem);
    assert.ok(quick.worst <= 1 + 1e-6, `problem ${k}, quickly: ${quick.worst} tolerances`);
    if (quick.proved) assert.equal(quick.moved, ours.moved);
    if (quick.leastEffort) assert.equal(quick.effort, ours.effort);
  });
  assert.ok(compared >= PROBLEMS / 2, `${compared} problems can be solved at all`);
});
