/** A search in strands: the same answers whoever works through the line, in whatever turn, put down and taken up. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { Chance } from '../../src/gaspath/route/chance.ts';
import { readRouteProblem, solutionJson } from '../../src/gaspath/route/exchange.ts';
import type { RouteProblem } from '../../src/gaspath/route/problem.ts';
import { siteOf } from '../../src/gaspath/route/site.ts';
import { MOST_STRANDS, Schedule, seedOf } from '../../src/gaspath/schedule.ts';
import { StrandHand } from '../../src/gaspath/strand-hand.ts';
import { type AnswerFound, type StrandStands, Strands, type Task } from '../../src/gaspath/strands.ts';
import { StrandsRun } from '../../src/gaspath/strands-run.ts';
import { verify } from '../../src/gaspath/verify/verify.ts';

const problemOf = (name: string): RouteProblem => {
  const file = new URL(`../reference/routing/${name}.json`, import.meta.url);
  const read = readRouteProblem(JSON.parse(readFileSync(file, 'utf8')));
  assert.ok(read.ok);
  return read.problem;
};

const ASKED = { answers: 2, brief: true } as const;
const PROBLEM = problemOf('L1-s1');
const SITE = siteOf(PROBLEM);

const inOne = (seed: number, before?: readonly StrandStands[]): StrandsRun => {
  const run = new StrandsRun(PROBLEM, seed, ASKED, { before, site: SITE });
  while (run.advance());
  return run;
};

/** Several hands, each with strands of its own; whose turn it is falls by chance. */
function inTurns(hands: number, seed: number, chance: Chance): readonly AnswerFound[] {
  const strands = new Strands(ASKED);
  const made = Array.from({ length: hands }, () => new StrandHand(PROBLEM, seed, SITE));
  const tasks = new Array<Task | undefined>(hands).fill(undefined);
  while (!strands.done) {
    const k = chance.below(hands);
    const task = tasks[k] ?? strands.take((strand) => strand % hands === k);
    if (task === undefined) continue;
    // one hand may be far slower than another
    const steps = 1 + chance.below(30);
    let goesOn = true;
    for (let n = 0; n < steps && goesOn; n += 1) {
      const told = made[k]!.advance(task, strands.savedOf(task.strand));
      strands.hear(told);
      goesOn = told.goesOn === true;
    }
    tasks[k] = goesOn ? task : undefined;
  }
  return strands.answers;
}

test('two answers, each checked, the same from one hand and from two, three or five in any turn', () => {
  for (const seed of [1, 2]) {
    const one = inOne(seed).strands.answers;
    assert.equal(one.length, 2);
    for (const { solution } of one) assert.deepEqual(verify(PROBLEM, solutionJson(solution)), []);
    assert.notDeepEqual(one[0]!.solution, one[1]!.solution);
    for (const [k, hands] of [2, 3, 5].entries()) {
      assert.deepEqual(inTurns(hands, seed, new Chance(100 * seed + k)), one, `${hands} hands`);
    }
  }
});

test('put down anywhere and taken up again, it comes to the same answers', () => {
  const whole = inOne(5).strands;
  for (const steps of [1, 7, 40]) {
    const run = new StrandsRun(PROBLEM, 5, ASKED, { site: SITE });
    for (let k = 0; k < steps; k += 1) run.advance();
    const saved = JSON.parse(JSON.stringify(run.strands.saved), (_, value) => value ?? Infinity);
    assert.deepEqual(inOne(5, saved).strands.answers, whole.answers, `after ${steps} steps`);
  }
});

test('the line: every strand goes on and none twice over the same work; more of them later', () => {
  const schedule = new Schedule();
  const done = new Array<number>(MOST_STRANDS).fill(0);
  for (let at = 0; at < 200; at += 1) {
    const piece = schedule.at(at)!;
    assert.equal(piece.at, at);
    assert.ok(piece.until > done[piece.strand]!);
    done[piece.strand] = piece.until;
  }
  assert.ok(Math.min(...done) > 0.5 * Math.max(...done), 'none is left behind');
  assert.equal(schedule.at(0)!.strand, 0);
  assert.equal(new Set(done.map((_, k) => seedOf(7, k))).size, MOST_STRANDS);
  assert.equal(seedOf(7, 0), 7);
});
