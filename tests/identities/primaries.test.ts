/** What must hold of any pipes that are laid: slopes, lengths, ends, the same answer again, and damage that is seen. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { PrimariesRun } from '../../src/gaspath/primaries.ts';
import { Chance } from '../../src/gaspath/route/chance.ts';
import { readRouteProblem, solutionJson } from '../../src/gaspath/route/exchange.ts';
import type { RouteProblem } from '../../src/gaspath/route/problem.ts';
import { verify } from '../../src/gaspath/verify/verify.ts';
import { walk } from '../../src/gaspath/verify/walk.ts';
import { slopesAgree } from './slopes.ts';

const problemOf = (name: string): RouteProblem => {
  const file = new URL(`../reference/routing/${name}.json`, import.meta.url);
  const read = readRouteProblem(JSON.parse(readFileSync(file, 'utf8')));
  assert.ok(read.ok);
  return read.problem;
};

function solved(problem: RouteProblem, seed: number): PrimariesRun {
  const run = new PrimariesRun(problem, seed);
  for (let k = 0; k < 20_000 && run.solution === undefined; k++) run.advance();
  assert.ok(run.solution, 'solved within 20,000 pieces');
  return run;
}

test('slopes of all residuals are those of finite differences, pose and all', () => {
  slopesAgree(problemOf('L5-s1'), 4, (_, cost) => {
    assert.ok(cost > 100, 'much is breached, so that all kinds of rows are there');
  });
});

test('what is found keeps all that is asked; the same seed finds the same; put down and taken up it goes on alike', () => {
  const problem = problemOf('L3-s1');
  const run = solved(problem, 3);
  assert.deepEqual(verify(problem, solutionJson(run.solution!)), []);
  assert.deepEqual(solved(problem, 3).solution, run.solution);
  const half = new PrimariesRun(problem, 3);
  for (let k = 0; k < 9; k++) half.advance();
  const again = new PrimariesRun(problem, 0, { saved: JSON.parse(JSON.stringify(half.saved)) });
  for (let k = 0; k < 20_000 && again.solution === undefined; k++) again.advance();
  assert.deepEqual(again.solution, run.solution);
});

test('bettering takes bends away and never leaves the problem', () => {
  const problem = problemOf('L1-s1');
  const run = solved(problem, 2);
  const bends = (): number =>
    run.solution!.pipes.flatMap(({ elements }) => elements).filter(({ kind }) => kind === 'bend').length;
  const first = bends();
  for (let k = 0; k < 2000 && run.advance() !== 'done'; k++);
  assert.ok(bends() < first, `${first} bends, then ${bends()}`);
  assert.deepEqual(verify(problem, solutionJson(run.solution!)), []);
});

// biome-ignore lint/suspicious/noExplicitAny: answers are damaged as plain JSON
type Json = any;

/** Ways in which an answer is spoilt; each by so much that it is no longer what was asked. */
const DAMAGE: readonly ((json: Json, c: Chance, problem: RouteProblem) => void)[] = [
  (j, c) => {
    any(j, c).elements[0].length += c.between(0.6, 40);
  },
  (j, c) => {
    any(j, c).elements.at(-1).length -= c.between(0.6, 40);
  },
  (j, c) => {
    bend(j, c).angleDeg += c.between(0.5, 30);
  },
  (j, c) => {
    bend(j, c).radius *= c.between(1.02, 1.4);
  },
  (j, c) => {
    bend(j, c).normal = bend(j, c).normal.map((v: number) => -v);
  },
  (j, c) => {
    bend(j, c).normal[c.below(3)] += c.between(0.05, 0.5);
  },
  (j, c) => {
    bend(j, c).angleDeg = Number.NaN;
  },
  (j, c) => {
    const p = any(j, c);
    p.start.p[c.below(3)] += c.between(0.1, 20);
  },
  (j, c) => {
    const p = any(j, c);
    p.start.d = [p.start.d[1], p.start.d[2], p.start.d[0]];
  },
  (j, c) => {
    j.pipes.splice(c.below(j.pipes.length), 1);
  },
  (j, c) => {
    j.pipes.push(any(j, c));
  },
  (j, c) => {
    const p = any(j, c);
    p.inlet = (p.inlet + 1) % j.pipes.length;
  },
  (j, c) => {
    const p = any(j, c);
    p.port = (p.port + 1) % j.pipes.length;
  },
  (j, c) => {
    any(j, c).elements.shift();
  },
  (j, c) => {
    any(j, c).elements.pop();
  },
  (j, c) => {
    // a bend left out; a straight may be as short as nothing
    const p = any(j, c);
    const bends = [...p.elements.keys()].filter((k) => p.elements[k].kind === 'bend');
    p.elements.splice(bends[c.below(bends.length)]!, 1);
  },
  (j, c) => {
    j.collector.origin[c.below(3)] += c.between(0.1, 60);
  },
  (j) => {
    j.collector.axis = j.collector.ref;
  },
  (j, c) => {
    j.collector.axis = j.collector.axis.map((v: number) => v * c.between(1.001, 2));
  },
  (j, c) => {
    delete any(j, c).elements[0].length;
  },
];
const any = (j: Json, c: Chance): Json => j.pipes[c.below(j.pipes.length)];
const bend = (j: Json, c: Chance): Json => {
  const bends = any(j, c).elements.filter((each: Json) => each.kind === 'bend');
  return bends[c.below(bends.length)];
};

