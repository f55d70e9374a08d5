/** `flatpatch tub`: every force on the tub, one by one, and what is left over of their balance. */
import type { Command } from 'commander';
import { tubForces } from '../../questions/index.ts';
import { type AskedDoing, askedDoing, noted, takingDoing } from '../asked-doing.ts';
import { forcesOut, forceTable } from '../body-forces.ts';
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
import { refusalOf, tell } from '../tell.ts';

interface Options extends CarOptions, MannerOptions, AskedDoing {}

export function tubCommand(): Command {
  const made = command(
    'tub',
    'Every force on the tub while the car does something: front suspension, engine joint, weight, air',
    ['flatpatch tub fenwold-201 --doing braking', 'flatpatch tub fenwold-201 --doing kerb --json'],
  );
  return takingDoing(speaking(onCar(made))).action(answer);
}

async function answer(file: string, options: Options): Promise<void> {
  await tell(file, options, ({ car, file: named, source }) => {
    const asked = askedDoing(options, { car, source });
    const { doing, means } = asked;
    const is = noted(tubForces(car, doing), asked);
    return {
      json: { ...header('tub'), car: carOut(car, named), doing, is: forcesOut(is) },
      lines: () =>
        is.reached
          ? [
              ...headLines(car, `forces on the tub, ${means}`),
              '',
              ...forceTable(is, { on: 'the tub', about: 'about the engine joint' }, options.units),
              `All of them close to ${is.residual.toExponential(0)} of the largest.`,
              ...tailLines(is.notes, is.cautions),
            ]
          : [],
      refusal: refusalOf(is),
    };
  });
}
