/** `flatpatch route`: equal primaries found from a problem in its exchange form, and written where they stand. */
import { randomUUID } from 'node:crypto';
import { readFile, rename, rm, writeFile } from 'node:fs/promises';
import { performance } from 'node:perf_hooks';
import type { Command } from 'commander';
import {
  EXHAUST_CAUTIONS,
  type Miss,
  missWords,
  pipesTold,
  type RouteProblem,
  type RouteSolution,
  readRouteProblem,
  solutionJson,
} from '../../questions/primaries.ts';
import { askedCount } from '../asked.ts';
import { command, complain, endWith, header, sayJson, sayLines, tailLines } from '../command.ts';
import { BadInput, badAsk, EXIT } from '../outcome.ts';
import { table } from '../print.ts';
import { askedThreads, THREADS_HELP } from '../threads/asked.ts';
import { searched } from '../threads/search.ts';

interface Options {
  readonly problem: string;
  readonly solution: string;
  readonly seconds: string;
  readonly seed: string;
  readonly threads?: string;
  readonly json?: true;
}

export function routeCommand(): Command {
  return command(
    'route',
    'Equal primaries: all pipes of one length from ports to collector, clear of shell, solids and each other',
    [
      'flatpatch route --problem cars/route-example.json --solution primaries.json --seconds 20',
      'flatpatch route --problem cars/route-example.json --solution primaries.json --seconds 20 --seed 2 --json',
    ],
  )
    .requiredOption('--problem <file>', 'the problem, as JSON of the form primaries-problem/1 (mm, degrees)')
    .requiredOption(
      '--solution <file>',
      'where the answer is written, as JSON of the form primaries-solution/1',
    )
    .option('--seconds <number>', 'longest time to look, 1 to 3600', '10')
    .option('--seed <number>', 'another whole number looks in another order', '1')
    .option('--threads <number>', THREADS_HELP)
    .option('--json', 'how it went, as JSON (its form: flatpatch schema --of answers)')
    .action(answer);
}

async function answer(options: Options): Promise<void> {
  const began = performance.now();
  const gone = (): number => (performance.now() - began) / 1000;
  const limit = askedCount('--seconds', options.seconds, 1, 3600);
  const seed = askedCount('--seed', options.seed, 0, 4_294_967_295);
  const threads = askedThreads(options.threads);
  const problem = await readProblem(options.problem);
  const ready = gone();
  let first: number | undefined;
  const { strands, causes } = await searched({
    problem,
    seed,
    threads,
    answers: 1,
    brief: true,
    enough: (so) => {
      if (first === undefined && so.answers.length > 0) first = gone();
      return gone() >= limit;
    },
  });
  const solution = strands.answers[0]?.solution;
  if (solution !== undefined) first ??= gone();
  const ending = solution !== undefined ? 'solved' : causes.length > 0 ? 'impossible' : 'not found';
  if (solution !== undefined) await writeWhole(options.solution, solution);
  if (options.json)
    sayJson({
      ...header('route'),
      ending,
      ...(problem.id === undefined ? {} : { id: problem.id }),
      seconds: { ready, ...(first === undefined ? {} : { first }), total: gone() },
      threads,
      work: strands.work,
      starts: strands.starts,
      ...(solution === undefined ? {} : { pipes: [...pipesTold(solution)] }),
      ...(causes.length === 0
        ? {}
        : {
            causes: causes.map(({ pipes, ...each }) => ({
              ...each,
              ...(pipes === undefined ? {} : { pipes: [...pipes] }),
            })),
          }),
      ...(ending !== 'not found' || strands.nearest === undefined
        ? {}
        : { nearest: nearestOut(strands.nearest) }),
      cautions: [...EXHAUST_CAUTIONS],
    });
  else if (solution !== undefined) sayLines(solvedLines(problem, solution));
  if (ending === 'solved') {
    complain(`${options.solution}: written; found in ${first!.toFixed(2)} s, ${gone().toFixed(2)} s in all.`);
    return;
  }
  if (ending === 'impossible') {
    complain('It cannot be packed as it is asked:');
    for (const { says } of causes) complain(`  ${says}`);
    endWith(EXIT.notReached);
    return;
  }
  complain(
    `Nothing was found in ${limit} s, in ${strands.starts} starts. That does not prove that there is nothing.`,
  );
  complain(missWords(strands.nearest));
  complain('Another --seed, more --seconds or a little more room may do.');
  endWith(EXIT.notFound);
}

const nearestOut = ({ by, what, pipe, other }: Miss) => ({
  by,
  what,
  pipe,
  other,
});

/** @throws BadInput where there is no such file, it is no JSON, or it is not of the form */
async function readProblem(file: string): Promise<RouteProblem> {
  let json: unknown;
  try {
    json = JSON.parse(await readFile(file, 'utf8'));
  } catch (reason) {
    if (reason instanceof SyntaxError) throw badAsk('route/json', `"${file}" is no JSON: ${reason.message}.`);
    throw badAsk('route/file', `"${file}" cannot be read: ${(reason as NodeJS.ErrnoException).code}.`);
  }
  const read = readRouteProblem(json);
  if (!read.ok) throw new BadInput(read.problems.map((each) => ({ ...each, file })));
  return read.problem;
}

/** Beside its place first, then moved there: an answer is there whole or not at all. */
async function writeWhole(file: string, solution: RouteSolution): Promise<void> {
  const beside = `${file}.${randomUUID()}.part`;
  try {
    await writeFile(beside, `${JSON.stringify(solutionJson(solution), null, 1)}\n`);
    await rename(beside, file);
  } catch (reason) {
    await rm(beside, { force: true }).catch(() => undefined);
    throw badAsk('asked/solution', `"${file}" cannot be written: ${(reason as NodeJS.ErrnoException).code}.`);
  }
}

function solvedLines(problem: RouteProblem, solution: RouteSolution): string[] {
  const { od, wall, steps = [] } = problem.tube;
  const sizes = [
    `${od} × ${wall} mm`,
    ...steps.map((step) => `from ${step.from} mm ${step.od} × ${step.wall} mm`),
  ].join(', ');
  const at = new Map(solution.pipes.map(({ port, stepsAt = [] }) => [port + 1, stepsAt]));
  const { target, tol } = problem.length;
  const rows = pipesTold(solution).map(({ port, inlet, bends, turnDeg, lengthMm }) => [
    `${port}`,
    `${inlet}`,
    `${bends}`,
    `${turnDeg.toFixed(1)}°`,
    `${lengthMm.toFixed(2)} mm`,
    ...(at.get(port) ?? []).map((each) => `${each.toFixed(1)} mm`),
  ]);
  const heads = ['port', 'inlet', 'bends', 'turned in all', 'length', ...steps.map(() => 'step at')];
  const { origin, axis } = solution.collector;
  const three = (v: readonly number[], digits: number): string =>
    v.map((each) => each.toFixed(digits)).join(', ');
  return [
    `${solution.pipes.length} primaries of ${sizes} tube, ${target} ± ${tol} mm on the centre line from flange to inlet mouth`,
    '',
    ...table([heads, ...rows]).map((line) => `  ${line}`),
    '',
    `  Collector at ${three(origin, 2)} mm, its axis along ${three(axis, 5)}.`,
    '  Checked by other means: every clearance, straight, bend and end keeps what is asked.',
    ...tailLines([], EXHAUST_CAUTIONS),
  ];
}
