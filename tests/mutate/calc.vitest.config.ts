import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

// The tests of the calculation, for the run that changes its numbers one by one.
const learning = process.env.MUTATE_LEARN !== undefined;

export default defineConfig({
  root: fileURLToPath(new URL('../..', import.meta.url)),
  cacheDir: 'node_modules/.vite/mutate-calc',
  test: {
    include: ['packages/calc/test/**/*.test.ts', 'tests/published/*.test.ts'],
    // Whether a document says what the code computes is no check of a formula.
    exclude: ['**/weak-joints.test.ts'],
    environment: 'node',
    // Learning asks file by file; a change is caught soonest where the modules are loaded once.
    isolate: learning,
    pool: learning ? 'forks' : 'threads',
    bail: learning ? 0 : 1,
    fileParallelism: false,
    testTimeout: 300_000,
    ...(learning ? { setupFiles: ['tests/mutate/reached-files.ts'] } : {}),
    sequence: {
      // As asked for: the quickest first.
      sequencer: class {
        shard = <T>(files: T[]) => files;
        sort = <T>(files: T[]) => files;
      },
    },
  },
});
