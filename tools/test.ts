/**
 * Runs the tests: all of tests/, or those whose path contains one of the words given.
 *
 *   npm test                 everything
 *   npm test -- rooms cli    files with "rooms" or "cli" in their path
 */
import { spawnSync } from 'node:child_process';
import { readdirSync, rmSync, writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join, sep } from 'node:path';
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
/**
 * Folders whose files go so many to a process: none of them changes what another stands on, and what they bring in is
 * read and made fast once for all of them. Those of the command line and of the server each have a process of their own.
 */
const TOGETHER: Readonly<Record<string, number>> = {
  cars: 5,
  identities: 8,
  page: 3,
  published: 16,
  reference: 4,
  scan: 4,
  sheets: 3,
  survey: 5,
};
const folderOf = (path: string): string => path.split(sep)[1]!;

const found = readdirSync(join(root, 'tests'), { recursive: true, encoding: 'utf8' })
  .filter((path) => path.endsWith('.test.ts'))
  .map((path) => join('tests', path))
  .filter((path) => words.length === 0 || words.some((word) => path.includes(word)))
  .sort((a, b) => rank(a) - rank(b) || (a < b ? -1 : 1));

/** Files that go to one process, in the order in which they were found. */
const groups: string[][] = [];
for (const path of found) {
  const most = TOGETHER[folderOf(path)] ?? 1;
  const last = groups.findLast(([first]) => folderOf(first!) === folderOf(path));
  if (last !== undefined && last.length < most) last.push(path);
  else groups.push([path]);
}

/** What waits for a browser beside what keeps a processor busy, one and one. */
const inBrowser = groups.filter(([first]) => folderOf(first!) === 'page');
const others = groups.filter((group) => !inBrowser.includes(group));
const files = Array.from({ length: Math.max(inBrowser.length, others.length) }, (_, k) => [
  inBrowser[k],
  others[k],
])
  .flat()
  .filter((group) => group !== undefined);
if (found.length === 0) {
  process.stderr.write(`No test file has ${words.join(' or ')} in its path.\n`);
  process.exit(1);
}
// of a run of its own: another may be under way; within the folder, so that packages are found
const into = join(root, 'dist', `tests-${process.pid}`);
const CHANCE = 'tests/chance.ts';
const RUNNER = 'tools/run-tests.ts';
try {
  const at = await bundled(root, [CHANCE, RUNNER, ...found], into);
  const started = files.map((group, k) => {
    if (group.length === 1) return at(group[0]!);
    const file = join(into, `${folderOf(group[0]!)}-${k}.test.mjs`);
    writeFileSync(
      file,
      group.map((path) => `import ${JSON.stringify(pathToFileURL(at(path)).href)};\n`).join(''),
    );
    return file;
  });
  const done = spawnSync(
    process.execPath,
    [
      '--enable-source-maps',
      '--import',
      pathToFileURL(at(CHANCE)).href,
      at(RUNNER),
      // one more than there are processors: what waits for a page leaves one idle
      String(Math.min(4, availableParallelism() + 1)),
      ...started,
    ],
    { cwd: root, stdio: 'inherit' },
  );
  process.exitCode = done.status ?? 1;
} finally {
  rmSync(into, { recursive: true, force: true });
}
