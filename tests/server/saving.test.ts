/** Saving through the real server: comments and order stay, nobody's work is written over, no half file is left. */
import assert from 'node:assert/strict';
import { readdir, readFile, symlink, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { test } from 'node:test';
import { openWorkshop, UNFINISHED } from './workshop.ts';

const rename = (version: string, value: string) => ({ version, changes: [{ path: ['car', 'name'], value }] });

test('a change touches its own line alone: comments, order, quotes and empty lines stay', async (t) => {
  const shop = await openWorkshop(t, { one: UNFINISHED });
  const { version } = (await shop.get('/api/cars/one')).json;
  const saved = await shop.post('/api/cars/one/changes', rename(version, 'Invented 2'));
  assert.equal(saved.status, 200, saved.text);
  const expected = UNFINISHED.replace('Invented 1', 'Invented 2');
  assert.equal(saved.json.text, expected);
  assert.equal(await readFile(join(shop.home, 'one', 'car.yaml'), 'utf8'), expected);
  assert.equal((await shop.get('/api/cars/one')).json.version, saved.json.version);
  assert.deepEqual(await readdir(join(shop.home, 'one')), ['car.yaml'], 'no part is left behind');
});

test('a change made on an older text is refused and both texts are shown', async (t) => {
  const shop = await openWorkshop(t, { one: UNFINISHED });
  const { version } = (await shop.get('/api/cars/one')).json;
  const theirs = UNFINISHED.replace('came on a trailer', 'came in a crate');
  await writeFile(join(shop.home, 'one', 'car.yaml'), theirs);
  const refused = await shop.post('/api/cars/one/changes', rename(version, 'Invented 2'));
  assert.equal(refused.status, 409);
  assert.equal(refused.json.theirs, theirs);
  assert.equal(
    refused.json.mine,
    UNFINISHED.replace('Invented 1', 'Invented 2'),
    'mine as it was meant, on the text that I saw',
  );
  assert.equal(await readFile(join(shop.home, 'one', 'car.yaml'), 'utf8'), theirs, 'their text stands');
});

test('of twenty saves at once on the same text one is taken and nineteen are told', async (t) => {
  const shop = await openWorkshop(t, { one: UNFINISHED });
  const { version } = (await shop.get('/api/cars/one')).json;
  const answers = await Promise.all(
    Array.from({ length: 20 }, (_, n) => shop.post('/api/cars/one/changes', rename(version, `Name ${n}`))),
  );
  const counts = answers.map((each) => each.status).sort();
  assert.deepEqual(counts, [200, ...Array.from({ length: 19 }, () => 409)]);
});

test('a change that brings in a new problem is refused, and says where; old problems do not stand in the way', async (t) => {
  const shop = await openWorkshop(t, { one: UNFINISHED });
  const { version } = (await shop.get('/api/cars/one')).json;
  const changes = [{ path: ['car', 'colour'], value: 'green' }];
  const refused = await shop.post('/api/cars/one/changes', { version, changes });
  assert.equal(refused.status, 422);
  assert.deepEqual(
    refused.json.problems.map((each: { code: string; path: string }) => [each.code, each.path]),
    [['field/unknown-key', 'car.colour']],
  );
  assert.equal(await readFile(join(shop.home, 'one', 'car.yaml'), 'utf8'), UNFINISHED);
});

test('what is no list of changes is told and nothing is written', async (t) => {
  const shop = await openWorkshop(t, { one: UNFINISHED });
  const { version } = (await shop.get('/api/cars/one')).json;
  const bad = [
    null,
    [],
    { version },
    { version, changes: [] },
    { version, changes: [{ path: [], value: 'x' }] },
    { version, changes: [{ path: ['car', 'name'] }] },
    { version, changes: [{ path: ['__proto__', 'x'], value: 'x' }] },
    { version, changes: [{ path: ['car', 'name', 'deeper'], value: 'x' }] },
    { version: 3, changes: [{ path: ['car', 'name'], value: 'x' }] },
  ];
  for (const body of bad) {
    const answer = await shop.post('/api/cars/one/changes', body);
    assert.equal(answer.status, 422, `${JSON.stringify(body)} → ${answer.text}`);
    assert.ok(answer.json.problems[0].message.length > 10);
  }
  assert.equal(await readFile(join(shop.home, 'one', 'car.yaml'), 'utf8'), UNFINISHED);
});

test('a car file that is a link stays one, and its target is changed', {
  skip: process.platform === 'win32',
}, async (t) => {
  const shop = await openWorkshop(t, { one: UNFINISHED });
  const real = join(shop.home, 'one', 'kept.yaml');
  await writeFile(real, UNFINISHED);
  await (await import('node:fs/promises')).rm(join(shop.home, 'one', 'car.yaml'));
  await symlink('kept.yaml', join(shop.home, 'one', 'car.yaml'));
  const { version } = (await shop.get('/api/cars/one')).json;
  assert.equal((await shop.post('/api/cars/one/changes', rename(version, 'Invented 2'))).status, 200);
  assert.match(await readFile(real, 'utf8'), /Invented 2/);
});

test('a new car is added once; its folder name is looked at', async (t) => {
  const shop = await openWorkshop(t, {});
  assert.equal((await shop.post('/api/cars', { id: 'two', text: UNFINISHED })).status, 201);
  assert.equal((await shop.post('/api/cars', { id: 'two', text: 'other' })).status, 409);
  assert.equal(await readFile(join(shop.home, 'two', 'car.yaml'), 'utf8'), UNFINISHED);
  for (const id of ['', '..', '../x', 'A', 'a/b', 'a.b', '-a', 'x'.repeat(65), 'con\u0000']) {
    assert.equal((await shop.post('/api/cars', { id, text: UNFINISHED })).status, 400, id);
  }
  assert.deepEqual(await readdir(shop.home), ['two']);
});
