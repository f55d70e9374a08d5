/** One part of an exhaust moved by hand beside the others: what is told while it is pulled is what the check measures. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import {
  findParts,
  partByHand,
  partHandTold,
  partSets,
  partsProblem,
  type RouteSolution,
} from '../../src/questions/index.ts';
import { near } from '../near.ts';
import { opened } from './opened.ts';

const { car } = opened('fenwold-201', { spec: 'four-two-one' });
const put = partsProblem(car, 'left', []);
assert.ok(put.reached);
const { parts } = put;
const finding = findParts(parts, 1);
while (finding.advance() === 'searching');
const found = finding.solutions()!;
const withOne = (at: number, solution: RouteSolution): RouteSolution[] =>
  found.map((each, k) => (k === at ? solution : each));

test('at rest as it was found each part is told the gaps that the check between parts measures', () => {
  const sets = partSets(parts, found);
  let toOthers = 0;
  sets.forEach(({ set }, at) => {
    const others = parts.flatMap(({ gas }, k) => (k === at ? [] : gas.pipes));
    const told = partHandTold(parts, at, partByHand(parts, found, at).told());
    assert.deepEqual(told.set.breaches, []);
    told.set.pipes.forEach(({ tightest }, k) => {
      const checked = set.pipes[k]!.tightest!;
      // chords of a bend lie within 0.04 mm of it, and the finder takes the nearest that it knows
      near(tightest!.spare, checked.spare, 1e-4);
      if (tightest!.against !== checked.against) return;
      near(tightest!.gap, checked.gap, 1e-4);
      if (others.includes(checked.against)) toOthers += 1;
    });
  });
  assert.ok(toOthers > 0, 'none is nearest to another part');
});

test('a collector at which another part begins is not moved; the last one is', () => {
  const free = parts.map((_, at) => partByHand(parts, found, at).told().collector.free);
  assert.deepEqual(free, [false, false, true]);
});

test('bends pulled this way and that: what comes to rest stands clear of the other parts, of its length', () => {
  for (const [at] of parts.entries()) {
    const hand = partByHand(parts, found, at);
    for (const [k, bend] of hand.told().bends.entries()) {
      const by = 0.02 * (k % 2 === 0 ? 1 : -1);
      const way = bend.line ?? ([0, 0, 1] as const);
      const to = bend.at.map((value, c) => value + by * way[c]!) as unknown as typeof bend.at;
      hand.pull({ what: 'bend', cylinder: bend.cylinder, bend: bend.bend, to });
      hand.letGo();
      const sets = partSets(parts, withOne(at, hand.solution));
      for (const { set } of sets) assert.deepEqual(set.breaches, []);
      for (const { length } of sets[at]!.set.pipes) near(length, sets[at]!.set.target, 5e-5);
    }
    assert.ok(hand.told().steps > 0, `nothing of part ${at} could be moved`);
  }
});

test('under the hand a gap to a pipe of another part is told with what is asked between pipes', () => {
  // the first bend of cylinder 1 pulled towards what is nearest to it in the other part
  const hand = partByHand(parts, found, 0);
  const others = new Set(parts[1]!.gas.pipes);
  let met = 0;
  for (const bend of hand.told().bends) {
    for (const by of [-0.03, -0.01, 0.01, 0.03]) {
      const way = bend.line ?? ([0, 1, 0] as const);
      const to = bend.at.map((value, c) => value + by * way[c]!) as unknown as typeof bend.at;
      const { tight, set } = partHandTold(
        parts,
        0,
        hand.pull({ what: 'bend', cylinder: bend.cylinder, bend: bend.bend, to }),
      );
      hand.letGo();
      hand.backToFound();
      if (tight === undefined || !others.has(tight.against)) continue;
      met += 1;
      const clearance = parts[0]!.put.problem.clearance.pipe / 1000;
      near(tight.gap - tight.spare, clearance, 1e-9);
      assert.ok(set.pipes.length > 0);
    }
  }
  assert.ok(met > 0, 'no pull came near the other part');
});
