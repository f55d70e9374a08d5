/** `flatpatch loads`: what tyres, members, rockers and springs carry while the car does something. */
import type { Command } from 'commander';
import {
  type Doing,
  type LoadsAnswer,
  type LoadsReached,
  loadsOf,
  STANDING,
  USUAL_DOINGS,
  usualDoing,
  type WheelLoads,
} from '../../questions/index.ts';
import { figureOut } from '../answers/form.ts';
import { askedAmount, askedWheel, WHEELS, wheelWords } from '../asked.ts';
import { openCar } from '../car-argument.ts';
import {
  type CarOptions,
  carOut,
  command,
  complain,
  endWith,
  header,
  headLines,
  type MannerOptions,
  mannerOf,
  onCar,
  sayJson,
  sayLines,
  sayWarnings,
  speaking,
  tailLines,
  withShares,
} from '../command.ts';
import { badAsk, EXIT } from '../outcome.ts';
import { figureLines, figureText, table } from '../print.ts';
import { RACK_HELP } from './corner.ts';

interface AskedDoing {
  readonly doing?: string;
  readonly longitudinal?: string;
  readonly lateral?: string;
  readonly vertical?: string;
  readonly speed?: string;
  readonly rack?: string;
  readonly kerb?: string;
}

interface Options extends CarOptions, MannerOptions, AskedDoing {
  readonly wheel?: string;
  readonly spread: boolean;
}

export function loadsCommand(): Command {
  const made = command('loads', 'What tyres, links, rockers and springs carry while the car does something', [
    'flatpatch loads fenwold-201 --doing braking --wheel front-left',
    'flatpatch loads ashgarth-501 --lateral "1.8 g" --speed "150 km/h" --no-spread',
    'flatpatch loads fenwold-201 --kerb "rear-left 2.5" --wheel rear-left --no-spread --json',
  ]);
  const names = USUAL_DOINGS.map(({ name, means }) => `${name}: ${means}`).join('; ');
  return withShares(speaking(onCar(made)))
    .option('--wheel <wheel>', 'front-left, front-right, rear-left or rear-right; left out, all four')
    .option('--doing <name>', `one of these, each to be changed by the options below. ${names}`)
    .option('--longitudinal <acceleration>', 'forward positive, so braking is negative, with its unit')
    .option('--lateral <acceleration>', 'positive in a left-hand turn, with its unit')
    .option('--vertical <acceleration>', 'upward, on top of gravity, with its unit')
    .option('--speed <speed>', 'for the forces of the air, with its unit')
    .option('--rack <length>', RACK_HELP)
    .option(
      '--kerb <wheel and load>',
      'a kerb under one wheel, in loads of its own scale reading: "rear-left 3"',
    )
    .option('--no-spread', 'without the spread, which takes most of the time')
    .action(answer);
}

async function answer(file: string, options: Options): Promise<void> {
  const wheels = options.wheel === undefined ? WHEELS : [askedWheel(options.wheel)];
  const doing = askedDoing(options);
  const { car, file: named } = await openCar(file, options);
  const is = loadsOf(car, doing, { spread: options.spread, wheels });
  sayWarnings(car);
  if (options.json) {
    sayJson({ ...header('loads'), car: carOut(car, named), doing, is: answerOut(is) });
  } else {
    sayLines([...headLines(car, doingWords(options)), ...answerLines(is, options)]);
  }
  if (is.reached) return;
  complain(is.message);
  endWith(EXIT.notReached);
}

/** @throws BadInput */
function askedDoing(options: AskedDoing): Doing {
  const from = options.doing === undefined ? STANDING : usualDoing(options.doing)?.doing;
  if (from === undefined) {
    throw badAsk(
      'asked/doing',
      `--doing "${options.doing}" is not known; write one of ${USUAL_DOINGS.map(({ name }) => name).join(', ')}.`,
    );
  }
  const or = (name: 'longitudinal' | 'lateral' | 'vertical', otherwise: number): number =>
    options[name] === undefined ? otherwise : askedAmount(`--${name}`, options[name], 'm/s^2');
  const doing: Doing = {
    longitudinal: or('longitudinal', from.longitudinal),
    lateral: or('lateral', from.lateral),
    vertical: or('vertical', from.vertical),
    speed: options.speed === undefined ? from.speed : askedAmount('--speed', options.speed, 'm/s'),
    rack: options.rack === undefined ? from.rack : askedAmount('--rack', options.rack, 'm'),
    strikes: options.kerb === undefined ? from.strikes : askedKerb(options.kerb),
  };
  if (doing.speed < 0) throw badAsk('asked/speed', '--speed is below nothing; the car goes forward here.');
  return doing;
}

function askedKerb(text: string): Doing['strikes'] {
  const [wheel = '', load = '', ...more] = text.trim().split(/\s+/);
  const loads = Number(load);
  if (more.length > 0 || load === '' || !(loads > 0) || !Number.isFinite(loads)) {
    throw badAsk(
      'asked/kerb',
      `--kerb "${text}" must be a wheel and how many of its scale loads come on top, such as "rear-left 3".`,
    );
  }
  const { end, side } = askedWheel(wheel);
  return { [`${end}${side === 'left' ? 'Left' : 'Right'}`]: loads };
}

function doingWords(options: AskedDoing): string {
  const usual = options.doing === undefined ? undefined : usualDoing(options.doing);
  const changed = (['longitudinal', 'lateral', 'vertical', 'speed', 'rack', 'kerb'] as const)
    .filter((name) => options[name] !== undefined)
    .map((name) => `${name} ${options[name]}`);
  return [usual?.means ?? (changed.length === 0 ? 'standing' : undefined), ...changed]
    .filter((each) => each !== undefined)
    .join(', ');
}

function answerOut(of: LoadsAnswer) {
  if (!of.reached) return { reached: false as const, message: of.message };
  return {
    reached: true as const,
    wheels: of.wheels.map(({ wheel, figures }) => ({ wheel, figures: figures.map(figureOut) })),
    residual: of.residual,
    notes: [...of.notes],
    cautions: [...of.cautions],
  };
}

function answerLines(of: LoadsAnswer, options: Options): string[] {
  if (!of.reached) return [];
  return [
    '',
    ...groundTable(of, options),
    ...of.wheels.flatMap((each) => [
      '',
      `=== ${capital(wheelWords(each.wheel))}`,
      ...figureLines(each.figures, mannerOf(options)),
    ]),
    ...tailLines(of.notes, of.cautions),
  ];
}

const GROUND = ['tyreLoad', 'tyreForward', 'tyreSide', 'travelUnderLoad'] as const;

/** The ground's forces side by side, where all four wheels are asked for. */
function groundTable({ wheels }: LoadsReached, options: Options): string[] {
  if (wheels.length < 2) return [];
  const row = ({ wheel, figures }: WheelLoads): string[] => [
    capital(wheelWords(wheel)),
    ...GROUND.map((id) => {
      const { spread: _, ...figure } = figures.find((each) => each.id === id)!;
      return figureText(figure, options.units);
    }),
  ];
  return table([['At the ground', 'load', 'forward', 'to the left', 'travel'], ...wheels.map(row)]);
}

const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);
