/** The fewest whole moves against every combination tried one by one. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { fewestMoves, type MovesProblem, type Place } from '../../src/maths/fewest-moves.ts';
import { leastRoom } from '../../src/maths/least-room.ts';
import { leastCost } from '../../src/maths/range-program.ts';
import { drawn } from '../draw.ts';
import { near } from '../near.ts';

interface Tried {
  /** Every row afterwards. */
  readonly rows: readonly number[];
  readonly worst: number;
  readonly moved: number;
  readonly effort: number;
}

const rowsOf = ({ a, d }: MovesProblem, chosen: readonly Place[]): readonly number[] =>
  a.map((row, i) => Math.abs(chosen.reduce((sum, { x }, j) => sum + row[j]! * x, d[i]!)));

/** How far rows lie beyond their ranges, in sum. */
const roomOf = (rows: readonly number[]): number => rows.reduce((sum, row) => sum + Math.max(0, row - 1), 0);

function everyCombination({ a, d, places }: MovesProblem): readonly Tried[] {
  const all: Tried[] = [];
  const walk = (chosen: readonly Place[]): void => {
    if (chosen.length < places.length) {
      for (const place of places[chosen.length]!) walk([...chosen, place]);
      return;
    }
    const rows = rowsOf({ a, d, places }, chosen);
    all.push({
      rows,
      worst: Math.max(...rows),
      moved: chosen.filter(({ x }) => x !== 0).length,
      effort: chosen.reduce((sum, { effort }) => sum + effort, 0),
    });
  };
  walk([]);
  return all;
}

function anyProblem(random: () => number, spread: number): MovesProblem {
  const columns = 2 + Math.floor(random() * 4);
  const rows = 2 + Math.floor(random() * 5);
  const a = Array.from({ length: rows }, () =>
    Float64Array.from({ length: columns }, () => (random() < 0.3 ? 0 : 2 * (random() - 0.5))),
  );
  const places = Array.from({ length: columns }, () => {
    const low = -1 - Math.floor(random() * 3);
    const count = 2 - low + Math.floor(random() * 3);
    return Array.from({ length: count }, (_, i) => ({ x: low + i, effort: Math.abs(low + i) }));
  });
  const meant = places.map((each) => each[Math.floor(random() * each.length)]!.x);
  const d = Float64Array.from(
    a,
    (row) => -row.reduce((sum, value, j) => sum + value * meant[j]!, 0) + (random() - 0.5) * spread,
  );
  return { a, d, places };
}

test('no combination moves fewer, or as few with less effort', () => {
  const random = drawn(20261126);
  let within = 0;
  let out = 0;
  let alone = 0;
  for (let trial = 0; trial < 150; trial += 1) {
    const problem = anyProblem(random, trial % 3 === 0 ? 4 : 1.2);
    const found = fewestMoves(problem);
    assert.ok(found.proved && found.leastEffort, `trial ${trial} is not proved`);
    const all = everyCombination(problem);
    const doing = all.filter(({ worst }) => worst <= 1 + 1e-9);
    if (doing.length === 0) {
      out += 1;
      const least = Math.min(...all.map(({ rows }) => roomOf(rows)));
      const [low, high] = [0, -1].map((end) => Float64Array.from(problem.places, (each) => each.at(end)!.x));
      const room = leastRoom({ ...problem, low: low!, high: high! });
      // whole places are places between
      assert.ok(room.reduce((sum, each) => sum + each, 0) <= least + 1e-6, `trial ${trial}`);
      const rows = rowsOf(problem, found.chosen);
      const lacks = room.map((each) => (each > 1e-6 ? 1 : 0));
      // rows that lack nothing stay home where any places allow it with thrice the room for the others
      const kept = all.some((each) =>
        each.rows.every((row, i) => row <= (lacks[i] === 1 ? (1 + room[i]!) * 3 : 1)),
      );
      if (lacks.includes(1) && kept) {
        alone += 1;
        rows.forEach((row, i) => {
          if (lacks[i] === 0) assert.ok(row <= 1 + 1e-6, `trial ${trial}: row ${i} is at ${row}`);
        });
      }
      // room that is less by under a thousandth of a tolerance does not count
      else near(roomOf(rows), least, 1.001e-3, `trial ${trial}`);
      continue;
    }
    within += 1;
    const moved = Math.min(...doing.map((each) => each.moved));
    assert.equal(found.moved, moved, `trial ${trial}`);
    const effort = Math.min(...doing.filter((each) => each.moved === moved).map((each) => each.effort));
    // efforts are whole numbers
    near(found.effort, effort, 1e-6, `trial ${trial}`);
  }
  assert.ok(within > 60, 'too few of the problems can be solved at all');
  assert.ok(alone > 5, `only ${alone} of the problems let some rows go alone`);
  assert.ok(out > 12, `only ${out} of the problems cannot be solved`);
});

test('places that must not be taken together are not', () => {
  const places = [[0, 1, 2].map((x) => ({ x, effort: x })), [0, 1, 2].map((x) => ({ x, effort: x }))];
  const problem = { a: [Float64Array.of(1, 1)], d: Float64Array.of(-3), places };
  assert.equal(fewestMoves(problem).moved, 1);
  const apart = fewestMoves({ ...problem, together: (chosen) => chosen.every(({ x }) => x < 2) });
  assert.deepEqual(
    apart.chosen.map(({ x }) => x),
    [1, 1],
  );
});

/** By hand: of two columns that raise one row, the one that raises it twice as far does half the work. */
test('a linear program by hand', () => {
  const of = {
    a: [Float64Array.of(2, 1)],
    d: Float64Array.of(-4),
    low: Float64Array.of(-5, -5),
    high: Float64Array.of(5, 5),
    cost: Float64Array.of(1, 1),
  };
  const found = leastCost(of, 1)!;
  near(found.x[0]!, 1.5, 1e-12);
  near(found.x[1]!, 0, 1e-12);
  assert.equal(leastCost({ ...of, high: Float64Array.of(0.5, 0.5) }, 1), undefined);
});
