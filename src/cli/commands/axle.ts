/** `flatpatch axle` and `flatpatch car`: what two wheels do together, and what the whole car does as surveyed. */
import type { Command } from 'commander';
import { type AxleAnswer, axleFigures, carFigures } from '../../questions/axle.ts';
import { AS_SURVEYED, type End, type Stance } from '../../questions/figure.ts';
import { figureOut } from '../answers/form.ts';
import { askedAmount, askedEnd } from '../asked.ts';
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
import { amountText, figureLines } from '../print.ts';
import { refusalOf, tell } from '../tell.ts';
import { RACK_HELP } from './corner.ts';

interface AxleOptions extends CarOptions, MannerOptions, AskedAxle {
  readonly end: string;
  readonly spread: boolean;
}

interface CarFiguresOptions extends CarOptions, MannerOptions {
  readonly spread: boolean;
}

export interface AskedAxle {
  readonly left?: string;
  readonly right?: string;
  readonly travel: string;
  readonly rack: string;
}

export const takingStance = (of: Command): Command =>
  of
    .option(
      '--travel <length>',
      'travel of both wheels from the surveyed position, bump positive, with its unit',
      '0 mm',
    )
    .option('--left <length>', 'travel of the left wheel where it differs')
    .option('--right <length>', 'travel of the right wheel where it differs')
    .option('--rack <length>', RACK_HELP, '0 mm');

export function axleCommand(): Command {
  const made = command(
    'axle',
    'Roll centre, antis, rates in heave and roll, frequencies and damping of an axle',
    [
      'flatpatch axle fenwold-201 --end front',
      'flatpatch axle ashgarth-501 --end rear --left "10 mm" --right "-10 mm" --json',
    ],
  );
  return takingStance(withShares(speaking(onCar(made))))
    .requiredOption('--end <end>', 'front or rear')
    .option('--no-spread', 'without the spread, which takes most of the time')
    .action(answerAxle);
}

export function carCommand(): Command {
  const made = command('car', 'What the whole car does as surveyed: masses, pitch, balance of the axles', [
    'flatpatch car fenwold-201',
    'flatpatch car pellmoor-7b --shares',
  ]);
  return withShares(speaking(onCar(made)))
    .option('--no-spread', 'without the spread, which takes most of the time')
    .action(answerCar);
}

/** @throws BadInput */
export function askedStance(end: End, options: AskedAxle): Stance {
  const travel = askedAmount('--travel', options.travel, 'm');
  const left = options.left === undefined ? travel : askedAmount('--left', options.left, 'm');
  const right = options.right === undefined ? travel : askedAmount('--right', options.right, 'm');
  return { ...AS_SURVEYED, [end]: { left, right }, rack: askedAmount('--rack', options.rack, 'm') };
}

async function answerAxle(file: string, options: AxleOptions): Promise<void> {
  const end = askedEnd(options.end);
  const at = askedStance(end, options);
  const mm = (travel: number): string => amountText(travel, 'm', options.units);
  const doing = `${end} axle, left wheel at ${mm(at[end].left)}, right wheel at ${mm(at[end].right)}`;
  await tell(file, options, ({ car, file: named }) => {
    const is = axleFigures(car, end, at, { spread: options.spread });
    return {
      json: { ...header('axle'), car: carOut(car, named), end, at, is: answerOut(is) },
      lines: () => [...headLines(car, doing), ...answerLines(is, options)],
      refusal: refusalOf(is),
    };
  });
}

async function answerCar(file: string, options: CarFiguresOptions): Promise<void> {
  await tell(file, options, ({ car, file: named }) => {
    const is = carFigures(car, { spread: options.spread });
    return {
      json: { ...header('car'), car: carOut(car, named), is: answerOut(is) },
      lines: () => [...headLines(car, 'the whole car as surveyed'), ...answerLines(is, options)],
      refusal: refusalOf(is),
    };
  });
}

function answerOut(of: AxleAnswer) {
  if (!of.reached) return { reached: false as const, message: of.message };
  return {
    reached: true as const,
    figures: of.figures.map(figureOut),
    notes: [...of.notes],
    cautions: [...of.cautions],
  };
}

const answerLines = (of: AxleAnswer, options: MannerOptions): string[] =>
  of.reached ? [...figureLines(of.figures, mannerOf(options)), ...tailLines(of.notes, of.cautions)] : [];
