/** Other people's pages, odd paths and oversized bodies are kept out of the real server. */
import assert from 'node:assert/strict';
import { mkdir, symlink, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { test } from 'node:test';
import { ask, JSON_TYPE, openWorkshop, UNFINISHED } from './workshop.ts';

test('a name that was made to point here is refused, for the page as for the cars', async (t) => {
  const shop = await openWorkshop(t, { one: UNFINISHED });
  const hosts = [
    'evil.example',
    `evil.example:${shop.port}`,
    `127.0.0.1.evil.example:${shop.port}`,
    `localhost:${shop.port + 1}`,
  ];
  for (const host of hosts) {
    for (const path of ['/', '/api/workshop', '/api/cars/one', '/api/events']) {
      assert.equal((await shop.get(path, { host })).status, 403, `${host} ${path}`);
    }
  }
  for (const host of [`localhost:${shop.port}`, `127.0.0.1:${shop.port}`, `[::1]:${shop.port}`]) {
    assert.equal((await shop.get('/api/workshop', { host })).status, 200, host);
  }
});

test("another page's reads and writes are refused, whatever it calls itself", async (t) => {
  const shop = await openWorkshop(t, { one: UNFINISHED });
  const { version } = (await shop.get('/api/cars/one')).json;
  const body = { version, changes: [{ path: ['car', 'name'], value: 'taken over' }] };
  const foreign: Record<string, string>[] = [
    { origin: 'http://evil.example' },
    { origin: 'null' },
    { origin: `http://localhost:${shop.port + 1}` },
    { origin: `https://localhost:${shop.port}` },
    { origin: `http://localhost:${shop.port}.evil.example` },
    { 'sec-fetch-site': 'cross-site' },
    { 'sec-fetch-site': 'same-site' },
  ];
  for (const headers of foreign) {
    assert.equal(
      (await shop.post('/api/cars/one/changes', body, headers)).status,
      403,
      JSON.stringify(headers),
    );
    assert.equal((await shop.get('/api/cars/one', headers)).status, 403, JSON.stringify(headers));
  }
  assert.equal((await shop.get('/api/cars/one')).json.text, UNFINISHED);
  const own = { origin: `http://127.0.0.1:${shop.port}`, 'sec-fetch-site': 'same-origin' };
  assert.equal((await shop.post('/api/cars/one/changes', body, own)).status, 200);
});

test('a form of another page cannot write: only JSON that says so is taken', async (t) => {
  const shop = await openWorkshop(t, { one: UNFINISHED });
  for (const type of [
    'text/plain',
    'application/x-www-form-urlencoded',
    'multipart/form-data; boundary=x',
    '',
  ]) {
    const headers = type === '' ? {} : { 'content-type': type };
    const answer = await ask(shop.port, {
      method: 'POST',
      path: '/api/cars',
      headers,
      body: '{"id":"x","text":"y"}',
    });
    assert.equal(answer.status, 415, type);
  }
});

test('nothing is granted to other origins, and the page may load its own files alone', async (t) => {
  const shop = await openWorkshop(t, {});
  for (const path of ['/', '/api/workshop', '/assets/a.js', '/api/nothing']) {
    const { headers } = await shop.get(path);
    assert.equal(headers['access-control-allow-origin'], undefined);
    assert.match(String(headers['content-security-policy']), /default-src 'none'.*script-src 'self'/);
    assert.equal(headers['x-content-type-options'], 'nosniff');
  }
  const before = await ask(shop.port, {
    method: 'OPTIONS',
    path: '/api/cars',
    headers: { origin: 'http://evil.example' },
  });
  assert.equal(before.status, 403);
});

test('no path leads out of the page or the workshop', async (t) => {
  const shop = await openWorkshop(t, { one: UNFINISHED });
  const out = [
    '/../secret.txt',
    '/..%2fsecret.txt',
    '/%2e%2e/secret.txt',
    '/%252e%252e/secret.txt',
    '/assets/..%5c..%5c..%5csecret.txt',
    '/assets/../../secret.txt',
    '//etc/hosts.txt',
    '/a%00.txt',
    '/%zz.txt',
  ];
  for (const path of out) {
    const answer = await shop.get(path);
    assert.ok([400, 404].includes(answer.status), `${path} → ${answer.status}`);
    assert.ok(!answer.text.includes('not for anybody'), path);
  }
  for (const id of ['..', '%2e%2e', '..%2f..', '..%2fsecret.txt', 'ONE', 'one%2f..%2fone', 'nobody']) {
    const answer = await shop.get(`/api/cars/${id}`);
    assert.ok([400, 404].includes(answer.status), `${id} → ${answer.status}`);
  }
});

test('a car file names files below its own folder alone, and links do not lead out', {
  skip: process.platform === 'win32',
}, async (t) => {
  const text = `flatpatch: 1
survey:
  sets:
    good: { file: arm.csv, unit: mm }
    up: { file: ../../secret.txt, unit: mm }
    whole: { file: /etc/hosts, unit: mm }
    link: { file: link.csv, unit: mm }
    folder: { file: sub, unit: mm }
    none: { file: missing.csv, unit: mm }
`;
  const shop = await openWorkshop(t, { one: text });
  const folder = join(shop.home, 'one');
  await writeFile(join(folder, 'arm.csv'), 'name,x,y,z\n');
  await symlink('../../secret.txt', join(folder, 'link.csv'));
  await mkdir(join(folder, 'sub'));
  const { json } = await shop.get('/api/cars/one');
  assert.deepEqual(json.files, { 'arm.csv': 'name,x,y,z\n' });
  assert.equal(json.problems.length, 5);
});

test('a body longer than any car file is refused', async (t) => {
  const shop = await openWorkshop(t, {});
  const answer = await ask(shop.port, {
    method: 'POST',
    path: '/api/cars',
    headers: JSON_TYPE,
    body: JSON.stringify({ id: 'big', text: 'x'.repeat(5_000_000) }),
  });
  assert.equal(answer.status, 413);
});
