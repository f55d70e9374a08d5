/**
 * JSON Merge Patch against the test cases of its standard.
 *
 * RFC 7396, JSON Merge Patch, October 2014: appendix A "Example Test Cases", all fifteen rows, and the example of
 * section 3 (both seen in reprints of the RFC's text).
 *
 * One thing the car file adds: a stamped reading, `{ is: … }`, is replaced as a whole by another, so that a new
 * number does not keep the name of who measured the old one. No case of the RFC has a key `is`.
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { mergePatch } from '../../src/car/spec.ts';

const CASES: readonly (readonly [original: unknown, patch: unknown, result: unknown])[] = [
  [{ a: 'b' }, { a: 'c' }, { a: 'c' }],
  [{ a: 'b' }, { b: 'c' }, { a: 'b', b: 'c' }],
  [{ a: 'b' }, { a: null }, {}],
  [{ a: 'b', b: 'c' }, { a: null }, { b: 'c' }],
  [{ a: ['b'] }, { a: 'c' }, { a: 'c' }],
  [{ a: 'c' }, { a: ['b'] }, { a: ['b'] }],
  [{ a: { b: 'c' } }, { a: { b: 'd', c: null } }, { a: { b: 'd' } }],
  [{ a: [{ b: 'c' }] }, { a: [1] }, { a: [1] }],
  [
    ['a', 'b'],
    ['c', 'd'],
    ['c', 'd'],
  ],
  [{ a: 'b' }, ['c'], ['c']],
  [{ a: 'foo' }, null, null],
  [{ a: 'foo' }, 'bar', 'bar'],
  [{ e: null }, { a: 1 }, { e: null, a: 1 }],
  [[1, 2], { a: 'b', c: null }, { a: 'b' }],
  [{}, { a: { bb: { ccc: null } } }, { a: { bb: {} } }],
];

CASES.forEach(([original, patch, result], index) => {
  test(`RFC 7396, appendix A, row ${index + 1}`, () => {
    const before = JSON.stringify([original, patch]);
    assert.deepEqual(mergePatch(original, patch), result);
    assert.equal(JSON.stringify([original, patch]), before, 'neither document is changed in place');
  });
});

test('RFC 7396, section 3, the example document', () => {
  const original = {
    title: 'Goodbye!',
    author: { givenName: 'John', familyName: 'Doe' },
    tags: ['example', 'sample'],
    content: 'This will be unchanged',
  };
  const patch = {
    title: 'Hello!',
    phoneNumber: '+01-123-456-7890',
    author: { familyName: null },
    tags: ['example'],
  };
  assert.deepEqual(mergePatch(original, patch), {
    title: 'Hello!',
    author: { givenName: 'John' },
    tags: ['example'],
    content: 'This will be unchanged',
    phoneNumber: '+01-123-456-7890',
  });
});

test('a stamped reading is replaced whole: the new number has no old signature', () => {
  const original = { camber: { is: '-2.4 deg', by: 'Orme', on: '2026-02-04' } };
  assert.deepEqual(mergePatch(original, { camber: { is: '-2.6 deg' } }), { camber: { is: '-2.6 deg' } });
});
