/** What the car is doing, as it is typed: a case by name, and what of it is to be otherwise. */
import type { Command } from 'commander';
import { type Doing, STANDING, USUAL_DOINGS, usualDoing } from '../questions/index.ts';
import { askedAmount, askedWheel } from './asked.ts';
import { RACK_HELP } from './commands/corner.ts';
import { badAsk } from './outcome.ts';

export interface AskedDoing {
  readonly doing?: string;
  readonly longitudinal?: string;
  readonly lateral?: string;
  readonly vertical?: string;
  readonly speed?: string;
  readonly rack?: string;
  readonly kerb?: string;
}

export function takingDoing(of: Command): Command {
  const names = USUAL_DOINGS.map(({ name, means }) => `${name}: ${means}`).join('; ');
  return of
    .option('--doing <name>', `one of these, each to be changed by the options below. ${names}`)
    .option('--longitudinal <acceleration>', 'forward positive, so braking is negative, with its unit')
    .option('--lateral <acceleration>', 'positive in a left-hand turn, with its unit')
    .option('--vertical <acceleration>', 'upward, on top of gravity, with its unit')
    .option('--speed <speed>', 'for the forces of the air, with its unit')
    .option('--rack <length>', RACK_HELP)
    .option(
      '--kerb <wheel and load>',
      'a kerb under one wheel, in loads of its own scale reading: "rear-left 3"',
    );
}

/** @throws BadInput */
export function askedDoing(options: AskedDoing): Doing {
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
    contacts: from.contacts,
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

export function doingWords(options: AskedDoing): string {
  const usual = options.doing === undefined ? undefined : usualDoing(options.doing);
  const changed = (['longitudinal', 'lateral', 'vertical', 'speed', 'rack', 'kerb'] as const)
    .filter((name) => options[name] !== undefined)
    .map((name) => `${name} ${options[name]}`);
  return [usual?.means ?? (changed.length === 0 ? 'standing' : undefined), ...changed]
    .filter((each) => each !== undefined)
    .join(', ');
}
