import { defineConfig } from 'vite';

// The server is bundled so that Node 20, which runs no .ts files, starts it; packages of ours are
// bundled in, everything from npm stays outside.
export default defineConfig({
  ssr: { noExternal: [/^@seatwell\//] },
  build: {
    ssr: true,
    target: 'node20',
    outDir: 'dist',
    sourcemap: true,
    emptyOutDir: true,
    rollupOptions: {
      input: {
        main: 'src/main.ts',
        backup: 'src/commands/backup.ts',
        restore: 'src/commands/restore.ts',
        verify: 'src/commands/verify.ts',
        nightly: 'src/commands/nightly.ts',
        'record-key': 'src/commands/record-key.ts',
        'import-worker': 'src/features/import/reading/import-worker.ts',
        'typeset-worker': 'src/features/paper/typesetting/typeset-worker.mjs',
      },
      output: { entryFileNames: '[name].js', chunkFileNames: 'chunks/[name]-[hash].js' },
    },
  },
});
