/** `flatpatch ratios`: speeds, drops and thrust of the gears; the pairs of the stock nearest to speeds wanted. */
import type { Command } from 'commander';
import { readTeeth, type Teeth } from '../../car/teeth.ts';
import { type RatiosReached, ratiosOf } from '../../questions/index.ts';
import { readList } from '../../units/read.ts';
import { ratiosOut } from '../answers/ratios.ts';
import { askedCount, maybeReading } from '../asked.ts';
import {
  type CarOptions,
  carOut,
  command,
  header,
  headLines,
  type MannerOptions,
  onCar,
  speaking,
  withShares,
} from '../command.ts';
import {
  type AskedWorking,
  besideLines,
  checkWorking,
  floorFigureLines,
  floorLines,
  takingWorking,
} from '../floor-lines.ts';
import { badAsk } from '../outcome.ts';
import { amountIn, table } from '../print.ts';
import { refusalOf, tell } from '../tell.ts';

interface Options extends CarOptions, MannerOptions, AskedWorking {
  readonly at?: string;
  readonly targets?: string;
  readonly changes?: string;
  readonly finals?: true;
  readonly pairs?: string;
  readonly final?: string;
}

export function ratiosCommand(): Command {
  const made = command(
    'ratios',
    'Gears: road speeds, drops, thrust and where to change, top speed; pairs of the stock for speeds wanted',
    [
      'flatpatch ratios fenwold-201',
      'flatpatch ratios fenwold-201 --targets "105, 140, 175, 210, 245, 285 km/h" --at "10500 rpm" --changes 2',
      'flatpatch ratios fenwold-201 --pairs "13/35, 15/33, 18/31, 20/28, 22/27, 24/26" --final 10/31 --units in-lbf',
      'flatpatch ratios fenwold-201 --working "car.topSpeed"',
    ],
  );
  return takingWorking(withShares(speaking(onCar(made))))
    .option(
      '--at <engine speed>',
      'engine speed at which gears are changed, such as "10500 rpm"; left out, the limit',
    )
    .option(
      '--targets <speeds>',
      'road speeds wanted at it, first gear first: "105, 140, 175 km/h"; finds the nearest set of the stock',
    )
    .option('--changes <count>', 'most pairs that may be changed for them')
    .option('--finals', 'also the other final drives of the stock')
    .option('--pairs <pairs>', 'look at these pairs and not at those fitted: "13/35, 15/33"')
    .option('--final <teeth>', 'and this final drive')
    .addHelpText(
      'after',
      '\nA ratio chart to print: flatpatch sheet fenwold-201 --kind ratios --out ratios.pdf',
    )
    .action(answer);
}

/** Speeds with one unit behind the last, or one behind each. @throws BadInput */
export function askedSpeeds(option: string, text: string): readonly number[] {
  const read = readList(text, 'm/s');
  if (!read.ok) throw badAsk('asked/amount', `${option}: ${read.why}.`);
  const below = read.is.findIndex((speed) => speed < 0);
  if (below >= 0)
    throw badAsk('asked/amount', `${option}: "${text.split(',')[below]!.trim()}" must not be below nothing.`);
  return read.is;
}

/** @throws BadInput */
export const askedTeeth = (option: string, text: string): Teeth => {
  const found = readTeeth(text);
  if (found !== undefined) return found;
  throw badAsk(
    'asked/teeth',
    `${option}: "${text.trim()}" is no pair; write two counts of teeth, driver first, such as 13/35.`,
  );
};

/** What the options ask of the gears. @throws BadInput */
export function askedRatios(options: Partial<Options>) {
  const at = maybeReading('--at', options.at, 'rad/s');
  return {
    spread: options.spread ?? true,
    ...(at === undefined ? {} : { at }),
    ...(options.targets === undefined ? {} : { targets: askedSpeeds('--targets', options.targets) }),
    ...(options.changes === undefined ? {} : { changes: askedCount('--changes', options.changes, 0, 8) }),
    ...(options.finals === true ? { finals: true } : {}),
    ...(options.pairs === undefined
      ? {}
      : { pairs: options.pairs.split(',').map((pair) => askedTeeth('--pairs', pair)) }),
    ...(options.final === undefined ? {} : { final: askedTeeth('--final', options.final) }),
    ...(options.working === undefined ? {} : { working: options.working }),
  };
}

async function answer(file: string, options: Options): Promise<void> {
  const asked = askedRatios(options);
  await tell(file, options, ({ car, file: named }) => {
    const is = ratiosOf(car, asked);
    checkWorking(is, options.working);
    return {
      json: { ...header('ratios'), car: carOut(car, named), ...ratiosOut(is) },
      lines: () =>
        is.reached
          ? [
              ...headLines(car, `gears, changed at ${amountIn(is.at, 'rpm')}`),
              ...floorLines(is, options, () => ratioLines(is, options)),
            ]
          : [],
      refusal: refusalOf(is),
    };
  });
}

function ratioLines(is: RatiosReached, options: Options): string[] {
  const { figures, pairs, final } = is;
  const speed = options.units === 'mm-N' ? 'km/h' : 'mph';
  const gears = figures.filter(({ of }) => of.startsWith('gear'));
  const car = figures.filter(({ of }) => of === 'car');
  return [
    '',
    `Final drive ${final.text}; pairs ${pairs.map(({ text }) => text).join(', ')}`,
    ...chosenLines(is, speed),
    '',
    ...(options.shares === true ? floorFigureLines(gears, options) : besideLines(gears, options.units)),
    ...(car.length === 0 ? [] : floorFigureLines(car, options)),
    '',
    `Road speed by engine speed, ${speed}`,
    ...table([
      ['rpm', ...pairs.map((_, k) => `gear ${k + 1}`)],
      ...is.chart.map(({ engine, speeds }) => [
        amountIn(engine, 'rpm').replace(/ rpm$/, ''),
        ...speeds.map((each) => amountIn(each, speed).replace(` ${speed}`, '')),
      ]),
    ]).map((line) => `  ${line}`),
  ];
}

function chosenLines({ chosen, targets }: RatiosReached, unit: string): string[] {
  if (chosen === undefined || targets === undefined) return [];
  const of = (value: number): string => amountIn(value, unit).replace(` ${unit}`, '');
  return [
    '',
    `Nearest sets of the stock; wanted ${targets.map(of).join(', ')} ${unit}`,
    ...chosen.map(
      ({ final, pairs, speeds, miss, changed }) =>
        `  final ${final.text}: ${pairs.map((pair, k) => `${pair.text} ${of(speeds[k]!)}`).join(', ')}; misses ${(100 * miss).toFixed(1)} % in the mean; ${changed.length === 0 ? 'nothing to change' : `to change: gear ${changed.join(', ')}`}`,
    ),
  ];
}
