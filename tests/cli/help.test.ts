/** Every command explains itself, and every example in its help is a line that works. */
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  cpSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type TestContext, test } from 'node:test';
import { COMMAND, flatpatch, HOME, ROOT } from './flatpatch.ts';
import { lineWords } from './line-words.ts';

const commands = [...(await flatpatch(['--help'])).out.matchAll(/^ {2}([a-z][a-z-]+) .*$/gm)]
  .map((found) => found[1]!)
  .filter((name) => name !== 'help');

/** These run until they are ended; tests/cli/start.test.ts runs them. */
const SERVES = /\bserve\b/;

test('the commands are found in the help, with the exit codes', async () => {
  assert.ok(commands.length >= 8, commands.join(' '));
  const { out, code } = await flatpatch(['--help']);
  assert.equal(code, 0);
  for (const line of ['0  answered', '1  the program', '2  the car file', '3  asked for something'])
    assert.ok(out.includes(line));
  assert.match((await flatpatch(['--version'])).out, /^\d+\.\d+\.\d+$/m);
});

test('docs/command-line.md names every command, and no other', () => {
  const doc = readFileSync(join(ROOT, 'docs/command-line.md'), 'utf8');
  const named = [...doc.matchAll(/^\| `([a-z-]+)` \|/gm)].map((found) => found[1]!);
  assert.deepEqual(named, commands);
});

/** One line as it stands; what `&&` joins is run one after another, as a shell does. */
async function works(line: string, folder: string): Promise<void> {
  for (const part of line.split(' && ')) await oneCommand(part, folder);
}

/**
 * What a command left behind, by the command and all it could read. The same seed gives the same set (cli/primaries,
 * identities/primaries), so that one which stands in several commands' examples is found once: where the folder and
 * the workshop are byte for byte what they were, the rest of the line goes on from copies of what it wrote.
 */
const left = new Map<string, ReadonlyMap<string, Buffer>>();

/** In the process that stands where it is words alone, in a shell where it has a shell's signs. */
async function oneCommand(line: string, folder: string): Promise<void> {
  const words = lineWords(line);
  if (words?.[0] !== 'flatpatch') return inShell(line, folder);
  const before = filesOf(folder);
  const asked = createHash('sha256').update(line);
  for (const files of [before, filesOf(HOME)])
    for (const [name, held] of files) asked.update(`\0${name}\0${held.length}\0`).update(held);
  const key = asked.digest('hex');
  const known = left.get(key);
  if (known !== undefined) {
    for (const [name, held] of known) writeFileSync(join(folder, name), held);
    return;
  }
  await answered(line, words, folder);
  left.set(key, new Map([...filesOf(folder)].filter(([name, held]) => !before.get(name)?.equals(held))));
}

async function answered(line: string, words: readonly string[], folder: string): Promise<void> {
  const ran = await flatpatch(words.slice(1), { folder });
  assert.equal(ran.code, 0, `${line}\n${ran.err}`);
}

function filesOf(folder: string): ReadonlyMap<string, Buffer> {
  if (!existsSync(folder)) return new Map();
  const names = readdirSync(folder, { recursive: true, encoding: 'utf8' }).sort();
  const files = names.filter((name) => statSync(join(folder, name)).isFile());
  return new Map(files.map((name) => [name, readFileSync(join(folder, name))]));
}

function inShell(line: string, folder: string): void {
  const shell = `flatpatch() { "${process.execPath}" "${COMMAND}" "$@"; }\n${line}`;
  const ran = spawnSync('bash', ['-c', shell], {
    cwd: folder,
    encoding: 'utf8',
    maxBuffer: 64 << 20,
    env: { ...process.env, FLATPATCH_HOME: HOME },
  });
  assert.equal(ran.status, 0, `${line}\n${ran.stderr}`);
}

test("a line is told to be words alone or a shell's", () => {
  assert.deepEqual(lineWords('flatpatch corner a --travel "1/2 in"   # and so on'), [
    'flatpatch',
    'corner',
    'a',
    '--travel',
    '1/2 in',
  ]);
  for (const line of ['a < b', 'a | b', 'a; b', 'a $b', 'a "$b"', 'a *', "a 'b", 'a "b'])
    assert.equal(lineWords(line), undefined, line);
});

/** A folder with the cars of the clone in it. */
function asCloned(t: TestContext): string {
  const folder = mkdtempSync(join(tmpdir(), 'flatpatch-help-'));
  t.after(() => rmSync(folder, { recursive: true, force: true }));
  cpSync(join(ROOT, 'cars'), join(folder, 'cars'), { recursive: true });
  return folder;
}

test('the commands that README.md shows work as they stand there', async (t) => {
  const readme = readFileSync(join(ROOT, 'README.md'), 'utf8');
  const lines = [...readme.matchAll(/^npx (flatpatch .*)$/gm)].map((found) => found[1]!);
  assert.ok(lines.length > 2, 'README.md shows commands');
  const folder = asCloned(t);
  for (const line of lines) await works(line, folder);
});

for (const name of commands) {
  test(`flatpatch ${name}: the examples of its help work`, async (t) => {
    const { out, code } = await flatpatch(['help', name]);
    assert.equal(code, 0);
    const examples = /Examples:\n((?: {2}.*\n)+)/.exec(out)?.[1]?.trim().split(/\n\s*/) ?? [];
    assert.ok(examples.length > 0, 'there are examples');
    const folder = asCloned(t);
    for (const example of examples.filter((line) => !SERVES.test(line))) await works(example, folder);
  });
}
