/**
 * All default load cases of a demo car: four corners and both joints, with spread.
 *
 * Against the same number of six-by-six equations solved by numpy.linalg.solve one by one, in the same run: that is
 * what the members alone cost there, without finding the position, the rockers, the springs and the joints. Goal: one
 * case of one wheel with its spread within 0.3 s on one core once warm, so that the page follows a hand that rests.
 *
 *   node --import tsx bench/loads.ts
 *
 * Exit code 1 when our members and numpy's differ by more than 1e-6 of the largest; times are only reported.
 */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { carStanding } from '../src/loadpath/loads/car-equilibrium.ts';
import { cornerLoads } from '../src/loadpath/loads/corner-loads.ts';
import { WHEEL_NAMES } from '../src/loadpath/loads/doing.ts';
import { MEMBERS } from '../src/loadpath/loads/members.ts';
import { Numbers } from '../src/loadpath/numbers.ts';
import { JOINT_NAMES, jointOf, loadsOf, openCar, USUAL_DOINGS, WHEELS } from '../src/questions/index.ts';

const text = readFileSync(new URL('../cars/fenwold-201/car.yaml', import.meta.url), 'utf8');
const read = openCar({ text });
if (!read.ok) throw new Error('the demo car does not read');
const { car } = read;

const say = (line: string): void => {
  process.stdout.write(`${line}\n`);
};

function timed(work: () => void): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

function everything(): void {
  for (const { doing } of USUAL_DOINGS) {
    loadsOf(car, doing);
    for (const joint of JOINT_NAMES) jointOf(car, joint, doing);
  }
}

const cold = timed(everything);
const warm = timed(everything);
say(
  `${USUAL_DOINGS.length} cases, four corners, both joints, with spread: cold ${cold.toFixed(0)} ms, warm ${warm.toFixed(0)} ms`,
);

const [front] = WHEELS;
const { doing } = USUAL_DOINGS.find(({ name }) => name === 'braking')!;
const one = Math.min(
  ...Array.from({ length: 5 }, () => timed(() => loadsOf(car, doing, { wheels: [front!] }))),
);
const quick = Math.min(
  ...Array.from({ length: 5 }, () => timed(() => loadsOf(car, doing, { wheels: [front!], spread: false }))),
);
const joint = Math.min(...Array.from({ length: 5 }, () => timed(() => jointOf(car, 'engineToTub', doing))));
say(
  `one case, one wheel: ${quick.toFixed(1)} ms without spread, ${one.toFixed(0)} ms with it (goal 300 ms); one joint with spread ${joint.toFixed(0)} ms`,
);

// the same equations for numpy: upright and wheel with the rod on a wishbone or on themselves
const answers = USUAL_DOINGS.flatMap(({ doing }) => {
  const standing = carStanding(car.form, doing, new Numbers(car.values));
  return WHEEL_NAMES.map((wheel) => {
    const { members } = cornerLoads(standing, wheel);
    return { equations: members.equations, tension: MEMBERS.map((name) => members.solved[name]) };
  });
});
const inputs = 2 * car.inputs.length;
const python = ['python3', '/usr/bin/python3'].find(
  (each) => spawnSync(each, ['-c', 'import numpy']).status === 0,
);
if (python === undefined) say('Python with numpy is not here: left out');
else {
  const run = spawnSync(python, [fileURLToPath(new URL('loads_numpy.py', import.meta.url))], {
    input: JSON.stringify({ answers, rounds: inputs + 1 }),
    encoding: 'utf8',
    maxBuffer: 1e8,
  });
  if (run.status !== 0) throw new Error(run.stderr);
  const { milliseconds, apart, solves } = JSON.parse(run.stdout) as Record<string, number>;
  const agree = apart! < 1e-6;
  say(
    `numpy.linalg.solve, ${solves} six-by-six systems: ${milliseconds!.toFixed(0)} ms; ours ${(warm / milliseconds!).toFixed(2)} times it for the whole; ` +
      `members apart by ${apart!.toExponential(1)} of the largest${agree ? '' : ': DISAGREE'}`,
  );
  if (!agree) process.exitCode = 1;
}
