/** A row of a log as what the car is doing. */
import type { Car } from '../car/read.ts';
import { type Contact, type Doing, STANDING, WHEEL_NAMES, type WheelName } from '../loadpath/loads/doing.ts';
import { CHANNEL_WORDS, doubtsOf } from '../logged/doubts.ts';
import { CHANNELS, type Logged, readLog } from '../logged/read-log.ts';
import { EXTREMES, type Extreme, extremesOf, rowAt } from '../logged/rows.ts';
import { nearest, type Problem } from '../measured/problem.ts';
import { show } from '../units/show.ts';

export { EXTREMES, type Extreme, type Logged, rowAt };

export type LogAnswer =
  | {
      readonly reached: true;
      readonly name: string;
      readonly log: Logged;
      readonly doubts: readonly Problem[];
      readonly extremes: readonly Extreme[];
    }
  | { readonly reached: false; readonly problems: readonly Problem[] };

export const logNames = (car: Car): readonly string[] => Object.keys(car.form.logs ?? {});

/**
 * A log of the car, read.
 *
 * @param files  texts beside the car file, by name
 */
export function logOf(car: Car, files: Readonly<Record<string, string>>, name: string): LogAnswer {
  const no = (code: string, message: string, remedy?: string): LogAnswer => ({
    reached: false,
    problems: [{ code, path: 'logs', message, weight: 'error', ...(remedy === undefined ? {} : { remedy }) }],
  });
  const names = logNames(car);
  const filed = Object.hasOwn(car.form.logs ?? {}, name) ? car.form.logs![name]! : undefined;
  if (filed === undefined) {
    const near = nearest(name, names);
    return no(
      'log/unknown',
      `The car has no log "${name}".`,
      names.length === 0
        ? 'Name its CSV and columns under logs in the car file.'
        : `It has: ${names.join(', ')}.${near === undefined ? '' : ` Did you mean "${near}"?`}`,
    );
  }
  const text = Object.hasOwn(files, filed.file) ? files[filed.file] : undefined;
  if (text === undefined) {
    return no(
      'log/no-file',
      `The log "${filed.file}" is not beside the car file, or is longer than what is read.`,
      'Put it there; a lap as CSV is enough, 4 MB at most.',
    );
  }
  const read = readLog(text, {
    file: filed.file,
    columns: filed.columns,
    ...(filed.decimal === undefined ? {} : { decimal: filed.decimal }),
  });
  if (!read.ok) return { reached: false, problems: read.problems };
  return {
    reached: true,
    name,
    log: read.log,
    doubts: doubtsOf(read.log, filed.file),
    extremes: extremesOf(read.log),
  };
}

export type RowAnswer =
  | {
      readonly reached: true;
      readonly doing: Doing;
      readonly means: string;
      readonly notes: readonly string[];
    }
  | { readonly reached: false; readonly message: string };

const LOADS: readonly (readonly [
  WheelName,
  'loadFrontLeft' | 'loadFrontRight' | 'loadRearLeft' | 'loadRearRight',
])[] = WHEEL_NAMES.map((wheel) => [
  wheel,
  `load${wheel.slice(0, 1).toUpperCase()}${wheel.slice(1)}` as 'loadFrontLeft',
]);

/** What the car does in one row. A cell without a number is never filled in. */
export function doingInRow(name: string, log: Logged, row: number): RowAnswer {
  const line = log.lines[row];
  if (line === undefined) return { reached: false, message: `The log "${name}" has no row ${row + 1}.` };
  const at = CHANNELS.filter((channel) => log.channels[channel] !== undefined);
  const missing = at.filter((channel) => !Number.isFinite(log.channels[channel]![row]));
  if (missing.length > 0) {
    return {
      reached: false,
      message: `Line ${line} of the log "${name}" has no number for ${missing.map((channel) => CHANNEL_WORDS[channel]).join(', ')}: choose a row that is whole.`,
    };
  }
  const of = (channel: (typeof CHANNELS)[number]): number => log.channels[channel]?.[row] ?? 0;
  const loaded = LOADS.filter(([, channel]) => log.channels[channel] !== undefined);
  const below = loaded.find(([, channel]) => of(channel) < 0);
  if (below !== undefined) {
    return {
      reached: false,
      message: `Line ${line} of the log "${name}" has a tyre load below nothing (${CHANNEL_WORDS[below[1]]}): look at its sign and at what it reads at rest.`,
    };
  }
  const contacts: Partial<Record<WheelName, Contact>> = Object.fromEntries(
    loaded.map(([wheel, channel]) => [wheel, { up: of(channel) }]),
  );
  const absent = (['speed', 'longitudinal', 'lateral', 'vertical', 'rack'] as const).filter(
    (channel) => log.channels[channel] === undefined,
  );
  const time = log.channels.time?.[row];
  return {
    reached: true,
    doing: {
      ...STANDING,
      longitudinal: of('longitudinal'),
      lateral: of('lateral'),
      vertical: of('vertical'),
      speed: Math.max(0, of('speed')),
      rack: of('rack'),
      contacts,
    },
    means: `log ${name}, line ${line}${time === undefined ? '' : `, ${time.toFixed(2)} s`}`,
    notes: [
      'A row of a log is taken as if the car stood in balance with it at that moment; what a logger smooths away is not in it, and it carries no spread of its own.',
      ...(absent.length === 0
        ? []
        : [
            `Not in the log, and taken as nothing: ${absent.map((channel) => CHANNEL_WORDS[channel]).join(', ')}.`,
          ]),
      ...(loaded.length > 0 && loaded.length < LOADS.length
        ? ['The log has loads of some tyres only: they are put on as a kerb would be.']
        : []),
    ],
  };
}

/** In the words of a line: 182.4 km/h, −1.83 g, 0.42 g. */
export const rowWords = ({ doing }: Extract<RowAnswer, { reached: true }>): string =>
  [
    `${(doing.speed * 3.6).toFixed(0)} km/h`,
    `${show(doing.longitudinal, 'm/s^2').text} g fore and aft`,
    `${show(doing.lateral, 'm/s^2').text} g sideways`,
  ].join(', ');
