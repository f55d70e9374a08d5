/** Sheets from the real server: a PDF of the demo car, and plain words where there is none. */
import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { findPrimaries, openCar, primariesProblem, writePrimaries } from '../../src/questions/index.ts';
import { openWorkshop, UNFINISHED } from './workshop.ts';

const CAR = await readFile(
  join(fileURLToPath(new URL('../..', import.meta.url)), 'cars/fenwold-201/car.yaml'),
  'utf8',
);

test('the sheets of a corner are PDF files', async (t) => {
  const shop = await openWorkshop(t, { one: CAR });
  for (const sheet of ['corner', 'spring']) {
    const path = `/api/cars/one/sheets/${sheet}?end=front&side=left&travel=10%20mm&paper=Letter&units=in-lbf&spec=as%20run`;
    const answer = await shop.get(path);
    assert.equal(answer.status, 200, answer.text.slice(0, 300));
    assert.equal(answer.headers['content-type'], 'application/pdf');
    assert.ok(answer.text.startsWith('%PDF-'));
    assert.match(String(answer.headers['content-disposition']), new RegExp(`one-${sheet}-front-left.pdf`));
  }
});

test('a bar for a coil is ordered from the questions in the address', async (t) => {
  const shop = await openWorkshop(t, { one: CAR });
  const order = (rest: string): string => `/api/cars/one/sheets/bar-order?end=front&side=left&${rest}`;
  const answer = await shop.get(
    order('material=300M%20bar&lengthFrom=250%20mm&lengthTo=400%20mm&splines=48/47'),
  );
  assert.equal(answer.status, 200, answer.text.slice(0, 300));
  assert.ok(answer.text.startsWith('%PDF-'));
  const { json } = await shop.get('/api/cars/one');
  assert.equal(json.text, CAR, 'nothing is kept');
  const wrong: readonly [string, RegExp][] = [
    ['material=cheese', /no material "cheese"/],
    ['material=300M%20bar&lengthFrom=250', /"lengthFrom": .*no unit/],
    ['material=300M%20bar&surface=painted', /"surface": "painted" is none of/],
    ['material=300M%20bar&lengthFrom=400%20mm&lengthTo=300%20mm', /shorter to a longer/],
    ['material=300M%20bar&preset=yes', /barAnchor/],
  ];
  for (const [rest, says] of wrong) {
    const refused = await shop.get(order(rest));
    assert.equal(refused.status, 422, rest);
    assert.match(refused.json.problems[0].message, says, rest);
  }
  const other = await shop.get('/api/cars/one/sheets/corner?end=front&side=left&material=300M%20bar');
  assert.equal(other.status, 422);
});

test('a sheet that cannot be made says why', async (t) => {
  const shop = await openWorkshop(t, { one: CAR, half: UNFINISHED });
  const asked: readonly [string, number, RegExp][] = [
    ['one/sheets/bar-order?end=front&side=left', 422, /no torsion bar/],
    ['one/sheets/corner?end=front&side=left&travel=900%20mm', 422, /reach|cannot|beyond|comes/],
    ['one/sheets/corner?end=front&side=left&travel=10', 422, /no unit/],
    ['one/sheets/corner?end=front', 422, /side=left/],
    ['one/sheets/corner?end=front&side=left&paper=A3', 422, /A4 or Letter/],
    ['one/sheets/corner?end=front&side=left&spec=none', 422, /no such spec/],
    ['one/sheets/poster?end=front&side=left', 422, /no sheet "poster"/],
    ['half/sheets/corner?end=front&side=left', 422, /is missing/],
    ['none/sheets/corner?end=front&side=left', 404, /no file|no car/],
  ];
  for (const [path, status, says] of asked) {
    const answer = await shop.get(`/api/cars/${path}`);
    assert.equal(answer.status, status, `${path}: ${answer.text.slice(0, 300)}`);
    assert.match(answer.json.problems[0].message, says, path);
  }
});

test('loads, a joint and its tightening card are PDF files, of a case by name or written out', async (t) => {
  const shop = await openWorkshop(t, { one: CAR });
  const written = encodeURIComponent(
    JSON.stringify({
      longitudinal: -9.8,
      contacts: { frontLeft: { up: 4000, forward: -2000, by: 'brake' } },
    }),
  );
  const asked: readonly [string, string][] = [
    ['load?doing=braking&units=in-lbf&paper=Letter', 'one-load.pdf'],
    [`load?doing=${written}&says=one%20g%20of%20braking`, 'one-load.pdf'],
    ['joint?joint=caseToEngine&doing=rear-kerb', 'one-joint.pdf'],
    ['tightening?spec=proposal%2C%20six%20studs%20to%20the%20tub', 'one-tightening.pdf'],
  ];
  for (const [path, name] of asked) {
    const answer = await shop.get(`/api/cars/one/sheets/${path}`);
    assert.equal(answer.status, 200, `${path}: ${answer.text.slice(0, 300)}`);
    assert.ok(answer.text.startsWith('%PDF-'));
    assert.ok(String(answer.headers['content-disposition']).includes(name));
  }
});

