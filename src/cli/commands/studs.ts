/** `flatpatch studs`: how a bolted joint of the load path stands what the car does. */
import type { Command } from 'commander';
import { JOINT_WORDS, type JointAnswer, jointOf } from '../../questions/index.ts';
import { figureOut } from '../answers/form.ts';
import { type AskedDoing, askedDoing, noted, takingDoing } from '../asked-doing.ts';
import { askedJoint, JOINT_HELP, USUAL_JOINT } from '../asked-joint.ts';
import {
  type CarOptions,
  carOut,
  command,
  header,
  headLines,
  type MannerOptions,
  mannerOf,
  onCar,
  speaking,
  tailLines,
  withShares,
} from '../command.ts';
import { figureLines } from '../print.ts';
import { refusalOf, tell } from '../tell.ts';

interface Options extends CarOptions, MannerOptions, AskedDoing {
  readonly joint: string;
  readonly spread: boolean;
}

export function studsCommand(): Command {
  const made = command(
    'studs',
    'Studs of a joint: preload, what the load leaves of it, dowels, what breaks first',
    [
      'flatpatch studs fenwold-201 --doing dip',
      'flatpatch studs fenwold-201 --spec "proposal, six studs to the tub" --doing rear-kerb --no-spread',
      'flatpatch studs fenwold-201 --joint case-to-engine --lateral "2 g" --no-spread --json',
    ],
  );
  return takingDoing(withShares(speaking(onCar(made))))
    .option('--joint <joint>', JOINT_HELP, USUAL_JOINT)
    .option('--no-spread', 'without the spread, which takes most of the time')
    .action(answer);
}

async function answer(file: string, options: Options): Promise<void> {
  const joint = askedJoint(options.joint);
  await tell(file, options, ({ car, file: named, source }) => {
    const asked = askedDoing(options, { car, source });
    const { doing, means } = asked;
    const is = noted(jointOf(car, joint, doing, { spread: options.spread }), asked);
    return {
      json: { ...header('studs'), car: carOut(car, named), joint, doing, is: answerOut(is) },
      lines: () =>
        is.reached
          ? [
              ...headLines(car, `${JOINT_WORDS[joint]}, ${means}`),
              ...figureLines(is.figures, mannerOf(options)),
              ...tailLines(is.notes, is.cautions),
            ]
          : [],
      refusal: refusalOf(is),
    };
  });
}

function answerOut(of: JointAnswer) {
  if (!of.reached) return { reached: false as const, message: of.message };
  return {
    reached: true as const,
    figures: of.figures.map(figureOut),
    worst: of.worst,
    notes: [...of.notes],
    cautions: [...of.cautions],
  };
}
