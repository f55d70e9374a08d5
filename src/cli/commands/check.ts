/** `flatpatch check`: all that is wrong with a car file, in every spec, and how well its readings are known. */
import type { Command } from 'commander';
import type { Car } from '../../car/read.ts';
import { type Problem, problemText } from '../../measured/problem.ts';
import { openCar } from '../../questions/open-car.ts';
import { type StateOfReadings, stateOfReadings } from '../../questions/readings.ts';
import { findCar } from '../car-argument.ts';
import {
  type CarOptions,
  command,
  endWith,
  header,
  type MannerOptions,
  onCar,
  sayJson,
  sayLines,
  speaking,
} from '../command.ts';
import { EXIT } from '../outcome.ts';

export function checkCommand(): Command {
  const made = command(
    'check',
    'Whether a car file can be read in each of its specs; all problems at once, with line and column',
    ['flatpatch check cars/fenwold-201', 'flatpatch check - < cars/fenwold-201/car.yaml'],
  );
  return speaking(onCar(made)).action(answer);
}

interface SpecRead {
  readonly spec: string;
  readonly car?: Car;
  readonly problems: readonly Problem[];
}

async function answer(file: string, options: CarOptions & MannerOptions): Promise<void> {
  const { source, file: named } = await findCar(file, options);
  const first = readSpec(source, options.spec);
  const others =
    options.spec === undefined ? (first.car?.specs ?? []).filter((each) => each !== first.spec) : [];
  const specs = [first, ...others.map((spec) => readSpec(source, spec))];
  const problems = onceEach(specs.flatMap((each) => each.problems));
  const good = specs.every((each) => each.car !== undefined);
  if (options.json) {
    sayJson({
      ...header('check'),
      file: named,
      good,
      specs: specs.map(({ spec, car }) => ({
        spec,
        good: car !== undefined,
        ...(car === undefined ? {} : { readings: stateOfReadings(car) }),
      })),
      problems: [...problems],
    });
  } else {
    const errors = problems.filter((each) => each.weight === 'error').length;
    const warnings = problems.length - errors;
    sayLines([
      ...problems.map((each) =>
        each.weight === 'warning' ? `Mind: ${problemText(each)}` : problemText(each),
      ),
      ...specs.flatMap(({ spec, car }) =>
        car === undefined ? [] : [`Spec "${spec}": ${stateWords(stateOfReadings(car))}.`],
      ),
      good
        ? `${named}: can be read${warnings === 0 ? '' : `; ${warnings} to mind`}.`
        : `${named}: ${errors === 1 ? 'one thing is' : `${errors} things are`} wrong.`,
    ]);
  }
  if (!good) endWith(EXIT.badInput);
}

function readSpec(source: Parameters<typeof openCar>[0], spec: string | undefined): SpecRead {
  const read = openCar({ ...source, ...(spec === undefined ? {} : { spec }) });
  if (read.ok) return { spec: read.car.spec, car: read.car, problems: read.car.warnings };
  return { spec: spec ?? 'as filed', problems: read.problems };
}

/** The same slip shows in every spec that leans on it; it is told once. */
function onceEach(problems: readonly Problem[]): readonly Problem[] {
  return [...new Map(problems.map((each) => [problemText(each), each])).values()];
}

function stateWords({ total, stated, usual, mirrored }: StateOfReadings): string {
  const taken = mirrored === 0 ? '' : `; ${mirrored} stand for the other side too`;
  return `${total} readings, ${stated} with a spread of their own or of their instrument, ${usual} with the usual spread only${taken}`;
}
