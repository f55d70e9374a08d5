/** `flatpatch loads`: what tyres, members, rockers and springs carry while the car does something. */
import type { Command } from 'commander';
import { type LoadsAnswer, type LoadsReached, loadsOf, type WheelLoads } from '../../questions/index.ts';
import { figureOut } from '../answers/form.ts';
import { askedWheel, WHEELS, wheelWords } from '../asked.ts';
import { type AskedDoing, askedDoing, noted, takingDoing } from '../asked-doing.ts';
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
import { figureLines, figureText, table } from '../print.ts';
import { refusalOf, tell } from '../tell.ts';

interface Options extends CarOptions, MannerOptions, AskedDoing {
  readonly wheel?: string;
  readonly spread: boolean;
}

export function loadsCommand(): Command {
  const made = command('loads', 'What tyres, links, rockers and springs carry while the car does something', [
    'flatpatch loads fenwold-201 --doing braking --wheel front-left',
    'flatpatch loads ashgarth-501 --lateral "1.8 g" --speed "150 km/h" --no-spread',
    'flatpatch loads fenwold-201 --kerb "rear-left 2.5" --wheel rear-left --no-spread --json',
  ]);
  return takingDoing(withShares(speaking(onCar(made))))
    .option('--wheel <wheel>', 'front-left, front-right, rear-left or rear-right; left out, all four')
    .option('--no-spread', 'without the spread, which takes most of the time')
    .action(answer);
}

async function answer(file: string, options: Options): Promise<void> {
  const wheels = options.wheel === undefined ? WHEELS : [askedWheel(options.wheel)];
  await tell(file, options, ({ car, file: named, source }) => {
    const asked = askedDoing(options, { car, source });
    const { doing, means } = asked;
    const is = noted(loadsOf(car, doing, { spread: options.spread, wheels }), asked);
    return {
      json: { ...header('loads'), car: carOut(car, named), doing, is: answerOut(is) },
      lines: () => [...headLines(car, means), ...answerLines(is, options)],
      refusal: refusalOf(is),
    };
  });
}

function answerOut(of: LoadsAnswer) {
  if (!of.reached) return { reached: false as const, message: of.message };
  return {
    reached: true as const,
    wheels: of.wheels.map(({ wheel, figures }) => ({ wheel, figures: figures.map(figureOut) })),
    residual: of.residual,
    notes: [...of.notes],
    cautions: [...of.cautions],
  };
}

function answerLines(of: LoadsAnswer, options: Options): string[] {
  if (!of.reached) return [];
  return [
    '',
    ...groundTable(of, options),
    ...of.wheels.flatMap((each) => [
      '',
      `=== ${capital(wheelWords(each.wheel))}`,
      ...figureLines(each.figures, mannerOf(options)),
    ]),
    ...tailLines(of.notes, of.cautions),
  ];
}

const GROUND = ['tyreLoad', 'tyreForward', 'tyreSide', 'travelUnderLoad'] as const;

/** The ground's forces side by side, where all four wheels are asked for. */
function groundTable({ wheels }: LoadsReached, options: Options): string[] {
  if (wheels.length < 2) return [];
  const row = ({ wheel, figures }: WheelLoads): string[] => [
    capital(wheelWords(wheel)),
    ...GROUND.map((id) => {
      const { spread: _, ...figure } = figures.find((each) => each.id === id)!;
      return figureText(figure, options.units);
    }),
  ];
  return table([['At the ground', 'load', 'forward', 'to the left', 'travel'], ...wheels.map(row)]);
}

const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);
