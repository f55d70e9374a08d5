/**
 * What lacks of a found set is asked of the next one.
 *
 * Heat: two pipes whose runs lie side by side and whose flanges face each other, in closed form. Solids with a gap of
 * their own: finder and checker keep the same. Rounds: they end, and the same seed gives the same set.
 */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import {
  AGAIN,
  type Amendments,
  amended,
  moreForHot,
  NOTHING_MORE,
} from '../../src/gaspath/holding/amend.ts';
import { Holding, type Looked } from '../../src/gaspath/holding/holding.ts';
import { HeatedLine } from '../../src/gaspath/hot/heated-line.ts';
import type { Pipe } from '../../src/gaspath/pipework/pipe.ts';
import type { RouteProblem, RouteSolution } from '../../src/gaspath/route/problem.ts';
import type { StrandStands } from '../../src/gaspath/strands.ts';
import { StrandsRun } from '../../src/gaspath/strands-run.ts';
import { nearPlaces } from '../../src/gaspath/verify/nearest.ts';
import { laidOut } from '../../src/gaspath/verify/read.ts';
import { verify } from '../../src/gaspath/verify/verify.ts';
import { add, distance, type Vec3 } from '../../src/maths/vec3.ts';
import { readRouteProblem, solutionJson } from '../../src/questions/primaries.ts';
import { near } from '../near.ts';

const TUBE = { od: 0.05, wall: 0.001, density: 8000 };
const RADIUS = 0.075;
const HEAT = { expansion: 14e-6, hotter: 700 };
/** Between the faces of the flanges. */
const APART = 0.6;
const NO_WRENCH = [0, 0, 0, 0, 0, 0] as const;

/** Out of its flange towards the other, a bend of 90°, then a run of 300 mm along x; the runs `centres` apart. */
function facing(centres: number): readonly [Pipe, Pipe] {
  const straight = (APART - centres) / 2 - RADIUS;
  const one = (y: number, way: 1 | -1): Pipe => ({
    name: String(y),
    tube: TUBE,
    start: { p: [0, y, 0], d: [0, way, 0] },
    elements: [
      { kind: 'straight', length: straight },
      { kind: 'bend', radius: RADIUS, angle: Math.PI / 2, normal: [0, 0, -way] },
      { kind: 'straight', length: 0.3 },
    ],
  });
  return [one(0, 1), one(APART, -1)];
}

/** Least distance of the middles, each grown from its own flange with nothing that holds its mouth. */
function middlesHot(pipes: readonly [Pipe, Pipe]): number {
  const [a, b] = pipes.map((pipe) =>
    new HeatedLine(pipe, HEAT, 150e9).moved(NO_WRENCH).map(({ cold, shift }): Vec3 => add(cold, shift)),
  );
  return Math.min(...a!.map((p) => Math.min(...b!.map((q) => distance(p, q)))));
}

test('two runs grow towards each other by α L ΔT, and are asked exactly so much more cold', () => {
  const k = HEAT.expansion * HEAT.hotter;
  const asked = 0.005;
  const cold = 0.0085;
  const centres = TUBE.od + cold;
  // by hand: either run stands (600 − 58.5)/2 = 270.75 mm from its flange and comes nearer by 0.0098 of that
  const closer = 2 * k * ((APART - centres) / 2);
  near(closer, 5.3067e-3, 1e-9);
  near(middlesHot(facing(centres)), centres - closer, 1e-9);
  const hotGap = (of: number): number => middlesHot(facing(TUBE.od + of)) - TUBE.od * (1 + k);
  const hot = hotGap(cold);
  assert.ok(hot < asked);
  const more = moreForHot(NOTHING_MORE, {
    kind: 'pipe to pipe',
    name: '',
    inZone: false,
    asked: 1e3 * asked,
    askedCold: 1e3 * asked,
    cold: 1e3 * cold,
    hot: 1e3 * hot,
  });
  // by heat 5.307 mm, by their own girth 0.49 mm
  near(more.pipes, 1e3 * (closer + k * TUBE.od) + AGAIN, 1e-6);
  // with exactly that it holds, and with that less what is asked beyond it just does not
  const wide = asked + more.pipes / 1e3;
  assert.ok(hotGap(wide) >= asked);
  // the runs stand nearer to their flanges then, so that heat brings them together by a little less
  near(hotGap(wide) - asked, AGAIN / 1e3 + k * (wide - cold), 1e-8);
  // hot gap = w (1 + k) − k · 600 mm
  const least = (asked + k * APART) / (1 + k);
  near(hotGap(least), asked, 1e-9);
  assert.ok(hotGap(least - 1e-5) < asked);
});

