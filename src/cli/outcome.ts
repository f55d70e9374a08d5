/** How a command ended: the exit codes, and the failures that lead to them. */
import type { Problem } from '../measured/problem.ts';
import type { NoProposal } from '../questions/bar-for-coil.ts';

export const EXIT = {
  answered: 0,
  ourMistake: 1,
  badInput: 2,
  notReached: 3,
  notWritten: 4,
  notFound: 4,
} as const;

export const EXIT_HELP = `Exit codes:
  0  answered
  1  the program's own mistake; please report it
  2  the car file or what was asked is wrong; the error stream says what and where
  3  asked for something that cannot be: a travel that cannot be reached, no spring that would do
  4  no answer came: the disk is full, or what was looked for was not found in the time given`;

/** The car file or the question is wrong: all that is wrong with it at once. */
export class BadInput extends Error {
  readonly problems: readonly Problem[];

  constructor(problems: readonly Problem[]) {
    super(problems[0]?.message ?? 'bad input');
    this.problems = problems;
  }
}

/** One thing that is wrong with what was asked on the command line. */
export const badAsk = (code: string, message: string, remedy?: string): BadInput =>
  new BadInput([
    { code, message, path: 'command line', weight: 'error', ...(remedy === undefined ? {} : { remedy }) },
  ]);

/** Why a question of the springs has no answer, as the exit code that it is: put wrongly, or cannot be. */
export const unanswered = ({ because, message }: NoProposal): BadInput | NotReached =>
  because === 'asked wrongly' ? badAsk('asked/wrongly', message) : new NotReached(message);

/** The question is a good one, and its answer is that it cannot be. */
export class NotReached extends Error {}
