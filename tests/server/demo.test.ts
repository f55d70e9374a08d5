/** The invented cars in a workshop: put once, kept up to date while untouched, never over anybody's work. */
import assert from 'node:assert/strict';
import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test } from 'node:test';
import { putDemo } from '../../src/workshop/demo.ts';

test('untouched cars follow the program; touched, taken away and foreign ones are left alone', async (t) => {
  const folder = await mkdtemp(join(tmpdir(), 'flatpatch-demo-'));
  t.after(() => rm(folder, { recursive: true, force: true }));
  const [demo, home] = [join(folder, 'demo'), join(folder, 'home')];
  const ship = async (car: string, text: string): Promise<void> => {
    await mkdir(join(demo, car), { recursive: true });
    await writeFile(join(demo, car, 'car.yaml'), text);
    await writeFile(join(demo, car, 'arm.csv'), `points of ${text}`);
  };
  const standing = (car: string, file = 'car.yaml') => readFile(join(home, car, file), 'utf8');
  for (const car of ['untouched', 'touched', 'taken']) await ship(car, 'one');
  assert.deepEqual(await putDemo(home, demo), { filled: true, cars: ['taken', 'touched', 'untouched'] });
  assert.deepEqual(await putDemo(home, demo), { filled: false, cars: [] });

  await writeFile(join(home, 'touched', 'car.yaml'), 'mine');
  await rm(join(home, 'taken'), { recursive: true });
  await mkdir(join(home, 'new-too'));
  for (const car of ['untouched', 'touched', 'taken', 'new', 'new-too']) await ship(car, 'two');
  assert.deepEqual(await putDemo(home, demo), { filled: false, cars: ['new', 'untouched'] });
  assert.equal(await standing('untouched'), 'two');
  assert.equal(await standing('new'), 'two');
  assert.equal(await standing('touched'), 'mine');
  assert.equal(
    await standing('touched', 'arm.csv'),
    'points of one',
    'a car is one whole: its lists stay with it',
  );
  await assert.rejects(standing('taken'));
  await assert.rejects(standing('new-too'));
});

test('a workshop that was not filled from here is left alone', async (t) => {
  const home = await mkdtemp(join(tmpdir(), 'flatpatch-demo-'));
  t.after(() => rm(home, { recursive: true, force: true }));
  await writeFile(join(home, 'notes.txt'), 'mine');
  assert.deepEqual(await putDemo(home), { filled: false, cars: [] });
});
