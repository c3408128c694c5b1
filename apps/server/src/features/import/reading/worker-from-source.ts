import { createHash, randomUUID } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, renameSync, rmSync, statSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';

const here = fileURLToPath(new URL('.', import.meta.url));
const workspace = fileURLToPath(new URL('../../../../../..', import.meta.url));
// Below node_modules, so that the packages which stay outside the bundle are found.
const cache = `${workspace}/node_modules/.cache`;
const sources = [here, `${workspace}/packages/workflow/src/register-reading`];

let built: Promise<URL> | undefined;

/** Builds the worker from the source as the server's build does; kept until the source changes. */
export function buildWorker(): Promise<URL> {
  built ??= buildNow();
  return built;
}

function sourceHash(): string {
  const hash = createHash('sha256');
  for (const folder of sources) {
    for (const name of readdirSync(folder).sort()) {
      if (name.endsWith('.ts') && !name.endsWith('.test.ts'))
        hash.update(name).update(readFileSync(`${folder}/${name}`));
    }
  }
  return hash.digest('hex').slice(0, 16);
}

async function buildNow(): Promise<URL> {
  const folder = `${cache}/import-worker-${sourceHash()}`;
  const worker = pathToFileURL(`${folder}/import-worker.mjs`);
  if (existsSync(worker)) return worker;
  removeOld();
  const draft = `${cache}/import-worker-draft-${randomUUID()}`;
  await build({
    configFile: false,
    logLevel: 'error',
    ssr: { noExternal: [/^@seatwell\//] },
    build: {
      ssr: `${here}import-worker.ts`,
      target: 'node20',
      outDir: draft,
      emptyOutDir: false,
      rollupOptions: { output: { entryFileNames: 'import-worker.mjs' } },
    },
  });
  try {
    renameSync(draft, folder);
  } catch {
    // Another process was first with the same source: its worker is as good.
    rmSync(draft, { recursive: true, force: true });
  }
  return worker;
}

/** Workers of earlier sources; young ones may still be in use by another process. */
function removeOld(): void {
  if (!existsSync(cache)) return;
  for (const name of readdirSync(cache)) {
    const path = `${cache}/${name}`;
    if (name.startsWith('import-worker-') && Date.now() - statSync(path).mtimeMs > 3_600_000)
      rmSync(path, { recursive: true, force: true });
  }
}
