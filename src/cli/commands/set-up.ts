/** `flatpatch set-up`: what to turn, shim and wind so that the car reads as its sheet wants it. */
import type { Command } from 'commander';
import {
  nothingWords,
  provedWords,
  type SetUpAsked,
  type SetUpReached,
  solveSetUp,
  type USUALLY_MOVED,
} from '../../questions/index.ts';
import type { Speech } from '../../units/show.ts';
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
import { BadInput, badAsk } from '../outcome.ts';
import { amountText, remarkLines, table } from '../print.ts';
import { refusalOf, tell } from '../tell.ts';

interface Options extends CarOptions, MannerOptions, AskedMoves {}

type Kind = (typeof USUALLY_MOVED)[number];

/** What may be moved, as the command line asks it. */
export interface AskedMoves {
  readonly move?: string;
  readonly leave?: readonly string[];
}

const KINDS: readonly Kind[] = [
  'rod',
  'track rod',
  'platform',
  'anchor',
  'splines',
  'camber shims',
  'caster shims',
  'drop link',
  'pressure',
  'ballast',
];

export function setUpCommand(): Command {
  const made = command(
    'set-up',
    'From the sheets that were read: the fewest flats and shims that reach the sheet wanted',
    [
      'flatpatch set-up fenwold-201',
      'flatpatch set-up fenwold-201 --move "rod, track rod, camber shims, caster shims"',
      'flatpatch set-up fenwold-201 --leave "front left pushrod" --json',
    ],
  );
  return takingMoves(speaking(onCar(made))).action(answer);
}

export const takingMoves = (of: Command): Command =>
  of
    .option('--move <kinds>', `kinds that may be moved, parted by commas: ${KINDS.join(', ')}`)
    .option('--leave <adjuster>', 'an adjuster that stays as it is; may be written again', writtenAgain, []);

/** An option that may be written several times. */
export const writtenAgain = (name: string, before: readonly string[]): readonly string[] => [...before, name];

/** @throws BadInput where a kind is none */
export const askedMoves = ({ move, leave }: AskedMoves): SetUpAsked => ({
  ...(move === undefined ? {} : { move: askedKinds(move) }),
  ...(leave === undefined ? {} : { leave }),
});

async function answer(file: string, options: Options): Promise<void> {
  const asked = askedMoves(options);
  await tell(file, options, ({ car, file: named }) => {
    const is = solveSetUp(car, asked);
    if (!is.reached && is.problems !== undefined)
      throw new BadInput(is.problems.map((problem) => ({ ...problem, file: named })));
    const out = is.reached ? is : { reached: false as const, message: is.message };
    return {
      json: { ...header('set-up'), car: carOut(car, named), is: out },
      lines: () => (is.reached ? [...headLines(car, 'set-up'), ...setUpLines(is, options.units)] : []),
      refusal: refusalOf(out),
    };
  });
}

function askedKinds(text: string): readonly Kind[] {
  return text.split(',').map((part) => {
    const kind = KINDS.find((each) => each === part.trim());
    if (kind === undefined)
      throw badAsk(
        'asked/move',
        `--move "${part.trim()}" is no kind of adjuster; write some of ${KINDS.join(', ')}.`,
      );
    return kind;
  });
}

function setUpLines(is: SetUpReached, speech: Speech): string[] {
  const amount = (value: number, unit: string, u?: number): string => amountText(value, unit, speech, u);
  const doubts = is.doubts.map(({ message, remedy }) => `${message} ${remedy}`);
  const moves =
    is.moves.length === 0
      ? [nothingWords(is)]
      : table(is.moves.map(({ adjuster, words }, k) => [`${k + 1}.`, adjuster, words]));
  return [
    ...remarkLines('Doubted before use', doubts),
    '',
    'Moves, all in one go',
    ...moves,
    ...(is.moves.length === 0 ? [] : [provedWords(is)]),
    '',
    ...table([
      ['Level floor', 'wanted', 'before', 'after', 'this floor will show', ''],
      ...is.readings.map((each) => [
        each.words,
        `${amount(each.wanted, each.unit, each.tolerance)}`,
        amount(each.before, each.unit, each.u),
        amount(each.after, each.unit, each.u),
        amount(each.willRead, each.unit, each.u),
        each.inTolerance ? '' : 'out',
      ]),
    ]),
    ...remarkLines('Out of reach', is.outOfReach),
    ...remarkLines(
      'Next best readings',
      is.next.map(
        ({ words, takes, again }) =>
          `${words}${again ? ', once more' : ''}: takes ${(100 * takes).toFixed(0)} % off the spread of the answer`,
      ),
    ),
    ...remarkLines(
      'Learnt of the car',
      is.learnt.map(
        ({ wheel, of, stiffer, u }) =>
          `${of} at ${wheel.replace(/([LR])/, ' $1').toLowerCase()}: ${(100 * stiffer).toFixed(0)} ± ${(100 * u).toFixed(0)} % stiffer than the file has it`,
      ),
    ),
    ...tailLines(is.notes, is.cautions),
  ];
}
