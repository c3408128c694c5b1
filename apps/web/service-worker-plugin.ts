import { createHash } from 'node:crypto';
import { build, type Plugin } from 'vite';

const NAME = 'service-worker.js';

/**
 * Builds the service worker as one file of its own (it imports nothing: not every browser takes modules there), with
 * the names of everything that the app's shell consists of. Source maps stay out, and what only a desk
 * needs; the fonts of every language are in, since a phone may be handed to somebody who reads another.
 * @param entry file of the service worker
 */
export function serviceWorker(entry: string): Plugin {
  return {
    name: 'seatwell-service-worker',
    apply: 'build',
    generateBundle: {
      // After Vite has written index.html and the styles.
      order: 'post',
      async handler(_options, bundle) {
        const files = Object.keys(bundle)
          .filter((name) => /\.(js|css|woff2|ttf)$/.test(name) && !name.includes('simulation'))
          .map((name) => `/${name}`)
          .sort();
        const name = createHash('sha256').update(files.join()).digest('hex').slice(0, 16);
        const code = await bundled(entry);
        const source = code.replace('__SHELL_FILES__', JSON.stringify(files)).replace('__SHELL_NAME__', name);
        this.emitFile({ type: 'asset', fileName: NAME, source });
      },
    },
  };
}

async function bundled(entry: string): Promise<string> {
  const built = await build({
    configFile: false,
    logLevel: 'error',
    build: { write: false, lib: { entry, formats: ['iife'], name: 'worker', fileName: () => NAME } },
  });
  const [first] = Array.isArray(built) ? built : [built];
  const chunk = first && 'output' in first ? first.output.find((each) => each.type === 'chunk') : undefined;
  if (chunk?.type !== 'chunk') throw new Error(`${NAME} was not built from ${entry}.`);
  return chunk.code;
}
