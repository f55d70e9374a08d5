/**
 * What must hold of the sources beside the tests: types in both compilations, form and lint, no promise left
 * floating, no address of a registry in the lock.
 *
 * Says what it looks at, one line each, and ends with an exit code other than 0 where anything does not hold.
 */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { floatingPromises } from './floating-promises.ts';

const root = fileURLToPath(new URL('..', import.meta.url));

interface Check {
  readonly name: string;
  /** What does not hold; empty where all is well. */
  readonly run: () => string;
}

function tool(path: string, ...args: string[]): string {
  const done = spawnSync(process.execPath, [join(root, 'node_modules', path), ...args], {
    cwd: root,
    encoding: 'utf8',
  });
  return done.status === 0 ? '' : `${done.stdout}${done.stderr}` || `ended with ${done.status}`;
}

function lockAddresses(): string {
  const found = readFileSync(join(root, 'package-lock.json'), 'utf8').match(
    /"(?:resolved)":[^\n]*|https?:\/\/[^"\s]*\.tgz/g,
  );
  return (found ?? []).slice(0, 5).join('\n');
}

const CHECKS: readonly Check[] = [
  {
    name: 'types of the pure rooms, without page and machine',
    run: () => tool('typescript/bin/tsc', '--noEmit', '-p', 'tsconfig.rooms.json'),
  },
  { name: 'types of everything', run: () => tool('typescript/bin/tsc', '--noEmit') },
  {
    name: 'form and lint',
    run: () =>
      tool(
        '@biomejs/biome/bin/biome',
        'check',
        '--colors=off',
        '--diagnostic-level=error',
        '--max-diagnostics=40',
        '.',
      ),
  },
  { name: 'no promise left floating', run: () => floatingPromises(join(root, 'tsconfig.json')).join('\n') },
  { name: 'no registry address in the lock', run: lockAddresses },
];

let failed = 0;
for (const check of CHECKS) {
  const wrong = check.run();
  process.stdout.write(`${wrong === '' ? 'holds' : 'FAILS'}  ${check.name}\n`);
  if (wrong === '') continue;
  failed += 1;
  process.stdout.write(`${wrong.trimEnd().replace(/^/gm, '       ')}\n`);
}
process.stdout.write(`${CHECKS.length - failed} checks hold, ${failed} fail\n`);
process.exitCode = failed === 0 ? 0 : 1;