test('a thousand damaged answers are all refused', () => {
  const c = new Chance(99);
  for (const [name, count] of [
    ['L1-s1', 800],
    ['L5-s1', 200],
  ] as const) {
    const problem = problemOf(name);
    const good = JSON.parse(JSON.stringify(solutionJson(solved(problem, 3).solution!)));
    assert.deepEqual(verify(problem, good), []);
    for (let k = 0; k < count; k++) {
      const json = structuredClone(good);
      DAMAGE[k % DAMAGE.length]!(json, c, problem);
      // with three inlets in a free order two pipes on one inlet, or one moved to its neighbour's, must still be seen
      assert.ok(
        verify(problem, json).length > 0,
        `${name}: damage ${k % DAMAGE.length}, number ${k}, was not seen`,
      );
    }
  }
});

test('the same pipes in a tighter world are refused for what is tighter, to a tenth of a millimetre', () => {
  const problem = problemOf('L5-s1');
  const good = JSON.parse(JSON.stringify(solutionJson(solved(problem, 3).solution!)));
  for (const [name, code] of [
    ['shell', 'shell'],
    ['solid', 'solid'],
    ['pipe', 'pipe to pipe'],
    ['self', 'self'],
  ] as const) {
    // the least room that is there, by halving; dense samples of the walk must say the same
    let low = 0;
    let high = 100;
    while (high - low > 0.1) {
      const middle = (low + high) / 2;
      const tight = { ...problem, clearance: { ...problem.clearance, [name]: middle } };
      if (verify(tight, good).some((each) => each.code === code)) high = middle;
      else low = middle;
    }
    assert.ok(low >= problem.clearance[name] - 0.1, `${name}: ${low}`);
    assert.ok(high < 100, `${name} is held at all`);
  }
});

test('elements walked from the flange end at the mouth, as long as they were laid', () => {
  const problem = problemOf('L1-s1');
  const { solution } = solved(problem, 4);
  for (const { start, elements } of solution!.pipes) {
    const path = walk(
      start,
      elements.map((e) =>
        e.kind === 'straight'
          ? { kind: 'straight', length: e.length, radius: 0, angle: 0, normal: [0, 0, 0] }
          : {
              kind: 'bend',
              length: 0,
              radius: e.radius,
              angle: (e.angleDeg * Math.PI) / 180,
              normal: e.normal,
            },
      ),
    );
    // 1e-4: the descent ends with squares below 1e-8 mm^2
    assert.ok(Math.abs(path.length - problem.length.target) < 1e-3);
    assert.ok(path.lean < 1e-9);
  }
});
