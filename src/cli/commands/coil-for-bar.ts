/** `flatpatch coil-for-bar`: which coil in the damper unit does the torsion bar's work at a wheel. */
import type { Command } from 'commander';
import { type CoilProposal, coilForBar } from '../../questions/coil-for-bar.ts';
import { finite } from '../answers/form.ts';
import { askedAmount, askedWheel, wheelWords } from '../asked.ts';
import { openCar } from '../car-argument.ts';
import {
  type CarOptions,
  carOut,
  command,
  header,
  headLines,
  type MannerOptions,
  onCar,
  sayJson,
  sayLines,
  sayWarnings,
  speaking,
  tailLines,
} from '../command.ts';
import { unanswered } from '../outcome.ts';
import { type Quantity, quantities, sideBySide } from '../quantity.ts';
import { atTheWheel, topOf, WHEEL_RATES } from '../wheel-rates.ts';

interface Options extends CarOptions, MannerOptions {
  readonly wheel: string;
  readonly seats: string;
}

export function coilForBarCommand(): Command {
  const made = command(
    'coil-for-bar',
    'Which coil does the work of the torsion bar, and what it cannot match',
    [
      'flatpatch coil-for-bar ashgarth-501 --wheel front-left --seats "120 mm"',
      'flatpatch coil-for-bar ashgarth-501 --wheel front-right --seats "4 3/4 in" --units in-lbf --json',
    ],
  );
  return speaking(onCar(made))
    .requiredOption('--wheel <wheel>', 'front-left, front-right, rear-left or rear-right')
    .requiredOption('--seats <length>', 'distance between the spring seats in the surveyed position')
    .action(answer);
}

async function answer(file: string, options: Options): Promise<void> {
  const wheel = askedWheel(options.wheel);
  const seatLength = askedAmount('--seats', options.seats, 'm');
  const { car, file: named } = await openCar(file, options);
  const proposal = coilForBar(car, wheel, { seatLength });
  if (!proposal.reached) throw unanswered(proposal);
  sayWarnings(car);
  const coils = proposal.coils.map((coil, index) => ({
    name: coil.name ?? `coil ${index + 1}`,
    of: coilQuantities(coil),
  }));
  if (options.json) {
    const { travel, rockerAngle, torqueBar, wheelRateBar, notes, cautions } = proposal;
    sayJson({
      ...header('coil-for-bar'),
      car: carOut(car, named),
      wheel,
      travel: [...travel],
      rockerAngle: [...rockerAngle],
      bar: {
        quantities: barQuantities(proposal),
        torque: torqueBar.map(finite),
        wheelRate: wheelRateBar.map(finite),
      },
      coils: proposal.coils.map((coil, index) => ({
        ...(coil.name === undefined ? {} : { name: coil.name }),
        quantities: coils[index]!.of,
        torque: coil.torque.map(finite),
        wheelRate: coil.wheelRate.map(finite),
      })),
      notes: [...notes],
      cautions: [...cautions],
    });
    return;
  }
  const [best] = proposal.coils;
  sayLines([
    ...headLines(car, `coil for the torsion bar, ${wheelWords(wheel)}`),
    '',
    ...sideBySide(coils, options.units),
    '',
    ...atTheWheel(
      {
        name: 'torsion bar',
        standing: proposal.wheelRateBarStanding,
        ...topOf(proposal, proposal.wheelRateBar),
      },
      { name: coils[0]!.name, standing: best!.wheelRateStanding, ...topOf(proposal, best!.wheelRate) },
      options.units,
    ),
    ...tailLines(proposal.notes, proposal.cautions),
  ]);
}

const barQuantities = (of: CoilProposal): Quantity[] =>
  quantities(WHEEL_RATES, {
    wheelRateStanding: of.wheelRateBarStanding,
    wheelRateFullBump: of.wheelRateBar.at(-1),
  });

const coilQuantities = (coil: CoilProposal['coils'][number]): Quantity[] =>
  quantities(
    {
      rate: ['rate', 'N/m'],
      ...WHEEL_RATES,
      freeLength: ['free length', 'm'],
      seatLength: ['distance of the seats as surveyed', 'm'],
      greatestForce: ['greatest force', 'N'],
      worst: ['greatest difference of torque', 'N m'],
      worstPart: ['the same, of the greatest torque', 'share'],
      rms: ['difference, root mean square', 'N m'],
      unseatsBelow: ['comes off its seat below a rocker angle of', 'rad'],
      bindMargin: ['left at full bump before it is solid', 'm'],
    },
    {
      ...coil,
      wheelRateFullBump: coil.wheelRate.at(-1),
      worst: coil.worst.difference,
      worstPart: coil.worst.part,
    },
  );
