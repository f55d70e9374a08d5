/** `flatpatch compare`: two specs of one car, figure by figure. */
import type { Command } from 'commander';
import { type ComparedRow, compareEvery, compareSpecs } from '../../questions/compare.ts';
import type { Figure } from '../../questions/figure.ts';
import type { Speech } from '../../units/show.ts';
import { figureOut } from '../answers/form.ts';
import { askedWheel, wheelWords } from '../asked.ts';
import { openCar } from '../car-argument.ts';
import {
  type CarOptions,
  carOut,
  command,
  header,
  headLines,
  type MannerOptions,
  sayJson,
  sayLines,
  speaking,
} from '../command.ts';
import { BadInput, NotReached } from '../outcome.ts';
import { amountText, figureText, table } from '../print.ts';
import { askedPosition, atWheel, RACK_HELP, TRAVEL_HELP } from './corner.ts';

interface Options extends Omit<CarOptions, 'spec'>, MannerOptions {
  readonly wheel?: string;
  readonly travel: string;
  readonly rack: string;
  readonly spread: boolean;
  readonly all?: true;
}

export function compareCommand(): Command {
  const made = command(
    'compare',
    'Two specs of a car side by side, at one wheel and travel or in every figure',
    [
      'flatpatch compare fenwold-201 "as arrived" "as run"',
      'flatpatch compare fenwold-201 "as arrived" "as run" --wheel front-left',
      'flatpatch compare fenwold-201 "as arrived" "as run" --wheel rear-left --travel "10 mm" --json',
    ],
  );
  made.argument('<file>', "a car's folder, a car.yaml, a car's name, or - for standard input");
  return speaking(made)
    .argument('<first>', 'name of a spec')
    .argument('<second>', 'name of the other')
    .option('--wheel <wheel>', 'one wheel alone: front-left, front-right, rear-left or rear-right')
    .option('--files <folder>', 'folder of the files that a car file from standard input names')
    .option('--travel <length>', TRAVEL_HELP, '0 mm')
    .option('--rack <length>', RACK_HELP, '0 mm')
    .option('--all', 'also the figures that are the same in both')
    .option('--no-spread', 'without the spread, which takes most of the time')
    .action(answer);
}

async function answer(file: string, first: string, second: string, options: Options): Promise<void> {
  const wheel = options.wheel === undefined ? undefined : askedWheel(options.wheel);
  const at = wheel === undefined ? undefined : atWheel(askedPosition(options), wheel);
  const { car, source, file: named } = await openCar(file, options);
  const compared =
    wheel === undefined || at === undefined
      ? compareEvery(source, first, second)
      : compareSpecs(source, first, second, wheel, at, { spread: options.spread });
  if (compared.problems.length > 0) throw new BadInput(compared.problems);
  if (options.json) {
    sayJson({
      ...header('compare'),
      car: carOut(car, named),
      ...(wheel === undefined || at === undefined ? {} : { wheel, at }),
      specs: [first, second],
      rows: compared.rows.map(({ a, b, ...rest }) => ({
        ...rest,
        ...(a === undefined ? {} : { a: figureOut(a) }),
        ...(b === undefined ? {} : { b: figureOut(b) }),
      })),
      problems: [...compared.problems],
      notReached: [...compared.notReached],
    });
  } else if (compared.notReached.length < 2) {
    const shown = options.all ? compared.rows : compared.rows.filter(differs);
    const { units } = options;
    const rows = shown.map((row) => [
      row.of === undefined ? row.means : `${row.of}: ${row.means}`,
      cell(row.a, units),
      cell(row.b, units),
      change(row, units),
    ]);
    sayLines([
      ...headLines(
        car,
        wheel === undefined || at === undefined
          ? 'every figure, as surveyed'
          : `${wheelWords(wheel)} wheel at ${amountText(at.travel, 'm', units)}`,
      ).map(withoutSpec),
      '',
      ...(rows.length === 0
        ? ['No figure differs between the two.']
        : table([['', first, second, 'difference'], ...rows])),
    ]);
  }
  if (compared.notReached.length > 0) throw new NotReached(compared.notReached.join('\n'));
}

/** Far below the spread, or in the machine's rounding, there is no difference to be shown. */
const differs = ({ a, b, difference }: ComparedRow): boolean =>
  difference === undefined
    ? Number.isFinite(a?.value) || Number.isFinite(b?.value)
    : Math.abs(difference) >
      Math.max(0.02 * (a?.spread?.u ?? 0), 1e-6 * Math.max(Math.abs(a!.value), Math.abs(b!.value)));

const cell = (figure: Figure | undefined, speech: Speech): string =>
  figure === undefined ? '—' : figureText(figure, speech);

function change({ difference, unit }: ComparedRow, speech: Speech): string {
  if (difference === undefined) return '—';
  const text = amountText(difference, unit, speech);
  return difference > 0 ? `+${text}` : text;
}

const withoutSpec = (line: string): string => line.replace(/, spec "[^"]*": /, ': ');
