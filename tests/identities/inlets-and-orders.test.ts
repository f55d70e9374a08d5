/**
 * Inlets in rows, and orders that pass inlets over: against places by hand, numbers of circular orders, and the checker.
 *
 * Source of the numbers: n pulses stand in (n − 1)!/2 different orders round a ring, read either way (R. P. Stanley,
 * Enumerative Combinatorics, vol. 1, 2nd ed., Cambridge 2012, necklaces that may be turned over; from memory).
 */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { readRouteProblem, solutionJson } from '../../src/gaspath/route/exchange.ts';
import { inletPlace, inletPlaces, leastPitch } from '../../src/gaspath/route/inlets.ts';
import { legalOrders, overOf } from '../../src/gaspath/route/order.ts';
import type { RouteProblem } from '../../src/gaspath/route/problem.ts';
import { ROTATION_WORK, Search } from '../../src/gaspath/route/search.ts';
import { siteOf } from '../../src/gaspath/route/site.ts';
import { StrandsRun } from '../../src/gaspath/strands-run.ts';
import { verify } from '../../src/gaspath/verify/verify.ts';

type Json = Record<string, never> & { collector: object; order: object };

function problemOf(name: string, changed: (json: Json) => object = (json) => json): RouteProblem {
  const file = new URL(`../reference/routing/${name}.json`, import.meta.url);
  const read = readRouteProblem(changed(JSON.parse(readFileSync(file, 'utf8')) as Json));
  assert.ok(read.ok, JSON.stringify(read));
  return read.problem;
}

const factorial = (n: number): number => (n < 2 ? 1 : n * factorial(n - 1));

test('two rows of two and three inlets stand about their middle, as drawn on squared paper', () => {
  const of = { n: 5, ringRadius: 0, rows: { counts: [2, 3], pitch: 50 } };
  assert.deepEqual(
    [0, 1, 2, 3, 4].map((k) => [...inletPlace(of, k)]),
    [
      [-25, -25],
      [25, -25],
      [-50, 25],
      [0, 25],
      [50, 25],
    ],
  );
  assert.equal(leastPitch(of), 50);
  // a ring: neighbours a chord apart
  const ring = { n: 5, ringRadius: 40 };
  const at = inletPlaces(ring);
  assert.ok(Math.abs(Math.hypot(at[2]! - at[0]!, at[3]! - at[1]!) - leastPitch(ring)) < 1e-12);
});

test('of all (n − 1)!/2 orders round a ring one is in rotation; each stands 2n ways; the checker counts alike', () => {
  for (const name of ['L1-s1', 'L3-s1', 'L5-s1']) {
    const found = new StrandsRun(problemOf(name), 1, { answers: 1, brief: true });
    while (found.strands.answers.length === 0) found.advance();
    const { solution } = found.strands.answers[0]!;
    const n = solution.pipes.length;
    const firing = [...solution.pipes].sort((a, b) => a.inlet - b.inlet).map(({ port }) => port);
    const withPassed = (passed: number): RouteProblem =>
      problemOf(name, (json) => ({ ...json, order: { mode: 'rotation', firing, sense: 'either', passed } }));
    const all = legalOrders(withPassed(n * n));
    assert.equal(all.length, ((2 * n * factorial(n - 1)) / 2) | 0);
    const over = all.map((inlets) => overOf(withPassed(0), inlets));
    assert.equal(over.filter((each) => each === 0).length, 2 * n);
    assert.equal(legalOrders(withPassed(0)).length, 2 * n);
    for (const passed of [0, 1, 2, 3]) {
      assert.equal(legalOrders(withPassed(passed)).length, over.filter((each) => each <= passed).length);
      const problem = withPassed(passed);
      for (const [k, inlets] of all.entries()) {
        if (n > 4 && k % 11 !== 0) continue;
        const json = solutionJson({
          ...solution,
          pipes: solution.pipes.map((pipe) => ({ ...pipe, inlet: inlets[pipe.port]! })),
        });
        const told = verify(problem, json).some(({ code }) => code === 'order');
        assert.equal(told, over[k]! > passed, `${name}: ${inlets.join()}, ${passed} allowed`);
      }
    }
  }
});

test('orders in rotation come first; when they have not come out for long, others are tried too', () => {
  const problem = problemOf('L3-s1', (json) => ({
    ...json,
    // nothing fits with so much asked
    clearance: { ...(json as unknown as { clearance: object }).clearance, pipe: 80 },
    order: { mode: 'rotation', firing: [0, 1, 2, 3, 4], sense: 'either', passed: 25 },
  }));
  const search = new Search(siteOf(problem), 1);
  const seen: { readonly work: number; readonly over: number }[] = [];
  let starts = 0;
  while (search.work < 3 * ROTATION_WORK) {
    const { work } = search;
    search.advance();
    if (search.starts === starts) continue;
    starts = search.starts;
    seen.push({ work, over: overOf(problem, search.saved.order) });
  }
  for (const { work, over } of seen)
    assert.ok(over <= 2 * Math.floor(work / ROTATION_WORK), `${work}: ${over}`);
  const late = seen.filter(({ work }) => work >= ROTATION_WORK);
  assert.ok(late.some(({ over }) => over > 0));
  assert.ok(late.some(({ over }) => over === 0));
});

test('pipes into a row of inlets: found, checked, and refused when two change their mouths', () => {
  const problem = problemOf('L1-s1', (json) => {
    const { n, ringRadius: _, ...collector } = json.collector as { n: number; ringRadius: number };
    return {
      ...json,
      order: { mode: 'free' },
      collector: { ...collector, n, rows: { counts: [n], pitch: 46 } },
    };
  });
  const run = new StrandsRun(problem, 1, { answers: 1, brief: true });
  while (run.strands.answers.length === 0 && run.strands.work < 40_000) assert.ok(run.advance());
  const { solution } = run.strands.answers[0]!;
  assert.deepEqual(verify(problem, solutionJson(solution)), []);
  // the mouths stand in a line, a pitch apart, as the elements are walked
  const [one, two, ...rest] = solution.pipes;
  const damaged = {
    ...solution,
    pipes: [{ ...one!, inlet: two!.inlet }, { ...two!, inlet: one!.inlet }, ...rest],
  };
  assert.equal(verify(problem, solutionJson(damaged)).filter(({ code }) => code === 'end').length, 2);
});

test('rows that do not hold as many inlets as are told are refused, and a pitch that is none', () => {
  const file = new URL('../reference/routing/L1-s1.json', import.meta.url);
  const json = JSON.parse(readFileSync(file, 'utf8')) as Json;
  const { n } = json.collector as { n: number };
  for (const rows of [
    { counts: [n + 1], pitch: 46 },
    { counts: [n], pitch: 0 },
    { counts: [], pitch: 46 },
  ]) {
    const read = readRouteProblem({ ...json, collector: { ...json.collector, rows } });
    assert.equal(read.ok, false, JSON.stringify(rows));
  }
  const read = readRouteProblem({
    ...json,
    order: { mode: 'rotation', firing: [...Array(n).keys()], passed: -1 },
  });
  assert.equal(read.ok, false);
});
