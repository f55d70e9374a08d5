import assert from 'node:assert/strict';
import { test } from 'node:test';
import type { Vec3 } from '../../src/maths/vec3.ts';
import { type CsvOptions, readPointsCsv } from '../../src/survey/csv.ts';

const OPTIONS: CsvOptions = { set: 'A', u: 1e-4 };

function points(text: string, options: Partial<CsvOptions> = {}): Record<string, Vec3> {
  const result = readPointsCsv(text, { ...OPTIONS, ...options });
  assert.ok(result.ok, JSON.stringify(result));
  return Object.fromEntries(
    result.is.map((r) => (r.kind === 'point' ? [r.point, r.xyz] : [r.id, [0, 0, 0]])),
  );
}

const codes = (text: string, options: Partial<CsvOptions> = {}): readonly string[] => {
  const result = readPointsCsv(text, { ...OPTIONS, ...options });
  assert.ok(!result.ok);
  return result.problems.map((p) => p.code.replace('survey/csv-', ''));
};

const near = (got: Vec3, want: Vec3): void =>
  got.forEach((v, k) => {
    assert.ok(Math.abs(v - want[k]!) < 1e-15, `${v} ${want[k]}`); // rounding of one product
  });

test('plain list, heading with units, byte order mark, CRLF, comments, quotes', () => {
  const text =
    '\uFEFF# arm, morning\r\nname,x mm,y mm,z mm\r\n"front, upper",120.5,-310,88\r\n# break\r\nrear,1e3,0,-.5\r\n';
  const got = points(text);
  near(got['front, upper']!, [0.1205, -0.31, 0.088]);
  near(got.rear!, [1, 0, -0.0005]);
});

test('semicolons and decimal commas are found and said', () => {
  const result = readPointsCsv('name;x [in];y [in];z [in];u [in]\na;1,5;-2;0,25;0,01\n', { set: 'B' });
  assert.ok(result.ok, JSON.stringify(result));
  const [reading] = result.is;
  assert.ok(reading?.kind === 'point');
  near(reading.xyz, [1.5 * 0.0254, -2 * 0.0254, 0.25 * 0.0254]);
  assert.ok(Math.abs(reading.u - 0.01 * 0.0254) < 1e-18);
  assert.ok(result.said.some((s) => /semicolon \(found\)/.test(s)));
  assert.ok(result.said.some((s) => /decimal sign is a comma \(found\)/.test(s)));
  assert.ok(result.said.some((s) => /unit is in \(from the heading\)/.test(s)));
});

test('columns in another order, one unit for all, tab', () => {
  near(points('z\tpoint\ty\tx (mm)\n3\ta\t2\t1\n').a!, [0.001, 0.002, 0.003]);
});

test('a list without heading needs its unit stated', () => {
  near(points('a,1,2,3\n', { unit: 'mm' }).a!, [0.001, 0.002, 0.003]);
  assert.deepEqual(codes('a,1,2,3\n'), ['unit', 'unit', 'unit']);
  assert.deepEqual(codes('name,x kg,y kg,z kg\na,1,2,3\n'), ['unit', 'unit', 'unit']);
});

test('commas that may part thousands are not guessed at', () => {
  assert.deepEqual(codes('name;x mm;y mm;z mm\na;1,234;2,345;3,456\n'), ['decimal']);
  near(
    points('name;x mm;y mm;z mm\na;1,234;2,345;3,456\n', { decimal: ',' }).a!,
    [0.001234, 0.002345, 0.003456],
  );
});

test('problems carry line and column, all at once', () => {
  const result = readPointsCsv('name,x mm,y mm,z mm\na,1,2,3\na,4,5,6\n,1,2,3\nb,1,two,\nc,1,2,1e999\n', {
    ...OPTIONS,
    file: 'points.csv',
  });
  assert.ok(!result.ok);
  assert.deepEqual(
    result.problems.map((p) => [p.code, p.line, p.column]),
    [
      ['survey/csv-twice', 3, 1],
      ['survey/csv-name', 4, 1],
      ['survey/csv-number', 5, 3],
      ['survey/csv-number', 5, 4],
      ['survey/csv-number', 6, 4],
    ],
  );
  assert.ok(result.problems.every((p) => p.file === 'points.csv'));
});

test('no uncertainty, no delimiter, no column, an open quote, an empty list', () => {
  assert.deepEqual(codes('name,x mm,y mm,z mm\na,1,2,3\n', { u: 0 }), ['spread']);
  assert.deepEqual(codes('a 1 2 3\n'), ['delimiter']);
  assert.deepEqual(codes('name,x mm,y mm,w\na,1,2,3\n'), ['column']);
  assert.deepEqual(codes('name,x mm,y mm,z mm\n"a,1,2,3\n'), ['form']);
  assert.deepEqual(codes('name,x mm,y mm,z mm\n'), ['empty']);
});
