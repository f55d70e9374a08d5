/**
 * The workshop's folder: one folder a car, `<id>/car.yaml` and the files that it names, and `workshop.yaml`.
 *
 * In    the folder's path
 * Out   texts and versions, as they stand on the disk
 * Not   what a car file means: src/car reads it
 *
 * A car may name files below its own folder alone. Links that lead out of it are not followed.
 */
import { createHash } from 'node:crypto';
import { type FileHandle, mkdir, open, readdir, realpath, writeFile } from 'node:fs/promises';
import { join, sep } from 'node:path';
import { parse } from 'yaml';
import { tooDeep } from '../car/depth.ts';
import { namedFiles } from '../car/named-files.ts';
import type { CarSource } from '../car/read.ts';
import type { Problem } from '../measured/problem.ts';

export const CAR_FILE = 'car.yaml';

/** Folder names that may be a car's: no dots, no separators, nothing that a system could take for a command. */
const CAR_ID = /^[a-z0-9](?:[a-z0-9-]{0,62}[a-z0-9])?$/;

export const isCarId = (text: string): boolean => CAR_ID.test(text);

/** Longest text of one file that is read, bytes. */
export const LONGEST_TEXT = 4_000_000;

/** Most files that one car may name. */
const MOST_FILES = 50;

export interface CarText {
  readonly text: string;
  /** Hash of the text: another text has another version. */
  readonly version: string;
  /** Texts of the files that the car file names, by name, as far as they could be read. */
  readonly files: Readonly<Record<string, string>>;
  /** Which of those names are logs: long, and no figure of the car leans on them. */
  readonly logs: readonly string[];
  /** Why a file could not be read. */
  readonly problems: readonly Problem[];
}

export interface WorkshopNotes {
  readonly name: string;
  readonly invented: boolean;
}

export const versionOf = (content: string | Uint8Array): string =>
  createHash('sha256').update(content).digest('hex').slice(0, 32);

/** What a car folder could not give: told to whoever asked, with a fixed code. */
export class FolderError extends Error {
  readonly problem: Problem;

  constructor(code: string, message: string, file?: string) {
    super(message);
    this.problem = { code, message, path: '', weight: 'error', ...(file === undefined ? {} : { file }) };
  }
}

/** Why a folder that was named as the workshop's cannot be one. Anything but the system's own refusal is kept. */
export function noWorkshop(home: string, reason: unknown): unknown {
  const why: Readonly<Record<string, string>> = {
    ENOTDIR: 'it, or something on the way to it, is a file and no folder',
    EEXIST: 'it is a file and no folder',
    EACCES: 'this user may not use it',
    EPERM: 'this user may not use it',
    EROFS: 'the disk cannot be written',
    ENOSPC: 'the disk is full',
  };
  const told = why[String((reason as NodeJS.ErrnoException | undefined)?.code)];
  return told === undefined
    ? reason
    : new FolderError(
        'workshop/not-a-folder',
        `"${home}" cannot be the workshop's folder: ${told}. FLATPATCH_HOME says which folder it is.`,
        home,
      );
}

/** Ids of the cars in the folder, in order of name. @throws FolderError where it is no folder */
export async function carIds(home: string): Promise<readonly string[]> {
  const entries = await readdir(home, { withFileTypes: true }).catch((reason: NodeJS.ErrnoException) => {
    if (reason.code === 'ENOENT') return [];
    throw noWorkshop(home, reason);
  });
  const folders = entries
    .filter((entry) => entry.isDirectory() && isCarId(entry.name))
    .map((entry) => entry.name);
  const withFile = await Promise.all(
    folders.map(async (id) => ((await readdir(join(home, id))).includes(CAR_FILE) ? id : undefined)),
  );
  return withFile.filter((id) => id !== undefined).sort();
}

/** Name of the workshop, and whether it is an invented one. A folder without notes is a workshop without a name. */
export async function workshopNotes(home: string): Promise<WorkshopNotes> {
  const text = await readText(home, 'workshop.yaml').catch(() => '');
  let notes: unknown;
  try {
    notes = tooDeep(text) === undefined ? parse(text) : undefined;
  } catch {
    // the notes only name the workshop: a slip in them must not keep the cars away
    notes = undefined;
  }
  const { name, invented } = (typeof notes === 'object' && notes !== null ? notes : {}) as Record<
    string,
    unknown
  >;
  return {
    name: typeof name === 'string' && name.trim() !== '' ? name : 'Workshop without a name',
    invented: invented === true || invented === 'yes',
  };
}

/** A car's texts. @throws FolderError where there is no such car or its file is no text */
export async function carText(home: string, id: string): Promise<CarText> {
  if (!isCarId(id)) throw noSuchCar();
  return textsIn(join(home, id), CAR_FILE);
}

