/** What the car is doing, as it is typed: a case by name or a row of a log, and what of it is to be otherwise. */
import type { Command } from 'commander';
import {
  type Doing,
  doingInRow,
  doingsOf,
  EXTREMES,
  HANDED_ON,
  logNames,
  logOf,
  type NamedDoing,
  rowAt,
  STANDING,
  spokenDoing,
  USUAL_DOINGS,
} from '../questions/index.ts';
import { askedAmount, askedWheel } from './asked.ts';
import { RACK_HELP } from './commands/corner.ts';
import { BadInput, badAsk } from './outcome.ts';
import type { Found } from './tell.ts';

export interface AskedDoing {
  readonly doing?: string;
  readonly log?: string;
  readonly at?: string;
  readonly longitudinal?: string;
  readonly lateral?: string;
  readonly vertical?: string;
  readonly speed?: string;
  readonly rack?: string;
  readonly frontBrakes?: string;
  readonly kerb?: readonly string[];
  readonly contact?: readonly string[];
}

/** What is asked about: a case, with what must be said beside it. */
export interface DoingFound extends NamedDoing {
  readonly notes: readonly string[];
}

const each = (text: string, before: readonly string[] = []): readonly string[] => [...before, text];

export function takingDoing(of: Command): Command {
  const names = USUAL_DOINGS.map(({ name, means }) => `${name}: ${means}`).join('; ');
  return of
    .option(
      '--doing <name>',
      `one of these or a case of the car file, each to be changed by the options below. ${names}`,
    )
    .option('--log <name>', 'a log of the car file, with --at')
    .option('--at <time or row>', `a row of the log: its time, such as "43.2 s", or ${EXTREMES.join(', ')}`)
    .option('--longitudinal <acceleration>', 'forward positive, so braking is negative, with its unit')
    .option('--lateral <acceleration>', 'positive in a left-hand turn, with its unit')
    .option('--vertical <acceleration>', 'upward, on top of gravity, with its unit')
    .option('--speed <speed>', 'for the forces of the air, with its unit')
    .option('--rack <length>', RACK_HELP)
    .option('--front-brakes <share>', 'front share of the brakes, where it is not that of the file')
    .option(
      '--kerb <wheel and load>',
      'a kerb under a wheel, in loads of its own scale reading: "rear-left 3"; may be given again',
      each,
    )
    .option(
      '--contact <wheel and forces>',
      'force of the ground on a tyre: "front-left up 4200 N forward -3 kN left 900 N by brake"; what is left out follows from the case; may be given again',
      each,
    );
}

/** Whether anything of it was typed. */
export const isDoingAsked = (options: AskedDoing): boolean =>
  DOING_OPTIONS.some((name) => options[name] !== undefined);

const CHANGES = [
  'longitudinal',
  'lateral',
  'vertical',
  'speed',
  'rack',
  'frontBrakes',
  'kerb',
  'contact',
] as const;
const DOING_OPTIONS = ['doing', 'log', 'at', ...CHANGES] as const;

/** @throws BadInput */
export function askedDoing(options: AskedDoing, found: Pick<Found, 'car' | 'source'>): DoingFound {
  const from = startOf(options, found);
  const or = (name: 'longitudinal' | 'lateral' | 'vertical', otherwise: number): number =>
    options[name] === undefined ? otherwise : askedAmount(`--${name}`, options[name], 'm/s^2');
  const doing: Doing = {
    ...from.doing,
    longitudinal: or('longitudinal', from.doing.longitudinal),
    lateral: or('lateral', from.doing.lateral),
    vertical: or('vertical', from.doing.vertical),
    speed: options.speed === undefined ? from.doing.speed : askedAmount('--speed', options.speed, 'm/s'),
    rack: options.rack === undefined ? from.doing.rack : askedAmount('--rack', options.rack, 'm'),
    strikes:
      options.kerb === undefined ? from.doing.strikes : Object.assign({}, ...options.kerb.map(askedKerb)),
    contacts:
      options.contact === undefined
        ? from.doing.contacts
        : Object.assign({}, ...options.contact.map(askedContact)),
    ...(options.frontBrakes === undefined ? {} : { frontBrakes: askedShare(options.frontBrakes) }),
  };
  if (doing.speed < 0) throw badAsk('asked/speed', '--speed is below nothing; the car goes forward here.');
  const twice = Object.keys(doing.strikes).find((wheel) => wheel in doing.contacts);
  if (twice !== undefined)
    throw badAsk('asked/contact', `${twice} has a kerb and forces typed: give it one of the two.`);
  if (CHANGES.every((name) => options[name] === undefined)) return { ...from, doing };
  return { ...from, name: 'as asked', means: spokenDoing(doing), doing };
}