test('what is asked more never becomes less, and where the ring has the pipes nothing is asked', () => {
  const gap = {
    kind: 'solid',
    name: 'floor',
    inZone: false,
    asked: 8,
    askedCold: 8,
    cold: 9,
    hot: 5,
  } as const;
  const once = moreForHot(NOTHING_MORE, gap);
  near(once.solids.floor!, 4 + AGAIN, 1e-12);
  assert.deepEqual(moreForHot(once, { ...gap, hot: 7.5 }), once);
  assert.deepEqual(moreForHot(once, { ...gap, kind: 'pipe to pipe', inZone: true }), once);
});

const problemOf = (name: string): RouteProblem => {
  const read = readRouteProblem(
    JSON.parse(readFileSync(new URL(`../reference/routing/${name}.json`, import.meta.url), 'utf8')),
  );
  assert.ok(read.ok);
  return read.problem;
};

function solved(problem: RouteProblem, seed = 1): RouteSolution {
  const run = new StrandsRun(problem, seed, { answers: 1, brief: true });
  for (let k = 0; k < 5000 && run.advance(); k += 1);
  const found = run.strands.answers[0]?.solution;
  assert.ok(found !== undefined);
  return found;
}

test('a solid with a gap of its own: the finder keeps it, the checker sees it breached', () => {
  const problem = problemOf('L3-s1');
  const found = solved(problem);
  // a ball on the middle of the first pipe's way, which the set that was found runs through
  const path = laidOut(found)[0]!.path;
  const piece = path.pieces[Math.floor(path.pieces.length / 2)]!;
  const wide = problem.tube.od / 2 + problem.clearance.solid;
  const at = (gap: number | undefined): RouteProblem => ({
    ...problem,
    solids: [
      ...problem.solids,
      {
        kind: 'capsule',
        name: 'ball',
        a: add(piece.p, [0, 0, wide + 3]),
        b: add(piece.p, [0, 0, wide + 4]),
        r: 2,
        ...(gap === undefined ? {} : { gap }),
      },
    ],
  });
  const breaches = (of: RouteProblem, solution: RouteSolution): readonly string[] =>
    verify(of, solutionJson(solution))
      .filter(({ says }) => says.includes('ball'))
      .map(({ says }) => says);
  const far = at(problem.clearance.solid + 15);
  assert.equal(breaches(far, found).length > 0, true);
  const kept = solved(far);
  assert.deepEqual(breaches(far, kept), []);
  const place = nearPlaces(far, kept.collector, laidOut(kept)).filter(({ against }) => against === 'ball');
  for (const { gap, asked } of place) {
    near(asked, problem.clearance.solid + 15, 1e-9);
    assert.ok(gap >= asked - 0.02);
  }
  // one that asks less than all others may be passed nearer
  assert.deepEqual(breaches(at(0), found).length <= breaches(at(undefined), found).length, true);
});

