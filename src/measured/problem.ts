/**
 * What is wrong with what somebody gave us: told all at once, each with where it stands and what would do.
 *
 * The `code` never changes, so that tests and scripts hang on it; the words may be bettered.
 */
import { editDistance } from '../maths/edit-distance.ts';

export interface Problem {
  readonly code: string;
  /** What is wrong: the place in the trade's words, what was found, what is allowed. */
  readonly message: string;
  /** What to do about it. */
  readonly remedy?: string;
  /** Path in the file: `front.left.bar.diameter`. */
  readonly path: string;
  readonly file?: string;
  /** Counted from 1. */
  readonly line?: number;
  readonly column?: number;
  /** An `error` stops the figures; a `warning` is told beside them. */
  readonly weight: 'error' | 'warning';
}

/** The problem as it is printed on a terminal: what, what to do, where. */
export function problemText(problem: Problem): string {
  const place = [
    problem.file,
    problem.line === undefined ? undefined : `line ${problem.line}, column ${problem.column ?? 1}`,
  ].filter((part) => part !== undefined);
  const where = `${[...place, ''].join(', ')}(${problem.path || 'whole file'})`.replace(', (', ' (');
  return [problem.message, problem.remedy, `${where}  [${problem.code}]`]
    .filter((line) => line !== undefined)
    .map((line, index) => (index === 0 ? line : `  ${line}`))
    .join('\n');
}

/** The known word nearest to a mistyped one, when it is near enough to be meant. */
export function nearest(word: string, known: readonly string[]): string | undefined {
  let best: string | undefined;
  let least = Math.max(2, Math.floor(word.length / 3)) + 1;
  for (const each of known) {
    const steps = editDistance(word.toLowerCase(), each.toLowerCase());
    if (steps < least) {
      least = steps;
      best = each;
    }
  }
  return best;
}
