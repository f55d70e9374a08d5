/** A save that is killed at any moment leaves the old text or the new one, whole. */
import assert from 'node:assert/strict';
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdir, mkdtemp, readdir, readFile, rm, utimes, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { clearParts } from '../../src/workshop/save.ts';

const SAVER = fileURLToPath(new URL('./saver.ts', import.meta.url));
const ROUNDS = 6;

test(`killed in mid-save ${ROUNDS} times: the file is whole every time`, async (t) => {
  const home = await mkdtemp(join(tmpdir(), 'flatpatch-kill-'));
  t.after(() => rm(home, { recursive: true, force: true }));
  const folder = join(home, 'one');
  await mkdir(folder);
  const file = join(folder, 'car.yaml');
  let saves = 0;
  for (let round = 0; round < ROUNDS; round += 1) {
    await writeFile(file, textWith(0));
    const saver = spawn(process.execPath, ['--import', 'tsx', SAVER, home], {
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    await once(saver.stdout, 'data');
    // moments spread over a save or two, so that some kills fall between write and rename
    await new Promise((resolve) => setTimeout(resolve, 5 + 7 * round));
    saver.kill('SIGKILL');
    await once(saver, 'exit');
    const text = await readFile(file, 'utf8');
    const number = Number(/name: Name (\d+)/.exec(text)?.[1]);
    assert.equal(text, textWith(number), 'neither half a file nor a mixture');
    saves += number;
  }
  assert.ok(saves > ROUNDS, `saves were under way when the kills came (${saves})`);
});

test('parts left by a killed save are cleared once they are old, and nothing else is', async (t) => {
  const folder = await mkdtemp(join(tmpdir(), 'flatpatch-parts-'));
  t.after(() => rm(folder, { recursive: true, force: true }));
  const old = new Date(Date.now() - 120_000);
  const names = [
    '.flatpatch-0123456789abcdef.part',
    '.flatpatch-fedcba9876543210.part',
    'car.yaml',
    'notes.part',
  ];
  for (const name of names) await writeFile(join(folder, name), 'x');
  await utimes(join(folder, names[0]!), old, old);
  await utimes(join(folder, 'notes.part'), old, old);
  await clearParts(folder);
  assert.deepEqual((await readdir(folder)).sort(), names.slice(1).sort());
});

/** The same text that saver.ts makes: long, so that a write takes its time. */
function textWith(number: number): string {
  return `flatpatch: 1\ncar:\n  name: Name ${number}\n  note: ${'long '.repeat(40_000)}end\n`;
}