test('a set of an amended problem suits the one that was put', () => {
  const problem = problemOf('L3-s1');
  const more: Amendments = {
    ...NOTHING_MORE,
    shell: 2,
    pipes: 1.5,
    collectorBody: 1,
    straight: problem.limits.minStraightCollector + 6,
  };
  const harder = amended(problem, more);
  const found = solved(harder);
  assert.deepEqual(verify(harder, solutionJson(found)), []);
  assert.deepEqual(verify(problem, solutionJson(found)), []);
  const last = found.pipes.map(({ elements }) => elements.at(-1)!);
  for (const each of last)
    assert.ok(each.kind === 'straight' && each.length >= problem.limits.minStraightCollector + 6 - 0.01);
});

/** A look that wants pipes farther apart than they are asked. */
function wanting(problem: RouteProblem, gap: number): (solution: RouteSolution, more: Amendments) => Looked {
  return (solution, more) => {
    const places = nearPlaces(problem, solution.collector, laidOut(solution)).filter(
      ({ kind, inZone }) => kind === 'pipe to pipe' && !inZone,
    );
    const least = Math.min(...places.map((each) => each.gap));
    return least >= gap
      ? { lacking: 0 }
      : { lacking: 1, next: { ...more, pipes: gap - problem.clearance.pipe } };
  };
}

/** Works it to its end, or until so many pieces were done. */
function worked(holding: Holding, most = 100_000): Holding {
  let first: readonly StrandStands[] | undefined;
  for (let k = 0; k < most && holding.does !== 'done'; k += 1) {
    if (holding.does !== 'search') {
      holding.advance();
      continue;
    }
    const { of, problem, seed, answers, brief } = holding.search;
    const before = of === 'first' ? first : undefined;
    const run = new StrandsRun(problem, seed, { answers, brief }, { before });
    while (run.advance());
    if (of === 'first') first = run.strands.saved;
    holding.found(run.strands.answers);
  }
  return holding;
}

test('what a look wants is mended into the set, from the same seed the same, taken up again or not', () => {
  const problem = problemOf('L3-s1');
  const gap = problem.clearance.pipe + 6;
  const asked = { problem, seed: 4, sets: 1, from: NOTHING_MORE, look: wanting(problem, gap) };
  const held = worked(new Holding(asked));
  assert.equal(held.held.length, 1);
  const { solution, more } = held.held[0]!;
  near(more.pipes, 6, 1e-12);
  assert.deepEqual(verify(amended(problem, more), solutionJson(solution)), []);
  assert.ok(held.nearest !== undefined && held.nearest.lacking === 1, 'the first set did not hold it');
  // broken off when its mending begins, and taken up from what was saved
  const first = new Holding(asked);
  worked(first, 2);
  assert.equal(first.does, 'mend');
  const again = worked(new Holding(asked, structuredClone(first.saved)));
  assert.deepEqual(again.held[0]!.solution, solution);
});

test('what nothing can hold comes to an end, with the set that lacks least', () => {
  const problem = problemOf('L1-s1');
  let looks = 0;
  const holding = worked(
    new Holding({
      problem,
      seed: 1,
      sets: 1,
      from: NOTHING_MORE,
      look: () => {
        looks += 1;
        return { lacking: looks === 2 ? 1 : 3 };
      },
    }),
  );
  assert.equal(holding.does, 'done');
  assert.equal(holding.held.length, 0);
  assert.equal(holding.nearest!.lacking, 1);
  // one look a set: nothing was told that could be asked more
  assert.equal(looks, 6);
});

test('of several that are wanted each is held, and gone on with one more is looked for', () => {
  const problem = problemOf('L1-s1');
  const asked = { problem, seed: 1, from: NOTHING_MORE, look: () => ({ lacking: 0 }) };
  const two = worked(new Holding({ ...asked, sets: 2 }));
  assert.deepEqual(
    two.held.map(({ strand }) => strand),
    two.saved.taken,
  );
  const third = new Holding({ ...asked, sets: 3 }, structuredClone(two.saved));
  assert.equal(third.does, 'search');
  assert.equal(third.search.answers, 3);
  assert.equal(new Holding({ ...asked, sets: 2 }, structuredClone(two.saved)).does, 'done');
});
