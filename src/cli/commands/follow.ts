/** `flatpatch follow`: the force followed from the tyre to the tub, a sentence at each stop. */
import type { Command } from 'commander';
import { followForce, LOAD_CAUTION, LOAD_PATH, STANDING_CAUTION } from '../../questions/index.ts';
import { askedWheel, wheelWords } from '../asked.ts';
import { type AskedDoing, askedDoing, takingDoing } from '../asked-doing.ts';
import { askedJoint, JOINT_HELP, USUAL_JOINT } from '../asked-joint.ts';
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
import { tell } from '../tell.ts';

interface Options extends CarOptions, MannerOptions, AskedDoing {
  readonly wheel: string;
  readonly joint: string;
}

export function followCommand(): Command {
  const made = command('follow', 'The force followed from the tyre to the tub, a sentence at each stop', [
    'flatpatch follow fenwold-201 --doing braking --wheel front-left',
    'flatpatch follow fenwold-201 --doing rear-kerb --wheel rear-left --joint case-to-engine',
  ]);
  return takingDoing(speaking(onCar(made)))
    .option('--wheel <wheel>', 'where the force comes in', 'rear-left')
    .option('--joint <joint>', JOINT_HELP, USUAL_JOINT)
    .action(answer);
}

async function answer(file: string, options: Options): Promise<void> {
  const wheel = askedWheel(options.wheel);
  const joint = askedJoint(options.joint);
  await tell(file, options, ({ car, file: named, source }) => {
    const { doing, means, notes } = askedDoing(options, { car, source });
    const stops = LOAD_PATH.map((stop) => ({
      stop,
      says: followForce(car, stop, { doing, wheel, joint, speech: options.units }).says,
    }));
    return {
      json: { ...header('follow'), car: carOut(car, named), wheel, joint, doing, stops },
      lines: () => [
        ...headLines(car, `${wheelWords(wheel)}, ${means}`),
        ...stops.flatMap(({ stop, says }) => [
          '',
          `${stop.slice(0, 1).toUpperCase()}${stop.slice(1)}`,
          `  ${says}`,
        ]),
        ...tailLines(notes, [LOAD_CAUTION, STANDING_CAUTION]),
      ],
      refusal: undefined,
    };
  });
}
