import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

// three is fetched when a car is opened, not before the floor is drawn; uplot when curves are asked for
export default defineConfig({
  root: 'src/web',
  base: './',
  plugins: [react()],
  build: { outDir: '../../dist/web', emptyOutDir: true, target: 'es2022', chunkSizeWarningLimit: 900 },
  worker: { format: 'es' },
});
