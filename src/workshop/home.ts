/**
 * Where the workshop's folder is, and where this program stands with what came with it.
 *
 * In    the environment's FLATPATCH_HOME
 * Out   absolute paths
 */
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

interface Manifest {
  readonly name: string;
  readonly version: string;
}

const manifestIn = (folder: string): Manifest | undefined => {
  const path = join(folder, 'package.json');
  return existsSync(path) ? (JSON.parse(readFileSync(path, 'utf8')) as Manifest) : undefined;
};

/** The folder that this program came in, whether it runs from its sources or built. */
function programFolder(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (manifestIn(folder)?.name !== 'flatpatch') {
    const above = dirname(folder);
    if (above === folder) throw new Error('the program is not inside its own package');
    folder = above;
  }
  return folder;
}

export const PROGRAM = programFolder();
export const VERSION = manifestIn(PROGRAM)!.version;
export const WEB_FOLDER = join(PROGRAM, 'dist', 'web');
/** The invented cars that come with the program. */
export const DEMO_FOLDER = join(PROGRAM, 'cars');

/** FLATPATCH_HOME, or the folder of a workshop beside the program in a clone, or below the user's own folder. */
export function workshopHome(
  environment: Readonly<Record<string, string | undefined>> = process.env,
): string {
  const named = environment.FLATPATCH_HOME;
  if (named !== undefined && named !== '') return resolve(named);
  const inClone = existsSync(join(PROGRAM, 'src'));
  return inClone
    ? join(PROGRAM, '.flatpatch', 'workshop')
    : join(environment.HOME ?? '.', '.flatpatch', 'workshop');
}
