import { readFileSync } from 'node:fs';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

const { version } = JSON.parse(readFileSync(new URL('package.json', import.meta.url), 'utf8')) as {
  version: string;
};

/**
 * Of our own files only these do something by being brought in. Of any other, what nobody uses is left out: the page
 * works out some answers itself, and the forms of car file and answers beside them are not for it.
 */
const STARTS = /\/src\/web\/(main\.tsx|engine\/worker\.ts|gas\/(finder|in-car-worker|strand-thread)\.ts)$/;
const treeshake = {
  moduleSideEffects: [
    { test: STARTS, sideEffects: true },
    { test: /\/src\/.*\.tsx?$/, sideEffects: false },
    { test: /\/node_modules\/(yaml|csv-parse)\//, sideEffects: false },
  ],
};

// three is fetched when a car is opened, not before the floor is drawn; uplot when curves are asked for
export default defineConfig({
  root: 'src/web',
  base: './',
  plugins: [react()],
  define: { FLATPATCH_VERSION: JSON.stringify(version) },
  build: {
    outDir: '../../dist/web',
    emptyOutDir: true,
    target: 'es2022',
    chunkSizeWarningLimit: 900,
    rolldownOptions: { treeshake },
  },
  worker: { format: 'es', rolldownOptions: { treeshake } },
});