export const noSuchCar = (): FolderError =>
  new FolderError('workshop/no-car', 'There is no car of this name in the workshop.');

/** The texts of a car file in any folder, with those it names. @throws FolderError */
export async function textsIn(folder: string, name: string): Promise<CarText> {
  return withNamedFiles(await readText(folder, name), folder);
}

/** A car file's text with the files that it names, as far as they stand in the folder. */
export async function withNamedFiles(text: string, folder: string | undefined): Promise<CarText> {
  const problems: Problem[] = [];
  const files: Record<string, string> = {};
  const { survey, logs } = namedFiles(text);
  const named = [...new Set([...survey, ...logs])];
  for (const each of named.slice(0, MOST_FILES)) {
    try {
      if (folder === undefined) throw notThere(each);
      // hostile names such as __proto__ must become an entry like any other
      Object.defineProperty(files, each, { value: await readText(folder, each), enumerable: true });
    } catch (reason) {
      if (!(reason instanceof FolderError)) throw reason;
      // a log that is away keeps nobody from the car: it is told when a row of it is asked for
      if (survey.includes(each)) problems.push(reason.problem);
    }
  }
  if (named.length > MOST_FILES) {
    problems.push(
      new FolderError('file/too-many', `The car names ${named.length} files; at most ${MOST_FILES} are read.`)
        .problem,
    );
  }
  return { text, version: versionOf(text), files, logs, problems };
}

const notThere = (name: string): FolderError =>
  new FolderError('file/not-there', `There is no file "${name}" here.`, name);

/** The source that `readCar` wants. */
export const sourceOf = (car: CarText, file: string, spec?: string): CarSource => ({
  text: car.text,
  files: car.files,
  file,
  ...(spec === undefined ? {} : { spec }),
});

/** A text below a folder. @throws FolderError where it is not there, not below, too long, or no text */
export const readText = async (folder: string, name: string): Promise<string> =>
  asText(await readBelow(folder, name, LONGEST_TEXT), name);

/** Longest scan that is read, bytes: some millions of triangles. */
export const LONGEST_SCAN = 600_000_000;

/** The bytes of a scan below a folder. @throws FolderError where it is not there, not below or too long */
export const readScan = (folder: string, name: string): Promise<Uint8Array> =>
  readBelow(folder, name, LONGEST_SCAN);

async function readBelow(folder: string, name: string, longest: number): Promise<Uint8Array> {
  const missing = (): FolderError => notThere(name);
  if (name.includes('\0') || name.split(/[/\\]/).includes('..')) throw missing();
  let handle: FileHandle | undefined;
  try {
    const root = await realpath(folder);
    const path = await realpath(join(root, name));
    if (!path.startsWith(root + sep)) throw missing();
    handle = await open(path, 'r');
    const stat = await handle.stat();
    if (!stat.isFile()) throw missing();
    if (stat.size > longest) {
      throw new FolderError(
        'file/too-long',
        `"${name}" has ${stat.size} bytes; at most ${longest} are read.`,
        name,
      );
    }
    return await handle.readFile();
  } catch (reason) {
    if (reason instanceof FolderError) throw reason;
    const { code } = reason as NodeJS.ErrnoException;
    if (code === 'EACCES' || code === 'EPERM') {
      throw new FolderError('file/not-allowed', `"${name}" may not be read by this user.`, name);
    }
    if (
      code === 'ENOENT' ||
      code === 'ENOTDIR' ||
      code === 'EISDIR' ||
      code === 'ELOOP' ||
      code === 'ENAMETOOLONG'
    )
      throw missing();
    throw reason;
  } finally {
    await handle?.close();
  }
}

/** Bytes as text, without a byte-order mark. @throws FolderError where they are not UTF-8 */
export function asText(bytes: Uint8Array, name: string): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new FolderError('file/not-text', `"${name}" is not text in UTF-8; save it as plain text.`, name);
  }
}

/** Adds a car. @throws FolderError where the id will not do or is taken */
export async function addCar(home: string, id: string, text: string): Promise<CarText> {
  if (!isCarId(id)) {
    throw new FolderError(
      'workshop/bad-id',
      `"${id}" will not do as a car's folder: small letters, figures and hyphens, 64 at most.`,
    );
  }
  await mkdir(home, { recursive: true });
  try {
    await mkdir(join(home, id));
  } catch (reason) {
    if ((reason as NodeJS.ErrnoException).code === 'EEXIST') {
      throw new FolderError('workshop/id-taken', `There is a car in "${id}" already.`);
    }
    throw reason;
  }
  await writeFile(join(home, id, CAR_FILE), text, { flag: 'wx' });
  return carText(home, id);
}
