/** Edits of the car file: they change what they are asked to and leave the rest letter for letter. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import fc from 'fast-check';
import { edited } from '../../src/car/edit.ts';
import { readCar } from '../../src/car/read.ts';
import { read, TEXT } from './filed-text.ts';

test('an edit changes its own line and no other; the edit back gives the first text again', () => {
  for (const [path, old, value] of [
    [['front', 'left', 'wheel', 'loadedRadius'], '316 mm', '315.2 mm'],
    [['front', 'left', 'wheel', 'camber'], '-2.40 deg', '-2.55 deg'],
    [['rear', 'left', 'points', 'toeOuter'], undefined, '-3011.5, 719.8, 200.1 mm'],
    [['rear', 'antiRollBar', 'bar', 'diameter'], '14.05 mm', '14.10 mm'],
  ] as const) {
    const before = old ?? /toeOuter: (-30.*mm)/.exec(TEXT)![1]!;
    const after = edited(TEXT, [{ path, value }]);
    const lines = TEXT.split('\n');
    const different = after.split('\n').filter((line, k) => line !== lines[k]);
    assert.equal(different.length, 1, `${path.join('.')}: ${different.slice(0, 4).join(' | ')}`);
    assert.ok(different[0]!.includes(value));
    assert.equal(edited(after, [{ path, value: before }]), TEXT);
    assert.ok(read(after).ok);
  }
});

test('comments, order and blank lines outlive an edit', () => {
  const after = edited(TEXT, [{ path: ['front', 'steering', 'rackTravel'], value: '37 mm' }]);
  const comments = (text: string): string[] => text.split('\n').filter((line) => line.includes('#'));
  assert.deepEqual(comments(after), comments(TEXT));
  assert.equal(after.split('\n').length, TEXT.split('\n').length);
});

test('a key added, to a block or to braces, stands behind its neighbours and nothing else moves', () => {
  for (const [path, value, line] of [
    [['front', 'left', 'coil', 'fittedLength'], '127.4 mm', '      fittedLength: 127.4 mm'],
    [
      ['rear', 'antiRollBar', 'bar', 'bore'],
      '6 mm',
      '    bar: { diameter: 14.05 mm, activeLength: 96 mm, material: 300M bar, bore: 6 mm }',
    ],
    [['car', 'owner'], 'nobody', '  owner: nobody'],
    [
      ['front', 'left', 'points', 'heaveRocker'],
      '-20.0, 180.0, 570.0 mm',
      '      heaveRocker: -20.0, 180.0, 570.0 mm',
    ],
    [['front', 'left', 'coil', 'helper'], { rate: '8 N/mm', travel: '12 mm' }, '      helper:'],
  ] as const) {
    const after = edited(TEXT, [{ path, value }]);
    const lines = TEXT.split('\n');
    assert.ok(after.split('\n').includes(line), `${line} is not in the text`);
    const kept = new Set(after.split('\n'));
    const lost = lines.filter((each) => !kept.has(each));
    assert.ok(lost.length <= 1, `lost: ${lost.join(' | ')}`);
    assert.ok(read(after).ok, path.join('.'));
    // braces and their like come back to the letter as well
    assert.equal(edited(after, [{ path, value: null }]), TEXT, path.join('.'));
  }
});

test('a new spec is written as a block, and reads', () => {
  const changes = { front: { left: { wheel: { camber: '-2.8 deg' } } } };
  const after = edited(TEXT, [{ path: ['specs', 'more camber'], value: { from: 'as run', changes } }]);
  assert.ok(after.startsWith(TEXT.trimEnd()), 'what stood there stands there still');
  const result = read(after, 'more camber');
  assert.ok(result.ok);
  assert.ok(Math.abs(result.car.form.front.left.wheel.camber.value + (2.8 * Math.PI) / 180) < 1e-12);
  assert.equal(result.car.form.front.left.coil!.rate!.value, 172_000);
});

test('a reading of its own on a mirrored side leaves the rest mirrored', () => {
  const after = edited(TEXT, [{ path: ['front', 'right', 'damper', 'openLength'], value: '267.5 mm' }]);
  const result = read(after);
  assert.ok(result.ok, JSON.stringify(result.ok ? '' : result.problems));
  const { left, right } = result.car.form.front;
  assert.equal(right.damper!.openLength.value, 0.2675);
  assert.equal(right.damper!.openLength.mirrored, false);
  assert.equal(right.damper!.closedLength.mirrored, true);
  assert.equal(right.damper!.curve!.length, left.damper!.curve!.length);
  // 267.8 mm times 0.001 need not be 0.2678 to the last bit
  assert.ok(Math.abs(left.damper!.openLength.value - 0.2678) < 1e-15);
});

test('line ends of another system stay as they are', () => {
  const crlf = TEXT.replaceAll('\n', '\r\n');
  const after = edited(crlf, [
    { path: ['front', 'left', 'wheel', 'loadedRadius'], value: '315.2 mm' },
    { path: ['front', 'left', 'coil', 'fittedLength'], value: '127.4 mm' },
  ]);
  assert.equal(after.split('\r\n').length, TEXT.split('\n').length + 1);
  assert.ok(!/[^\r]\n/.test(after));
  assert.ok(read(after).ok);
});

test('any reading of the file, changed and changed back, leaves the file as it was', () => {
  const result = read(TEXT);
  assert.ok(result.ok);
  // a value from the material table is a reading, and stands in no car file
  const own = result.car.readings.filter(
    (each) => each.unit !== '1' && !/\.[xyz]$|^materials\./.test(each.path),
  );
  fc.assert(
    fc.property(fc.integer({ min: 0, max: own.length - 1 }), (index) => {
      const { path, text } = own[index]!;
      const keys = path.split('.').map((key) => (/^\d+$/.test(key) ? Number(key) : key));
      const other = text.replace(/[\d.]+/, (number) => (Number(number) * 1.001 + 0.001).toFixed(3));
      const after = edited(TEXT, [{ path: keys, value: other }]);
      assert.notEqual(after, TEXT);
      assert.equal(edited(after, [{ path: keys, value: text }]), TEXT, path);
    }),
    { numRuns: 60, seed: 201 },
  );
});

test('a change inside a mirrored right-hand side leaves the rest of it mirrored', () => {
  const page = readFileSync(new URL('../../docs/car-file.md', import.meta.url), 'utf8');
  const example = /```yaml\n([\s\S]*?)```/.exec(page)![1]!;
  const text = `${example}  one reading:\n    changes:\n      front: { right: { scale: 138.9 kg, coil: { rate: 199 N/mm } } }\n`;
  const read = readCar({ text, spec: 'one reading' });
  assert.ok(read.ok, read.ok ? '' : read.problems.map((problem) => problem.message).join('\n'));
  const { left, right } = read.car.form.front;
  assert.equal(right.scale.value, 138.9);
  assert.equal(right.scale.mirrored, false);
  assert.equal(right.coil!.rate!.mirrored, false);
  assert.equal(right.coil!.wireDiameter.index, left.coil!.wireDiameter.index);
  assert.equal(right.points.upperOuter.y.index, left.points.upperOuter.y.index);
  assert.equal(right.points.upperOuter.value[1], -left.points.upperOuter.value[1]);
});
