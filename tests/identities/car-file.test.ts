/**
 * The car file against what hands do to files: slips of the pen, other people's YAML, half a file, and edits.
 *
 * The file under test is the demo car of 1991 manner; each test changes it as somebody might.
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { tooDeep } from '../../src/car/depth.ts';
import { AS_FILED, readCar } from '../../src/car/read.ts';
import { changed, lineOf, only, problemsOf, read, TEXT } from './filed-text.ts';

test('the demo file itself reads, without a warning', () => {
  const result = read(TEXT);
  assert.ok(result.ok, JSON.stringify(result.ok ? '' : result.problems));
  assert.deepEqual(result.car.warnings, []);
});

test('every problem is told at once, each with its own line and column', () => {
  let text = changed('loadedRadius: 316 mm', 'loadedRadius: 316');
  text = changed('tyreWidth: 295 mm', 'tyreWidht: 295 mm', text);
  text = changed('rackTravel: 38 mm', 'rackTravel: 380 mm', text);
  text = changed('kind: T-bar', 'kind: Z-bar', text);
  text = changed('unsprung: 21.8 kg', 'unsprung: 21,8 kg', text);
  const problems = problemsOf(text);
  const at = (code: string, line: string) =>
    problems.find((each) => each.code === code && each.line === lineOf(text, line));
  assert.ok(at('field/no-unit', 'loadedRadius: 316\n'));
  assert.ok(at('field/unknown-key', 'tyreWidht'));
  assert.ok(
    at('field/missing', 'camber: { is: -2.40'),
    'the mistyped key leaves tyreWidth missing in its mapping',
  );
  assert.ok(at('field/out-of-range', 'rackTravel'));
  assert.ok(at('field/choice', 'Z-bar'));
  assert.ok(at('field/unreadable', 'unsprung: 21,8'));
  assert.equal(problems.length, 6);
  for (const problem of problems) assert.equal(problem.file, 'car.yaml');
});

test('an unknown key is an error with the nearest known one, at the key', () => {
  const text = changed('pinion:', 'pinoin:');
  const problem = only(text, 'field/unknown-key', 'pinoin');
  assert.match(problem.remedy ?? '', /pinion/);
  assert.equal(problem.column, 5);
  assert.equal(problem.path, 'front.steering.pinoin');
});

test('a key like nothing known is told what may stand there', () => {
  const problem = only(changed('pinion:', 'ashtray:'), 'field/unknown-key', 'ashtray');
  assert.match(problem.remedy ?? '', /rackTravel, pinion/);
});

test('a missing reading is told with its key and how to measure it', () => {
  const problem = only(
    changed(/^ {4}scale: .*138\.6.*\n/m, ''),
    'field/missing',
    'points:\n      upperFront: { is',
  );
  assert.match(problem.message, /Front left.*scale.*missing.*\(key scale\)/);
  assert.match(problem.remedy ?? '', /[Ss]cale/);
});

test('no unit is guessed; a wrong one is told with those that would do', () => {
  const bare = only(changed('rackTravel: 38 mm', 'rackTravel: 38'), 'field/no-unit', 'rackTravel');
  assert.match(bare.message, /38 mm/);
  const wrong = only(changed('rackTravel: 38 mm', 'rackTravel: 38 kg'), 'field/unreadable', 'rackTravel');
  assert.match(wrong.message, /mm/);
  const none = only(
    changed('rackTravel: 38 mm', 'rackTravel: 38 furlongs'),
    'field/unreadable',
    'rackTravel',
  );
  assert.match(none.message, /furlongs/);
});

test('a decimal comma is told, never read as thousands', () => {
  const problem = only(changed('rackTravel: 38 mm', 'rackTravel: 38,5 mm'), 'field/unreadable', 'rackTravel');
  assert.match(problem.message, /comma/);
});

test('out of range: what was found, what can be, and the slip of unit that explains it', () => {
  const problem = only(
    changed('wireDiameter: 12.18 mm', 'wireDiameter: 0.48 mm'),
    'field/out-of-range',
    'wireDiameter',
  );
  assert.match(problem.message, /0\.48 mm.*1(\.0+)? to 25(\.0+)? mm.*inches/);
});

test('the ends of a range belong to it', () => {
  assert.ok(read(changed('rackTravel: 38 mm', 'rackTravel: 5 mm')).ok);
  assert.ok(read(changed('rackTravel: 38 mm', 'rackTravel: 120 mm')).ok);
  assert.ok(!read(changed('rackTravel: 38 mm', 'rackTravel: 120.01 mm')).ok);
});

test('a point needs three numbers and one unit', () => {
  for (const wrong of [
    '1, 2 mm',
    '1, 2, 3',
    '1 mm, 2 mm, 3 mm',
    '1, 2, 3, 4 mm',
    'here',
    '[1, 2, 3]',
    '9000, 0, 0 mm',
  ]) {
    const text = changed(/^ {6}toeInner: .*$/m, `      toeInner: ${wrong}`);
    assert.equal(problemsOf(text).length, 1, wrong);
  }
});

test('a day that the calendar has not is told', () => {
  only(changed('on: 2026-02-03 }', 'on: 2026-02-30 }'), 'field/date', '2026-02-30');
});

test('a reading taken with an instrument that is not described is told with the nearest', () => {
  const problem = only(
    changed('with: blue scales', 'with: blue scale'),
    'instrument/unknown',
    'with: blue scale,',
  );
  assert.match(problem.remedy ?? '', /blue scales/);
});

test('keys twice, tabs, and YAML that ends in the middle are told with line and column', () => {
  for (const [text, at] of [
    [changed('    pinion:', '    rackTravel: 40 mm\n    pinion:'), 'rackTravel: 40'],
    [changed('    pinion:', '\tpinion:'), '\tpinion:'],
    [changed('kind: U-bar', 'kind: [U-bar'), 'kind: [U-bar'],
  ] as const) {
    const [problem] = problemsOf(text);
    assert.equal(problem!.code, 'file/yaml');
    assert.ok(Math.abs(problem!.line! - lineOf(text, at)) <= 1, `${problem!.line} for ${at}`);
  }
});

test('a key that stands twice is named', () => {
  const [problem] = problemsOf(changed('    pinion:', '    rackTravel: 40 mm\n    pinion:'));
  assert.match(problem!.message, /"rackTravel" stands twice/);
});

test('what has the wrong form is told in words of the trade, and not in those of a library', () => {
  const texts = [
    changed(/\nfront:[\s\S]*?\nrear:/, '\nfront: null\nrear:'),
    changed(/\nfront:[\s\S]*?\nrear:/, '\nfront: [1]\nrear:'),
    changed(/\ninstruments:\n/, '\ninstruments: []\nmore:\n'),
    changed(/\nspecs:\n/, '\nspecs: 3\nmore:\n'),
    changed('    pinion:', '\tpinion:'),
    changed('    pinion:', '    pinion: *nothing\n    more:'),
    changed('    pinion:', '    - pinion:'),
    changed('    pinion:', '    a: b: pinion:'),
    changed('    pinion:', '    a: @b\n    pinion:'),
    `${TEXT}\n---\na: 1\n`,
  ];
  for (const text of texts) {
    const problems = problemsOf(text);
    assert.ok(problems.length > 0);
    for (const { message } of problems)
      assert.doesNotMatch(
        message,
        /Invalid input|expected|received|implicit|Unresolved|anchor |scalar|token|parseAll/i,
      );
  }
  const [nothing] = problemsOf(texts[0]!);
  assert.equal(nothing!.message, 'Front is nothing; its keys should stand below it.');
});

test('brackets in words, remarks and blocks of text do not make a file deep', () => {
  const many = '['.repeat(500);
  assert.equal(tooDeep(`a: "${many}"\nb: |\n  ${many}\n# ${many}\nc: x ${many}\n`), undefined);
  assert.deepEqual(tooDeep(`a:\n  b: ${many}`), { line: 2, column: 104 });
  const stairs = Array.from({ length: 150 }, (_, k) => `${' '.repeat(k)}k:`).join('\n');
  assert.equal(tooDeep(stairs)?.line, 101);
});

test('what is no car file at all is told as such', () => {
  for (const text of [
    '',
    '# nothing\n',
    '- 1\n- 2\n',
    'hello\n',
    '42',
    'null',
    '{}',
    'flatpatch: two\n',
    '\u0000',
  ]) {
    assert.ok(problemsOf(text).length > 0, JSON.stringify(text));
  }
});

test('a file of a later version is refused with its reason', () => {
  const [problem] = problemsOf(changed('flatpatch: 1', 'flatpatch: 2'));
  assert.equal(problem!.code, 'file/version');
  assert.match(problem!.message, /newer/);
  assert.equal(problem!.line, lineOf(TEXT, 'flatpatch: 1'));
});

test('cut off at any byte, the file is read or refused, and never crashes', () => {
  const bytes = Buffer.from(TEXT, 'utf8');
  // every 97th byte meets every kind of place in the file within seconds; the last stretch is tried byte by byte
  const cuts = Array.from({ length: Math.floor(bytes.length / 97) }, (_, k) => 97 * k);
  for (let k = bytes.length - 40; k < bytes.length; k += 1) cuts.push(k);
  for (const cut of cuts) {
    const result = read(bytes.subarray(0, cut).toString('utf8'));
    if (!result.ok)
      assert.ok(result.problems.length > 0 && result.problems.every((each) => each.message !== ''));
  }
});

test('any few characters put anywhere leave a reading or a list of problems', () => {
  const piece = fc.oneof(
    fc.string({ maxLength: 6 }),
    fc.constantFrom(
      '&a ',
      '*a',
      '!!binary ',
      '<<: ',
      '? ',
      '- ',
      ': ',
      '\t',
      '\n',
      '"',
      "'",
      '{',
      '}',
      '|',
      '\u2028',
      'null',
      '~',
    ),
  );
  fc.assert(
    fc.property(fc.integer({ min: 0, max: TEXT.length }), piece, (at, what) => {
      const result = read(TEXT.slice(0, at) + what + TEXT.slice(at));
      return result.ok || result.problems.length > 0;
    }),
    { numRuns: 60, seed: 1991 },
  );
});

test('keys that JavaScript has a meaning for are keys like any other', () => {
  for (const key of ['__proto__', 'constructor', 'prototype', 'toString', 'hasOwnProperty']) {
    const problem = only(
      changed('    pinion:', `    ${key}: { rackTravel: 1 mm }\n    pinion:`),
      'field/unknown-key',
      `    ${key}:`,
    );
    assert.match(problem.message, new RegExp(key));
    const inSpec = changed('specs:\n', `specs:\n  ${key}:\n    changes: { ${key}: { polluted: 1 } }\n`);
    assert.ok(
      problemsOf(inSpec, key).some((each) => each.code === 'field/unknown-key'),
      key,
    );
    assert.ok(!read(TEXT, key).ok, `${key} is no spec of the car`);
  }
  assert.equal(({} as Record<string, unknown>).polluted, undefined);
});

test('aliases within aliases and a huge file are refused at once', () => {
  const rows = Array.from({ length: 30 }, (_, k) =>
    `  k${k}: [${Array(9)
      .fill(k === 0 ? 'x' : `*a${k - 1}`)
      .join(', ')}]`.replace('[', `&a${k} [`),
  );
  const bomb = `flatpatch: 1\ncar:\n  name: x\nbomb:\n${rows.join('\n')}\n`;
  const started = performance.now();
  assert.ok(problemsOf(bomb).length > 0);
  assert.ok(problemsOf(`${TEXT}# ${'x'.repeat(5_000_000)}\n`).some((each) => each.code === 'file/too-long'));
  assert.ok(problemsOf(`${'['.repeat(20_000)}`).length > 0);
  // seconds would mean that the aliases were unfolded: 9^30 strings end no machine's day
  assert.ok(performance.now() - started < 5000);
});

test('a plain anchor, used once, is ordinary YAML and is read', () => {
  const text = changed('rackTravel: 38 mm', 'rackTravel: &rack 38 mm');
  assert.ok(read(text).ok);
});

test('a mirrored part shares its readings and turns y alone', () => {
  const right = /( {2}right:\n {4}points:\n)(?: {6}.*\n)+/;
  const text = changed(right, '  right:\n    points: mirrored\n');
  const result = read(text);
  assert.ok(result.ok, JSON.stringify(result.ok ? '' : result.problems));
  const { left, right: mirrored } = result.car.form.front;
  for (const name of ['upperFront', 'lowerOuter', 'rodInner', 'wheelCentre'] as const) {
    const [a, b] = [left.points[name], mirrored.points[name]];
    assert.deepEqual(b.value, [a.value[0], -a.value[1], a.value[2]]);
    assert.equal(b.y.index, a.y.index, 'one reading, not two');
    assert.ok(b.mirrored && !a.mirrored);
    assert.equal(b.x.path, `front.right.points.${name}.x`);
  }
  const original = read(TEXT);
  assert.ok(original.ok);
  assert.equal(result.car.readings.length, original.car.readings.length - 3 * 17);
});

test('mirrored with nothing on the left is told; on the left it is not allowed', () => {
  const nothing = changed('    bumpRubber:\n      gap: 22 mm', '    shelf:\n      gap: 22 mm');
  assert.ok(problemsOf(nothing).some((each) => each.code === 'mirror/nothing-there'));
  assert.ok(
    problemsOf(
      changed(/front:\n {2}left:\n {4}points:\n(?: {6}.*\n)+/, 'front:\n  left:\n    points: mirrored\n'),
    ).length > 0,
  );
});

test('a fault in a mirrored part is told once, on the left where it is written', () => {
  const text = changed('closedLength: 219.4 mm', 'closedLength: 289.4 mm');
  const problems = problemsOf(text).filter((each) => each.code === 'damper/lengths');
  assert.deepEqual(
    problems.map((each) => each.path),
    ['front.left.damper.closedLength'],
  );
});

test('the sides, materials and curves are looked at together', () => {
  for (const [text, code] of [
    [
      changed('material: chrome-silicon wire', 'material: chrome-silicone wire').replace(
        /rate: \{ is: 196\.5.*\n/,
        '\n',
      ),
      'material/unknown',
    ],
    [changed('velocity: 60 mm/s', 'velocity: 10 mm/s'), 'curve/not-rising'],
    [changed(/ {4}stemTop: .*\n/, ''), 'antiroll/no-stem'],
    [
      changed(
        'freeLength: 135.2 mm\n      material: chrome-silicon wire\n      rate: { is: 196.5 N/mm, with: press, by: Tarn, on: 2025-12-02 }',
        'freeLength: 135.2 mm',
      ),
      'coil/no-rate',
    ],
    [changed(/( {6}wheelCentre: -?[\d.]+, )([\d.]+)/, '$1-$2'), 'points/wrong-side'],
  ] as const) {
    assert.ok(
      problemsOf(text).some((each) => each.code === code && each.line !== undefined),
      `${code}: ${JSON.stringify(problemsOf(text))}`,
    );
  }
});

test('a material that the table lacks is told beside a measured rate, and does not stop the figures', () => {
  const result = read(changed('material: chrome-silicon wire', 'material: marked K7'));
  assert.ok(result.ok);
  assert.deepEqual(
    result.car.warnings.map((each) => each.code),
    ['material/unknown'],
  );
});

test('an anti-roll bar or heave spring that nothing works is told and left out', () => {
  const loose = read(changed(/ {6}dropLinkArm: .*\n/, ''));
  assert.ok(loose.ok);
  assert.deepEqual(
    loose.car.warnings.map((each) => [each.code, each.path]),
    [['antiroll/no-link', 'front.left.points']],
  );
  const heave = read(changed('  steering:\n', '  heave: { rate: 200 N/mm, gap: 0 mm }\n  steering:\n'));
  assert.ok(heave.ok);
  assert.equal(heave.car.warnings.filter((each) => each.code === 'heave/no-eye').length, 2);
});

test('specs: their chain, their names, their faults', () => {
  const filed = read(TEXT);
  const run = read(TEXT, 'as run');
  const proposal = read(TEXT, 'proposal, longer rubber gap');
  assert.ok(filed.ok && run.ok && proposal.ok);
  assert.deepEqual(filed.car.specs, [
    'as arrived',
    'as run',
    'proposal, longer rubber gap',
    'lower studs by stretch',
    'proposal, six studs to the tub',
    'short primaries',
    'four-two-one',
  ]);
  assert.equal(filed.car.form.front.left.coil!.rate!.value, 196_500);
  assert.equal(run.car.form.front.left.coil!.rate!.value, 172_000);
  assert.equal(
    proposal.car.form.front.left.coil!.rate!.value,
    172_000,
    'a proposal stands on the spec it names',
  );
  assert.equal(run.car.form.front.left.bumpRubber!.packers?.value, 0.004);
  assert.equal(proposal.car.form.front.left.bumpRubber!.packers, undefined, 'null takes a key out');
  const [wrong] = problemsOf(TEXT, 'as ran');
  assert.equal(wrong!.code, 'spec/unknown');
  assert.match(wrong!.remedy ?? '', /as run/);
  assert.ok(problemsOf(changed('from: as run', 'from: nowhere')).some((each) => each.code === 'spec/chain'));
  assert.ok(
    problemsOf(changed('  as run:\n', '  as run:\n    from: "proposal, longer rubber gap"\n')).some(
      (each) => each.code === 'spec/chain',
    ),
    'specs that start from one another',
  );
});

test('a fault that a spec brings in is told at the line of the spec', () => {
  const text = changed('toe: { is: -0.12 deg, by: Tarn, on: 2026-02-20 }', 'toe: -12 deg');
  const [problem] = problemsOf(text, 'as run');
  assert.equal(problem!.code, 'field/out-of-range');
  assert.equal(problem!.line, lineOf(text, 'toe: -12 deg'));
});

test('a file that gives its own state no name has one all the same', () => {
  const result = read(changed('spec: as arrived\n', ''));
  assert.ok(result.ok);
  assert.equal(result.car.spec, AS_FILED);
});

test('an instrument whose spread has no unit, or is negative, is told and not passed over', () => {
  for (const spread of ['0.05', '-0.09 mm', 'fine']) {
    const text = TEXT.replace(/spread: 0.09 mm/, `spread: "${spread}"`);
    const read = readCar({ text });
    assert.ok(!read.ok, spread);
    assert.deepEqual(
      read.problems.map((problem) => problem.code),
      ['instrument/spread'],
    );
    assert.ok(read.problems[0]!.line! > 1);
  }
});
