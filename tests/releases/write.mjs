// `node tests/releases/write.mjs`, once before a release: writes tests/releases/backups/<version>.backup, which every
// later version must restore and migrate forward (tests/api/previous-releases.test.ts). A file that is there stays.
import { mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';

const root = fileURLToPath(new URL('../..', import.meta.url));
const out = join(root, 'node_modules', '.cache', 'releases');
await build({
  root,
  configFile: false,
  logLevel: 'warn',
  ssr: { noExternal: [/^@seatwell\//] },
  build: {
    ssr: join(root, 'tests', 'releases', 'plant-of-release.ts'),
    outDir: out,
    minify: false,
    rollupOptions: { output: { entryFileNames: 'plant-of-release.js' } },
  },
});
const { writePlant } = await import(pathToFileURL(join(out, 'plant-of-release.js')).href);
const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
const folder = join(root, 'tests', 'releases', 'backups');
mkdirSync(folder, { recursive: true });
await writePlant(join(folder, `${version}.backup`), version);
process.exit(0);
