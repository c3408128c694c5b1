import { defineConfig } from 'vitest/config';
// @ts-expect-error plain module without types, shared with the runner
import { changed } from './calc-numbers.mjs';

const root = new URL('../..', import.meta.url).pathname;
const file = process.env.MUTATE_FILE ?? '';
const start = Number(process.env.MUTATE_AT);

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
    include: ['packages/calc/test/*.test.ts', 'tests/published/*.test.ts'],
    environment: 'node',
    bail: 1,
  },
});
