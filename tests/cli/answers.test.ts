/** Every answer under --json keeps the form that is published for it, and says the same as the words do. */
import assert from 'node:assert/strict';
import { cp, mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { before, test } from 'node:test';
import { z } from 'zod';
import { near } from '../near.ts';
import { flatpatch, flatpatchAlone, ROOT } from './flatpatch.ts';

let published: z.ZodType;

before(async () => {
  const { out, code } = await flatpatch(['schema', '--of', 'answers']);
  assert.equal(code, 0);
  const schema = JSON.parse(out);
  assert.equal(schema.$schema, 'https://json-schema.org/draft/2020-12/schema');
  // the schema as printed is read back, so that what is published is what is held against
  published = z.fromJSONSchema(schema);
});

// the shape has just been held against the published form
// biome-ignore lint/suspicious/noExplicitAny: an answer of any command
async function answerOf(args: readonly string[], code = 0): Promise<any> {
  const ran = await flatpatch([...args, '--json']);
  assert.equal(ran.code, code, `${args.join(' ')}: ${ran.err}`);
  const answer = JSON.parse(ran.out);
  const held = published.safeParse(answer);
  assert.ok(held.success, `${args.join(' ')}: ${held.error?.message.slice(0, 2000)}`);
  return answer;
}

test('the published form refuses what is not of it', async () => {
  const answer = await answerOf(['corner', 'fenwold-201', '--wheel', 'front-left', '--no-spread']);
  assert.equal(published.safeParse({ ...answer, more: 1 }).success, false);
  assert.equal(published.safeParse({ ...answer, corners: [{}] }).success, false);
  assert.equal(published.safeParse({ ...answer, answer: 'other' }).success, false);
});

test('corner: SI, spread with shares that make up the whole, worst first', async () => {
  const { corners, car } = await answerOf([
    'corner',
    'fenwold-201',
    '--wheel',
    'front-left',
    '--travel',
    '12 mm',
  ]);
  assert.equal(car.invented, true);
  assert.equal(corners.length, 1);
  assert.equal(corners[0].at.travel, 0.012);
  // biome-ignore lint/suspicious/noExplicitAny: held against the form above
  const wheelRate = corners[0].figures.find((each: any) => each.id === 'wheelRate');
  assert.equal(wheelRate.unit, 'N/m');
  const { u, shares } = wheelRate.spread;
  const sum = shares.reduce((total: number, each: { share: number }) => total + each.share, 0);
  // 1e-9: some fifty shares are added, each rounded by the machine
  assert.ok(Math.abs(sum - 1) < 1e-9, `shares come to ${sum}`);
  const squares = shares.reduce(
    (total: number, each: { contribution: number }) => total + each.contribution ** 2,
    0,
  );
  assert.ok(Math.abs(Math.sqrt(squares) / u - 1) < 1e-9, 'u is the root of the sum of squares (GUM 5.1.2)');
  const sizes = shares.map((each: { share: number }) => each.share);
  assert.deepEqual(
    sizes,
    [...sizes].sort((a, b) => b - a),
  );
});

test('corner: inches and pounds are the same answer in other words', async () => {
  const args = ['corner', 'fenwold-201', '--wheel', 'front-left', '--no-spread'];
  const rate = (text: string): number => Number(/^ {2}wheel rate +([\d.]+)/m.exec(text)![1]);
  const metric = rate((await flatpatch(args)).out);
  const imperial = rate((await flatpatch([...args, '--units', 'in-lbf'])).out);
  // NIST SP 811 (2008), appendix B.8: 1 lbf/in = 175.126 8 N/m; 2e-3: both are printed with four digits
  assert.ok(
    Math.abs(imperial / (metric * (1000 / 175.1268)) - 1) < 2e-3,
    `${metric} N/mm, ${imperial} lbf/in`,
  );
});

test('the other commands keep their forms', async () => {
  const { is } = await answerOf(['axle', 'ashgarth-501', '--end', 'front']);
  assert.ok(is.reached && is.figures.length > 5);
  assert.ok((await answerOf(['car', 'pellmoor-7b', '--no-spread'])).is.reached);
  assert.equal((await answerOf(['figures', 'pellmoor-7b'])).groups.length, 7);
  const every = await answerOf(['compare', 'fenwold-201', 'as arrived', 'as run']);
  assert.ok(
    every.rows.some((row: { of: string; id: string }) => row.of === 'front' && row.id === 'rollRate'),
  );
  const curves = await answerOf(['curves', 'fenwold-201', '--wheel', 'rear-left', '--count', '5']);
  assert.deepEqual(
    curves.columns
      .map((each: { values: unknown[] }) => each.values.length)
      .filter((count: number) => count !== 5),
    [],
  );
  const working = await answerOf([
    'working',
    'ashgarth-501',
    '--wheel',
    'front-left',
    '--figure',
    'wheelRate',
  ]);
  assert.ok(working.steps.length > 3);
  assert.ok(Object.keys(working.readings).length > 0);
  const compared = await answerOf([
    'compare',
    'fenwold-201',
    'as arrived',
    'as run',
    '--wheel',
    'front-left',
  ]);
  assert.ok(compared.rows.some((each: { difference?: number }) => each.difference !== 0));
  const checked = await answerOf(['check', 'fenwold-201']);
  assert.equal(checked.good, true);
  assert.equal(checked.specs.length, 7);
});

test('compare under a load: four studs against six, each as studs tells it alone; loads at a wheel', async () => {
  const six = 'proposal, six studs to the tub';
  const asked = ['--joint', 'engine-to-tub', '--doing', 'rear-kerb', '--no-spread'];
  const { rows, joints, doing, cautions } = await answerOf([
    'compare',
    'fenwold-201',
    'as arrived',
    six,
    ...asked,
  ]);
  const { is } = await answerOf(['studs', 'fenwold-201', '--spec', six, ...asked]);
  assert.equal(joints[1].worst, is.worst);
  assert.deepEqual(cautions, is.cautions);
  for (const { id, value } of is.figures)
    assert.equal(rows.find((row: { id: string }) => row.id === id).b.value, value, id);
  assert.ok(
    rows.some(
      (row: { id: string; a?: unknown }) => row.id.startsWith('stud.middle left') && row.a === undefined,
    ),
  );
  const wheel = ['--wheel', 'rear-left', '--no-spread'];
  const loads = await answerOf([
    'compare',
    'fenwold-201',
    'as arrived',
    'as run',
    '--doing',
    'rear-kerb',
    ...wheel,
  ]);
  assert.deepEqual(loads.doing, doing);
  await answerOf(
    ['compare', 'fenwold-201', 'as arrived', 'as run', '--doing', 'dip', '--travel', '5 mm', ...wheel],
    2,
  );
});

test('log and follow keep their forms; a row of the log and forces typed come back in SI', async () => {
  const log = await answerOf(['log', 'fenwold-201']);
  assert.ok(log.hardest.some((each: { name: string }) => each.name === 'hardest-braking'));
  assert.ok(log.doubts.some((each: { code: string }) => each.code === 'log/gap'));
  const row = await answerOf([
    'loads',
    'fenwold-201',
    '--at',
    '40.8 s',
    '--wheel',
    'front-left',
    '--no-spread',
  ]);
  const braking = log.hardest.find((each: { name: string }) => each.name === 'hardest-braking');
  assert.equal(braking.time, 40.8);
  assert.ok(row.doing.longitudinal < -1.8 * 9.80665);
  assert.ok(row.is.notes.some((note: string) => note.includes('no number in 3 of 1234 rows')));
  const typed = await answerOf([
    'follow',
    'fenwold-201',
    '--contact',
    'rear-left up 6 kN forward -2 kN by spin',
    '--front-brakes',
    '60 %',
  ]);
  assert.deepEqual(typed.doing.contacts, { rearLeft: { up: 6000, forward: -2000, by: 'spin' } });
  near(typed.doing.frontBrakes, 0.6, 1e-12);
  assert.equal(typed.stops.length, 8);
  for (const [args, told] of [
    [['--doing', 'dipp'], /write one of/],
    [['--log', 'lap'], /needs --at/],
    [['--at', '99 s'], /outside the log/],
    [['--at', '47.1 s'], /no number for sideways/],
    [['--contact', 'rear-left 6000'], /needs the load/],
    [['--contact', 'rear-left up -1 N'], /pulling on the ground/],
    [['--kerb', 'rear-left 2', '--contact', 'rear-left up 6 kN'], /one of the two/],
    [['--front-brakes', '130 %'], /between 0 and 100/],
  ] as const) {
    const ran = await flatpatch(['loads', 'fenwold-201', '--no-spread', ...args]);
    assert.equal(ran.code, 2, args.join(' '));
    assert.match(ran.err, told);
  }
});

test('loads and studs keep their forms, and give their case back in SI', async () => {
  const loads = await answerOf([
    'loads',
    'fenwold-201',
    '--doing',
    'braking',
    '--lateral',
    '1 g',
    '--no-spread',
  ]);
  assert.equal(loads.is.wheels.length, 4);
  near(loads.doing.lateral, 9.80665, 1e-12);
  near(loads.doing.longitudinal, -2.5 * 9.80665, 1e-9);
  assert.ok(loads.is.residual < 1e-6);
  const studs = await answerOf(['studs', 'fenwold-201', '--kerb', 'rear-left 2', '--no-spread']);
  assert.deepEqual(studs.doing.strikes, { rearLeft: 2 });
  assert.ok(studs.is.figures.some((each: { id: string }) => each.id === 'stud.lower left.pad'));
});

test('tightening and cases keep their forms; the table of cases says the same as the loads of one wheel', async () => {
  const { is } = await answerOf(['tightening', 'fenwold-201', '--spec', 'proposal, six studs to the tub']);
  assert.equal(is.studs.length, 6);
  assert.equal(is.sorts[0].toSet, 'builder');
  assert.equal(is.sorts[1].toSet, 'choose');
  assert.equal((await answerOf(['tightening', 'ashgarth-501'], 3)).is.reached, false);
  const { cases } = await answerOf(['cases', 'fenwold-201']);
  assert.ok(cases.length >= 9, 'nine default cases, and the car may have its own');
  const loads = await answerOf(['loads', 'fenwold-201', '--doing', 'braking', '--no-spread']);
  const braking = cases.find((each: { name: string }) => each.name === 'braking');
  assert.deepEqual(braking.wheels, loads.is.wheels);
  const { out } = await flatpatch(['cases', 'fenwold-201', '--separator', ';']);
  const row = out.split('\n').find((line) => line.startsWith('braking;front left;pushrod'))!;
  const rod = loads.is.wheels[0].figures.find((each: { id: string }) => each.id === 'tension.rod').value;
  // nine digits are printed
  near(Number(row.split(';')[4]), rod, 1e-8 * Math.abs(rod));
  assert.equal(row.split(';')[3], 'push');
});

test('springs: bar for coil, coil for bar, ladder, bench test and survey keep their forms', async () => {
  const named = (of: { id: string; value: number }[], id: string): number =>
    of.find((each) => each.id === id)!.value;
  const bars = await answerOf([
    'bar-for-coil',
    'fenwold-201',
    '--wheel',
    'front-left',
    '--material',
    '300M bar',
    '--splines',
    '48/47',
  ]);
  assert.ok(bars.bars.length > 0);
  assert.equal(bars.bars[0].torque.length, bars.travel.length);
  const coils = await answerOf([
    'coil-for-bar',
    'ashgarth-501',
    '--wheel',
    'front-left',
    '--seats',
    '120 mm',
  ]);
  assert.ok(named(coils.coils[0].quantities, 'rate') > 0);
  const ladder = await answerOf([
    'ladder',
    'ashgarth-501',
    '--wheel',
    'front-left',
    '--from',
    '200 N/mm',
    '--to',
    '300 N/mm',
    '--count',
    '4',
  ]);
  assert.equal(ladder.rungs.length, 4);
  const survey = await answerOf(['survey', 'ashgarth-501']);
  assert.equal(survey.outliers.length, 1, 'the one planted error is found');
  assert.equal((await answerOf(['survey', 'fenwold-201'], 2)).problems[0].code, 'asked/no-survey');
  assert.ok(named(bars.coil.quantities, 'wheelRateStanding') > 0);
});

/** The figures of the corner are worked on another path than the proposal: by the springing as a whole. */
test('bar for coil: the wheel rate of the coil as the car stands is that of the corner, and may be what is matched', async () => {
  const args = ['bar-for-coil', 'fenwold-201', '--wheel', 'front-left', '--material', '300M bar'];
  const at = (of: { id: string; value: number }[], id: string): number =>
    of.find((each) => each.id === id)!.value;
  const [travel, standing] = [await answerOf(args), await answerOf([...args, '--match', 'standing'])];
  const corner = await answerOf(['corner', 'fenwold-201', '--wheel', 'front-left', '--no-spread']);
  const wheelRate = at(corner.corners[0].figures, 'wheelRate');
  const coil = at(travel.coil.quantities, 'wheelRateStanding');
  // 4 %: the corner's figure has the gas of the damper in its force term, the coil's has not
  assert.ok(Math.abs(coil / wheelRate - 1) < 0.04, `${coil} against ${wheelRate} N/m`);
  const off = (of: typeof travel): number =>
    Math.abs(at(of.bars[0].quantities, 'wheelRateStanding') / coil - 1);
  assert.ok(off(standing) < 0.02 && off(standing) < off(travel), `${off(standing)}, ${off(travel)}`);
  const { out } = await flatpatch([...args, '--match', 'standing']);
  assert.match(
    out,
    /Wheel rate by the spring +coil +bar 1 +difference\n {2}as the car stands +\d.*%\n {2}at full bump/,
  );
  const lower = await flatpatch([
    'bar-for-coil',
    'fenwold-201',
    '--wheel',
    'rear-left',
    '--material',
    '300M bar',
  ]);
  for (const text of [out, lower.out]) assert.match(text, /the car then stands +(higher|lower) by \d/);
});

/** By hand: 646.4 kg is the sum of the four scales in the demo's file; the share is the one that stood there before. */
test('car: the masses that its help speaks of', async () => {
  const { is } = await answerOf(['car', 'fenwold-201', '--no-spread']);
  const at = (id: string): number => is.figures.find((each: { id: string }) => each.id === id).value;
  const file = await readFile(join(ROOT, 'cars/fenwold-201/car.yaml'), 'utf8');
  const scales = [...file.matchAll(/^ {4}scale: .*?([\d.]+) kg/gm)].map((found) => Number(found[1]));
  const mirrored = scales.length === 2 ? 2 : 1;
  const sum = mirrored * scales.reduce((total, each) => total + each, 0);
  // 1e-9: sums of four decimals
  assert.ok(Math.abs(at('totalMass') - sum) < 1e-9, `${at('totalMass')} against ${sum}`);
  assert.ok(Math.abs(at('frontAxleMass') + at('rearAxleMass') - at('totalMass')) < 1e-9);
  assert.ok(Math.abs(at('frontAxleMass') / at('totalMass') - at('frontMassShare')) < 1e-12);
  assert.ok(at('sprungMass') < at('totalMass'));
});

test('curves: what holds the wheel stands beside its travel, and what has no row is said', async () => {
  const args = ['curves', 'fenwold-201', '--wheel', 'front-left', '--from', '-190 mm', '--to', '60 mm'];
  const curves = await answerOf([...args, '--count', '26']);
  const event = (what: RegExp): number =>
    curves.events.find((each: { what: string }) => what.test(each.what)).travel;
  const [droop, rubber] = [event(/droop stop/), event(/rubber/)];
  const load = curves.columns.find((each: { id: string }) => each.id === 'wheelLoad').values;
  curves.travel.forEach((z: number, k: number) => {
    if (load[k] === null) assert.equal(curves.heldBy[k], 'linkage');
    else if (z < droop) assert.equal(curves.heldBy[k], 'droop stop');
    else if (z < rubber) assert.equal(curves.heldBy[k], null);
    else assert.match(curves.heldBy[k], /bump rubber|damper closed|solid coil/);
  });
  const { out, err } = await flatpatch([...args, '--count', '26']);
  assert.match(out, /^travel \(mm\),held by,/);
  assert.match(err, /the wheel does not come: these rows are empty/);
  assert.match(err, /held by: droop stop/);
  await answerOf([...args.slice(0, 4), '--from', '-500 mm', '--to', '-400 mm'], 3);
});

test('survey: inches throughout where inches are asked for', async () => {
  const { out } = await flatpatch(['survey', 'ashgarth-501', '--units', 'in-lbf']);
  const [, words] = out.split('Left against right');
  assert.doesNotMatch(words!, /\d mm/);
  assert.match(words!, /\d in further forward/);
  assert.match(out, /is 0\.3\d+ in out against all the others/);
  assert.doesNotMatch(out, / -\d/, 'a true minus');
});

test('bench test: semicolons and decimal commas, as a spreadsheet of half the world writes them', async () => {
  const points = 'torque N m,angle deg\n0,0\n60.5,2.01\n120.5,4.02\n180.5,5.98\n';
  const commas = points.replaceAll(',', ';').replaceAll('.', ',');
  const [first, second] = await Promise.all(
    [points, commas].map((input) => flatpatch(['bench-test', '-', '--json'], { input })),
  );
  assert.equal(second!.code, 0, second!.err);
  assert.equal(first!.out, second!.out);
  const unclear = 'torque N m;angle deg\n0;0\n1,500;2\n3,000;4\n';
  assert.match((await flatpatch(['bench-test', '-'], { input: unclear })).err, /bench\/decimal/);
});

/** By hand: a straight line through the origin, 30 N m a degree; 1e-12: sums of a few exact numbers. */
test('bench test: readings with units in the headings, on and off, from standard input', async () => {
  const rows = [1, 2, 3, 4, 5].map((n) => `${30 * n},${n},on\n${30 * n},${n},off`);
  const input = `# invented\ntorque (N m),angle (deg),way\n${rows.join('\n')}\n`;
  const ran = await flatpatch(['bench-test', '-', '--json'], { input });
  const answer = JSON.parse(ran.out);
  assert.ok(published.safeParse(answer).success, ran.err);
  const rate = answer.quantities.find((each: { id: string }) => each.id === 'rate');
  assert.ok(Math.abs(rate.value / ((30 * 180) / Math.PI) - 1) < 1e-12, `${rate.value}`);
  // half a per cent each of torque and angle scale, as the help says
  assert.ok(Math.abs(rate.u / rate.value - Math.hypot(0.005, 0.005)) < 1e-9);
  const bad = await flatpatch(['bench-test', '-'], { input: 'torque,angle deg\n1,2\nx,3\n' });
  assert.equal(bad.code, 2);
  assert.match(bad.err, /needs a unit, such as torque N m/);
  const worse = await flatpatch(['bench-test', '-'], {
    input: 'torque N m,angle deg,way\n"1,5",2,on\nx,3,up\n',
  });
  assert.equal(worse.err.match(/bench\/(number|way)/g)?.length, 3, worse.err);
});

test('a proposal is kept as a spec in the file that it was made for, comments and all, and can be ordered', async (t) => {
  const folder = await mkdtemp(join(tmpdir(), 'flatpatch-keep-'));
  t.after(() => rm(folder, { recursive: true, force: true }));
  await cp(join(ROOT, 'cars/fenwold-201'), folder, { recursive: true });
  const before = await readFile(join(folder, 'car.yaml'), 'utf8');
  const args = [
    'bar-for-coil',
    folder,
    '--wheel',
    'front-left',
    '--material',
    '300M bar',
    '--splines',
    '48/47',
  ];
  const kept = await flatpatch([...args, '--keep-as', 'bar, front left']);
  assert.equal(kept.code, 0, kept.err);
  const after = await readFile(join(folder, 'car.yaml'), 'utf8');
  const gone = before
    .split('\n')
    .filter((line) => line.includes('#') && !after.includes(line.trim().split('#')[1]!));
  assert.deepEqual(gone, [], 'every comment is still there');
  const spec = ['--spec', 'bar, front left', '--wheel', 'front-left'];
  const corner = await answerOf(['corner', folder, ...spec, '--no-spread']);
  assert.ok(corner.corners[0].figures.some((each: { id: string }) => each.id === 'barTwist'));
  const sheet = await flatpatch([
    'sheet',
    folder,
    ...spec,
    '--kind',
    'bar-order',
    '--out',
    join(folder, 'order.pdf'),
  ]);
  assert.equal(sheet.code, 0, sheet.err);
  assert.equal((await readFile(join(folder, 'order.pdf'))).subarray(0, 5).toString(), '%PDF-');
  assert.equal((await flatpatch([...args, '--keep-as', 'bar, front left'])).code, 2, 'the name is taken now');
});

test('what cannot be, and what is wrong, keep their form too, with their exit codes', async () => {
  const far = await answerOf(['corner', 'fenwold-201', '--wheel', 'front-left', '--travel', '400 mm'], 3);
  assert.equal(far.corners[0].reached, false);
  const wrong = await answerOf(['corner', 'fenwold-201', '--wheel', 'front-middle'], 2);
  assert.equal(wrong.problems[0].code, 'asked/wheel');
});

test('a car file from standard input gives what the same file gives', async () => {
  const input = await readFile(join(ROOT, 'cars/fenwold-201/car.yaml'), 'utf8');
  const args = ['--wheel', 'rear-right', '--no-spread', '--json'];
  const piped = JSON.parse((await flatpatchAlone(['corner', '-', ...args], { input })).out);
  const filed = JSON.parse((await flatpatch(['corner', 'cars/fenwold-201', ...args])).out);
  assert.deepEqual(piped.corners, filed.corners);
  assert.equal(piped.car.file, 'standard input');
});

test('a car from standard input finds the files that it names where it is told to look', async () => {
  const input = await readFile(join(ROOT, 'cars/ashgarth-501/car.yaml'), 'utf8');
  const alone = await flatpatch(['check', '-'], { input });
  assert.equal(alone.code, 2);
  assert.match(alone.err, /file\/not-there/);
  assert.equal((await flatpatch(['check', '-', '--files', 'cars/ashgarth-501'], { input })).code, 0);
});
