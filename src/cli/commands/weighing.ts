/** `flatpatch weighing`: where the centre of gravity is, by four pads and by the raised axle. */
import type { Command } from 'commander';
import { sheetNames, weighing } from '../../questions/index.ts';
import { readWithSpread } from '../../units/read.ts';
import { withWorkingOut } from '../answers/floor.ts';
import {
  type CarOptions,
  carOut,
  command,
  header,
  headLines,
  type MannerOptions,
  onCar,
  speaking,
  tailLines,
} from '../command.ts';
import { BadInput, badAsk } from '../outcome.ts';
import { amountText, table } from '../print.ts';
import { workingLines } from '../step-lines.ts';
import { refusalOf, tell } from '../tell.ts';
import { checkFigure } from './working.ts';

interface Options extends CarOptions, MannerOptions {
  readonly sheet?: string;
  readonly frontRaised?: string;
  readonly lift?: string;
  readonly working?: string;
}

export function weighingCommand(): Command {
  const made = command('weighing', 'Where the centre of gravity is, by four pads and by the raised axle', [
    'flatpatch weighing fenwold-201',
    'flatpatch weighing fenwold-201 --front-raised "283.4 kg ± 0.3 kg" --lift "400 mm ± 1 mm"',
    'flatpatch weighing fenwold-201 --sheet "as found, 11 May" --json',
  ]);
  return speaking(onCar(made))
    .option('--sheet <name>', 'a sheet of the file whose pads are meant; left out, the scales of the survey')
    .option('--front-raised <mass>', 'mass on both front pads with the rear pads raised, with its ±')
    .option('--lift <height>', 'how far the rear pads are raised, with its ±')
    .option('--working <figure>', 'how one figure comes about, such as behindFront or cross')
    .action(answer);
}

async function answer(file: string, options: Options): Promise<void> {
  await tell(file, options, ({ car, file: named }) => {
    const { sheet, frontRaised, lift, working } = options;
    if (sheet !== undefined && !sheetNames(car).includes(sheet))
      throw badAsk(
        'asked/sheet',
        `--sheet "${sheet}" is not in the file; it has: ${sheetNames(car).join(', ') || 'none'}.`,
      );
    if ((frontRaised === undefined) !== (lift === undefined))
      throw badAsk('asked/raised', '--front-raised and --lift belong together: write both.');
    const is = weighing(car, {
      ...(sheet === undefined ? {} : { sheet }),
      ...(working === undefined ? {} : { working }),
      ...(frontRaised === undefined || lift === undefined
        ? {}
        : {
            raised: { front: askedMeasured('--front-raised', frontRaised, 'kg'), lift: askedLift(lift) },
          }),
    });
    if (!is.reached && is.problems !== undefined)
      throw new BadInput(is.problems.map((problem) => ({ ...problem, file: named })));
    if (working !== undefined && is.reached)
      checkFigure(
        working,
        is.figures.map(({ id }) => id),
      );
    const out = is.reached ? withWorkingOut(is) : { reached: false as const, message: is.message };
    return {
      json: { ...header('weighing'), car: carOut(car, named), is: out },
      lines: () =>
        is.reached && is.working !== undefined
          ? [...headLines(car, 'weighed'), ...workingLines(is.working), ...tailLines([], is.cautions)]
          : is.reached
            ? [
                ...headLines(car, 'weighed'),
                '',
                ...table(
                  is.figures.map(({ words, value, unit, u }) => [
                    words,
                    amountText(value, unit, options.units, u),
                  ]),
                ),
                ...tailLines(is.notes, is.cautions),
              ]
            : [],
      refusal: refusalOf(out),
    };
  });
}

/** A lift below this tells nothing of the height, m. */
const LEAST_LIFT = 0.05;

function askedLift(text: string) {
  const lift = askedMeasured('--lift', text, 'm');
  if (lift.value < LEAST_LIFT)
    throw badAsk(
      'asked/lift',
      `--lift "${text}" is too little to tell a height; raise the axle by 250 mm or more.`,
    );
  return lift;
}

function askedMeasured(
  option: string,
  text: string,
  like: string,
): { readonly value: number; readonly u: number } {
  const read = readWithSpread(text, like);
  if (!read.ok) throw badAsk('asked/amount', `${option}: ${read.why}.`);
  return { value: read.is.value, u: read.is.u ?? 0 };
}
