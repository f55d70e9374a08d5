/** A save that is killed at any moment leaves the old text or the new one, whole. */
import assert from 'node:assert/strict';
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { type FSWatcher, watch } from 'node:fs';
import { mkdir, mkdtemp, readdir, readFile, rm, utimes, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { clearParts } from '../../src/workshop/save.ts';

const SAVER = fileURLToPath(new URL('./saver.ts', import.meta.url));
const FEWEST_ROUNDS = 6;
const MOST_ROUNDS = 40;

test('killed in mid-save: the file is whole every time', async (t) => {
  const home = await mkdtemp(join(tmpdir(), 'flatpatch-kill-'));
  t.after(() => rm(home, { recursive: true, force: true }));
  const folder = join(home, 'one');
  await mkdir(folder);
  const file = join(folder, 'car.yaml');
  // goes on until a kill has fallen between write and rename, as the part left behind shows
  let cutShort = 0;
  let round = 0;
  for (; round < MOST_ROUNDS && (round < FEWEST_ROUNDS || cutShort === 0); round += 1) {
    await writeFile(file, textWith(0));
    const saver = spawn(process.execPath, ['--import', 'tsx', SAVER, home], {
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    await once(saver.stdout, 'data');
    const moments = watch(folder);
    await partSeen(moments);
    await new Promise((resolve) => setTimeout(resolve, round % FEWEST_ROUNDS));
    saver.kill('SIGKILL');
    await once(saver, 'exit');
    moments.close();
    const text = await readFile(file, 'utf8');
    const number = Number(/name: Name (\d+)/.exec(text)?.[1]);
    assert.equal(text, textWith(number), 'neither half a file nor a mixture');
    assert.ok(number >= 1, 'the saves that were told as done are there');
    const parts = (await readdir(folder)).filter((name) => name.endsWith('.part'));
    cutShort += parts.length;
    for (const name of parts) await rm(join(folder, name));
  }
  assert.ok(cutShort > 0, `a save was cut short within ${round} kills`);
});

/** Settles as soon as a save begins to write its part beside the file. */
function partSeen(moments: FSWatcher): Promise<void> {
  return new Promise((resolve) => {
    moments.on('change', (_, name) => {
      if (String(name).endsWith('.part')) resolve();
    });
  });
}

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
