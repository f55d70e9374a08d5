/**
 * The car that a command is about: FILE is a folder, a car file, a car's name in the workshop, or `-`.
 *
 * In    FILE as it was typed, and the spec
 * Out   the car read, or all that is wrong with it
 */
import { stat } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import type { Car, CarSource } from '../car/read.ts';
import { nearest } from '../measured/problem.ts';
import { openCar as opened } from '../questions/open-car.ts';
import {
  asText,
  CAR_FILE,
  type CarText,
  carIds,
  FolderError,
  isCarId,
  LONGEST_TEXT,
  readText,
  sourceOf,
  textsIn,
  withNamedFiles,
  workshopNotes,
} from '../workshop/folder.ts';
import { DEMO_FOLDER, workshopHome } from '../workshop/home.ts';
import { BadInput } from './outcome.ts';

export const FILE_HELP =
  "a car's folder, a car.yaml, the name of a car in the workshop (FLATPATCH_HOME) or of an invented one that comes with the program, or - for standard input";

export interface CarAsked {
  readonly spec?: string;
  /** Folder of the files that a car file from standard input names. */
  readonly files?: string;
}

export interface FoundCar {
  readonly source: CarSource;
  /** The file, as messages name it. */
  readonly file: string;
  /** Name of the workshop that it stands in. */
  readonly workshop: string;
  /** Where it can be saved; absent for standard input. */
  readonly place?: { readonly folder: string; readonly name: string; readonly version: string };
}

/** @throws BadInput where there is no such file, or it or one that it names cannot be read */
export async function findCar(file: string, asked: CarAsked = {}): Promise<FoundCar> {
  try {
    const { texts, name, home, place } = await textsOf(file, asked.files);
    if (texts.problems.length > 0) throw new BadInput(texts.problems);
    return {
      source: sourceOf(texts, name, asked.spec),
      file: name,
      workshop: (await workshopNotes(home)).name,
      ...(place === undefined ? {} : { place: { ...place, version: texts.version } }),
    };
  } catch (reason) {
    if (reason instanceof FolderError) throw new BadInput([reason.problem]);
    throw reason;
  }
}

/** @throws BadInput with everything that is wrong with the file */
export async function openCar(file: string, asked: CarAsked = {}): Promise<FoundCar & { readonly car: Car }> {
  const found = await findCar(file, asked);
  const read = opened(found.source);
  if (!read.ok) throw new BadInput(read.problems);
  return { ...found, car: read.car };
}

interface Texts {
  readonly texts: CarText;
  readonly name: string;
  /** Folder that may be a workshop. */
  readonly home: string;
  readonly place?: { readonly folder: string; readonly name: string };
}

async function textsOf(file: string, besides: string | undefined): Promise<Texts> {
  if (file === '-') {
    const texts = await withNamedFiles(await standardInput(), besides);
    return { texts, name: 'standard input', home: besides ?? '.' };
  }
  const kind = await stat(file).catch(() => undefined);
  if (kind?.isDirectory()) return placed(file, CAR_FILE, join(file, CAR_FILE));
  if (kind?.isFile()) return placed(dirname(file), basename(file), file);
  const known: string[] = [];
  for (const home of [workshopHome(), DEMO_FOLDER]) {
    const ids = await carIds(home);
    if (isCarId(file) && ids.includes(file)) return placed(join(home, file), CAR_FILE, `${file}/${CAR_FILE}`);
    known.push(...ids.filter((id) => !known.includes(id)));
  }
  throw noSuchCar(file, known);
}

async function placed(folder: string, name: string, shown: string): Promise<Texts> {
  const whole = resolve(folder);
  return {
    texts: await textsIn(folder, name),
    name: shown,
    home: dirname(whole),
    place: { folder: whole, name },
  };
}

/** The text of any file, or of standard input for `-`. @throws BadInput */
export async function textOf(file: string): Promise<string> {
  try {
    return file === '-' ? await standardInput() : await readText(dirname(file), basename(file));
  } catch (reason) {
    if (reason instanceof FolderError) throw new BadInput([reason.problem]);
    throw reason;
  }
}

function noSuchCar(file: string, known: readonly string[]): FolderError {
  const near = nearest(file, known);
  const cars =
    known.length === 0 ? 'The workshop has no cars.' : `Cars in the workshop: ${known.join(', ')}.`;
  const hint = near === undefined ? '' : ` Did you mean "${near}"?`;
  return new FolderError('file/not-there', `There is no file, folder or car "${file}". ${cars}${hint}`, file);
}

async function standardInput(): Promise<string> {
  const parts: Buffer[] = [];
  let length = 0;
  for await (const part of process.stdin) {
    parts.push(part as Buffer);
    length += (part as Buffer).length;
    if (length > LONGEST_TEXT) {
      throw new FolderError(
        'file/too-long',
        `What comes on standard input is longer than ${LONGEST_TEXT} bytes.`,
        'standard input',
      );
    }
  }
  return asText(Buffer.concat(parts), 'standard input');
}
