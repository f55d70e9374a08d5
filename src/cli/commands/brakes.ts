/** `flatpatch brakes`: bias from bores and bar against the loads of the axles, pressures, wear. */
import type { Command } from 'commander';
import { brakesOf, type ToldReached, USUAL_DECELERATIONS } from '../../questions/index.ts';
import { floorOut } from '../answers/floor-figures.ts';
import { askedAmount } from '../asked.ts';
import {
  type CarOptions,
  carOut,
  command,
  header,
  headLines,
  type MannerOptions,
  onCar,
  speaking,
  withShares,
} from '../command.ts';
import {
  type AskedWorking,
  besideLines,
  checkWorking,
  floorFigureLines,
  floorLines,
  takingWorking,
} from '../floor-lines.ts';
import { amountText } from '../print.ts';
import { refusalOf, tell } from '../tell.ts';

interface Options extends CarOptions, MannerOptions, AskedWorking {
  readonly speed: string;
  readonly decelerations?: string;
}

export function brakesCommand(): Command {
  const made = command(
    'brakes',
    'Brake bias from bores, bar and pads against the axle loads; pedal, line pressures; laps left of pads and discs',
    [
      'flatpatch brakes fenwold-201',
      'flatpatch brakes fenwold-201 --speed "90 km/h" --decelerations "0.5 g, 0.8 g, 1.2 g" --shares',
      'flatpatch brakes fenwold-201 --working car.frontShare',
    ],
  );
  return takingWorking(withShares(speaking(onCar(made))))
    .option('--speed <speed>', 'for downforce and drag', '180 km/h')
    .option('--decelerations <accelerations>', 'such as "0.8 g, 1.4 g"')
    .action(answer);
}

async function answer(file: string, options: Options): Promise<void> {
  const speed = askedAmount('--speed', options.speed, 'm/s');
  const decelerations =
    options.decelerations === undefined
      ? USUAL_DECELERATIONS
      : options.decelerations.split(',').map((each) => askedAmount('--decelerations', each.trim(), 'm/s^2'));
  await tell(file, options, ({ car, file: named }) => {
    const is = brakesOf(car, {
      speed,
      decelerations,
      spread: options.spread,
      ...(options.working === undefined ? {} : { working: options.working }),
    });
    checkWorking(is, options.working);
    const kmh = amountText(speed * 3.6, '1', options.units);
    return {
      json: { ...header('brakes'), car: carOut(car, named), is: floorOut(is) },
      lines: () => [
        ...headLines(car, `brakes, at ${kmh} km/h`),
        ...floorLines(is, options, (of) => lines(of, options)),
      ],
      refusal: refusalOf(is),
    };
  });
}

function lines({ figures }: ToldReached, options: Options): string[] {
  if (options.shares === true) return floorFigureLines(figures, options);
  const slowing = figures.filter(({ of }) => of.endsWith(' g'));
  const rest = figures.filter(({ of }) => !of.endsWith(' g'));
  return [...floorFigureLines(rest, options), '', ...besideLines(slowing, options.units)];
}
