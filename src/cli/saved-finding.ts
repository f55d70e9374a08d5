/**
 * How far a finding has come, as a file that it goes on from.
 *
 * A file is of one problem and one seed: of another it is left alone and told.
 */
import { createHash } from 'node:crypto';
import type { Holdable, SavedFinding } from '../questions/index.ts';
import { textOf } from './car-argument.ts';
import { badAsk } from './outcome.ts';
import type { Put } from './primaries-asked.ts';
import { writeWhole } from './whole-file.ts';

const FORMAT = 'flatpatch-finding/3';

interface Kept {
  readonly format: typeof FORMAT;
  readonly problem: string;
  readonly seed: number;
  readonly saved: SavedFinding;
}

/** A problem, and what a set of it must hold in the car. */
export type Asked = Pick<Put, 'problem'> & { readonly kinds?: readonly Holdable[] };

/** A name for the problem that changes with any figure of it. */
export function problemMark({ problem, kinds = [] }: Asked): string {
  const { shell, ...rest } = problem;
  const hash = createHash('sha256').update(JSON.stringify({ ...rest, kinds }));
  return hash.update(shell.vertices).update(shell.triangles).digest('hex');
}

/** JSON has no word for infinity, and a search that found nothing yet has that for its best. */
const told = (_: string, value: unknown): unknown =>
  typeof value === 'number' && !Number.isFinite(value) ? { number: String(value) } : value;
const heard = (_: string, value: unknown): unknown =>
  typeof value === 'object' && value !== null && typeof (value as { number?: unknown }).number === 'string'
    ? Number((value as { number: string }).number)
    : value;

export const writeFinding = (path: string, put: Asked, seed: number, saved: SavedFinding): Promise<void> => {
  const kept: Kept = { format: FORMAT, problem: problemMark(put), seed, saved };
  return writeWhole(path, `${JSON.stringify(kept, told)}\n`);
};

/** @throws BadInput where the file is of another problem or seed, or none of these files; undefined where there is none */
export async function readFinding(
  path: string,
  put: Asked,
  seed: number,
  isThere: boolean,
): Promise<SavedFinding | undefined> {
  if (!isThere) return undefined;
  let kept: Partial<Kept>;
  try {
    kept = JSON.parse(await textOf(path), heard) as Partial<Kept>;
  } catch (reason) {
    if (!(reason instanceof SyntaxError)) throw reason;
    kept = {};
  }
  if (kept.format !== FORMAT || kept.saved === undefined) {
    throw badAsk('asked/saved', `"${path}" is no finding that was kept.`, 'Name another file.');
  }
  if (kept.problem !== problemMark(put) || kept.seed !== seed) {
    throw badAsk(
      'asked/saved-other',
      `"${path}" is of another ${kept.seed === seed ? 'problem: the car file, a scan or what must be held has changed since' : 'seed'}.`,
      'Name another file, or take this one away.',
    );
  }
  return kept.saved;
}
