/** `flatpatch corner`: every figure of a wheel, its linkage and its spring at one position. */
import type { Command } from 'commander';
import type { z } from 'zod';
import { type CornerAnswer, cornerFigures } from '../../questions/corner.ts';
import type { Position, Wheel } from '../../questions/figure.ts';
import type { Speech } from '../../units/show.ts';
import type { cornerForm } from '../answers/corner.ts';
import { figureOut, finite } from '../answers/form.ts';
import { askedAmount, askedWheel, WHEELS, wheelWords } from '../asked.ts';
import { openCar } from '../car-argument.ts';
import {
  type CarOptions,
  carOut,
  command,
  complain,
  endWith,
  header,
  headLines,
  type MannerOptions,
  mannerOf,
  onCar,
  sayJson,
  sayLines,
  sayWarnings,
  speaking,
  tailLines,
  withShares,
} from '../command.ts';
import { EXIT } from '../outcome.ts';
import { amountText, figureLines } from '../print.ts';

interface Options extends CarOptions, MannerOptions {
  readonly wheel?: string;
  readonly travel: string;
  readonly rack: string;
  readonly spread: boolean;
}

export const TRAVEL_HELP = 'vertical wheel travel from the surveyed position, bump positive, with its unit';
export const RACK_HELP = 'rack travel from the middle, positive to the left, with its unit';

export function cornerCommand(): Command {
  const made = command(
    'corner',
    'Figures of a wheel, its links, rocker and spring at one travel, each with its spread',
    [
      'flatpatch corner fenwold-201 --wheel front-left',
      'flatpatch corner fenwold-201 --wheel front-left --travel "12 mm" --rack "5 mm" --shares',
      'flatpatch corner fenwold-201 --units in-lbf --travel "1/2 in"',
      'flatpatch corner - --json < cars/fenwold-201/car.yaml',
    ],
  );
  return withShares(speaking(onCar(made)))
    .option('--wheel <wheel>', 'front-left, front-right, rear-left or rear-right; left out, all four')
    .option('--travel <length>', TRAVEL_HELP, '0 mm')
    .option('--rack <length>', RACK_HELP, '0 mm')
    .option('--no-spread', 'without the spread, which takes most of the time')
    .action(answer);
}

async function answer(file: string, options: Options): Promise<void> {
  const wheels = options.wheel === undefined ? WHEELS : [askedWheel(options.wheel)];
  const at = askedPosition(options);
  const { car, file: named } = await openCar(file, options);
  const answers = wheels.map((wheel) =>
    cornerFigures(car, wheel, atWheel(at, wheel), { spread: options.spread }),
  );
  sayWarnings(car);
  if (options.json) {
    sayJson({ ...header('corner'), car: carOut(car, named), corners: answers.map(cornerOut) });
  } else {
    const doing = `wheel at ${amountText(at.travel, 'm', options.units)}, rack at ${amountText(at.rack, 'm', options.units)}`;
    sayLines([
      ...headLines(car, doing),
      ...answers.flatMap((each) => cornerLines(each, options)),
      ...remarks(answers),
    ]);
  }
  for (const each of answers) {
    if (each.reached) continue;
    complain(`${capital(wheelWords(each.wheel))}: ${each.message}${rangeWords(each, options.units)}`);
    endWith(EXIT.notReached);
  }
}

export const askedPosition = (options: { readonly travel: string; readonly rack: string }): Position => ({
  travel: askedAmount('--travel', options.travel, 'm'),
  rack: askedAmount('--rack', options.rack, 'm'),
});

/** The rack moves the front wheels alone. */
export const atWheel = (at: Position, wheel: Wheel): Position =>
  wheel.end === 'front' ? at : { ...at, rack: 0 };

function cornerOut(of: CornerAnswer): z.input<typeof cornerForm>['corners'][number] {
  const range =
    of.range === undefined
      ? undefined
      : { ...of.range, bump: finite(of.range.bump), droop: finite(of.range.droop) };
  if (!of.reached) {
    return {
      reached: false,
      wheel: of.wheel,
      at: of.at,
      message: of.message,
      ...(range === undefined ? {} : { range }),
    };
  }
  return {
    reached: true,
    wheel: of.wheel,
    at: of.at,
    figures: of.figures.map(figureOut),
    events: [...of.events],
    range: range!,
    notes: [...of.notes],
    cautions: [...of.cautions],
  };
}

function cornerLines(of: CornerAnswer, options: Options): string[] {
  if (!of.reached) return [];
  const { speech } = mannerOf(options);
  return [
    '',
    `=== ${capital(wheelWords(of.wheel))}`,
    ...figureLines(of.figures, mannerOf(options)),
    '',
    'Along the travel',
    ...of.events.map((event) => `  ${amountText(event.travel, 'm', speech).padStart(12)}  ${event.what}`),
    ...of.notes.map((note) => `  Note: ${note}`),
  ];
}

function remarks(answers: readonly CornerAnswer[]): string[] {
  const cautions = answers.flatMap((each) => (each.reached ? each.cautions : []));
  return tailLines([], [...new Set(cautions)]);
}

function rangeWords(of: CornerAnswer, speech: Speech): string {
  if (of.range === undefined) return '';
  const { bump, droop, bumpBy, droopBy } = of.range;
  return `\n  It goes from ${amountText(droop, 'm', speech)} (${droopBy}) to ${amountText(bump, 'm', speech)} (${bumpBy}).`;
}

const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);
