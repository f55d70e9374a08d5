/** `flatpatch case`: every force on the gear case, one by one and together. */
import type { Command } from 'commander';
import { type CaseAnswer, type CaseReached, caseForces } from '../../questions/index.ts';
import { spokenAmount } from '../../units/show.ts';
import { type AskedDoing, askedDoing, noted, takingDoing } from '../asked-doing.ts';
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
import { table } from '../print.ts';
import { refusalOf, tell } from '../tell.ts';

interface Options extends CarOptions, MannerOptions, AskedDoing {}

export function caseCommand(): Command {
  const made = command(
    'case',
    'Every force on the gear case while the car does something, and their resultant',
    ['flatpatch case fenwold-201 --doing rear-kerb', 'flatpatch case ashgarth-501 --lateral "1.8 g" --json'],
  );
  return takingDoing(speaking(onCar(made))).action(answer);
}

async function answer(file: string, options: Options): Promise<void> {
  await tell(file, options, ({ car, file: named, source }) => {
    const asked = askedDoing(options, { car, source });
    const { doing, means } = asked;
    const is = noted(caseForces(car, doing), asked);
    return {
      json: { ...header('case'), car: carOut(car, named), doing, is: answerOut(is) },
      lines: () =>
        is.reached
          ? [
              ...headLines(car, `forces on the gear case, ${means}`),
              '',
              ...forceTable(is, options),
              ...tailLines(is.notes, is.cautions),
            ]
          : [],
      refusal: refusalOf(is),
    };
  });
}

function forceTable(of: CaseReached, options: Options): string[] {
  const newtons = (value: number): string => spokenAmount(value, 'N', 0, options.units);
  const couple = (value: number): string => (value === 0 ? '' : spokenAmount(value, 'N m', 1, options.units));
  const { force, moment } = of.resultant;
  return table([
    ['On the case', 'forward', 'to the left', 'up', 'together', 'couple'],
    ...of.forces.map((each) => [
      each.name,
      ...each.force.map(newtons),
      newtons(each.size),
      couple(each.moment),
    ]),
    ['All of them', ...force.map(newtons), newtons(Math.hypot(...force)), ''],
    ['about the rear axle line', ...moment.map(couple), '', ''],
  ]);
}

function answerOut(of: CaseAnswer) {
  if (!of.reached) return { reached: false as const, message: of.message };
  const { forces, resultant, residual, notes, cautions } = of;
  return {
    reached: true as const,
    forces: forces.map((each) => ({ ...each })),
    resultant,
    residual,
    notes: [...notes],
    cautions: [...cautions],
  };
}
