/** A bar for a coil, ordered straight away: the sheet is that of the first bar of the answer. */
import assert from 'node:assert/strict';
import { cp, mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test } from 'node:test';
import { flatpatch, ROOT } from './flatpatch.ts';

const asked = (car: string): string[] => [
  'bar-for-coil',
  car,
  '--wheel',
  'front-left',
  '--material',
  '300M bar',
];

test('a bar for a coil is ordered without being kept; kept as well, the order is that of the kept spec', async (t) => {
  const folder = await mkdtemp(join(tmpdir(), 'flatpatch-order-'));
  t.after(() => rm(folder, { recursive: true, force: true }));
  const car = join(folder, 'car');
  await cp(join(ROOT, 'cars/fenwold-201'), car, { recursive: true });
  const text = (): Promise<string> => readFile(join(car, 'car.yaml'), 'utf8');
  const before = await text();
  const out = (name: string): string => join(folder, name);
  const order = await flatpatch([...asked(car), '--order', out('now.pdf'), '--paper', 'Letter']);
  assert.equal(order.code, 0, order.err);
  assert.match(order.out, /Bars of 300M bar/);
  assert.match(order.err, /now\.pdf: \d+ bytes, Letter/);
  assert.equal(await text(), before);

  // ordered as it is kept, and printed again from what was kept: the same bytes
  const name = 'bar for the coil';
  assert.equal(
    (await flatpatch([...asked(car), '--keep-as', name, '--order', out('keep.pdf'), '--paper', 'Letter']))
      .code,
    0,
  );
  const sheet = [
    'sheet',
    car,
    '--spec',
    name,
    '--kind',
    'bar-order',
    '--wheel',
    'front-left',
    '--paper',
    'Letter',
  ];
  assert.equal((await flatpatch([...sheet, '--out', out('kept.pdf')])).code, 0);
  const [now, keep, kept] = await Promise.all(
    ['now.pdf', 'keep.pdf', 'kept.pdf'].map((each) => readFile(out(each))),
  );
  assert.ok(now!.subarray(0, 5).toString() === '%PDF-');
  assert.ok(keep!.equals(kept!));
});

test('an order that cannot be is told after the answer', async () => {
  // the fenwold file has no anchor point, so the hand of a preset bar would be a guess
  const out = join(tmpdir(), 'flatpatch-no-order.pdf');
  const preset = await flatpatch([...asked('fenwold-201'), '--preset', '--order', out]);
  assert.equal(preset.code, 3, preset.err);
  assert.match(preset.out, /Bars of 300M bar/);
  assert.match(preset.err, /barAnchor/);
  const output = await flatpatch([...asked('fenwold-201'), '--order', '-']);
  assert.equal(output.code, 2);
  assert.match(output.err, /asked\/order|name of a file/);
});

test('what is wrong with the bar asked for is told by its option', async () => {
  for (const [option, value, says] of [
    ['--length-from', '200', /--length-from: .*no unit/],
    ['--splines', '48', /--splines: "48" is not read/],
    ['--bore', '5 mm', /--bore: /],
  ] as const) {
    const ran = await flatpatch([...asked('fenwold-201'), option, value]);
    assert.equal(ran.code, 2, ran.err);
    assert.match(ran.err, says);
  }
});
