/** `flatpatch ladder`: a set of bars that steps the wheel rate evenly between two rates. */
import { type Command, Option } from 'commander';
import { barLadder, type LadderAnswer } from '../../questions/bar-ladder.ts';
import { askedAmount, askedCount, askedWheel, wheelWords } from '../asked.ts';
import { openCar } from '../car-argument.ts';
import {
  type CarOptions,
  carOut,
  command,
  header,
  headLines,
  type MannerOptions,
  onCar,
  sayJson,
  sayLines,
  sayWarnings,
  speaking,
  tailLines,
} from '../command.ts';
import { unanswered } from '../outcome.ts';
import { amountText, table } from '../print.ts';
import { type Quantity, quantities, quantityLines } from '../quantity.ts';

interface Options extends CarOptions, MannerOptions {
  readonly wheel: string;
  readonly from: string;
  readonly to: string;
  readonly count: string;
  readonly even: 'difference' | 'ratio';
  readonly step?: string;
  readonly material?: string;
  readonly length?: string;
}

export function ladderCommand(): Command {
  const made = command(
    'ladder',
    'The set of torsion bars that steps the wheel rate evenly between two rates',
    [
      'flatpatch ladder ashgarth-501 --wheel front-left --from "200 N/mm" --to "300 N/mm" --count 5',
      'flatpatch ladder fenwold-201 --wheel front-left --from "90 N/mm" --to "160 N/mm" --count 4 --even ratio --material "300M bar" --length "330 mm"',
    ],
  );
  return speaking(onCar(made))
    .requiredOption('--wheel <wheel>', 'front-left, front-right, rear-left or rear-right')
    .requiredOption('--from <rate>', 'wheel rate of the softest bar, such as "200 N/mm"')
    .requiredOption('--to <rate>', 'wheel rate of the stiffest bar')
    .option('--count <number>', 'how many bars', '5')
    .addOption(
      new Option('--even <way>', 'what is to be even from bar to bar')
        .choices(['difference', 'ratio'])
        .default('difference'),
    )
    .option('--step <length>', 'step in diameter that the grinder holds (0.05 mm)')
    .option('--material <name>', 'for a corner without a bar: the material')
    .option('--length <length>', 'active length; left out, that of the bar in the car file')
    .action(answer);
}

async function answer(file: string, options: Options): Promise<void> {
  const wheel = askedWheel(options.wheel);
  const { even, material, step, length } = options;
  const asked = {
    from: askedAmount('--from', options.from, 'N/m'),
    to: askedAmount('--to', options.to, 'N/m'),
    count: askedCount('--count', options.count, 2, 40),
    even,
    ...(step === undefined ? {} : { step: askedAmount('--step', step, 'm') }),
    ...(material === undefined ? {} : { material }),
    ...(length === undefined ? {} : { activeLength: askedAmount('--length', length, 'm') }),
  };
  const { car, file: named } = await openCar(file, options);
  const ladder = barLadder(car, wheel, asked);
  if (!ladder.reached) throw unanswered(ladder);
  sayWarnings(car);
  const rungs = ladder.rungs.map((rung) => rungQuantities(rung, even));
  const steps = stepQuantities(ladder, even);
  if (options.json) {
    sayJson({
      ...header('ladder'),
      car: carOut(car, named),
      wheel,
      even,
      rungs: rungs.map((each) => ({ quantities: each })),
      steps,
      notes: [...ladder.notes],
      cautions: [...ladder.cautions],
    });
    return;
  }
  const heading = rungs[1]!.map((each) => each.means);
  const rows = rungs.map((rung) =>
    rungs[1]!.map(({ id }) => {
      const cell = rung.find((each) => each.id === id);
      return cell === undefined ? '' : amountText(cell.value, cell.unit, options.units);
    }),
  );
  sayLines([
    ...headLines(car, `ladder of torsion bars, ${wheelWords(wheel)}`),
    '',
    ...table([heading, ...rows]).map((line) => `  ${line}`),
    '',
    ...quantityLines(steps, options.units),
    ...tailLines(ladder.notes, ladder.cautions),
  ]);
}

const rungQuantities = (rung: LadderAnswer['rungs'][number], even: 'difference' | 'ratio'): Quantity[] =>
  quantities(
    {
      diameter: ['diameter', 'm'],
      wheelRate: ['wheel rate', 'N/m'],
      wanted: ['wanted', 'N/m'],
      error: ['error', 'N/m'],
      step: ['step', even === 'ratio' ? '1' : 'N/m'],
      rate: ['torsional rate', 'N m/rad'],
      twist: ['twist', 'rad'],
      stress: ['shear stress', 'Pa'],
      mass: ['mass', 'kg'],
    },
    rung,
  );

const stepQuantities = ({ evenStep, unevenness }: LadderAnswer, even: 'difference' | 'ratio'): Quantity[] =>
  quantities(
    {
      evenStep: ['even step aimed at', even === 'ratio' ? '1' : 'N/m'],
      unevenness: ['greatest distance of a step from it, as a part', '1'],
    },
    { evenStep, unevenness },
  );
