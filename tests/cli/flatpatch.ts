/**
 * Runs the real command as a person would, and gives what it prints.
 *
 * `flatpatchAlone` starts a process for it, which is half a second of a processor before anything is worked out:
 * for what hangs on the process itself, its exit code, its streams, signals. `flatpatch` asks a process that stands
 * and runs one command after another (host.mjs): for what is answered.
 */
import { type ChildProcess, fork, spawn } from 'node:child_process';
import { once } from 'node:events';
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
  /** Where it is typed; left out, in the clone. */
  readonly folder?: string;
}

let host: Promise<ChildProcess> | undefined;
let before: Promise<unknown> = Promise.resolve();

async function startHost(): Promise<ChildProcess> {
  const child = fork(join(import.meta.dirname, 'host.mjs'), { execArgv: [] });
  await once(child, 'message');
  return child;
}

/** In the process that stands, one after another. */
export function flatpatch(args: readonly string[], options: RunOptions = {}): Promise<Ran> {
  const ran = before.then(() => askHost(args, options));
  before = ran.catch(() => undefined);
  return ran;
}

async function askHost(args: readonly string[], { input = '', folder = ROOT }: RunOptions): Promise<Ran> {
  const standing = host ?? startHost();
  host = standing;
  const child = await standing;
  // it keeps the tests from ending only while something is asked of it
  child.ref();
  child.channel!.ref();
  try {
    const answer = new Promise<Ran>((resolve, reject) => {
      child.once('message', resolve);
      child.once('exit', (code) => reject(new Error(`"${args.join(' ')}" ended the process with ${code}`)));
    });
    child.send({ args, input, folder, environment: { FLATPATCH_HOME: HOME } });
    return await answer;
  } finally {
    child.removeAllListeners('message').removeAllListeners('exit');
    child.unref();
    child.channel?.unref();
  }
}

export interface AloneOptions extends RunOptions {
  readonly environment?: Readonly<Record<string, string>>;
}

/** In a process of its own. */
export function flatpatchAlone(
  args: readonly string[],
  { input, folder = ROOT, environment }: AloneOptions = {},
): Promise<Ran> {
  const child = spawn(process.execPath, [COMMAND, ...args], {
    cwd: folder,
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
