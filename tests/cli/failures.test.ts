/** Bad input: told in words on the error stream, with its exit code, and never with the program's inner workings. */
import assert from 'node:assert/strict';
import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test } from 'node:test';
import { type AloneOptions, flatpatch, flatpatchAlone, type Ran, ROOT } from './flatpatch.ts';

const GOOD = await readFile(join(ROOT, 'cars/fenwold-201/car.yaml'), 'utf8');

async function refused(
  args: readonly string[],
  says: RegExp,
  { alone = false, ...options }: AloneOptions & { readonly alone?: boolean } = {},
  code = 2,
): Promise<Ran> {
  const ran = await (alone ? flatpatchAlone : flatpatch)(args, options);
  assert.equal(ran.code, code, `${args.join(' ')}: ${ran.out}${ran.err}`);
  assert.match(`${ran.err}${args[0] === 'check' ? ran.out : ''}`, says);
  assert.doesNotMatch(ran.err, /\n\s+at .*\d+:\d+\)?$/m, 'no stack trace');
  assert.doesNotMatch(ran.err, /undefined|NaN|\[object/);
  return ran;
}

test('what was asked is wrong: exit code 2, and what would do', async () => {
  await refused([], /flatpatch --help/, { alone: true });
  await refused(['corners'], /Did you mean corner/);
  await refused(['corner'], /argument/);
  await refused(['corner', 'fenwold-201', '--weel', 'x'], /Did you mean --wheel/);
  await refused(['corner', 'fenwold-201', '--wheel', 'middle'], /front-left, front-right/);
  await refused(['corner', 'fenwold-201', '--travel', '12'], /no unit/);
  await refused(['corner', 'fenwold-201', '--travel', '12 N'], /does not measure this/);
  await refused(['corner', 'fenwold-201', '--travel', '1,5 mm'], /comma/);
  await refused(['corner', 'fenwold-201', '--units', 'stones'], /mm-N or in-lbf/);
  await refused(['corner', 'fenwold-201', '--spec', 'as runn'], /Did you mean "as run"/);
  await refused(['corner', 'fenwold-21'], /Did you mean "fenwold-201"/);
  await refused(['corner', '/nowhere/car.yaml'], /no file, folder or car/);
  await refused(['axle', 'fenwold-201', '--end', 'middle'], /front or rear/);
  await refused(['curves', 'fenwold-201', '--wheel', 'front-left', '--count', '1'], /whole number from 2/);
  await refused(
    ['curves', 'fenwold-201', '--wheel', 'front-left', '--figures', 'wheelrate'],
    /Did you mean "wheelRate"/,
  );
  await refused(
    ['working', 'fenwold-201', '--wheel', 'front-left', '--figure', 'weelRate'],
    /Did you mean "wheelRate"/,
  );
  await refused(['compare', 'fenwold-201', 'as arrived', 'nothing', '--wheel', 'front-left'], /no such spec/);
});

test('a question of the springs that is put wrongly is exit code 2, one that cannot be is 3', async () => {
  const wheel = ['--wheel', 'front-left'];
  const ladder = ['ladder', 'ashgarth-501', ...wheel];
  const bar = ['bar-for-coil', 'fenwold-201', ...wheel, '--material'];
  for (const args of [
    [...ladder, '--from', '300 N/mm', '--to', '200 N/mm'],
    [...bar, 'oak'],
    [...bar, '300M bar', '--diameter-from', '20 mm', '--diameter-to', '10 mm'],
    [...bar, '300M bar', '--bore', '140 %'],
    ['coil-for-bar', 'ashgarth-501', ...wheel, '--seats', '-100 mm'],
    ['survey', 'fenwold-201'],
  ])
    await refused(args, /\[asked\/[a-z-]+\]/);
  const none = await refused(
    [...ladder, '--from', '1 N/mm', '--to', '20000 N/mm'],
    /cannot be had: these diameters give .* N\/mm/,
    {},
    3,
  );
  assert.doesNotMatch(none.err, /\de[+−-]\d/, 'no powers of ten');
});

test('a travel that cannot be reached: exit code 3, and how far it goes', async () => {
  const ran = await refused(
    ['corner', 'fenwold-201', '--wheel', 'front-left', '--travel', '400 mm'],
    /It goes from/,
    { alone: true },
    3,
  );
  assert.doesNotMatch(ran.out, /wheel rate/, 'no figure for a place that is not there');
});