test('set-up sheet and adjustment card are PDF files; a car without a sheet that is wanted is told so', async (t) => {
  const none = CAR.replace(/\n {2}sheet:\n(?: {4}.*\n)+/, '\n');
  const shop = await openWorkshop(t, { one: CAR, none });
  for (const [path, name] of [
    ['one/sheets/set-up?units=in-lbf&paper=Letter', 'one-set-up.pdf'],
    ['one/sheets/adjustments', 'one-adjustments.pdf'],
    ['none/sheets/set-up', 'none-set-up.pdf'],
  ] as const) {
    const answer = await shop.get(`/api/cars/${path}`);
    assert.equal(answer.status, 200, `${path}: ${answer.text.slice(0, 300)}`);
    assert.ok(answer.text.startsWith('%PDF-'));
    assert.ok(String(answer.headers['content-disposition']).includes(name));
  }
  const refused = await shop.get('/api/cars/none/sheets/adjustments');
  assert.equal(refused.status, 422);
  assert.match(refused.json.problems[0].message, /no sheet of what is wanted/);
});

test('a case that is none, a joint that is none and a car without one are told in words', async (t) => {
  const none = CAR.replace(/\njoints:\n(?: .*\n|\n)*/, '\n').replace(
    /\n {2}proposal, six studs[\s\S]*$/,
    '\n',
  );
  const shop = await openWorkshop(t, { one: CAR, none });
  const json = (of: unknown): string => encodeURIComponent(JSON.stringify(of));
  const asked: readonly [string, RegExp][] = [
    ['one/sheets/load?doing=flying', /"doing" is one of standing/],
    [`one/sheets/load?doing=${json({ lateral: '2 g' })}`, /no case/],
    [`one/sheets/load?doing=${json({ lateral: 9.8, more: 1 })}`, /no case/],
    [`one/sheets/load?doing=${json({ strikes: { middle: 3 } })}`, /no case/],
    [`one/sheets/load?doing=${json({ contacts: { frontLeft: { up: 1, by: 'magic' } } })}`, /no case/],
    ['one/sheets/load?doing=%7B', /no case/],
    ['one/sheets/joint?joint=nose', /"joint" is caseToEngine or engineToTub/],
    ['none/sheets/tightening', /does not describe the joint/],
    ['none/sheets/joint', /does not describe the joint/],
  ];
  for (const [path, says] of asked) {
    const answer = await shop.get(`/api/cars/${path}`);
    assert.equal(answer.status, 422, `${path}: ${answer.text.slice(0, 300)}`);
    assert.match(answer.json.problems[0].message, says, path);
  }
});

test('sheets of primaries: of a set that is sent, checked against the car as it is filed', async (t) => {
  const shop = await openWorkshop(t, { one: CAR });
  const read = openCar({ text: CAR });
  assert.ok(read.ok);
  const put = primariesProblem(read.car, 'left', []);
  assert.ok(put.reached);
  const finding = findPrimaries(put, { seed: 1 });
  while (finding.solution() === undefined) finding.advance();
  const set = writePrimaries(finding.solution()!);
  const address = '/api/cars/one/primaries-sheet';
  const answer = await shop.post(address, { bank: 'left', set, paper: 'Letter', units: 'in-lbf' });
  assert.equal(answer.status, 200, answer.text.slice(0, 300));
  assert.equal(answer.headers['content-type'], 'application/pdf');
  assert.ok(answer.text.startsWith('%PDF-'));
  const wrong: readonly (readonly [unknown, RegExp])[] = [
    [{ bank: 'both', set }, /"bank" is left or right/],
    [{ bank: 'left' }, /"set" is the text/],
    [{ bank: 'left', set: '{}' }, /primaries-solution|no set|format/],
    [{ bank: 'right', set }, /does not suit the car as it is filed now/],
    [{ bank: 'left', set, spec: 'short primaries' }, /does not suit the car as it is filed now/],
    [{ bank: 'left', set, paper: 'A3' }, /A4 or Letter/],
  ];
  for (const [body, says] of wrong) {
    const refused = await shop.post(address, body);
    assert.equal(refused.status, 422, JSON.stringify(body).slice(0, 60));
    assert.match(refused.json.problems[0].message, says);
  }
  assert.equal((await shop.post('/api/cars/none/primaries-sheet', { bank: 'left', set })).status, 404);
});

test('the ratio chart is made from the fields as they are typed, or the one that is wrong is named', async (t) => {
  const shop = await openWorkshop(t, { one: CAR });
  const address = '/api/cars/one/ratio-sheet';
  const asked = { targets: '105, 140, 175, 210, 245, 285 km/h', changes: '2' };
  const answer = await shop.post(address, { asked, paper: 'Letter', units: 'in-lbf', spec: 'as run' });
  assert.equal(answer.status, 200, answer.text.slice(0, 300));
  assert.equal(answer.headers['content-type'], 'application/pdf');
  assert.ok(answer.text.startsWith('%PDF-'));
  const wrong: readonly (readonly [unknown, RegExp])[] = [
    [{ asked: { targets: 7 } }, /"asked" is texts/],
    [{ asked: { targets: '105, 140 km/h' } }, /6 gears and 2 speeds/],
    [{ asked: { at: '10500' } }, /no unit/],
    [{ asked: { pairs: '13-35' } }, /no pair/],
    [{ asked, paper: 'A3' }, /A4 or Letter/],
    [{ asked, spec: 'never' }, /never/],
  ];
  for (const [body, says] of wrong) {
    const refused = await shop.post(address, body);
    assert.equal(refused.status, 422, JSON.stringify(body));
    assert.match(refused.json.problems[0].message, says);
  }
});
