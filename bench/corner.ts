/**
 * Corner solves per second: position, ratios and second derivatives, in a warm sweep of ±50 mm.
 *
 * Against, in the same run and over the same sweep of the same corner:
 *   SciPy's optimize.root, seven unknowns (pose of the upright, rocker angle), position only
 *   a C++ Newton loop (g++ -O2) with analytic Jacobian over the same seven unknowns, position only
 * Both start each solve from the one before. Goals: 250 times the first, half of the second.
 *
 *   node --import tsx bench/corner.ts
 *
 * Exit code 1 when positions disagree or the count of evaluations has grown; times are only reported.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { prepareCorner } from '../src/loadpath/corner/prepare.ts';
import { cornerState, rockerSlot, solveCornerFast } from '../src/loadpath/corner/solve.ts';
import { unit, type Vec3 } from '../src/maths/vec3.ts';
import { frontLeft } from '../tests/identities/anycorner.ts';

const STEP = 0.0005;
const HALF = 100;
/** Up from −50 to +50 mm and down again, in steps of 0.5 mm. */
const sweep = Array.from({ length: 4 * HALF }, (_, i) => STEP * (i < 2 * HALF ? i - HALF : 3 * HALF - i));
const MOST_EVALUATIONS = 2.05; // positions tried per solve; a warm step needs two

const corner = prepareCorner(frontLeft);
const out = cornerState(corner);
let tried = 0;
let solves = 0;
let sum = 0;
let failed = false;
function ours(seconds: number): number {
  const start = performance.now();
  let n = 0;
  while (performance.now() - start < seconds * 1000) {
    sum = 0;
    for (const travel of sweep) {
      tried += solveCornerFast(corner, travel, 0, out);
      sum += out[rockerSlot] ?? 0;
    }
    n += sweep.length;
  }
  solves += n;
  return n / ((performance.now() - start) / 1000);
}

interface Rival {
  readonly perSecond: number;
  readonly sum: number;
}

/** The last line of a rival's output is "solves-per-second sum-of-rocker-angles-over-the-sweep". */
function rival(command: string, args: readonly string[]): Rival | string {
  const run = spawnSync(command, args, { encoding: 'utf8' });
  if (run.error !== undefined) return `${command} is not here (${run.error.message})`;
  if (run.status !== 0) failed = true;
  if (run.status !== 0) return `${command} ended with ${run.status}: ${run.stderr.trim().split('\n').at(-1)}`;
  const [perSecond, total] = run.stdout.trim().split('\n').at(-1)?.split(' ').map(Number) ?? [];
  if (perSecond === undefined || total === undefined) return `${command} printed nothing to read`;
  return { perSecond, sum: total };
}

const here = import.meta.dirname;
const work = mkdtempSync(join(tmpdir(), 'flatpatch-bench-'));
try {
  const g = frontLeft;
  const onRockerAxis: Vec3 = [
    g.rockerPivot[0] + corner.rockerAxis[0],
    g.rockerPivot[1] + corner.rockerAxis[1],
    g.rockerPivot[2] + corner.rockerAxis[2],
  ];
  const order: readonly Vec3[] = [
    g.upperFront,
    g.upperRear,
    g.upperOuter,
    g.lowerFront,
    g.lowerRear,
    g.lowerOuter,
    g.toeInner,
    g.toeOuter,
    g.rodOuter,
    g.rodInner,
    g.rockerPivot,
    onRockerAxis,
    g.wheelCentre,
    unit(g.wheelAxis),
  ];
  const problem = join(work, 'problem.txt');
  const numbers = [...order.flat(), g.loadedRadius, sweep.length, ...sweep];
  writeFileSync(problem, `${numbers.map((v) => v.toPrecision(17)).join('\n')}\n`);

  const binary = join(work, 'corner');
  const compiled = spawnSync('g++', ['-O2', '-std=c++17', '-o', binary, join(here, 'corner.cpp')], {
    encoding: 'utf8',
  });
  const python = ['python3', '/usr/bin/python3'].find(
    (p) => spawnSync(p, ['-c', 'import scipy']).status === 0,
  );

  ours(0.5); // let the compiler of the engine settle
  tried = 0;
  solves = 0;
  const first = ours(1);
  const cpp =
    compiled.status === 0 ? rival(binary, [problem]) : 'g++ is not here or did not compile: left out';
  const second = ours(1);
  const scipy =
    python === undefined
      ? 'Python with SciPy is not here: left out'
      : rival(python, [join(here, 'corner_scipy.py'), problem]);
  const mine = (first + second) / 2;
  const evaluations = tried / solves;

  const say = (line: string): void => {
    process.stdout.write(`${line}\n`);
  };
  say(
    `corner, position, ratios and second derivatives: ${Math.round(mine)} solves a second (${Math.round(first)}, ${Math.round(second)})`,
  );
  say(`positions tried per solve: ${evaluations.toFixed(3)} (at most ${MOST_EVALUATIONS})`);
  if (evaluations > MOST_EVALUATIONS) failed = true;
  const compare = (name: string, other: Rival | string, goal: number): void => {
    if (typeof other === 'string') {
      say(`${name}: ${other}`);
      return;
    }
    const apart = Math.abs(other.sum - sum) / sweep.length;
    // 1e-8 rad: SciPy stops at a relative step of 1e-10 by its own setting
    const agree = apart < 1e-8;
    if (!agree) failed = true;
    const ratio = mine / other.perSecond;
    say(
      `${name}: ${Math.round(other.perSecond)} solves a second; ours ${ratio.toFixed(2)} times it, goal ${goal}: ` +
        `${ratio >= goal ? 'met' : 'missed'}; mean rocker angle apart by ${apart.toExponential(1)} rad${agree ? '' : ': DISAGREE'}`,
    );
  };
  compare('SciPy optimize.root, position only', scipy, 250);
  compare('C++ Newton loop, position only', cpp, 0.5);
} finally {
  rmSync(work, { recursive: true, force: true });
}
process.exitCode = failed ? 1 : 0;
