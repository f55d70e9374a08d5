/**
 * How the finder of equal primaries does on invented problems, on one thread or more: share solved and checked, time to the
 * first answer and to the last (grid and tests of what cannot be included), bends a pipe, refusals.
 *
 *   node --import tsx bench/route.ts [natural] [planted] [impossible] [--seeds 10] [--seconds 10] [--threads 1]
 *   node --max-old-space-size=6000 --import tsx bench/route.ts heavy
 *
 * `heavy` takes one natural problem with its shell split into two million triangles, and tells reading, grid and
 * first answer apart. `--first 1` is the first seed.
 */
import { performance } from 'node:perf_hooks';
import { searched } from '../src/cli/threads/search.ts';
import { PrimariesRun } from '../src/gaspath/primaries.ts';
import { readRouteProblem } from '../src/gaspath/route/exchange.ts';
import type { RouteProblem, RouteSolution } from '../src/gaspath/route/problem.ts';
import { siteOf } from '../src/gaspath/route/site.ts';
import { finely, IMPOSSIBLE, made, natural, planted, readMade } from './route/make.ts';

const words = process.argv.slice(2);
const given = (name: string, usual: number): number => {
  const at = words.indexOf(name);
  return at < 0 ? usual : Number(words[at + 1]);
};
const seeds = given('--seeds', 10);
const seconds = given('--seconds', 10);
const threads = given('--threads', 1);
const start = given('--first', 1);
const kinds = ['natural', 'planted', 'impossible', 'heavy'].filter((each) => words.includes(each));
const wanted = kinds.length === 0 ? ['natural', 'planted', 'impossible'] : kinds;
const each = words.includes('--each');

interface Seen {
  readonly id: string;
  readonly ending: 'solved' | 'impossible' | 'not found';
  readonly first: number;
  readonly total: number;
  readonly bendsFirst: number;
  readonly bends: number;
  readonly says: string;
  readonly solution: RouteSolution | undefined;
}

async function tried(problem: RouteProblem, seed = 1): Promise<Seen> {
  const began = performance.now();
  const gone = (): number => (performance.now() - began) / 1000;
  let first = Infinity;
  let bendsFirst = 0;
  const { strands, causes } = await searched({
    problem,
    seed,
    threads,
    answers: 1,
    brief: true,
    enough: (so) => {
      const found = so.answers[0]?.solution;
      if (found !== undefined && first === Infinity) {
        first = gone();
        bendsFirst = bendsOf(found);
      }
      return gone() >= seconds;
    },
  });
  const solution = strands.answers[0]?.solution;
  const ending = solution !== undefined ? 'solved' : causes.length > 0 ? 'impossible' : 'not found';
  const says = ending === 'not found' ? JSON.stringify(strands.nearest) : (causes[0]?.says ?? '');
  const seen = {
    id: problem.id ?? '',
    ending,
    first,
    total: gone(),
    bendsFirst,
    bends: bendsOf(solution),
    says,
    solution,
  } as const;
  if (each || ending === 'not found')
    console.log(
      `  ${seen.id}: ${ending}, first ${seen.first.toFixed(2)} s, total ${seen.total.toFixed(2)} s, bends ${bendsFirst.toFixed(1)} -> ${seen.bends.toFixed(1)} ${says}`,
    );
  return seen;
}

const bendsOf = (solution: RouteSolution | undefined): number =>
  solution === undefined
    ? 0
    : solution.pipes.reduce(
        (sum, { elements }) => sum + elements.filter(({ kind }) => kind === 'bend').length,
        0,
      ) / solution.pipes.length;

const part = (list: readonly number[], share: number): number =>
  [...list].sort((a, b) => a - b)[Math.min(list.length - 1, Math.floor(share * list.length))] ?? Number.NaN;

function tell(name: string, seen: readonly Seen[]): void {
  const solved = seen.filter(({ ending }) => ending === 'solved');
  const firsts = seen.map(({ first }) => first);
  const mean = (list: readonly number[]): string =>
    (list.reduce((a, b) => a + b, 0) / Math.max(1, list.length)).toFixed(2);
  console.log(
    `${name}: ${solved.length} of ${seen.length} solved and checked, ${seen.filter(({ ending }) => ending === 'impossible').length} called impossible; ` +
      `first answer: median ${part(firsts, 0.5).toFixed(2)} s, 95 % ${part(firsts, 0.95).toFixed(2)} s, worst ${part(firsts, 1).toFixed(2)} s; ` +
      `total: median ${part(
        seen.map(({ total }) => total),
        0.5,
      ).toFixed(
        2,
      )} s; bends a pipe ${mean(solved.map((s) => s.bendsFirst))} -> ${mean(solved.map((s) => s.bends))}`,
  );
}

if (wanted.includes('natural')) {
  const all: Seen[] = [];
  for (let level = 1; level <= 6; level++) {
    const seen: Seen[] = [];
    for (let k = 0; k < seeds; k++) seen.push(await tried(readMade(natural(level, start + k))));
    tell(`natural, level ${level}`, seen);
    all.push(...seen);
  }
  tell('natural, all', all);
}
if (wanted.includes('planted')) {
  const all: Seen[] = [];
  for (const spare of [2, 1, 0.5]) {
    const seen: Seen[] = [];
    for (let k = 0; k < seeds; k++) {
      const json = natural(3 + (k % 4), 99 + start + k);
      const { solution } = await tried(readMade(json), 1);
      if (solution === undefined) continue;
      seen.push(await tried(readMade(planted(json, solution, spare, k % 2 === 1)), 2));
    }
    tell(`planted, ${spare} mm spare`, seen);
    all.push(...seen);
  }
  tell('planted, all', all);
}
if (wanted.includes('impossible')) {
  const all: Seen[] = [];
  for (const why of IMPOSSIBLE) {
    const seen: Seen[] = [];
    for (let k = 0; k < Math.ceil(seeds / 2); k++)
      seen.push(await tried(readMade(made(why, 1 + (k % 6), 49 + start + k))));
    console.log(
      `impossible, ${why}: ${seen.filter(({ ending }) => ending === 'impossible').length} of ${seen.length} refused, slowest ${Math.max(...seen.map(({ total }) => total)).toFixed(2)} s; ${seen[0]!.says}`,
    );
    all.push(...seen);
  }
  console.log(
    `impossible, all: ${all.filter(({ ending }) => ending === 'impossible').length} of ${all.length} refused`,
  );
}
if (wanted.includes('heavy')) {
  const text = JSON.stringify(finely(natural(2, start), 2_000_000));
  const began = performance.now();
  const read = readRouteProblem(JSON.parse(text));
  if (!read.ok) throw new Error(read.problems[0]?.message);
  const readAt = performance.now();
  const site = siteOf(read.problem);
  const readyAt = performance.now();
  const run = new PrimariesRun(read.problem, 1, { site });
  while (run.solution === undefined && performance.now() - readyAt < 1000 * seconds) run.advance();
  const found = run.solution === undefined ? 'no answer' : 'first answer, checked,';
  const told = [readAt - began, readyAt - readAt, performance.now() - readyAt].map((ms) =>
    (ms / 1000).toFixed(1),
  );
  console.log(
    `heavy, ${read.problem.shell.triangles.length / 3} triangles: reading ${told[0]} s, tree and grid ${told[1]} s, ${found} after ${told[2]} s more`,
  );
}
