/**
 * The invented cars that come with the program, put into an empty workshop and kept up to date there.
 *
 * In    the workshop's folder
 * Out   what was done; a record in the folder of what was put there
 *
 * Nobody's work is written over: a car is brought up to date only while each of its files still is as it was put
 * there, and one that was taken away stays away. A workshop that was not filled from here is left alone.
 */
import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { noWorkshop, versionOf } from './folder.ts';
import { DEMO_FOLDER } from './home.ts';

const RECORD = '.demo.json';

/** Versions of the files that were put there, by path. */
type Versions = Readonly<Record<string, string>>;

export interface DemoDone {
  /** The workshop was empty before. */
  readonly filled: boolean;
  /** Cars that were put or brought up to date. */
  readonly cars: readonly string[];
}

/**
 * @param demo where the invented cars come from; left out, those of this program
 * @throws FolderError where the workshop's folder cannot be made or written
 */
export async function putDemo(home: string, demo = DEMO_FOLDER): Promise<DemoDone> {
  try {
    return await putInto(home, demo);
  } catch (reason) {
    throw noWorkshop(home, reason);
  }
}

async function putInto(home: string, demo: string): Promise<DemoDone> {
  await mkdir(home, { recursive: true });
  const before = await recordIn(home);
  const there = await readdir(home);
  if (before === undefined && there.length > 0) return { filled: false, cars: [] };
  const files = await filesBelow(demo);
  const record: Record<string, string> = { ...before };
  const cars: string[] = [];
  for (const [car, paths] of byCar(Object.keys(files).sort())) {
    const shipped = Object.fromEntries(paths.map((path) => [path, versionOf(files[path]!)]));
    if (paths.every((path) => record[path] === shipped[path])) continue;
    if (!(await asWePutIt(home, car, record, there))) continue;
    for (const path of paths) {
      await mkdir(dirname(join(home, path)), { recursive: true });
      await writeFile(join(home, path), files[path]!);
    }
    Object.assign(record, shipped);
    cars.push(car);
  }
  if (cars.length > 0) await writeFile(join(home, RECORD), `${JSON.stringify(record, null, 1)}\n`);
  return { filled: before === undefined, cars };
}

/** True where nobody touched the car since it was put there, or where it never was there. */
async function asWePutIt(
  home: string,
  car: string,
  record: Versions,
  there: readonly string[],
): Promise<boolean> {
  const own = Object.keys(record).filter((path) => carOf(path) === car);
  if (own.length === 0) return !there.includes(car);
  for (const path of own) {
    const bytes = await readFile(join(home, path)).catch(() => undefined);
    if (bytes === undefined || versionOf(bytes) !== record[path]) return false;
  }
  return true;
}

/** A file of a car belongs to its folder; the workshop's own notes stand for themselves. */
const carOf = (path: string): string => path.split('/')[0]!;

function byCar(paths: readonly string[]): Map<string, string[]> {
  const found = new Map<string, string[]>();
  for (const path of paths) found.set(carOf(path), [...(found.get(carOf(path)) ?? []), path]);
  return found;
}

async function filesBelow(folder: string): Promise<Record<string, Buffer>> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  const paths = entries
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath ?? entry.path, entry.name));
  const named = paths.map(
    async (path): Promise<[string, Buffer]> => [
      path.slice(folder.length + 1).replaceAll('\\', '/'),
      await readFile(path),
    ],
  );
  return Object.fromEntries(await Promise.all(named));
}

async function recordIn(home: string): Promise<Versions | undefined> {
  try {
    return JSON.parse(await readFile(join(home, RECORD), 'utf8')) as Versions;
  } catch {
    // no record, or one that cannot be read: then nothing is known to be ours
    return undefined;
  }
}
