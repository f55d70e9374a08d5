/**
 * Runs the tests: all of tests/, or those whose path contains one of the words given.
 *
 *   npm test                 everything
 *   npm test -- rooms cli    files with "rooms" or "cli" in their path
 */
import { spawnSync } from 'node:child_process';
import { readdirSync, rmSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { bundled } from './bundle-tests.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const words = process.argv.slice(2);

/** Long ones first, so that at the end all processors have something left to do. */
const LONGEST = ['page/reach', 'page', 'cli', 'cars', 'sheets', 'survey', 'server'];
const rank = (path: string): number => {
  const found = LONGEST.findIndex((start) => path.startsWith(join('tests', start)));
  return found < 0 ? LONGEST.length : found;
};
const found = readdirSync(join(root, 'tests'), { recursive: true, encoding: 'utf8' })
  .filter((path) => path.endsWith('.test.ts'))
  .map((path) => join('tests', path))
  .filter((path) => words.length === 0 || words.some((word) => path.includes(word)))
  .sort((a, b) => rank(a) - rank(b) || (a < b ? -1 : 1));

/** What waits for a browser beside what keeps a processor busy, one and one. */
const inBrowser = found.filter((path) => path.startsWith(join('tests', 'page')));
const others = found.filter((path) => !inBrowser.includes(path));
const files = Array.from({ length: Math.max(inBrowser.length, others.length) }, (_, k) => [
  inBrowser[k],
  others[k],
])
  .flat()
  .filter((path) => path !== undefined);
if (files.length === 0) {
  process.stderr.write(`No test file has ${words.join(' or ')} in its path.\n`);
  process.exit(1);
}
// of a run of its own: another may be under way; within the folder, so that packages are found
const into = join(root, 'dist', `tests-${process.pid}`);
const CHANCE = 'tests/chance.ts';
const RUNNER = 'tools/run-tests.ts';
try {
  const at = await bundled(root, [CHANCE, RUNNER, ...files], into);
  const done = spawnSync(
    process.execPath,
    [
      '--enable-source-maps',
      '--import',
      pathToFileURL(at(CHANCE)).href,
      at(RUNNER),
      String(Math.min(4, availableParallelism())),
      ...files.map(at),
    ],
    { cwd: root, stdio: 'inherit' },
  );
  process.exitCode = done.status ?? 1;
} finally {
  rmSync(into, { recursive: true, force: true });
}
