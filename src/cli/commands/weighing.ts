/** `flatpatch weighing`: where the centre of gravity is, by four pads and by the raised axle. */
import type { Command } from 'commander';
import { gaugeAnswer, sheetNames, type WeighingAnswer } from '../../questions/index.ts';
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
import { askedByGauge, OptionTexts } from '../gauged.ts';
import { BadInput } from '../outcome.ts';
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
    const typed = new OptionTexts();
    typed.put('--sheet', 'sheet', sheet);
    typed.put('--front-raised', 'frontRaised', frontRaised);
    typed.put('--lift', 'lift', lift);
    const question = askedByGauge(
      'weighing',
      typed.texts,
      {
        option: (key) => (key === 'frontRaised' ? '--front-raised' : `--${key}`),
        nothing: 'Nothing is asked.',
        half: {
          code: 'raised',
          words: () => '--front-raised and --lift belong together: write both.',
        },
      },
      sheetNames(car),
    );
    const is = gaugeAnswer(car, question, working) as WeighingAnswer;
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
