/**
 * Turns test files and all that they bring in from TypeScript to JavaScript once, instead of in each test's own process:
 * with a hundred and more of them that is a third of the processor time of a run.
 *
 * Each file goes on knowing where it lies among the sources, so that tests find what lies beside them; packages stay
 * where they are.
 */
import { readFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build, type Plugin } from 'esbuild';

/** @returns where a source came to lie */
export async function bundled(
  root: string,
  entries: readonly string[],
  into: string,
): Promise<(source: string) => string> {
  await build({
    absWorkingDir: root,
    entryPoints: [...entries],
    outdir: into,
    outbase: root,
    outExtension: { '.js': '.mjs' },
    bundle: true,
    splitting: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    packages: 'external',
    jsx: 'automatic',
    sourcemap: 'linked',
    logLevel: 'warning',
    plugins: [whereItLies],
  });
  return (source) => join(into, dirname(source), basename(source).replace(/\.ts$/, '.mjs'));
}

const whereItLies: Plugin = {
  name: 'where it lies',
  setup: ({ onLoad }) => {
    onLoad({ filter: /\.tsx?$/ }, ({ path }) => ({
      contents: readFileSync(path, 'utf8')
        .replaceAll('import.meta.url', JSON.stringify(pathToFileURL(path).href))
        .replaceAll('import.meta.dirname', JSON.stringify(dirname(path))),
      loader: path.endsWith('x') ? 'tsx' : 'ts',
    }));
  },
};
