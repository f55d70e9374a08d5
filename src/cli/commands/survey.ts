/** `flatpatch survey`: what the survey says of its own readings, and whether the car is bent. */
import type { Command } from 'commander';
import { pointsInWords } from '../../car/point-words.ts';
import { type SurveyAnswer, surveyAnswer } from '../../questions/survey.ts';
import { plain, type Speech, show } from '../../units/show.ts';
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
} from '../command.ts';
import { badAsk } from '../outcome.ts';
import { amountText, remarkLines, table } from '../print.ts';

interface Options extends CarOptions, MannerOptions {
  readonly points?: true;
  readonly all?: true;
}

/** Readings printed unless all are asked for: those that stand worst against the others. */
const MOST_READINGS = 12;

export function surveyCommand(): Command {
  const made = command('survey', 'Residuals, outliers and the left/right comparison of a surveyed car', [
    'flatpatch survey ashgarth-501',
    'flatpatch survey ashgarth-501 --points --all',
    'flatpatch survey ashgarth-501 --json',
  ]);
  return speaking(onCar(made))
    .option('--points', 'also where every point stands, with its spread')
    .option('--all', 'all readings, not only the worst')
    .action(answer);
}

async function answer(file: string, options: Options): Promise<void> {
  const { car, file: named } = await openCar(file, options);
  const survey = surveyAnswer(car, options.units);
  if (survey === undefined)
    throw badAsk('asked/no-survey', `The car file of ${car.form.car.name} has no survey.`);
  sayWarnings(car);
  if (options.json) {
    sayJson({ ...header('survey'), car: carOut(car, named), ...survey });
    return;
  }
  const { comparison, whole, outliers, undetermined } = survey;
  sayLines([
    ...headLines(car, 'the survey'),
    ...remarkLines('The lists', survey.said),
    '',
    'The whole',
    `  ${whole.sentence}`,
    ...remarkLines(
      'Readings that do not fit',
      outliers.map((each) => each.sentence),
    ),
    ...remarkLines(
      'Points that nothing places',
      undetermined.map((each) => `${pointsInWords(each.point)}: ${each.why}`),
    ),
    '',
    options.all
      ? 'Readings'
      : `Readings that stand worst against the others (${Math.min(MOST_READINGS, survey.readings.length)} of ${survey.readings.length} readings; a point has a row for each axis)`,
    ...readingRows(survey, options),
    ...(options.points ? ['', 'Points', ...pointRows(survey, options.units)] : []),
    '',
    'Left against right',
    ...(comparison === undefined
      ? ['  No pair of points was surveyed on both sides.']
      : [
          `  ${comparison.sentence}`,
          ...[...comparison.pairs, ...comparison.lengths].map((each) => `  - ${each.sentence}`),
        ]),
    ...remarkLines('Notes', survey.notes),
  ]);
}

function readingRows({ readings }: SurveyAnswer, options: Options): string[] {
  const worst = [...readings].sort((a, b) => a.p - b.p);
  const shown = options.all ? readings : worst.slice(0, MOST_READINGS);
  const rows = shown.flatMap((reading) =>
    reading.components.map((each) => [
      reading.components.length === 1 ? reading.means : `${reading.means} ${each.component}`,
      residualText(each.residual, each.u, options.units),
      amountText(each.u, 'm', options.units),
      each.standardised === undefined ? 'not checked' : plain(each.standardised, 1),
    ]),
  );
  return table([['reading', 'residual', 'claimed ±', 'residual over its own spread'], ...rows]).map(
    (line) => `  ${line}`,
  );
}

/** A residual needs no more places than what the reading claims. */
function residualText(value: number, u: number, speech: Speech): string {
  const { text, unit } = show(value, 'm', speech, u);
  return `${text} ${unit}`;
}

const pointRows = ({ points }: SurveyAnswer, speech: Speech): string[] =>
  table([
    ['point', 'x', 'y', 'z'],
    ...points.map((point) => [
      point.name,
      ...point.at.map((value, k) => amountText(value, 'm', speech, point.u[k])),
    ]),
  ]).map((line) => `  ${line}`);
