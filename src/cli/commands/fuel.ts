/** `flatpatch fuel`: what to put in for a session, what it weighs, and the weights of the wheels with it. */
import type { Command } from 'commander';
import { fuelFor } from '../../questions/index.ts';
import { floorOut } from '../answers/floor-figures.ts';
import { askedCount, askedReading, maybeReading } from '../asked.ts';
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
import { refusalOf, tell } from '../tell.ts';

interface Options extends CarOptions, MannerOptions, AskedWorking {
  readonly laps: string;
  readonly perLap?: string;
  readonly lap?: string;
  readonly power?: string;
  readonly open?: string;
  readonly time?: string;
  readonly slowLaps: string;
  readonly slowPart?: string;
  readonly reserve?: string;
  readonly temperature?: string;
  readonly aboard?: string;
}

export function fuelCommand(): Command {
  const made = command(
    'fuel',
    'Fuel for a session: litres and mass with reserve and unusable rest; weights of the wheels full and empty',
    [
      'flatpatch fuel fenwold-201 --laps 12',
      'flatpatch fuel fenwold-201 --laps 15 --lap "5.1 km" --reserve "4 l" --temperature "28 degC" --aboard "6 l"',
      'flatpatch fuel fenwold-201 --laps 10 --power "300 kW" --open "52 % ± 3 %" --time "86 s"',
      'flatpatch fuel fenwold-201 --laps 12 --working session.needed',
    ],
  );
  return takingWorking(withShares(speaking(onCar(made))))
    .requiredOption('--laps <count>', 'racing laps')
    .option('--per-lap <volume>', 'burnt in a lap, where it is not the file’s, such as "1.4 l ± 0.1 l"')
    .option('--lap <length>', 'length of a lap here; the file’s lap is scaled by it')
    .option('--power <power>', 'instead: mean power with the throttle open')
    .option('--open <share>', 'with it, the part of the lap with the throttle open')
    .option('--time <time>', 'with it, time of a lap, such as "86 s"')
    .option('--slow-laps <count>', 'laps out and in', '2')
    .option('--slow-part <share>', 'what one of them burns, of a racing lap')
    .option('--reserve <volume>', 'left at the end, and can be used')
    .option('--temperature <temperature>', 'of the fuel, for its density')
    .option('--aboard <volume>', 'in the cell now, unusable rest and all')
    .action(answer);
}

async function answer(file: string, options: Options): Promise<void> {
  const { power, open, time } = options;
  const byWork = [power, open, time].filter((each) => each !== undefined).length;
  if (byWork !== 0 && byWork !== 3) {
    throw badAsk('asked/work', 'By the work of the engine it takes all three: --power, --open and --time.');
  }
  const given = Object.entries({
    perLap: maybeReading('--per-lap', options.perLap, 'm^3'),
    lap: maybeReading('--lap', options.lap, 'm'),
    slowPart: maybeReading('--slow-part', options.slowPart, '1'),
    reserve: maybeReading('--reserve', options.reserve, 'm^3'),
    temperature: maybeReading('--temperature', options.temperature, 'K'),
    aboard: maybeReading('--aboard', options.aboard, 'm^3'),
  }).filter(([, each]) => each !== undefined);
  const asked = {
    laps: askedCount('--laps', options.laps, 1, 500),
    slowLaps: askedCount('--slow-laps', options.slowLaps, 0, 10),
    spread: options.spread,
    ...Object.fromEntries(given),
    ...(power === undefined || open === undefined || time === undefined
      ? {}
      : {
          work: {
            power: askedReading('--power', power, 'W'),
            open: askedReading('--open', open, '1'),
            time: askedReading('--time', time, 's'),
          },
        }),
    ...(options.working === undefined ? {} : { working: options.working }),
  };
  await tell(file, options, ({ car, file: named }) => {
    const is = fuelFor(car, asked);
    checkWorking(is, options.working);
    return {
      json: { ...header('fuel'), car: carOut(car, named), is: floorOut(is) },
      lines: () => [
        ...headLines(car, `fuel for ${asked.laps} racing laps, ${asked.slowLaps} out and in`),
        ...floorLines(is, options, ({ figures }) => {
          if (options.shares === true) return floorFigureLines(figures, options);
          const session = figures.filter(({ of }) => of === 'session');
          const weights = figures.filter(({ of }) => of !== 'session');
          return [
            ...floorFigureLines(session, options),
            ...(weights.length === 0 ? [] : ['', 'Weights at rest', ...besideLines(weights, options.units)]),
          ];
        }),
      ],
      refusal: refusalOf(is),
    };
  });
}
