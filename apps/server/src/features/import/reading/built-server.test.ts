import { execFile } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { build } from 'vite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const server = fileURLToPath(new URL('../../../..', import.meta.url));
// Below node_modules, so that the packages which stay outside the bundle are found.
const folder = `${server}../../node_modules/.cache/built-reading-${randomUUID()}`;

describe('reading in the built server', () => {
  beforeAll(async () => {
    // The server's own build, with the reading of files in place of its start.
    await build({
      root: server,
      configFile: `${server}/vite.config.ts`,
      logLevel: 'error',
      build: { outDir: folder, rollupOptions: { input: { main: 'src/features/import/reading/read-file.ts' } } },
    });
  }, 60_000);
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it('finds its worker beside the bundle, in plain Node', async () => {
    const script = `
      import { listSheets, readSheet } from ${JSON.stringify(`${folder}/main.js`)};
      const file = { name: 'register.csv', bytes: Buffer.from('Tag;Size\\nJ-1;1 1/2"\\n') };
      console.log(JSON.stringify([await listSheets(file), await readSheet(file, 'register.csv')]));`;
    const { stdout } = await promisify(execFile)(process.execPath, ['--input-type=module', '-e', script]);
    const text = { encoding: 'utf-8', delimiter: ';' };
    expect(JSON.parse(stdout)).toEqual([
      { ok: true, format: 'csv', sheets: [{ name: 'register.csv', hidden: false }], text },
      {
        ok: true,
        sheet: 'register.csv',
        rows: [
          { rowNumber: 1, cells: ['Tag', 'Size'] },
          { rowNumber: 2, cells: ['J-1', '1 1/2"'] },
        ],
        width: 2,
        notes: [],
        text,
      },
    ]);
  }, 30_000);
});
