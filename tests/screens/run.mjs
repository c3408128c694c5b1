// `npm run screens`: pictures of every screen at the desk and on a phone, in .screens/. The list goes to standard output.
// `npm run screens -- register joint` takes those only; `--theme dark` another theme: bright
// for sunlight, or forced for the colours of a system that forces its own.
import { mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';

const root = fileURLToPath(new URL('../..', import.meta.url));
// The bundle stands inside the repository, so that what is not bundled is found in its node_modules.
const out = join(root, 'node_modules', '.cache', 'screens');
rmSync(out, { recursive: true, force: true });
mkdirSync(out, { recursive: true });
await build({
  root,
  configFile: false,
  logLevel: 'warn',
  build: {
    ssr: join(root, 'tests', 'screens', 'take-screens.ts'),
    outDir: out,
    minify: false,
    rollupOptions: { output: { entryFileNames: 'take-screens.js' } },
  },
});

const words = process.argv.slice(2);
const at = words.indexOf('--theme');
const theme = at === -1 ? 'light' : words.splice(at, 2)[1];
const { takeScreens } = await import(pathToFileURL(join(out, 'take-screens.js')).href);
await takeScreens({ folder: join(root, '.screens'), root, theme, names: words });
process.exit(0);
