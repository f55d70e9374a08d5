import { readFileSync } from 'node:fs';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

const { version } = JSON.parse(readFileSync(new URL('package.json', import.meta.url), 'utf8')) as {
  version: string;
};

// three is fetched when a car is opened, not before the floor is drawn; uplot when curves are asked for
export default defineConfig({
  root: 'src/web',
  base: './',
  plugins: [react()],
  define: { FLATPATCH_VERSION: JSON.stringify(version) },
  build: { outDir: '../../dist/web', emptyOutDir: true, target: 'es2022', chunkSizeWarningLimit: 900 },
  worker: { format: 'es' },
});
