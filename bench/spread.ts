/**
 * Spread of a whole demo car: four corners, two axles and the car, every reading moved up and down.
 *
 * Against the same figures worked out plainly, with nothing kept and every reading moved for each, in the same run:
 * that is what a spread by moving readings costs when nothing is saved. Goal: under 0.3 s for the car on one core.
 * Times are of the processor, so that a busy machine tells much the same.
 *
 *   node --import tsx bench/spread.ts
 *
 * Exit code 1 when more passes are made than half of all; times are only reported.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { putAxleFigures } from '../src/loadpath/figures/axle.ts';
import { putCarFigures } from '../src/loadpath/figures/car.ts';
import { putCornerFigures } from '../src/loadpath/figures/corner.ts';
import { Numbers } from '../src/loadpath/numbers.ts';
import { AS_SURVEYED, type Car, everyFigure, openCar, WHEELS } from '../src/questions/index.ts';

const CARS = new URL('../cars/', import.meta.url);
const GOAL_MS = 300;
const WARM_ROUNDS = 7;
const LEVEL = { left: 0, right: 0, rack: 0 } as const;
const ENDS = ['front', 'rear'] as const;

function open(name: string): Car {
  const folder = new URL(`${name}/`, CARS);
  const lists = readdirSync(folder).filter((each) => each.endsWith('.csv'));
  const files = Object.fromEntries(lists.map((each) => [each, readFileSync(new URL(each, folder), 'utf8')]));
  const read = openCar({ text: readFileSync(new URL('car.yaml', folder), 'utf8'), files });
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  return read.car;
}

function wholeSpread(car: Car): number {
  const answer = everyFigure(car, AS_SURVEYED);
  if (!answer.reached) throw new Error('a figure is out of reach as surveyed');
  return answer.figures.length;
}

/** The seven passes of a car; each tells how many readings it leans on. */
const passes = (car: Car): readonly (() => number)[] => {
  const put = (): void => {};
  const leaned = (pass: (numbers: Numbers) => void) => (): number => {
    const numbers = new Numbers(car.values);
    pass(numbers);
    return numbers.leaned.size;
  };
  const at = { travel: 0, rack: 0 };
  return [
    ...WHEELS.map(({ end, side }) =>
      leaned((numbers) => putCornerFigures(car.form[end], side, at, numbers, put)),
    ),
    ...ENDS.map((end) => leaned((numbers) => putAxleFigures(car.form, end, LEVEL, numbers, put))),
    leaned((numbers) => putCarFigures(car.form, numbers, put)),
  ];
};

/** Milliseconds of the processor. */
function timed(work: () => void): number {
  const start = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1000;
}

/** Milliseconds that somebody waits. */
function onTheWall(work: () => void): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1]!;

const names = readdirSync(CARS, { withFileTypes: true })
  .filter((each) => each.isDirectory())
  .map((each) => each.name);

for (const name of names) {
  const car = open(name);
  let figures = 0;
  const cold = timed(() => {
    figures = wholeSpread(car);
  });
  const warm = median(Array.from({ length: WARM_ROUNDS }, () => timed(() => wholeSpread(car))));
  const wall = median(Array.from({ length: WARM_ROUNDS }, () => onTheWall(() => wholeSpread(car))));
  const all = passes(car);
  const moves = 2 * new Set(car.inputs.flatMap((input) => input.moves.map(([index]) => index))).size;
  const made = 2 * all.reduce((sum, pass) => sum + pass(), 0);
  const plainly = (): void => {
    for (const pass of all) pass();
  };
  const once =
    median(Array.from({ length: WARM_ROUNDS }, () => timed(() => Array.from({ length: 20 }, plainly)))) / 20;
  const plain = once * moves;
  console.log(
    `${name}: ${figures} figures, ${moves} moves: cold ${cold.toFixed(0)} ms, warm ${warm.toFixed(0)} ms, ${wall.toFixed(0)} ms on the wall ` +
      `(goal ${GOAL_MS} ms); plainly ${once.toFixed(2)} ms × ${moves} = ${plain.toFixed(0)} ms; ` +
      `ratio ${(warm / plain).toFixed(2)} in time, ${(made / (moves * all.length)).toFixed(2)} in passes`,
  );
  if (made > (moves * all.length) / 2) process.exitCode = 1;
}
