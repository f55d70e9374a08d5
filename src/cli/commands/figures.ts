/** `flatpatch figures`: every figure of the load path of a car with its spread, in one go. */
import type { Command } from 'commander';
import { STANDING_CAUTION } from '../../questions/cautions.ts';
import { everyFigure, type PlacedFigure } from '../../questions/every-figure.ts';
import { AS_SURVEYED } from '../../questions/figure.ts';
import { figureOut } from '../answers/form.ts';
import { openCar } from '../car-argument.ts';
import {
  type CarOptions,
  carOut,
  command,
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
import { NotReached } from '../outcome.ts';
import { figureLines } from '../print.ts';

type Options = CarOptions & MannerOptions;

export function figuresCommand(): Command {
  const made = command(
    'figures',
    'Every figure of the car as surveyed with its spread, wheel by wheel and axle by axle',
    ['flatpatch figures fenwold-201', 'flatpatch figures ashgarth-501 --spec "as run" --json'],
  );
  return withShares(speaking(onCar(made))).action(answer);
}

async function answer(file: string, options: Options): Promise<void> {
  const { car, file: named } = await openCar(file, options);
  const is = everyFigure(car, AS_SURVEYED);
  sayWarnings(car);
  if (!is.reached) throw new NotReached(is.message);
  if (options.json) {
    const groups = grouped(is.figures).map(({ of, figures }) => ({ of, figures: figures.map(figureOut) }));
    sayJson({ ...header('figures'), car: carOut(car, named), groups, cautions: [STANDING_CAUTION] });
    return;
  }
  sayLines([
    ...headLines(car, 'every figure, as surveyed'),
    ...grouped(is.figures).flatMap(({ of, figures }) => ['', of, ...figureLines(figures, mannerOf(options))]),
    ...tailLines([], [STANDING_CAUTION]),
  ]);
}

/** By what they belong to, in the order in which they come. */
function grouped(placed: readonly PlacedFigure[]) {
  const places = [...new Set(placed.map(({ of }) => of))];
  return places.map((of) => ({
    of,
    figures: placed.filter((each) => each.of === of).map(({ figure }) => figure),
  }));
}
