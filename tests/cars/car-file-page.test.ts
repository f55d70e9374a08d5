/** docs/car-file.md: its tables are those of the form, its example is read for real, its codes are all there. */
import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { test } from 'node:test';
import { parse } from 'yaml';
import { z } from 'zod';
import { readCar } from '../../src/car/read.ts';
import { carFileSchema } from '../../src/car/schema.ts';
import { AS_SURVEYED, axleFigures, cornerFigures, openCar } from '../../src/questions/index.ts';
import { TABLE_NAMES, withTables } from '../../tools/car-file-doc.ts';

const ROOT = new URL('../../', import.meta.url);
const page = readFileSync(new URL('docs/car-file.md', ROOT), 'utf8');

const example = /```yaml\n([\s\S]*?)```/.exec(page)?.[1] ?? '';

test('the tables are current; if not, run tools/car-file-doc.ts', () => {
  assert.equal(withTables(page), page);
  for (const name of TABLE_NAMES)
    assert.ok(page.includes(`<!-- made: ${name} -->`), `the page lacks the table "${name}"`);
});

test('every key of the form stands in the page', () => {
  const missing: string[] = [];
  JSON.stringify(carFileSchema(), (key, value) => {
    // a reading's own keys (is, with, …) have their table written by hand
    if (key === 'properties')
      for (const each of Object.keys(value)) if (!page.includes(`\`${each}\``)) missing.push(each);
    return value;
  });
  assert.deepEqual([...new Set(missing)], []);
});

test('the example is a whole car file: it reads in both specs, without a warning', () => {
  for (const spec of [undefined, 'stiffer front']) {
    const result = readCar({ text: example, ...(spec === undefined ? {} : { spec }) });
    assert.ok(result.ok, JSON.stringify(result.ok ? '' : result.problems, undefined, 1));
    assert.deepEqual(result.car.warnings, []);
    const { left, right } = result.car.form.front;
    assert.equal(
      right.coil!.rate!.value,
      left.coil!.rate!.value,
      'a change on the left counts for a mirrored right',
    );
    assert.equal(left.coil!.rate!.value, spec === undefined ? 196_500 : 220_000);
    assert.equal(left.points.toeInner.x.u, 0.0003);
    assert.equal(left.coil!.rate!.instrument, spec === undefined ? 'spring press' : undefined);
  }
});

test('the example fits the published schema', () => {
  const validator = z.fromJSONSchema(carFileSchema() as Parameters<typeof z.fromJSONSchema>[0]);
  const found = validator.safeParse(parse(example));
  assert.ok(found.success, JSON.stringify(found.success ? '' : found.error.issues));
});

test('the part that shows a stamped reading reads', () => {
  const part = /```yaml-part\n([\s\S]*?)```/.exec(page)![1]!.trim();
  const text = example
    .replace('      camber: -2.4 deg', `      ${part}`)
    .replace('front:\n', 'instruments: { clino: { class: inclinometer } }\nfront:\n');
  const result = readCar({ text });
  assert.ok(result.ok, JSON.stringify(result.ok ? '' : result.problems));
  assert.equal(result.car.form.front.left.wheel.camber.on, '2026-03-14');
  assert.equal(result.car.form.front.left.wheel.camber.instrument, 'clino');
});

test('every code that the reader can give is explained', () => {
  const folder = new URL('src/car/', ROOT);
  const sources = readdirSync(folder).filter((name) => name.endsWith('.ts'));
  const codes = new Set(
    sources
      .flatMap((name) => readFileSync(new URL(name, folder), 'utf8').match(/'[a-z]{3,}\/[a-z-]+'/g) ?? [])
      .map((code) => code.slice(1, -1)),
  );
  assert.ok(codes.size > 20);
  const group = (code: string): string => `\`${code.split('/')[0]}/…\``;
  const unexplained = [...codes].filter(
    (code) => !page.includes(`\`${code}\``) && !page.includes(group(code)),
  );
  assert.deepEqual(unexplained, []);
});

test('every change that the page shows is read as a spec of the example, and does what it says', () => {
  const changes = [...page.matchAll(/```yaml-change\n([\s\S]*?)```/g)].map((match) => match[1]!);
  assert.ok(changes.length >= 2);
  for (const change of changes) {
    const indented = change.replace(/^/gm, '      ').trimEnd();
    const text = `${example}  as the page shows:\n    changes:\n${indented}\n`;
    const read = openCar({ text, spec: 'as the page shows' });
    assert.ok(read.ok, read.ok ? '' : read.problems.map((problem) => problem.message).join('\n'));
    assert.deepEqual(
      read.car.warnings.map((problem) => problem.message),
      [],
    );
    const answer =
      change.includes('bar:') && change.includes('coil: null')
        ? cornerFigures(read.car, { end: 'front', side: 'left' }, { travel: 0, rack: 0 })
        : axleFigures(read.car, 'front', AS_SURVEYED);
    assert.ok(answer.reached);
    const id = change.includes('coil: null') ? 'barRate' : 'antiRollBarRate';
    assert.ok(
      answer.figures.some((figure) => figure.id === id && figure.value > 0),
      id,
    );
  }
});
