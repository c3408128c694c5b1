import { existsSync } from 'node:fs';

/**
 * Where the built worker lies: beside the bundle, or one folder up where this code was put into a chunk. Run from
 * source (tests, development) there is no bundle: the worker is built for this run from the source as it is.
 */
export async function locateWorker(): Promise<URL> {
  for (const place of ['./import-worker.js', '../import-worker.js']) {
    const url = new URL(place, import.meta.url);
    if (existsSync(url)) return url;
  }
  const fromSource = new URL('./worker-from-source.ts', import.meta.url);
  if (!existsSync(fromSource)) {
    throw new Error(`import-worker.js is missing beside ${import.meta.url}. Build the server again: npm run build.`);
  }
  // The name stays out of the bundler's sight: the builder of the worker is no part of the server.
  const module = (await import(/* @vite-ignore */ fromSource.href)) as typeof import('./worker-from-source.ts');
  return module.buildWorker();
}
