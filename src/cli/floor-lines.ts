/** Answers of the flat floor as lines, and the option that shows the working of one of their figures. */
import type { Command } from 'commander';
import { floorId, type ToldAnswer, type ToldFigure, type ToldReached } from '../questions/index.ts';
import { type Speech, spokenUnit } from '../units/show.ts';
import { type MannerOptions, mannerOf, tailLines } from './command.ts';
import { checkFigure } from './commands/working.ts';
import { amountIn, shareLinesIn, table } from './print.ts';
import { stepLines } from './step-lines.ts';

export interface AskedWorking {
  readonly working?: string;
  readonly spread: boolean;
}

export const takingWorking = (of: Command): Command =>
  of
    .option(
      '--working <figure>',
      'how one figure was worked out, by its name, such as front.coldPressure (--json has them as of and id)',
    )
    .option('--no-spread', 'without the spread');

/** The unit in which the trade says this figure. */
const unitOf = ({ unit, spoken }: ToldFigure, speech: Speech): string =>
  spoken === undefined ? spokenUnit(unit, speech) : spoken[speech === 'mm-N' ? 0 : 1];

export const floorText = (figure: ToldFigure, speech: Speech): string =>
  amountIn(figure.value, unitOf(figure, speech), figure.spread?.u);

/** Figures under what they belong to, in the order in which they were put. */
export function floorFigureLines(figures: readonly ToldFigure[], options: MannerOptions): string[] {
  const { speech, shares } = mannerOf(options);
  const owners = [...new Set(figures.map((each) => each.of))];
  return owners.flatMap((owner) => {
    const own = figures.filter((each) => each.of === owner);
    const rows = table(own.map((each) => [each.means, floorText(each, speech)]));
    return [
      '',
      `${owner.slice(0, 1).toUpperCase()}${owner.slice(1)}`,
      ...own.flatMap((each, k) => [
        `  ${rows[k]!}${each.say === undefined ? '' : `  (${each.say})`}`,
        ...(shares ? shareLinesIn(each, unitOf(each, speech)) : []),
      ]),
    ];
  });
}

/** One column for each owner: what they have in common on the left. */
export function besideLines(figures: readonly ToldFigure[], speech: Speech): string[] {
  const owners = [...new Set(figures.map((each) => each.of))];
  const ids = [...new Set(figures.map((each) => each.id))];
  const cell = (owner: string, id: string): string => {
    const found = figures.find((each) => each.of === owner && each.id === id);
    return found === undefined ? '' : floorText(found, speech);
  };
  return table([
    ['', ...owners],
    ...ids.map((id) => [
      figures.find((each) => each.id === id)!.means,
      ...owners.map((owner) => cell(owner, id)),
    ]),
  ]).map((line) => `  ${line}`);
}

/** The working alone where one was asked for; else the answer by `lines`, with notes and cautions. */
export function floorLines(
  of: ToldAnswer,
  options: MannerOptions & AskedWorking,
  lines: (of: ToldReached) => readonly string[],
): string[] {
  if (!of.reached) return [];
  const { working } = of;
  if (working === undefined) return [...lines(of), ...tailLines(of.notes, of.cautions)];
  const { figure, steps, readings } = working;
  return [
    ...floorFigureLines([figure], { ...options, shares: true }),
    ...steps.flatMap((step, index) => stepLines(step, index + 1, readings)),
    ...tailLines([], of.cautions),
  ];
}

/** @throws BadInput where a working is asked of a figure that is not there */
export function checkWorking(of: ToldAnswer, asked: string | undefined): void {
  if (asked !== undefined && of.reached) checkFigure(asked, of.figures.map(floorId));
}