test('all problems of a file at once, each with line and column', async () => {
  const input = GOOD.replace('loadedRadius: 316 mm', 'loadedRadius: 316').replace(
    'kind: pushrod',
    'kind: pushrodd',
  );
  const ran = await refused(['check', '-'], /standard input, line \d+, column \d+/, { input });
  assert.match(ran.out, /field\/no-unit/);
  assert.match(ran.out, /field\/choice/);
  assert.match(ran.out, /2 things are wrong/);
});

test('texts that are no car files', async () => {
  const texts = [
    '',
    'x',
    '[]',
    '"',
    '\t',
    '{{{',
    'flatpatch: 99',
    'flatpatch: 1',
    '- 1\n- 2',
    'a: &a [*a]',
    '\u0000',
    '<html></html>',
  ];
  for (const input of texts)
    await refused(['corner', '-'], /\[[a-z]+\/[a-z-]+\]/, { input, alone: input === '' });
});

test('folders and files that are no cars', async (t) => {
  const folder = await mkdtemp(join(tmpdir(), 'flatpatch-bad-'));
  t.after(() => rm(folder, { recursive: true, force: true }));
  await refused(['corner', folder], /no file "car.yaml"/);
  await writeFile(join(folder, 'car.yaml'), Uint8Array.of(0xff, 0xfe, 0x80, 0x00));
  await refused(['corner', folder], /not text in UTF-8/);
  await mkdir(join(folder, 'sub', 'car.yaml'), { recursive: true });
  await refused(['corner', join(folder, 'sub')], /no file "car.yaml"/);
  await writeFile(join(folder, 'long.yaml'), `note: ${'x'.repeat(4_100_000)}`);
  await refused(['corner', join(folder, 'long.yaml')], /at most 4000000/);
});

test('a reader that has seen enough is no mistake', async () => {
  const { spawnSync } = await import('node:child_process');
  const line = `"${process.execPath}" bin/flatpatch.mjs schema | head -c 100`;
  const ran = spawnSync('bash', ['-o', 'pipefail', '-c', line], { cwd: ROOT, encoding: 'utf8' });
  assert.doesNotMatch(ran.stderr, /EPIPE|Error|mistake/);
  assert.equal(ran.status, 0);
});

test('a text that nests without end is refused before it is parsed', async () => {
  // a parser that goes down by calling itself would be out of memory here
  for (const piece of ['[', '{a: ', '- ', '? '])
    await refused(['check', '-'], /\[file\/too-deep\]/, { input: piece.repeat(100_000), alone: true });
});

test('what cannot be written is told in a line, with exit code 4', async () => {
  const { existsSync } = await import('node:fs');
  if (!existsSync('/dev/full')) return;
  const { spawnSync } = await import('node:child_process');
  const line = `"${process.execPath}" bin/flatpatch.mjs corner fenwold-201 --wheel front-left --no-spread > /dev/full`;
  const ran = spawnSync('bash', ['-c', line], { cwd: ROOT, encoding: 'utf8' });
  assert.equal(ran.status, 4, ran.stderr);
  assert.equal(ran.stderr.trim(), 'The answer could not be written: the disk is full.');
});

test('a workshop that is a file: told, with exit code 2', async (t) => {
  const folder = await mkdtemp(join(tmpdir(), 'flatpatch-home-'));
  t.after(() => rm(folder, { recursive: true, force: true }));
  const home = join(folder, 'file');
  await writeFile(home, '');
  for (const FLATPATCH_HOME of [home, join(home, 'below')]) {
    for (const args of [['corner', 'nothing'], ['demo'], ['serve', '--port', '0']])
      await refused(args, /cannot be the workshop's folder.*FLATPATCH_HOME/s, {
        environment: { FLATPATCH_HOME },
        alone: true,
      });
  }
});

test('a port that is no number: refused before the workshop is filled', async (t) => {
  const folder = await mkdtemp(join(tmpdir(), 'flatpatch-home-'));
  t.after(() => rm(folder, { recursive: true, force: true }));
  const home = join(folder, 'workshop');
  for (const args of [['serve'], ['demo', '--serve']])
    await refused(args, /PORT "abc"/, {
      environment: { FLATPATCH_HOME: home, PORT: 'abc' },
      alone: true,
    });
  await assert.rejects(readFile(home), /ENOENT/);
});

test('what was built stays built: a second run says nothing of it', async () => {
  await flatpatchAlone(['--version']);
  assert.equal((await flatpatchAlone(['--version'])).err, '');
});
