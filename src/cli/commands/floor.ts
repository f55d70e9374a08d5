/** `flatpatch floor`, `flatpatch adjusters`, `flatpatch set-up`: the car on its four pads. */
import type { Command } from 'commander';
import {
  type AdjustersReached,
  adjusterTable,
  type FloorAnswer,
  type FloorAsked,
  sheetNames,
  standOnFloor,
} from '../../questions/index.ts';
import { plain, printedUnit, type Speech, spokenAmount, spokenUnit } from '../../units/show.ts';
import { fromSI } from '../../units/unit.ts';
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
import { badAsk } from '../outcome.ts';
import { amountText, plainSpaces, table } from '../print.ts';
import { workingLines } from '../step-lines.ts';
import { type Found, refusalOf, tell } from '../tell.ts';
import { checkFigure } from './working.ts';

interface Options extends CarOptions, MannerOptions {
  readonly sheet?: string;
  readonly bars?: string;
  readonly spread: boolean;
  readonly of?: string;
  readonly working?: string;
}

export function floorCommand(): Command {
  const made = command(
    'floor',
    'How the car stands on its four pads: heights, weights, angles, track, droop',
    [
      'flatpatch floor fenwold-201 --no-spread',
      'flatpatch floor ashgarth-501 --bars connected --no-spread --json',
    ],
  );
  return underSheet(speaking(onCar(made)))
    .option('--no-spread', 'without the spread, which takes most of the time')
    .option('--working <reading>', 'how one reading comes about, such as cross or camber.frontLeft')
    .action(async (file: string, options: Options) => {
      await tell(file, options, ({ car, file: named }) => {
        const { working } = options;
        const is = standOnFloor(car, {
          ...askedFloor(options, car),
          spread: options.spread,
          ...(working === undefined ? {} : { working }),
        });
        if (working !== undefined && is.reached)
          checkFigure(
            working,
            is.readings.map(({ id }) => id),
          );
        return {
          json: { ...header('floor'), car: carOut(car, named), is: is.reached ? withWorkingOut(is) : is },
          lines: () => [
            ...headLines(car, 'on its pads'),
            ...(is.reached && is.working !== undefined
              ? [...workingLines(is.working), ...tailLines([], is.cautions)]
              : floorLines(is, options.units)),
          ],
          refusal: refusalOf(is),
        };
      });
    });
}

export function adjustersCommand(): Command {
  const made = command(
    'adjusters',
    'What one flat, slot, shim or tenth of a bar of each adjuster does to every reading',
    [
      'flatpatch adjusters fenwold-201',
      'flatpatch adjusters fenwold-201 --of toe',
      'flatpatch adjusters fenwold-201 --sheet "as found, 11 May" --json',
    ],
  );
  return underSheet(speaking(onCar(made)))
    .option('--of <reading>', 'columns of one kind of reading: weights, heights, camber, toe, caster, others')
    .action(async (file: string, options: Options) => {
      const columns = columnsOf(options.of);
      await tell(file, options, ({ car, file: named }) => {
        const is = adjusterTable(car, askedFloor(options, car));
        return {
          json: { ...header('adjusters'), car: carOut(car, named), is },
          lines: () =>
            is.reached
              ? [...headLines(car, 'one unit of each adjuster'), ...adjusterLines(is, options.units, columns)]
              : [],
          refusal: refusalOf(is),
        };
      });
    });
}

const underSheet = (of: Command): Command =>
  of
    .option('--sheet <name>', 'a sheet of the file, whose driver, fuel, pressures and moves are meant')
    .option('--bars <way>', 'anti-roll bars connected or disconnected; left out, as the sheet has it');

function askedFloor({ sheet, bars }: Options, car: Found['car']): FloorAsked {
  if (bars !== undefined && bars !== 'connected' && bars !== 'disconnected')
    throw badAsk('asked/bars', `--bars "${bars}" is not known; write connected or disconnected.`);
  const names = sheetNames(car);
  if (sheet !== undefined && !names.includes(sheet))
    throw badAsk(
      'asked/sheet',
      `--sheet "${sheet}" is not in the file; it has: ${names.map((name) => `"${name}"`).join(', ') || 'none'}.`,
    );
  return { ...(sheet === undefined ? {} : { sheet }), ...(bars === undefined ? {} : { bars }) };
}

/** Decimals of a reading without its spread, in the spoken unit. */
const BARE_DIGITS: Readonly<Record<string, number>> = { kg: 1, share: 2, m: 2, rad: 2, 'N m': 1 };

/** Wheels in the order of a table, and groups of rows that belong together. */
const WHEELS = ['frontLeft', 'frontRight', 'rearLeft', 'rearRight'] as const;
const BY_WHEEL = ['weight', 'camber', 'toe', 'toeAtRim', 'caster', 'droop', 'unitLength'] as const;

