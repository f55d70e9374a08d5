/**
 * Tells when a car file changed on the disk, whoever changed it.
 *
 * In    the workshop's folder
 * Out   the id of the car and the new version, some hundredths of a second after the last of a run of writes
 *
 * The system's own watching is used as a hint only: what is told is a change of the text itself.
 */
import { type FSWatcher, watch } from 'node:fs';
import { join } from 'node:path';
import { carIds, carText, FolderError, versionOf } from './folder.ts';

export interface CarChanged {
  readonly id: string;
  /** Undefined where the car has gone. */
  readonly version?: string;
}

export interface Watching {
  readonly close: () => void;
}

/** Writes come in runs; the quiet after the last one that is waited for. */
const QUIET_MS = 60;
/** Where the system's watching fails or is not there, the folder is looked at this often. */
const LOOK_MS = 2_000;

export async function watchWorkshop(home: string, tell: (change: CarChanged) => void): Promise<Watching> {
  let known = await states(home);
  const watchers = new Map<string, FSWatcher>();
  let timer: NodeJS.Timeout | undefined;
  let closed = false;
  let looking = false;
  let again = false;

  const look = async (): Promise<void> => {
    if (looking) {
      again = true;
      return;
    }
    looking = true;
    do {
      again = false;
      const now = await states(home).catch(() => known);
      if (closed) return;
      for (const [id, state] of now)
        if (known.get(id)?.all !== state.all) tell({ id, version: state.version });
      for (const id of known.keys()) if (!now.has(id)) tell({ id });
      known = now;
      follow();
    } while (again);
    looking = false;
  };
  const soon = (): void => {
    clearTimeout(timer);
    timer = setTimeout(() => void look(), QUIET_MS);
  };
  const follow = (): void => {
    for (const [folder, watcher] of watchers) {
      if (folder !== home && !known.has(folder.slice(home.length + 1))) {
        watcher.close();
        watchers.delete(folder);
      }
    }
    for (const folder of [home, ...[...known.keys()].map((id) => join(home, id))]) {
      if (watchers.has(folder)) continue;
      try {
        const watcher = watch(folder, soon);
        watcher.on('error', () => watchers.delete(folder));
        watchers.set(folder, watcher);
      } catch {
        // too many watches, or a file system without them: the regular look still finds the change
      }
    }
  };
  follow();
  const regular = setInterval(() => void look(), LOOK_MS);
  regular.unref();
  return {
    close: () => {
      closed = true;
      clearTimeout(timer);
      clearInterval(regular);
      for (const watcher of watchers.values()) watcher.close();
    },
  };
}

interface State {
  /** Version of the car file. */
  readonly version: string;
  /** Of the car file and all files that it names. */
  readonly all: string;
}

async function states(home: string): Promise<Map<string, State>> {
  const found = new Map<string, State>();
  for (const id of await carIds(home)) {
    try {
      const { text, version, files } = await carText(home, id);
      found.set(id, { version, all: versionOf(JSON.stringify([text, files])) });
    } catch (reason) {
      if (!(reason instanceof FolderError)) throw reason;
      found.set(id, { version: '', all: reason.problem.code });
    }
  }
  return found;
}
