/** `flatpatch working`: how one figure came about, step by step, down to the readings. */
import type { Command } from 'commander';
import type { Car } from '../../car/read.ts';
import { nearest } from '../../measured/problem.ts';
import {
  type AxleAnswer,
  axleFigures,
  carFigures,
  workingOfAxle,
  workingOfCar,
} from '../../questions/axle.ts';
import { type CornerAnswer, cornerFigures } from '../../questions/corner.ts';
import { AS_SURVEYED, type End, rackOf, type Stance, travelOf, type Wheel } from '../../questions/figure.ts';
import { type WorkingAnswer, workingOf } from '../../questions/working.ts';
import { readingOut, stepOut } from '../answers/corner.ts';
import { figureOut } from '../answers/form.ts';
import { askedEnd, askedWheel, wheelWords } from '../asked.ts';
import { openCar } from '../car-argument.ts';
import {
  type CarOptions,
  carOut,
  command,
  header,
  headLines,
  type MannerOptions,
  mannerOf,
  onCar,
  sayJson,
  sayLines,
  sayWarnings,
  speaking,
} from '../command.ts';
import { badAsk, NotReached } from '../outcome.ts';
import { amountText, figureLines } from '../print.ts';
import { stepLines } from '../step-lines.ts';
import { type AskedAxle, askedStance, takingStance } from './axle.ts';

interface Options extends CarOptions, MannerOptions, AskedAxle {
  readonly wheel?: string;
  readonly end?: string;
  readonly car?: true;
  readonly figure: string;
}

export function workingCommand(): Command {
  const made = command(
    'working',
    'How a figure was worked out: formulas, numbers put in, where each came from',
    [
      'flatpatch working fenwold-201 --wheel front-left --figure wheelRate',
      'flatpatch working ashgarth-501 --wheel front-right --figure barStress --travel "20 mm"',
      'flatpatch working fenwold-201 --end rear --figure rollRate --json',
      'flatpatch working fenwold-201 --car --figure rollFrequency',
    ],
  );
  return takingStance(speaking(onCar(made)))
    .option('--wheel <wheel>', 'a figure of one corner: front-left, front-right, rear-left or rear-right')
    .option('--end <end>', 'a figure of an axle: front or rear')
    .option('--car', 'a figure of the whole car')
    .requiredOption(
      '--figure <id>',
      'name of the figure, such as wheelRate (--json of the other commands lists them)',
    )
    .action(answer);
}

/** What the figure belongs to: how its working is asked for, and in words. */
interface Subject {
  readonly of: 'corner' | 'axle' | 'car';
  readonly wheel?: Wheel;
  readonly end?: End;
  readonly at: Stance;
  readonly words: string;
  readonly working: (car: Car, figure: string) => WorkingAnswer;
  readonly figures: (car: Car) => CornerAnswer | AxleAnswer;
}

/** @throws BadInput unless exactly one of wheel, end and car is asked for */
function subjectOf(options: Options): Subject {
  const asked = [options.wheel, options.end, options.car].filter((each) => each !== undefined);
  if (asked.length !== 1)
    throw badAsk('asked/subject', 'Say whose figure it is: one of --wheel, --end or --car.');
  if (options.wheel !== undefined) {
    const wheel = askedWheel(options.wheel);
    const at = askedStance(wheel.end, options);
    const position = { travel: travelOf(at, wheel), rack: rackOf(at, wheel) };
    return {
      of: 'corner',
      wheel,
      at,
      words: `${wheelWords(wheel)} wheel at ${amountText(position.travel, 'm', options.units)}`,
      working: (car, figure) => workingOf(car, { wheel, at: position, figure }),
      figures: (car) => cornerFigures(car, wheel, position),
    };
  }
  if (options.end !== undefined) {
    const end = askedEnd(options.end);
    const at = askedStance(end, options);
    return {
      of: 'axle',
      end,
      at,
      words: `${end} axle`,
      working: (car, figure) => workingOfAxle(car, end, at, figure),
      figures: (car) => axleFigures(car, end, at),
    };
  }
  return {
    of: 'car',
    at: AS_SURVEYED,
    words: 'the whole car as surveyed',
    working: workingOfCar,
    figures: (car) => carFigures(car),
  };
}

async function answer(file: string, options: Options): Promise<void> {
  const subject = subjectOf(options);
  const { car, file: named } = await openCar(file, options);
  const known = subject.figures(car);
  if (!known.reached) throw new NotReached(known.message);
  checkFigure(
    options.figure,
    known.figures.map((each) => each.id),
  );
  const working = subject.working(car, options.figure);
  if (!working.reached) throw new NotReached(working.message);
  sayWarnings(car);
  if (options.json) {
    const { figure, steps, readings } = working;
    const { of, wheel, end, at } = subject;
    sayJson({
      ...header('working'),
      car: carOut(car, named),
      of,
      ...(wheel === undefined ? {} : { wheel }),
      ...(end === undefined ? {} : { end }),
      at,
      figure: figureOut(figure),
      steps: steps.map(stepOut),
      readings: Object.fromEntries(Object.entries(readings).map(([path, each]) => [path, readingOut(each)])),
    });
    return;
  }
  sayLines([
    ...headLines(car, subject.words),
    ...figureLines([working.figure], { ...mannerOf(options), shares: true }),
    ...working.steps.flatMap((step, index) => stepLines(step, index + 1, working.readings)),
  ]);
}

/** @throws BadInput where there is no such figure, with the nearest */
export function checkFigure(id: string, known: readonly string[]): void {
  if (known.includes(id)) return;
  const near = nearest(id, known);
  const hint = near === undefined ? '' : `Did you mean "${near}"? `;
  throw badAsk('asked/figure', `There is no figure "${id}" here.`, `${hint}There are: ${known.join(', ')}.`);
}
