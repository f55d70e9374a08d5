/**
 * How far a finding has come, as a file that it goes on from.
 *
 * A file is of one problem and one seed: of another it is left alone and told.
 */
import { createHash } from 'node:crypto';
import type { Holdable, SavedFinding, SavedParts } from '../questions/index.ts';
import { textOf } from './car-argument.ts';
import { badAsk } from './outcome.ts';
import type { Put } from './primaries-asked.ts';
import { writeWhole } from './whole-file.ts';

const FORMAT = 'flatpatch-finding/3';
/** Of several parts, which has another form. */
const PARTS_FORMAT = 'flatpatch-finding-parts/1';

interface Kept<S> {
  readonly format: string;
  readonly problem: string;
  readonly seed: number;
  readonly saved: S;
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

/** The same of several problems together. */
export const partsMark = (puts: readonly Asked[]): string =>
  createHash('sha256').update(puts.map(problemMark).join(' ')).digest('hex');

export const writeFinding = (path: string, put: Asked, seed: number, saved: SavedFinding): Promise<void> =>
  write<SavedFinding>(path, { format: FORMAT, problem: problemMark(put), seed, saved });

export const writeFindingParts = (
  path: string,
  mark: string,
  seed: number,
  saved: SavedParts,
): Promise<void> => write<SavedParts>(path, { format: PARTS_FORMAT, problem: mark, seed, saved });

const write = <S>(path: string, kept: Kept<S>): Promise<void> =>
  writeWhole(path, `${JSON.stringify(kept, told)}\n`);

/** @throws BadInput where the file is of another problem or seed, or none of these files; undefined where there is none */
export const readFinding = async (
  path: string,
  put: Asked,
  seed: number,
  isThere: boolean,
): Promise<SavedFinding | undefined> =>
  isThere ? read<SavedFinding>(path, FORMAT, problemMark(put), seed) : undefined;

/** The same of several parts. @throws BadInput as `readFinding` */
export const readFindingParts = async (
  path: string,
  mark: string,
  seed: number,
  isThere: boolean,
): Promise<SavedParts | undefined> =>
  isThere ? read<SavedParts>(path, PARTS_FORMAT, mark, seed) : undefined;

async function read<S>(path: string, format: string, mark: string, seed: number): Promise<S> {
  let kept: Partial<Kept<S>>;
  try {
    kept = JSON.parse(await textOf(path), heard) as Partial<Kept<S>>;
  } catch (reason) {
    if (!(reason instanceof SyntaxError)) throw reason;
    kept = {};
  }
  if (kept.format !== format || kept.saved === undefined) {
    const other = kept.format === FORMAT || kept.format === PARTS_FORMAT;
    throw badAsk(
      'asked/saved',
      other
        ? `"${path}" was kept of ${format === FORMAT ? 'several parts' : 'one set alone'}.`
        : `"${path}" is no finding that was kept.`,
      'Name another file.',
    );
  }
  if (kept.problem !== mark || kept.seed !== seed) {
    throw badAsk(
      'asked/saved-other',
      `"${path}" is of another ${kept.seed === seed ? 'problem: the car file, a scan or what must be held has changed since' : 'seed'}.`,
      'Name another file, or take this one away.',
    );
  }
  return kept.saved;
}
