/** What the page is given: the floor, a car that cannot be read, changes on the disk, the schema. */
import assert from 'node:assert/strict';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { test } from 'node:test';
import { PortTaken, startServer } from '../../src/server/index.ts';
import { openWorkshop, UNFINISHED } from './workshop.ts';

test('a car whose file cannot be read stands on the floor with the number of its problems', async (t) => {
  const shop = await openWorkshop(t, { broken: 'flatpatch: [', empty: '', half: UNFINISHED });
  await writeFile(join(shop.home, 'workshop.yaml'), 'name: Invented Workshop\ninvented: yes\n');
  const { json } = await shop.get('/api/workshop');
  assert.equal(json.name, 'Invented Workshop');
  assert.equal(json.invented, true);
  assert.deepEqual(
    json.cars.map((each: { id: string }) => each.id),
    ['broken', 'empty', 'half'],
  );
  for (const car of json.cars) assert.ok(car.problems > 0, car.id);
});

test('a file that is no text is told, not thrown', async (t) => {
  const shop = await openWorkshop(t, { one: UNFINISHED });
  await writeFile(join(shop.home, 'one', 'car.yaml'), Uint8Array.of(0xff, 0xfe, 0x00, 0x80));
  const answer = await shop.get('/api/cars/one');
  assert.equal(answer.status, 400);
  assert.equal(answer.json.problems[0].code, 'file/not-text');
  assert.equal((await shop.get('/api/workshop')).json.cars[0].problems, 1);
});

test('a change on the disk by any hand is told to the open pages', async (t) => {
  const shop = await openWorkshop(t, { one: UNFINISHED });
  const stop = new AbortController();
  t.after(() => stop.abort());
  const events = await fetch(`${shop.url}api/events`, { signal: stop.signal });
  assert.equal(events.headers.get('content-type'), 'text/event-stream');
  const reader = events.body!.getReader();
  await reader.read();
  await writeFile(join(shop.home, 'one', 'car.yaml'), `${UNFINISHED}# by hand\n`);
  let told = '';
  while (!told.includes('data:')) told += new TextDecoder().decode((await reader.read()).value);
  const { version } = (await shop.get('/api/cars/one')).json;
  assert.deepEqual(JSON.parse(/data: (.*)/.exec(told)![1]!), { id: 'one', version });
});

test('the schema of the car file is given out', async (t) => {
  const shop = await openWorkshop(t, {});
  const { json } = await shop.get('/api/schema');
  assert.equal(json.$schema, 'https://json-schema.org/draft/2020-12/schema');
  assert.ok(json.properties.front);
});

test('a port in use: the next free one where that may be, else it is told', async (t) => {
  const shop = await openWorkshop(t, {});
  await assert.rejects(startServer({ home: shop.home, port: shop.port }), PortTaken);
  const second = await startServer({ home: shop.home, port: shop.port, orNext: 20 });
  t.after(() => second.close());
  assert.ok(second.port > shop.port && second.port <= shop.port + 20);
});