function floorLines(is: FloorAnswer, speech: Speech): string[] {
  if (!is.reached) return [];
  const found = new Map(is.readings.map((each) => [each.id, each]));
  const text = (id: string): string => {
    const each = found.get(id);
    if (each === undefined) return '';
    return each.u === undefined
      ? plainSpaces(spokenAmount(each.value, each.unit, BARE_DIGITS[each.unit] ?? 2, speech))
      : amountText(each.value, each.unit, speech, each.u);
  };
  const rows = BY_WHEEL.filter((kind) => WHEELS.some((wheel) => found.has(`${kind}.${wheel}`))).map(
    (kind) => [
      is.readings.find(({ id }) => id.startsWith(`${kind}.`))!.words.split(',')[0]!,
      ...WHEELS.map((wheel) => text(`${kind}.${wheel}`)),
    ],
  );
  const others = is.readings.filter(({ id }) => !BY_WHEEL.some((kind) => id.startsWith(`${kind}.`)));
  return [
    '',
    ...table([['At the wheels', 'front left', 'front right', 'rear left', 'rear right'], ...rows]),
    '',
    ...table([['The whole car', ''], ...others.map(({ id, words }) => [words, text(id)])]),
    ...tailLines(is.notes, is.cautions),
  ];
}

const GROUPS: Readonly<Record<string, readonly string[]>> = {
  weights: ['weight', 'cross'],
  heights: ['height', 'ride', 'rake'],
  camber: ['camber'],
  toe: ['toe', 'toeAtRim'],
  caster: ['caster'],
  others: ['track', 'wheelbase', 'barTorque', 'droop', 'unitLength', 'frontShare', 'leftShare'],
};

/** Without a group: what is looked at when the car is set. */
const USUAL = ['weight', 'cross', 'height', 'camber', 'toeAtRim', 'caster'];

function columnsOf(of: string | undefined): readonly string[] {
  if (of === undefined) return USUAL;
  const group = Object.hasOwn(GROUPS, of) ? GROUPS[of] : undefined;
  if (group === undefined)
    throw badAsk('asked/of', `--of "${of}" is not known; write one of ${Object.keys(GROUPS).join(', ')}.`);
  return group;
}

/** Decimals of a change in the unit that the trade speaks. */
const DECIMALS: Readonly<Record<string, number>> = {
  kg: 2,
  lb: 2,
  mm: 2,
  in: 3,
  '°': 3,
  '%': 3,
  N·m: 1,
  lbf·ft: 1,
};

const SHORT: Readonly<Record<string, string>> = {
  frontLeft: 'FL',
  frontRight: 'FR',
  rearLeft: 'RL',
  rearRight: 'RR',
  'front left': 'FL',
  'front right': 'FR',
  'rear left': 'RL',
  'rear right': 'RR',
};

/** One table a kind of reading, so that each stays narrow enough to hang on a wall. */
function adjusterLines(is: AdjustersReached, speech: Speech, kinds: readonly string[]): string[] {
  const tables = kinds.flatMap((kind) => {
    const columns = is.readings
      .map((reading, k) => ({ ...reading, k }))
      .filter(({ id }) => id === kind || id.startsWith(`${kind}.`));
    if (columns.length === 0) return [];
    const unit = spokenUnit(columns[0]!.unit, speech);
    const printed = printedUnit(unit);
    const factor = fromSI(1, unit) - fromSI(0, unit);
    const digits = DECIMALS[printed] ?? 3;
    const heads = columns.map(({ id, words }) => {
      const of = id.slice(kind.length + 1);
      return of === '' ? 'whole car' : (SHORT[of] ?? words);
    });
    const cell = (value: number): string => {
      const text = plain(value * factor, digits);
      return Number(text.replace('−', '-')) === 0 ? '·' : `${value > 0 ? '+' : ''}${text}`;
    };
    const rows = is.adjusters.map(({ name, unit: one, effects }) => [
      name,
      `1 ${one}`.replace('1 0.1', '0.1').replace('1 1/', '1/'),
      ...columns.map(({ k }) => cell(effects[k]!)),
    ]);
    const felt = rows.filter((row) => row.slice(2).some((text) => text !== '·'));
    const title = `${columns[0]!.words.split(',')[0]}, ${printed}`;
    return ['', ...table([[title, 'one', ...heads], ...felt]).map(plainSpaces)];
  });
  const left = is.adjusters.map(({ name, unit, down, up }) => [
    name,
    unit,
    plain(Math.abs(down), 0),
    plain(up, 0),
  ]);
  return [
    ...tables,
    '',
    ...table([['What is left', 'unit', 'down', 'up'], ...left]),
    ...tailLines(is.notes, is.cautions),
  ];
}
