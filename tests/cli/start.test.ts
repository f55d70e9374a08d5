/** `npm start` from the person's side: the demo is worked, the address comes last, Ctrl-C ends it cleanly. */
import assert from 'node:assert/strict';
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test } from 'node:test';
import { COMMAND, flatpatchAlone, ROOT } from './flatpatch.ts';

test('the demo, its headline figures, the address last; Ctrl-C ends it', async (t) => {
  const folder = await mkdtemp(join(tmpdir(), 'flatpatch-start-'));
  t.after(() => rm(folder, { recursive: true, force: true }));
  const home = join(folder, 'workshop');
  const environment = { ...process.env, FLATPATCH_HOME: home, PORT: '0' };
  const child = spawn(process.execPath, [COMMAND, 'demo', '--serve'], { cwd: ROOT, env: environment });
  t.after(() => child.kill('SIGKILL'));
  let out = '';
  child.stdout.setEncoding('utf8').on('data', (text: string) => (out += text));
  while (!/^http:.*\n$/m.test(out)) await once(child.stdout, 'data');
  assert.match(out, /invented workshop/);
  assert.match(out, /wheel rate +\d+(\.\d+)? ± /);
  assert.match(out, /twist of the torsion bar +/);
  const last = out.trimEnd().split('\n').at(-1)!;
  assert.match(last, /^http:\/\/127\.0\.0\.1:\d+\/$/);
  const floor = (await (await fetch(`${last}api/workshop`)).json()) as {
    cars: { id: string; problems: number }[];
  };
  assert.deepEqual(
    floor.cars.map((each) => each.id),
    (await readdir(join(ROOT, 'cars'), { withFileTypes: true }))
      .filter((each) => each.isDirectory())
      .map((each) => each.name),
  );
  assert.deepEqual(
    floor.cars.filter((each) => each.problems > 0),
    [],
  );
  child.kill('SIGINT');
  const [code, signal] = await once(child, 'exit');
  assert.deepEqual([code, signal], [0, null]);
});

test('a workshop with something in it is never filled or written over', async (t) => {
  const home = await mkdtemp(join(tmpdir(), 'flatpatch-home-'));
  t.after(() => rm(home, { recursive: true, force: true }));
  await writeFile(join(home, 'workshop.yaml'), 'name: Mine\n');
  const { code, out } = await flatpatchAlone(['demo'], { environment: { FLATPATCH_HOME: home } });
  assert.equal(code, 0);
  assert.match(out, /^Mine$/m);
  assert.deepEqual(await readdir(home), ['workshop.yaml']);
  assert.equal(await readFile(join(home, 'workshop.yaml'), 'utf8'), 'name: Mine\n');
});

test('PORT is respected: one that is in use is told, with exit code 2', async (t) => {
  const other = createServer();
  await new Promise<void>((resolve) => {
    other.listen(0, '127.0.0.1', resolve);
  });
  t.after(() => other.close());
  const { port } = other.address() as { port: number };
  const { code, err } = await flatpatchAlone(['serve'], { environment: { PORT: String(port) } });
  assert.equal(code, 2);
  assert.match(err, new RegExp(`Port ${port} is in use`));
  assert.equal((await flatpatchAlone(['serve'], { environment: { PORT: 'many' } })).code, 2);
});
