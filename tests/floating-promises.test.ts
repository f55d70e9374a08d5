/** The check for promises that nobody waits for finds planted ones, and those alone. */
import assert from 'node:assert/strict';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test } from 'node:test';
import { floatingPromises } from '../tools/floating-promises.ts';

test('floating promises are found; awaited, marked and caught ones are not', async (t) => {
  const folder = await mkdtemp(join(tmpdir(), 'flatpatch-floating-'));
  t.after(() => rm(folder, { recursive: true, force: true }));
  await writeFile(
    join(folder, 'tsconfig.json'),
    '{"compilerOptions":{"strict":true,"target":"ES2022","types":[]}}',
  );
  await writeFile(
    join(folder, 'planted.ts'),
    `export async function work(): Promise<void> {}
export async function all(): Promise<void> {
  work();
  Promise.all([work()]);
  await work();
  void work();
  work().catch(() => undefined);
  const kept = work();
  await kept;
  work().then(() => undefined, () => undefined);
  work().then(() => undefined);
  Object.assign({ then: 1 }, {});
}
`,
  );
  const lines = floatingPromises(join(folder, 'tsconfig.json')).map((each) =>
    Number(/:(\d+):/.exec(each)?.[1]),
  );
  assert.deepEqual(lines, [3, 4, 11]);
});
