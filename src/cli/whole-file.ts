/** Writes a file whole or not at all: beside its place first, then put there by one rename. */
import { randomBytes } from 'node:crypto';
import { mkdir, open, rename, rm } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { badAsk } from './outcome.ts';

/** @throws BadInput where it cannot be written */
export async function writeWhole(path: string, contents: string | Uint8Array): Promise<void> {
  const part = join(dirname(path), `.flatpatch-${randomBytes(8).toString('hex')}.part`);
  try {
    const handle = await open(part, 'wx');
    try {
      await handle.writeFile(contents);
      await handle.sync();
    } finally {
      await handle.close();
    }
    await rename(part, path);
  } catch (reason) {
    throw unwritten(path, reason);
  } finally {
    await rm(part, { force: true });
  }
}

/** Makes a folder, and those above it. @throws BadInput where it cannot be made */
export async function makeFolder(path: string): Promise<void> {
  try {
    await mkdir(path, { recursive: true });
  } catch (reason) {
    throw unwritten(path, reason);
  }
}

const unwritten = (path: string, reason: unknown) =>
  badAsk('asked/out', `"${path}" cannot be written: ${(reason as NodeJS.ErrnoException).code}.`);
