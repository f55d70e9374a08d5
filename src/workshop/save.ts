/**
 * Saving changes to a car file: never half a file, never over what another hand changed meanwhile.
 *
 * In    changes by path, and the version of the text that they were made on
 * Out   the new text, or both texts where another hand was quicker, or what is wrong with the change
 *
 * The new text is written beside the old one, brought to the disk, and put in its place by one rename: whoever
 * reads sees the old file or the new one. Saves of one car wait for one another.
 */
import { randomBytes } from 'node:crypto';
import { open, readdir, realpath, rename, rm, stat } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { type Change, edited } from '../car/edit.ts';
import { readCar } from '../car/read.ts';
import type { Problem } from '../measured/problem.ts';
import { sourceOf, textsIn, versionOf } from './folder.ts';

export type Saved =
  | { readonly kind: 'saved'; readonly text: string; readonly version: string }
  | {
      readonly kind: 'changed meanwhile';
      readonly theirs: string;
      readonly version: string;
      readonly mine: string;
    }
  | { readonly kind: 'refused'; readonly problems: readonly Problem[] };

const TEMPORARY = /^\.flatpatch-[0-9a-f]{16}\.part$/;

const waiting = new Map<string, Promise<unknown>>();

/** Does one thing after another for the same key. */
function inTurn<T>(key: string, work: () => Promise<T>): Promise<T> {
  const before = waiting.get(key) ?? Promise.resolve();
  const mine = before.then(work, work);
  const settled = mine
    .catch(() => undefined)
    .finally(() => {
      if (waiting.get(key) === settled) waiting.delete(key);
    });
  waiting.set(key, settled);
  return mine;
}

/**
 * Texts as they were given out, so that a refused change can be shown on the text that it was made on.
 * Only the last few of each process.
 */
const given = new Map<string, string>();
const MOST_GIVEN = 64;

export function remember(text: string, version: string): void {
  given.delete(version);
  given.set(version, text);
  if (given.size > MOST_GIVEN) given.delete(given.keys().next().value!);
}

export interface Asked {
  /** Folder of the car. */
  readonly folder: string;
  /** Name of the car file in it. */
  readonly name: string;
  readonly version: string;
  readonly changes: readonly Change[];
}

/** @throws FolderError where there is no such file */
export function saveChanges(asked: Asked): Promise<Saved> {
  return inTurn(join(asked.folder, asked.name), () => save(asked));
}

async function save({ folder, name, version, changes }: Asked): Promise<Saved> {
  const now = await textsIn(folder, name);
  const base = now.version === version ? now.text : (given.get(version) ?? now.text);
  const made = attempt(base, changes);
  if (made.text === undefined) return { kind: 'refused', problems: [made.problem] };
  const mine = made.text;
  if (now.version !== version)
    return { kind: 'changed meanwhile', theirs: now.text, version: now.version, mine };
  const problems = newProblems(now.text, sourceOf({ ...now, text: mine }, name), now.files);
  if (problems.length > 0) return { kind: 'refused', problems };
  if (mine === now.text) return { kind: 'saved', text: mine, version: now.version };
  const other = await replaceFile(
    join(folder, name),
    mine,
    async () => (await textsIn(folder, name)).version === version,
  );
  if (!other) {
    const theirs = await textsIn(folder, name);
    return { kind: 'changed meanwhile', theirs: theirs.text, version: theirs.version, mine };
  }
  const saved = versionOf(mine);
  remember(mine, saved);
  return { kind: 'saved', text: mine, version: saved };
}

type Attempt =
  | { readonly text: string; readonly problem?: never }
  | { readonly text?: never; readonly problem: Problem };

function attempt(text: string, changes: readonly Change[]): Attempt {
  try {
    return { text: edited(text, changes) };
  } catch (reason) {
    const path = changes[0]?.path.join('.') ?? '';
    const message = `The change has no place in the file: ${(reason as Error).message}.`;
    return { problem: { code: 'change/no-place', message, path, weight: 'error' } };
  }
}

/**
 * What would be wrong with the file. A file that was wrong before may be mended a step at a time: only problems
 * that the change brings in refuse it.
 */
function newProblems(
  before: string,
  after: Parameters<typeof readCar>[0],
  files: Readonly<Record<string, string>>,
): Problem[] {
  const read = readCar(after);
  if (read.ok) return [];
  const old = readCar({ text: before, files });
  const known = new Set(
    old.ok ? [] : old.problems.map((each) => `${each.code} ${each.path} ${each.message}`),
  );
  return read.problems.filter((each) => !known.has(`${each.code} ${each.path} ${each.message}`));
}

/**
 * Puts a text in the place of a file by one rename; answers false, and leaves the file, where `still` says no at
 * the last moment. A link to the file stays a link.
 */
export async function replaceFile(
  path: string,
  text: string,
  still: () => Promise<boolean>,
): Promise<boolean> {
  const target = await realpath(path);
  const folder = dirname(target);
  const part = join(folder, `.flatpatch-${randomBytes(8).toString('hex')}.part`);
  const mode = (await stat(target)).mode & 0o777;
  try {
    const handle = await open(part, 'wx', mode);
    try {
      await handle.writeFile(text);
      await handle.sync();
    } finally {
      await handle.close();
    }
    if (!(await still())) return false;
    await rename(part, target);
    await syncFolder(folder);
    return true;
  } finally {
    await rm(part, { force: true });
  }
}

/** Brings the rename itself to the disk, where the system lets a folder be opened for that. */
async function syncFolder(folder: string): Promise<void> {
  if (process.platform === 'win32') return;
  const handle = await open(folder, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

const MINUTE = 60_000;

/** Takes away parts that a killed save left behind; a part younger than a minute may be at work. */
export async function clearParts(folder: string): Promise<void> {
  for (const name of (await readdir(folder)).filter((each) => TEMPORARY.test(each))) {
    const path = join(folder, name);
    const found = await stat(path).catch(() => undefined);
    if (found !== undefined && Date.now() - found.mtimeMs > MINUTE) await rm(path, { force: true });
  }
}
