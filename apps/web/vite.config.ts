import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import { serviceWorker } from './service-worker-plugin.ts';

export default defineConfig({
  plugins: [react(), serviceWorker(fileURLToPath(new URL('src/offline/service-worker.ts', import.meta.url)))],
  build: { outDir: 'dist', sourcemap: true, assetsInlineLimit: 0 },
  // The Host header stays as the browser sent it: the server holds it against Origin.
  server: { proxy: { '/api': { target: 'http://127.0.0.1:4310', changeOrigin: false } } },
});
