/** `flatpatch transfer` and `flatpatch heights`: load transfer with its split; the underside against speed. */
import type { Command } from 'commander';
import type { Car } from '../../car/read.ts';
import {
  heightsAgainstSpeed,
  openCar,
  type ToldAnswer,
  type ToldReached,
  transferUnder,
  USUAL_SPEEDS,
} from '../../questions/index.ts';
import { floorOut } from '../answers/floor-figures.ts';
import { askedAmount, maybeReading } from '../asked.ts';
import { type AskedDoing, askedDoing, isDoingAsked, takingDoing } from '../asked-doing.ts';
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
import { BadInput } from '../outcome.ts';
import { type Found, refusalOf, tell } from '../tell.ts';
import { askedSpeeds } from './ratios.ts';

interface Options extends CarOptions, MannerOptions, AskedWorking, AskedDoing {
  readonly fuel?: string;
  readonly against?: string;
}

interface HeightsOptions extends Options {
  readonly speeds?: string;
  readonly clearance: string;
}

const takingBoth = (of: Command): Command =>
  takingWorking(takingDoing(withShares(speaking(onCar(of)))))
    .option('--fuel <volume>', 'fuel aboard, such as "15 l"; left out, that of the survey')
    .option('--against <spec>', 'another spec of the car beside it: springs or bars changed');

export function transferCommand(): Command {
  const made = command(
    'transfer',
    'Load transfer and its split by springs, links and unsprung parts; roll and pitch; the handbook beside it',
    [
      'flatpatch transfer fenwold-201 --doing cornering --no-spread',
      'flatpatch transfer fenwold-201 --longitudinal "-2 g" --speed "180 km/h" --fuel "10 l"',
      'flatpatch transfer ashgarth-501 --doing cornering --against "as run" --no-spread',
      'flatpatch transfer fenwold-201 --doing cornering --working front.handbookSprings',
    ],
  );
  return takingBoth(made).action(answerTransfer);
}

export function heightsCommand(): Command {
  const made = command(
    'heights',
    'Heights of the underside against speed, pitch, ride frequency as the car then stands, where it touches',
    [
      'flatpatch heights fenwold-201 --no-spread',
      'flatpatch heights fenwold-201 --speeds "0, 120, 240 km/h" --longitudinal "-2 g" --clearance "3 mm"',
      'flatpatch heights fenwold-201 --speeds "0, 200 km/h" --against "as run" --fuel "5 l" --no-spread --json',
    ],
  );
  return takingBoth(made)
    .option('--speeds <speeds>', 'such as "0, 120, 240 km/h"')
    .option('--clearance <height>', 'a point counts as touching at this height', '0 mm')
    .action(answerHeights);
}

/** The same question of another spec. @throws BadInput where it cannot be read */
function other(found: Found, spec: string | undefined, ask: (car: Car) => ToldAnswer) {
  if (spec === undefined) return undefined;
  const read = openCar({ ...found.source, spec });
  if (!read.ok) throw new BadInput(read.problems);
  return { spec, is: ask(read.car) };
}

async function answerTransfer(file: string, options: Options): Promise<void> {
  const fuel = maybeReading('--fuel', options.fuel, 'm^3');
  await tell(file, options, (found) => {
    const asked = askedDoing(isDoingAsked(options) ? options : { ...options, doing: 'cornering' }, found);
    const ask = (car: Car): ToldAnswer =>
      transferUnder(car, {
        doing: asked.doing,
        spread: options.spread,
        ...(fuel === undefined ? {} : { fuel }),
        ...(options.working === undefined ? {} : { working: options.working }),
      });
    return telling('transfer', found, options, ask, asked.means);
  });
}

async function answerHeights(file: string, options: HeightsOptions): Promise<void> {
  const fuel = maybeReading('--fuel', options.fuel, 'm^3');
  const speeds = options.speeds === undefined ? USUAL_SPEEDS : askedSpeeds('--speeds', options.speeds);
  const clearance = askedAmount('--clearance', options.clearance, 'm');
  await tell(file, options, (found) => {
    const asked = isDoingAsked(options)
      ? askedDoing(options, found)
      : askedDoing({ ...options, doing: 'standing' }, found);
    const ask = (car: Car): ToldAnswer =>
      heightsAgainstSpeed(car, {
        doing: asked.doing,
        speeds,
        clearance,
        spread: options.spread,
        ...(fuel === undefined ? {} : { fuel }),
        ...(options.working === undefined ? {} : { working: options.working }),
      });
    return telling('heights', found, options, ask, 'the underside against speed');
  });
}

function telling(
  name: 'transfer' | 'heights',
  found: Found,
  options: Options,
  ask: (car: Car) => ToldAnswer,
  means: string,
) {
  const { car, file } = found;
  const is = ask(car);
  checkWorking(is, options.working);
  const against = other(found, options.against, ask);
  return {
    json: {
      ...header(name),
      car: carOut(car, file),
      is: floorOut(is),
      ...(against === undefined ? {} : { against: { spec: against.spec, is: floorOut(against.is) } }),
    },
    lines: () => [
      ...headLines(car, means),
      ...floorLines(is, options, (of) => [
        ...blocks(of, options),
        ...(against === undefined
          ? []
          : [
              '',
              `The same in spec "${against.spec}"`,
              ...(against.is.reached ? blocks(against.is, options) : [against.is.message]),
            ]),
      ]),
    ],
    refusal: refusalOf(is),
  };
}

/** Owners that have the same figures stand beside one another. */
function blocks({ figures }: ToldReached, options: Options): string[] {
  if (options.shares === true) return floorFigureLines(figures, options);
  const owners = [...new Set(figures.map(({ of }) => of))];
  const idsOf = (owner: string): string =>
    figures
      .filter(({ of }) => of === owner)
      .map(({ id }) => id)
      .join();
  const groups = [...new Set(owners.map(idsOf))];
  return groups.flatMap((group) => {
    const own = figures.filter(({ of }) => idsOf(of) === group);
    return ['', ...besideLines(own, options.units)];
  });
}
