/** Six problems in the exchange form through the real command; what it writes is held against the checker. */
import assert from 'node:assert/strict';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, test } from 'node:test';
import { readRouteProblem } from '../../src/gaspath/route/exchange.ts';
import { verify } from '../../src/gaspath/verify/verify.ts';
import { flatpatch, flatpatchAlone, ROOT } from './flatpatch.ts';

const folder = mkdtempSync(join(tmpdir(), 'flatpatch-route-'));
after(() => rmSync(folder, { recursive: true, force: true }));
const EXAMPLES = join(ROOT, 'tests/reference/routing');

// a busy machine may take many times what the finder needs by itself
const SECONDS = '60';

for (const name of ['L1-s1', 'L3-s1', 'L5-s1', 'L6-s1'])
  test(`${name}: solved, and what is written keeps all that is asked`, async () => {
    const file = join(EXAMPLES, `${name}.json`);
    const solution = join(folder, `${name}.json`);
    const ran = await flatpatch([
      'route',
      '--problem',
      file,
      '--solution',
      solution,
      '--seconds',
      SECONDS,
      '--json',
    ]);
    assert.equal(ran.code, 0, ran.err);
    const said = JSON.parse(ran.out);
    assert.equal(said.ending, 'solved');
    assert.match(said.cautions.join(' '), /hot enough to light/);
    const read = readRouteProblem(JSON.parse(readFileSync(file, 'utf8')));
    assert.ok(read.ok);
    const written = JSON.parse(readFileSync(solution, 'utf8'));
    assert.deepEqual(verify(read.problem, written), []);
    // the target itself is aimed at, not the edge of its tolerance: 0.05 mm is what a tape cannot see
    for (const pipe of said.pipes) assert.ok(Math.abs(pipe.lengthMm - read.problem.length.target) < 0.05);
    assert.deepEqual(
      readdirSync(folder).filter((each) => each.endsWith('.part')),
      [],
    );
  });

test('one thread and three write the same answer, to the last digit', async () => {
  const written: string[] = [];
  for (const threads of ['1', '3']) {
    const solution = join(folder, `threads-${threads}.json`);
    const problem = join(EXAMPLES, 'L5-s1.json');
    const asked = ['--problem', problem, '--solution', solution, '--seconds', SECONDS, '--threads', threads];
    const ran = await flatpatch(['route', ...asked, '--json']);
    assert.equal(ran.code, 0, ran.err);
    assert.equal(JSON.parse(ran.out).threads, Number(threads));
    written.push(readFileSync(solution, 'utf8'));
  }
  assert.equal(written[0], written[1]);
});

for (const [name, says] of [
  ['INF-short', /straight line between them are 4\d\d\.\d mm already.*329\.0 mm is asked/],
  ['INF-wall', /Port 2.*gets past wall/],
] as const)
  test(`${name}: refused as impossible, with the cause`, async () => {
    const solution = join(folder, `${name}.json`);
    const ran = await flatpatch([
      'route',
      '--problem',
      join(EXAMPLES, `${name}.json`),
      '--solution',
      solution,
      '--json',
    ]);
    assert.equal(ran.code, 3, ran.err);
    assert.match(ran.err, says);
    const said = JSON.parse(ran.out);
    assert.equal(said.ending, 'impossible');
    assert.ok(
      said.causes.every((each: { code: string; says: string }) => each.code !== '' && each.says !== ''),
    );
    assert.equal(existsSync(solution), false);
  });

test('what is wrong with a problem is told with its place, what was found and what would do', async () => {
  const good = JSON.parse(readFileSync(join(EXAMPLES, 'L1-s1.json'), 'utf8'));
  const told = async (change: (json: typeof good) => void, says: RegExp): Promise<void> => {
    const json = structuredClone(good);
    change(json);
    const file = join(folder, 'wrong.json');
    writeFileSync(file, JSON.stringify(json));
    const ran = await flatpatch(['route', '--problem', file, '--solution', join(folder, 'none.json')]);
    assert.equal(ran.code, 2, ran.err);
    assert.match(ran.err, says);
  };
  await told((j) => delete j.tube.od, /\$\.tube\.od: a number is wanted, found nothing/);
  await told((j) => {
    j.tube.od = 0.0413;
  }, /in metres this would be 41\.30 mm/);
  await told((j) => {
    j.limits.maxBendDeg = 2.6;
  }, /looks like radians/);
  await told((j) => {
    j.ports[1].d = [0, 2, 0];
  }, /\$\.ports\[1\]\.d: a unit direction is wanted; this one is 2\.000 long/);
  await told((j) => {
    j.ports[0].p[2] = null;
  }, /\$\.ports\[0\]\.p\[2\]/);
  await told((j) => {
    j.shell.triangles[4] = [0, 1, 99_999];
  }, /\$\.shell\.triangles\[4\]\[2\]: 99999 is no place/);
  await told((j) => {
    j.format = 'other';
  }, /primaries-problem\/1/);
});

test('nothing found in the time: exit code 4, with what came nearest', async () => {
  const json = JSON.parse(readFileSync(join(EXAMPLES, 'L6-s1.json'), 'utf8'));
  // so much room between pipes that six will not pass each other, though no single one is in the way
  json.clearance.pipe = 45;
  const file = join(folder, 'wide.json');
  writeFileSync(file, JSON.stringify(json));
  const ran = await flatpatchAlone([
    'route',
    '--problem',
    file,
    '--solution',
    join(folder, 'wide-out.json'),
    '--seconds',
    '6',
  ]);
  assert.equal(ran.code, 4, ran.out);
  assert.match(ran.err, /does not prove that there is nothing/);
  assert.match(ran.err, /breached at worst by \d+\.\d\d mm/);
  assert.equal(existsSync(join(folder, 'wide-out.json')), false);
});
