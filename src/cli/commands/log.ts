/** `flatpatch log`: a log of the car file, what is odd in it, and its hardest rows. */
import type { Command } from 'commander';
import { doingInRow, logNames, logOf, spokenDoing } from '../../questions/index.ts';
import {
  type CarOptions,
  carOut,
  command,
  header,
  headLines,
  type MannerOptions,
  onCar,
  speaking,
} from '../command.ts';
import { BadInput, badAsk } from '../outcome.ts';
import { table } from '../print.ts';
import { tell } from '../tell.ts';

interface Options extends CarOptions, MannerOptions {
  readonly log?: string;
}

export function logCommand(): Command {
  const made = command(
    'log',
    'A log of the car: its rows, gaps, what is odd in it, and its hardest moments',
    [
      'flatpatch log fenwold-201',
      'flatpatch loads fenwold-201 --log lap --at hardest-braking --wheel front-left',
    ],
  );
  return speaking(onCar(made))
    .option('--log <name>', 'name of the log under logs in the car file; left out, the only one')
    .action(answer);
}

async function answer(file: string, options: Options): Promise<void> {
  await tell(file, options, ({ car, file: named, source }) => {
    const names = logNames(car);
    const name = options.log ?? (names.length === 1 ? names[0] : undefined);
    if (name === undefined) {
      throw badAsk(
        'asked/log',
        names.length === 0
          ? 'The car file names no log: write its CSV and columns under logs.'
          : `The car has several logs; write --log with one of ${names.join(', ')}.`,
      );
    }
    const is = logOf(car, source.files ?? {}, name);
    if (!is.reached) throw new BadInput(is.problems);
    const { log, doubts, extremes } = is;
    const { time } = log.channels;
    const hardest = extremes.map(({ name: what, row }) => {
      const here = doingInRow(name, log, row);
      return {
        name: what,
        line: log.lines[row]!,
        ...(time === undefined ? {} : { time: time[row]! }),
        doing: here.reached ? spokenDoing(here.doing, options.units) : here.message,
      };
    });
    return {
      json: {
        ...header('log'),
        car: carOut(car, named),
        log: name,
        rows: log.lines.length,
        channels: Object.keys(log.channels),
        hardest,
        doubts: doubts.map(({ code, message, line, remedy }) => ({
          code,
          message,
          ...(line === undefined ? {} : { line }),
          ...(remedy === undefined ? {} : { remedy }),
        })),
      },
      lines: () => [
        ...headLines(car, `log ${name}`),
        '',
        `${log.lines.length} rows${time === undefined ? '' : `, ${time[0]!.toFixed(2)} s to ${time.at(-1)!.toFixed(2)} s`}.`,
        '',
        ...table([
          ['Hardest', 'line', 'time', 'what the car does'],
          ...hardest.map((each) => [
            each.name,
            String(each.line),
            each.time === undefined ? '' : `${each.time.toFixed(2)} s`,
            each.doing,
          ]),
        ]),
        ...(doubts.length === 0 ? [] : ['', 'Odd in it:']),
        ...doubts.map(({ message, remedy }) => `- ${message}${remedy === undefined ? '' : ` ${remedy}`}`),
      ],
      refusal: undefined,
    };
  });
}
