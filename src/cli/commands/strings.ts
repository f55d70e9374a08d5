/** `flatpatch strings` and `flatpatch bump-steer`: alignment by strings and plates; the gauge's table beside the geometry's. */
import type { Command } from 'commander';
import { MOST_ROWS } from '../../questions/index.ts';
import { askedWheel } from '../asked.ts';
import { type CarOptions, command, type MannerOptions, onCar, speaking } from '../command.ts';
import { askedByGauge, atWheels, each, gaugedTelling, OptionTexts } from '../gauged.ts';
import { badAsk } from '../outcome.ts';
import { tell } from '../tell.ts';

interface Options extends CarOptions, MannerOptions {
  readonly rim?: readonly string[];
  readonly string?: readonly string[];
  readonly plates?: readonly string[];
  readonly across?: string;
}

const ends = (key: string): readonly string[] => [`${key}.front`, `${key}.rear`];
const RIMS = atWheels(
  (wheel) => `rim.${wheel}.front`,
  (wheel) => `rim.${wheel}.rear`,
);
const STRINGS = { left: ends('string.left'), right: ends('string.right') };
const PLATES = { front: ends('plates.front'), rear: ends('plates.rear') };

export function stringsCommand(): Command {
  const made = command(
    'strings',
    'Toe of each wheel and where each axle points, from distances of string to rim; toe by plates and tape',
    [
      'flatpatch strings fenwold-201 --rim "front-left 151.2 mm, 152.0 mm" --rim "front-right 149.9 mm, 150.6 mm"',
      'flatpatch strings fenwold-201 --rim "rear-left 88.4 mm ± 0.2 mm, 87.6 mm ± 0.2 mm" --rim "rear-right 91.0 mm, 90.1 mm" --string "left 905 mm, 904 mm" --string "right 905 mm, 905 mm"',
      'flatpatch strings fenwold-201 --plates "front 1503.0 mm, 1501.5 mm" --across "380 mm" --json',
    ],
  );
  return speaking(onCar(made))
    .option(
      '--rim <wheel, front, rear>',
      'string to the front edge of a rim and to its rear edge: "front-left 151.2 mm, 152.0 mm"; ± may follow each; may be given again',
      each,
    )
    .option(
      '--string <side, front, rear>',
      'a string from the centre plane of the car, at the front axle and at the rear one: "left 905 mm, 904 mm"; left out, parallel',
      each,
    )
    .option(
      '--plates <axle, front, rear>',
      'plates against both wheels of an axle, tape in front of them and behind: "front 1503.0 mm, 1501.5 mm"',
      each,
    )
    .option(
      '--across <length>',
      'between the two places that are read on a rim or plate; left out, the diameter of the file',
    )
    .action(answerStrings);
}

async function answerStrings(file: string, options: Options): Promise<void> {
  const typed = new OptionTexts();
  for (const text of options.rim ?? []) typed.place('--rim', text, RIMS, 2);
  for (const text of options.string ?? []) typed.place('--string', text, STRINGS, 2);
  for (const text of options.plates ?? []) typed.place('--plates', text, PLATES, 2);
  typed.put('--across', 'across', options.across);
  const question = askedByGauge('strings', typed.texts, {
    option: (key) => `--${key.split('.')[0]}`,
    nothing: 'Nothing was read: write --rim for each wheel, or --plates for an axle.',
  });
  await tell(file, options, (found) =>
    gaugedTelling('strings', found, 'alignment by strings and plates', question, options),
  );
}

interface BumpSteerOptions extends CarOptions, MannerOptions {
  readonly wheel: string;
  readonly row?: readonly string[];
  readonly apart: string;
}

export function bumpSteerCommand(): Command {
  const made = command(
    'bump-steer',
    'Toe over the travel as the gauge reads it, beside what the points of the file make of it',
    [
      'flatpatch bump-steer fenwold-201 --wheel front-left --apart "280 mm" --row "-20 mm, 9.94 mm, 10.00 mm" --row "0 mm, 10.00 mm, 10.00 mm" --row "20 mm, 9.86 mm, 10.00 mm"',
      'flatpatch bump-steer fenwold-201 --wheel rear-right --apart "280 mm" --row "0 mm, 5.00 mm, 5.00 mm" --row "15 mm, 4.90 mm ± 0.03 mm, 5.02 mm ± 0.03 mm" --json',
    ],
  );
  return speaking(onCar(made))
    .requiredOption('--wheel <wheel>', 'front-left, front-right, rear-left or rear-right')
    .requiredOption('--apart <length>', 'between the two feelers')
    .option(
      '--row <travel, front, rear>',
      'travel, bump positive, and both feelers as they read, growing as the plate comes nearer: "20 mm, 9.86 mm, 10.00 mm"; given for each travel, standing among them',
      each,
    )
    .action(answerBumpSteer);
}

async function answerBumpSteer(file: string, options: BumpSteerOptions): Promise<void> {
  const { end, side } = askedWheel(options.wheel);
  const typed = new OptionTexts();
  typed.put('--wheel', 'wheel', `${end} ${side}`);
  typed.put('--apart', 'apart', options.apart);
  const rows = options.row ?? [];
  if (rows.length > MOST_ROWS) throw badAsk('asked/row', `--row is given more than ${MOST_ROWS} times.`);
  rows.forEach((text, k) => {
    const parts = text.split(',').map((part) => part.trim());
    if (parts.length !== 3 || parts.includes(''))
      throw badAsk(
        'asked/row',
        `--row "${text}" is not a travel and two feelers with commas between, such as "20 mm, 9.86 mm, 10.00 mm".`,
      );
    ['travel', 'front', 'rear'].forEach((each, at) => {
      typed.put('--row', `row.${k + 1}.${each}`, parts[at]!);
    });
  });
  const question = askedByGauge('bump-steer', typed.texts, {
    option: (key) => `--${key.split('.')[0]}`,
    nothing: 'Nothing was read: write a --row for each travel, standing among them.',
  });
  await tell(file, options, (found) =>
    gaugedTelling('bump-steer', found, `bump steer, ${end} ${side}`, question, options),
  );
}
