import { defineConfig } from 'vitest/config';
import type { TestSpecification } from 'vitest/node';
// @ts-expect-error plain module without types, shared with the runner
import { changed } from './calc-numbers.mjs';

const root = new URL('../..', import.meta.url).pathname;
const file = process.env.MUTATE_FILE ?? '';
const start = Number(process.env.MUTATE_AT);
// The tests that reach the file, the quickest first; all of them where nothing is known yet.
const chosen: readonly string[] = JSON.parse(process.env.MUTATE_TESTS ?? '[]');
const learning = process.env.MUTATE_LEARN !== undefined;

const placeOf = ({ moduleId }: TestSpecification) => chosen.findIndex((test) => moduleId.endsWith(test));

export default defineConfig({
  root,
  cacheDir: 'node_modules/.vite/mutate-calc',
  plugins: [
    {
      name: 'change-one-number',
      enforce: 'pre',
      transform(code, id) {
        if (file === '' || !id.endsWith(file)) return null;
        return { code: changed(code, start) as string, map: null };
      },
    },
  ],
  test: {
    include: chosen.length > 0 ? [...chosen] : ['packages/calc/test/**/*.test.ts', 'tests/published/*.test.ts'],
    environment: 'node',
    bail: learning ? 0 : 1,
    // Learning asks file by file; a mutation is caught soonest where the modules are loaded once.
    isolate: learning,
    pool: learning ? 'forks' : 'threads',
    fileParallelism: false,
    testTimeout: 60_000,
    ...(learning ? { setupFiles: ['tests/mutate/reached-files.ts'] } : {}),
    sequence: {
      sequencer: class {
        shard = (files: TestSpecification[]) => files;
        sort = (files: TestSpecification[]) => files.toSorted((a, b) => placeOf(a) - placeOf(b));
      },
    },
  },
});
