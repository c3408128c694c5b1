import { randomUUID } from 'node:crypto';
import { rmSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';

let built: Promise<URL> | undefined;

/** Builds the worker from the source once per process, as the server's build does, and removes it at the end. */
export function buildWorker(): Promise<URL> {
  built ??= buildNow();
  return built;
}

async function buildNow(): Promise<URL> {
  // Below node_modules, so that the packages which stay outside the bundle are found.
  const folder = fileURLToPath(
    new URL(`../../../../../../node_modules/.cache/import-worker-${randomUUID()}`, import.meta.url),
  );
  process.once('exit', () => rmSync(folder, { recursive: true, force: true }));
  await build({
    configFile: false,
    logLevel: 'error',
    ssr: { noExternal: [/^@seatwell\//] },
    build: {
      ssr: fileURLToPath(new URL('./import-worker.ts', import.meta.url)),
      target: 'node20',
      outDir: folder,
      emptyOutDir: false,
      rollupOptions: { output: { entryFileNames: 'import-worker.mjs' } },
    },
  });
  return pathToFileURL(`${folder}/import-worker.mjs`);
}
