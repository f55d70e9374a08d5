/** Runs the real command as a person would, in a process of its own, and holds what it prints against its form. */
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = fileURLToPath(new URL('../..', import.meta.url));
export const COMMAND = join(ROOT, 'bin', 'flatpatch.mjs');

/** A workshop of this test file's own, so that nobody's real one is touched. */
export const HOME = join(mkdtempSync(join(tmpdir(), 'flatpatch-cli-')), 'workshop');
process.on('exit', () => rmSync(join(HOME, '..'), { recursive: true, force: true }));

export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

export interface RunOptions {
  readonly input?: string;
  readonly environment?: Readonly<Record<string, string>>;
}

export function flatpatch(args: readonly string[], { input, environment }: RunOptions = {}): Promise<Ran> {
  const child = spawn(process.execPath, [COMMAND, ...args], {
    cwd: ROOT,
    env: { ...process.env, FLATPATCH_HOME: HOME, ...environment },
  });
  return new Promise((resolve, reject) => {
    let out = '';
    let err = '';
    child.stdout.setEncoding('utf8').on('data', (text: string) => (out += text));
    child.stderr.setEncoding('utf8').on('data', (text: string) => (err += text));
    child.on('error', reject);
    child.on('close', (code) => resolve({ code, out, err }));
    // a command that does not read its input may be gone before it is written
    child.stdin.on('error', () => undefined);
    child.stdin.end(input ?? '');
  });
}
