/** The import rule of the house holds, and the rule that watches it can fail. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { breaches, type Source, sourcesUnder, tooLong } from '../tools/rooms.ts';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
const sources = sourcesUnder(ROOT);

const planted = (path: string, text: string): readonly string[] => {
  const source: Source = { path, text };
  return breaches([source]).map((each) => each.what);
};

test('every room imports only what it may, and pure rooms reach for nothing outside', () => {
  assert.ok(sources.length > 50, 'the sources were found');
  assert.deepEqual(breaches(sources), []);
});

test('no file grows past its length', () => {
  assert.deepEqual(tooLong(sources), []);
});

test('a file that is too long is caught', () => {
  assert.equal(tooLong([{ path: 'src/maths/long.ts', text: 'x\n'.repeat(401) }]).length, 1);
});

test('imports against the order are caught, whichever way they are written', () => {
  const bad = [
    "import { readCar } from '../car/read.ts';",
    "import type { Car } from '../car/read.ts';",
    "export { readCar } from '../car/read.ts';",
    "const car = await import('../car/read.ts');",
    "export * from '../../tests/x.ts';",
    "import { readFileSync } from 'node:fs';",
    "import fs from 'fs';",
    "import { z } from 'zod';",
  ];
  for (const text of bad) assert.equal(planted('src/maths/planted.ts', text).length, 1, text);
  assert.deepEqual(planted('src/loadpath/planted.ts', "import type { Car } from '../car/read.ts';"), []);
  assert.deepEqual(planted('src/measured/planted.ts', "import { parse } from 'csv-parse/sync';"), []);
  assert.equal(planted('src/attic/planted.ts', '').length, 1, 'a room that nobody named');
});

test('a pure room that reaches for chance, clock or machine is caught', () => {
  const bad = [
    'const a = Math.random();',
    "const a = Math['random']();",
    'const a = Date.now();',
    'const a = new Date();',
    'const a = new Date;',
    'const a = process.env.X;',
    "const a = fetch('x');",
    'const a = performance.now();',
    "const a = eval('1');",
  ];
  for (const text of bad) assert.equal(planted('src/units/planted.ts', text).length, 1, text);
});

test('words in comments and strings are not taken for code', () => {
  assert.deepEqual(
    planted('src/units/planted.ts', "// Math.random() is not used here\nconst a = 'Date.now()';"),
    [],
  );
  assert.deepEqual(planted('src/units/planted.ts', 'const processed = 1; const b = { process: 2 };'), []);
  assert.deepEqual(
    planted('src/cli/planted.ts', 'const now = Date.now();'),
    [],
    'a shell may look at the clock',
  );
});
