/** `flatpatch strings` and `flatpatch bump-steer`: alignment by strings and plates; the gauge's table beside the geometry's. */
import type { Command } from 'commander';
import { alignment, bumpSteerRead } from '../../questions/index.ts';
import { askedAmount, askedWheel, WHEELS, wheelName } from '../asked.ts';
import { type CarOptions, command, type MannerOptions, onCar, speaking } from '../command.ts';
import { askedGauge, each, gaugedTelling, placedGauges } from '../gauged.ts';
import { badAsk } from '../outcome.ts';
import { tell } from '../tell.ts';

interface Options extends CarOptions, MannerOptions {
  readonly rim?: readonly string[];
  readonly string?: readonly string[];
  readonly plates?: readonly string[];
  readonly across?: string;
}

const AT_WHEELS = Object.fromEntries(WHEELS.map((wheel) => [wheelName(wheel), wheel] as const));
const SIDES = { left: 'left', right: 'right' } as const;
const ENDS = { front: 'front', rear: 'rear' } as const;

/** A steel rule from a string to a rim, and a tape: common practice, no source. */
const RULE = 0.25e-3;
const TAPE = 0.5e-3;
const FEELER = 0.02e-3;

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
  const two = { least: 2, most: 2, like: 'm' };
  const rims = (options.rim ?? []).map((text) => {
    const { place: wheel, amounts } = placedGauges('--rim', text, AT_WHEELS, { ...two, usual: RULE });
    return { wheel, front: amounts[0]!, rear: amounts[1]! };
  });
  const strings = (options.string ?? []).map((text) => {
    const { place: side, amounts } = placedGauges('--string', text, SIDES, { ...two, usual: TAPE });
    return { side, front: amounts[0]!, rear: amounts[1]! };
  });
  const plates = (options.plates ?? []).map((text) => {
    const { place: end, amounts } = placedGauges('--plates', text, ENDS, { ...two, usual: TAPE });
    return { end, front: amounts[0]!, rear: amounts[1]! };
  });
  if (rims.length + plates.length === 0)
    throw badAsk('asked/nothing', 'Nothing was read: write --rim for each wheel, or --plates for an axle.');
  refuseTwice(
    '--rim',
    rims.map(({ wheel }) => wheelName(wheel)),
  );
  refuseTwice(
    '--string',
    strings.map(({ side }) => side),
  );
  refuseTwice(
    '--plates',
    plates.map(({ end }) => end),
  );
  const across = options.across === undefined ? undefined : askedGauge('--across', options.across, 'm', TAPE);
  if (across !== undefined && !(across.value > 0.1))
    throw badAsk('asked/across', `--across "${options.across}" is less than any rim; write it in mm.`);
  await tell(file, options, (found) =>
    gaugedTelling(
      'strings',
      found,
      'alignment by strings and plates',
      alignment(found.car, { rims, strings, plates, ...(across === undefined ? {} : { across }) }),
      options,
    ),
  );
}

/** @throws BadInput where a place is given twice */
export function refuseTwice(option: string, names: readonly string[]): void {
  const twice = names.find((name, k) => names.indexOf(name) < k);
  if (twice !== undefined) throw badAsk('asked/twice', `${option} is given twice for ${twice}.`);
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
  const wheel = askedWheel(options.wheel);
  const apart = askedGauge('--apart', options.apart, 'm', RULE);
  if (!(apart.value > 0.05))
    throw badAsk('asked/apart', `--apart "${options.apart}" is too little to tell an angle.`);
  const rows = (options.row ?? []).map((text) => {
    const parts = text.split(',').map((part) => part.trim());
    if (parts.length !== 3)
      throw badAsk(
        'asked/row',
        `--row "${text}" is not a travel and two feelers with commas between, such as "20 mm, 9.86 mm, 10.00 mm".`,
      );
    const [travel, front, rear] = parts as [string, string, string];
    return {
      travel: askedAmount('--row', travel, 'm'),
      front: askedGauge('--row', front, 'm', FEELER),
      rear: askedGauge('--row', rear, 'm', FEELER),
    };
  });
  if (rows.length === 0)
    throw badAsk('asked/nothing', 'Nothing was read: write a --row for each travel, standing among them.');
  await tell(file, options, (found) =>
    gaugedTelling(
      'bump-steer',
      found,
      `bump steer, ${options.wheel.replace('-', ' ')}`,
      bumpSteerRead(found.car, { wheel, rows, apart }),
      options,
    ),
  );
}
