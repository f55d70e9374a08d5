/** Every command explains itself, and every example in its help is a line that works. */
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test } from 'node:test';
import { COMMAND, flatpatch, HOME, ROOT } from './flatpatch.ts';

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

test('the commands that README.md shows work as they stand there', () => {
  const readme = readFileSync(join(ROOT, 'README.md'), 'utf8');
  const lines = [...readme.matchAll(/^npx (flatpatch .*)$/gm)].map((found) => found[1]!);
  assert.ok(lines.length > 2, 'README.md shows commands');
  for (const line of lines) {
    const shell = `flatpatch() { "${process.execPath}" "${COMMAND}" "$@"; }\n${line}`;
    const ran = spawnSync('bash', ['-c', shell], {
      cwd: ROOT,
      encoding: 'utf8',
      env: { ...process.env, FLATPATCH_HOME: HOME },
    });
    assert.equal(ran.status, 0, `${line}\n${ran.stderr}`);
  }
});

for (const name of commands) {
  test(`flatpatch ${name}: the examples of its help work`, async (t) => {
    const { out, code } = await flatpatch(['help', name]);
    assert.equal(code, 0);
    const examples = /Examples:\n((?: {2}.*\n)+)/.exec(out)?.[1]?.trim().split(/\n\s*/) ?? [];
    assert.ok(examples.length > 0, 'there are examples');
    const folder = mkdtempSync(join(tmpdir(), 'flatpatch-help-'));
    t.after(() => rmSync(folder, { recursive: true, force: true }));
    cpSync(join(ROOT, 'cars'), join(folder, 'cars'), { recursive: true });
    const shell = `flatpatch() { "${process.execPath}" "${COMMAND}" "$@"; }`;
    for (const example of examples.filter((line) => !SERVES.test(line))) {
      const ran = spawnSync('bash', ['-c', `${shell}\n${example}`], {
        cwd: folder,
        encoding: 'utf8',
        maxBuffer: 64 << 20,
        env: { ...process.env, FLATPATCH_HOME: HOME },
      });
      assert.equal(ran.status, 0, `${example}\n${ran.stderr}`);
    }
  });
}
