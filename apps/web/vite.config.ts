import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

export default defineConfig({
  plugins: [react()],
  build: { outDir: 'dist', sourcemap: true, assetsInlineLimit: 0 },
  // The Host header stays as the browser sent it: the server holds it against Origin.
  server: { proxy: { '/api': { target: 'http://127.0.0.1:4310', changeOrigin: false } } },
});