/** The case or row that the typed changes start from. */
function startOf({ doing, log, at }: AskedDoing, { car, source }: Pick<Found, 'car' | 'source'>): DoingFound {
  if (log !== undefined || at !== undefined) {
    if (doing !== undefined)
      throw badAsk('asked/log', '--doing and --log both say what the car does; write one.');
    const names = logNames(car);
    if (log === undefined && names.length !== 1)
      throw badAsk(
        'asked/log',
        `--at needs --log with the name of a log; the car has: ${names.join(', ') || 'none'}.`,
      );
    return rowOf(log ?? names[0]!, at, { car, source });
  }
  if (doing === undefined) return { name: 'standing', means: 'standing', doing: STANDING, notes: [] };
  const known = doingsOf(car);
  const found = known.find(({ name }) => name === doing);
  if (found === undefined) {
    throw badAsk(
      'asked/doing',
      `--doing "${doing}" is not known; write one of ${known.map(({ name }) => name).join(', ')}.`,
    );
  }
  return { ...found, notes: [] };
}

function rowOf(
  name: string,
  at: string | undefined,
  { car, source }: Pick<Found, 'car' | 'source'>,
): DoingFound {
  const read = logOf(car, source.files ?? {}, name);
  if (!read.reached) throw new BadInput(read.problems);
  const { log, extremes, doubts } = read;
  if (at === undefined)
    throw badAsk(
      'asked/at',
      `--log needs --at: a time of the log, or ${extremes.map((one) => one.name).join(', ')}.`,
    );
  const row = EXTREMES.includes(at)
    ? extremes.find((one) => one.name === at)?.row
    : rowAt(log, askedAmount('--at', at, 's'));
  if (row === undefined) {
    const times = log.channels.time;
    throw badAsk(
      'asked/at',
      EXTREMES.includes(at)
        ? `The log "${name}" has no channel for ${at}.`
        : times === undefined
          ? `The log "${name}" has no time; ask for ${extremes.map((one) => one.name).join(', ')}.`
          : `--at "${at}" lies outside the log "${name}" or in a gap of it; it goes from ${times[0]!.toFixed(2)} s to ${times.at(-1)!.toFixed(2)} s.`,
    );
  }
  const is = doingInRow(name, log, row);
  if (!is.reached) throw badAsk('log/row', is.message);
  return {
    name: `${name} ${at}`,
    means: `${is.means}: ${spokenDoing(is.doing)}`,
    doing: is.doing,
    notes: [
      ...is.notes,
      ...doubts.map(({ message, remedy }) => `Log: ${message}${remedy === undefined ? '' : ` ${remedy}`}`),
    ],
  };
}

/** The answer with what is to be said of the case beside its own notes. */
export const noted = <T extends { readonly reached: boolean }>(is: T, { notes }: DoingFound): T =>
  'notes' in is ? { ...is, notes: [...(is.notes as readonly string[]), ...notes] } : is;

const asWheel = (text: string): string => {
  const { end, side } = askedWheel(text);
  return `${end}${side === 'left' ? 'Left' : 'Right'}`;
};

function askedShare(text: string): number {
  const share = askedAmount('--front-brakes', text, '1');
  if (!(share >= 0 && share <= 1))
    throw badAsk('asked/share', `--front-brakes "${text}" must lie between 0 and 100 %; write it as "57 %".`);
  return share;
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
  return { [asWheel(wheel)]: loads };
}

const CONTACT = /\s+(up|forward|left|by)\s+/;

function askedContact(text: string): Doing['contacts'] {
  const [wheel = '', ...parts] = text.trim().split(CONTACT);
  const typed = Object.fromEntries(
    Array.from({ length: parts.length / 2 }, (_, k) => [parts[2 * k]!, parts[2 * k + 1]!.trim()]),
  );
  const force = (way: 'up' | 'forward' | 'left'): number | undefined =>
    typed[way] === undefined ? undefined : askedAmount(`--contact, ${way}`, typed[way], 'N');
  const [up, forward, left] = [force('up'), force('forward'), force('left')];
  const by = HANDED_ON.find((one) => one === typed.by);
  const wrong =
    parts.length === 0 || up === undefined
      ? 'needs the load of the tyre'
      : up < 0
        ? 'has the tyre pulling on the ground'
        : parts.length / 2 > Object.keys(typed).length
          ? 'says one thing twice'
          : typed.by !== undefined && by === undefined
            ? `is taken "by ${typed.by}", which is none of ${HANDED_ON.join(', ')}`
            : undefined;
  if (wrong !== undefined || up === undefined) {
    throw badAsk(
      'asked/contact',
      `--contact "${text}" ${wrong}; write it as "front-left up 4200 N forward -3 kN left 900 N by brake".`,
    );
  }
  return {
    [asWheel(wheel)]: {
      up,
      ...(forward === undefined ? {} : { forward }),
      ...(left === undefined ? {} : { left }),
      ...(by === undefined ? {} : { by }),
    },
  };
}
