// `npm run bench -- [names] [--json]`: measures what was asked for, one JSON object a line.
// Times are of one run on one machine: compare the ratios, which are taken in the same run.
import { mkdirSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';

const folder = fileURLToPath(new URL('.', import.meta.url));
const root = join(folder, '..', '..');
const benches = readdirSync(folder)
  .filter((file) => /\.(ts|mjs)$/.test(file) && !['run.mjs'].includes(file))
  .map((file) => ({ name: file.replace(/\.(ts|mjs)$/, ''), file: join(folder, file) }));

const asked = process.argv.slice(2).filter((word) => !word.startsWith('--'));
const unknown = asked.filter((name) => !benches.some((bench) => bench.name === name));
if (unknown.length > 0) {
  console.error(
    `There is no bench ${unknown.join(', ')}. There are: ${benches.map((bench) => bench.name).join(', ')}.`,
  );
  process.exit(1);
}

// Bundles stand inside the repository, so that what is not bundled is found in its node_modules.
const out = join(root, 'node_modules', '.cache', 'bench');
rmSync(out, { recursive: true, force: true });
mkdirSync(out, { recursive: true });

for (const { name, file } of benches) {
  if (asked.length > 0 && !asked.includes(name)) continue;
  if (file.endsWith('.mjs')) {
    await import(pathToFileURL(file).href);
    continue;
  }
  await build({
    root,
    configFile: false,
    logLevel: 'warn',
    ssr: { noExternal: [/^@seatwell\//] },
    build: {
      ssr: file,
      outDir: out,
      emptyOutDir: false,
      minify: false,
      rollupOptions: { output: { entryFileNames: `${name}.js` } },
    },
  });
  const { bench } = await import(pathToFileURL(join(out, `${name}.js`)).href);
  const began = Date.now();
  const result = await bench();
  console.log(JSON.stringify({ bench: name, ...result, took_s: Math.round((Date.now() - began) / 1000) }));
}
process.exit(0);
