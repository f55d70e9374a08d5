/** `flatpatch tightening`: how the nuts of a bolted joint are tightened: order, rounds, value, hold points. */
import type { Command } from 'commander';
import {
  figuresToSet,
  JOINT_WORDS,
  type TightenedSort,
  type TighteningReached,
  type TorqueFigure,
  tighteningOf,
} from '../../questions/index.ts';
import { bothTorqueWords, bothWrenchWords, wrenchWords } from '../../questions/wrench-mark.ts';
import { type Speech, spokenAmount } from '../../units/show.ts';
import { tighteningOut } from '../answers/tightening.ts';
import { askedJoint, JOINT_HELP, USUAL_JOINT } from '../asked-joint.ts';
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
import { plainSpaces, remarkLines, table } from '../print.ts';
import { refusalOf, tell } from '../tell.ts';

interface Options extends CarOptions, MannerOptions {
  readonly joint: string;
}

export function tighteningCommand(): Command {
  const made = command(
    'tightening',
    'How a bolted joint is tightened: order of its studs, rounds, value with lubricant, hold points',
    [
      'flatpatch tightening fenwold-201',
      'flatpatch tightening fenwold-201 --joint case-to-engine --units in-lbf',
      'flatpatch tightening fenwold-201 --spec "proposal, six studs to the tub" --json',
    ],
  );
  return speaking(onCar(made))
    .option('--joint <joint>', JOINT_HELP, USUAL_JOINT)
    .addHelpText(
      'after',
      '\nThe card itself, to print: flatpatch sheet fenwold-201 --kind tightening --out card.pdf',
    )
    .action(answer);
}

async function answer(file: string, options: Options): Promise<void> {
  const joint = askedJoint(options.joint);
  await tell(file, options, ({ car, file: named }) => {
    const is = tighteningOf(car, joint);
    return {
      json: { ...header('tightening'), car: carOut(car, named), joint, is: tighteningOut(is) },
      lines: () =>
        is.reached
          ? [
              ...headLines(car, `${JOINT_WORDS[joint]}, cold only`),
              ...holdLines(is),
              ...orderLines(is, options.units),
              ...is.sorts.flatMap((sort) => sortLines(sort, options.units)),
              ...remarkLines('Afterwards', is.afterwards),
              ...tailLines([is.rule, ...is.notes], is.cautions),
            ]
          : [],
      refusal: refusalOf(is),
    };
  });
}

const holdLines = ({ holdPoints }: TighteningReached): string[] => [
  '',
  'Before a wrench goes on',
  ...holdPoints.map((words) => `  hold: ${words}`),
];

/** A row a stud in its order, a column a round; two figures that differ stand beside one another. */
function orderLines({ studs, sorts, rounds }: TighteningReached, speech: Speech): string[] {
  const rows = studs.map(({ number, name, sort }) => {
    const of = sorts.find((each) => each.name === sort)!;
    return [
      String(number),
      name,
      ...rounds.map((_, k) =>
        figuresToSet(of)
          .map(({ figure }) => wrenchWords(figure.rounds[k]!, speech))
          .join(' or '),
      ),
    ];
  });
  const percent = rounds.map((share, k) =>
    k > 0 && rounds[k - 1] === share ? 'again' : `${Math.round(100 * share)} %`,
  );
  return ['', 'Set the wrench to, in this order', ...table([['', 'stud', ...percent], ...rows])];
}

function sortLines(sort: TightenedSort, speech: Speech): string[] {
  const force = (value: number): string => plainSpaces(spokenAmount(value, 'N', 0, speech));
  const told = (whose: string, { atNut, setting, lubricant, preload }: TorqueFigure): string =>
    `  ${whose}: ${bothWrenchWords(setting, speech)} on the wrench, ${bothTorqueWords(atNut, speech)} at the nut, on ${lubricant}; preload ${force(preload.low)} to ${force(preload.high)}, middle ${force(preload.middle)}`;
  const { builder, file } = sort;
  return [
    '',
    `${sort.name} (${sort.studs.join(', ')}): ${sort.thread}, ${sort.material}, in ${sort.parent}`,
    ...(builder?.figure === undefined ? [] : [told(`the builder's, ${builder.source}`, builder.figure)]),
    ...(file === undefined ? [] : [told("the file's", file)]),
    `  ${sort.compared}`,
  ];
}
