/**
 * Runs test files in the order given, two or more at once: `node --test` would sort them by name, and then all that
 * wait for a browser come together at the end, and all that keep the processors busy before them.
 *
 * tools/test.ts starts it, with the files as they were bundled.
 */
import { run } from 'node:test';
import { spec } from 'node:test/reporters';

const [atOnce, ...files] = process.argv.slice(2);

run({ files, concurrency: Number(atOnce) })
  .on('test:fail', () => {
    process.exitCode = 1;
  })
  .compose(new spec())
  .pipe(process.stdout);
