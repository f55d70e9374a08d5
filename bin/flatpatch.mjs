#!/usr/bin/env node
/**
 * The command `flatpatch`. In a clone it first sees to it that what it runs is built from the sources as they
 * stand; where it was installed as a package there are no sources and it runs what came with it.
 */
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const here = (path) => fileURLToPath(new URL(path, import.meta.url));

const inClone = existsSync(here('../setup.mjs')) && existsSync(here('../src/cli/main.ts'));
if (inClone) {
  const { setup } = await import('../setup.mjs');
  if (!(await setup(['--no-page']))) process.exit(1);
}
const { main } = await import('../dist/cli.mjs');
await main(process.argv.slice(2));
