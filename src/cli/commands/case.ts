/** `flatpatch case`: every force on the gear case, one by one and together. */
import type { Command } from 'commander';
import { type BodyForcesAnswer, caseAtPlane, caseForces, type PlaneAnswer } from '../../questions/index.ts';
import { spokenAmount } from '../../units/show.ts';

import { askedAmount } from '../asked.ts';
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
import { table } from '../print.ts';
import { refusalOf, tell } from '../tell.ts';

interface Options extends CarOptions, MannerOptions, AskedDoing {
  readonly plane?: string;
  readonly height?: string;
}

export function caseCommand(): Command {
  const made = command(
    'case',
    'Every force on the gear case while the car does something, and their resultant',
    [
      'flatpatch case fenwold-201 --doing rear-kerb',
      'flatpatch case fenwold-201 --doing cornering --plane "-2100 mm"',
      'flatpatch case ashgarth-501 --lateral "1.8 g" --json',
    ],
  );
  return takingDoing(speaking(onCar(made)))
    .option(
      '--plane <x>',
      'what the case hands forward through this plane across the car: x as in the file, so negative behind the front axle, with its unit',
    )
    .option(
      '--height <z>',
      'height on the centre line about which its moments are told, with its unit',
      '0 mm',
    )
    .action(answer);
}

async function answer(file: string, options: Options): Promise<void> {
  const plane =
    options.plane === undefined
      ? undefined
      : {
          x: askedAmount('--plane', options.plane, 'm'),
          height: askedAmount('--height', options.height ?? '0 mm', 'm'),
        };
  await tell(file, options, ({ car, file: named, source }) => {
    const asked = askedDoing(options, { car, source });
    const { doing, means } = asked;
    const is = noted(caseForces(car, doing), asked);
    const through = plane === undefined ? undefined : caseAtPlane(car, doing, plane);
    return {
      json: { ...header('case'), car: carOut(car, named), doing, is: answerOut(is, through) },
      lines: () =>
        is.reached
          ? [
              ...headLines(car, `forces on the gear case, ${means}`),
              '',
              ...forceTable(is, { on: 'the case', about: 'about the rear axle line' }, options.units),
              ...planeLines(through, options),
              ...tailLines(is.notes, is.cautions),
            ]
          : [],
      refusal: refusalOf(is),
    };
  });
}

function planeLines(of: PlaneAnswer | undefined, options: Options): string[] {
  if (of?.reached !== true) return [];
  const newtons = (value: number): string => spokenAmount(value, 'N', 0, options.units);
  const couple = (value: number): string => spokenAmount(value, 'N m', 1, options.units);
  const mm = (value: number): string => spokenAmount(value, 'm', 1, options.units);
  const { x, height } = of.plane;
  return [
    '',
    `Through the plane at ${mm(x)}, of the ${of.count} forces behind it, about the centre line at a height of ${mm(height)}:`,
    ...table([
      ['', 'forward', 'to the left', 'up'],
      ['force', ...of.force.map(newtons)],
      ['moment about that way', ...of.moment.map(couple)],
    ]),
  ];
}

function answerOut(of: BodyForcesAnswer, through: PlaneAnswer | undefined) {
  const out = forcesOut(of);
  if (!out.reached || through?.reached !== true) return out;
  const { plane, force, moment, count } = through;
  return { ...out, plane: { ...plane, force, moment, count } };
}
