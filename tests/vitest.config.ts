import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('..', import.meta.url));

// One project per kind of test; `npm test` runs them in this order (tests/run.mjs).
const kind = (name: string, include: string[], extra: Record<string, unknown> = {}) => ({
  root,
  test: { name, include, environment: 'node' as const, ...extra },
});

// Vitest leaves one core free, which halves the speed of a machine with two; beyond four, databases and browsers
// get into each other's way.
const workers = Math.max(2, Math.min(4, availableParallelism()));

export default defineConfig({
  root,
  test: {
    maxWorkers: workers,
    projects: [
      // Some of them bundle or read large files: on a busy machine that takes its time.
      kind('unit', ['packages/*/test/**/*.test.ts', 'apps/*/src/**/*.test.{ts,tsx}'], { testTimeout: 60_000 }),
      kind('published', ['tests/published/**/*.test.ts']),
      kind('repo', ['tests/repo/**/*.test.ts'], { testTimeout: 120_000, hookTimeout: 120_000 }),
      kind('api', ['tests/api/**/*.test.ts'], {
        testTimeout: 60_000,
        hookTimeout: 120_000,
        globalSetup: ['tests/api/support/database-server.ts'],
      }),
      kind('faults', ['tests/faults/**/*.test.ts'], {
        testTimeout: 180_000,
        hookTimeout: 180_000,
        fileParallelism: false,
      }),
      kind('browser', ['tests/browser/**/*.test.ts'], {
        testTimeout: 180_000,
        hookTimeout: 300_000,
        globalSetup: ['tests/api/support/database-server.ts', 'tests/browser/support/demo-server.ts'],
      }),
    ],
  },
});
