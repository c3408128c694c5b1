import { spawnSync } from 'node:child_process';
import { homedir, tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Log } from '../log.ts';
import { StartupError } from '../startup-error.ts';
import { makeLibraryLinks } from './library-links.ts';
import { binaryPackage } from './package-folder.ts';
import type { ServerUser } from './server-user.ts';
import { stageBinaries } from './staging.ts';

export interface Binaries {
  readonly initdb: string;
  readonly postgres: string;
  /** PostgreSQL's major version, as PG_VERSION of a data folder has it. */
  readonly majorVersion: string;
}

/**
 * Gives binaries that the server's user can run: those of the npm package where they stand, or, where a
 * private folder, missing library links or a read-only tree is in the way, a copy made once per version.
 * @param stagingFolder where copies go; the machine's cache folders unless given
 * @throws StartupError when the binaries run nowhere, with what the last attempt said
 */
export function usableBinaries(user: ServerUser | undefined, log: Log, stagingFolder?: string): Binaries {
  const source = binaryPackage();
  const majorVersion = source.version.split('.')[0] ?? source.version;
  const binariesIn = (folder: string): Binaries => ({
    initdb: join(folder, 'bin', 'initdb'),
    postgres: join(folder, 'bin', 'postgres'),
    majorVersion,
  });

  makeLibraryLinks(source.folder);
  let complaint = whyUnusable(source.folder, user);
  if (complaint === undefined) return binariesIn(source.folder);
  for (const parent of stagingFolder === undefined ? cacheFolders(user) : [stagingFolder]) {
    try {
      const folder = stageBinaries(source, parent, log);
      complaint = whyUnusable(folder, user);
      if (complaint === undefined) return binariesIn(folder);
    } catch (error) {
      complaint = error instanceof Error ? error.message : String(error);
    }
  }
  throw new StartupError(
    `The PostgreSQL binaries of ${source.folder} do not run here: ${complaint} They need Linux with glibc (not musl) and one cache or temporary folder without noexec; otherwise set DATABASE_URL to a PostgreSQL 15 or newer.`,
  );
}

function whyUnusable(folder: string, user: ServerUser | undefined): string | undefined {
  for (const name of ['postgres', 'initdb']) {
    const options = { ...user, cwd: '/', env: {}, encoding: 'utf8' } as const;
    const { status, error, stderr } = spawnSync(join(folder, 'bin', name), ['--version'], options);
    if (error !== undefined) return `${error.message}.`;
    if (status !== 0) return stderr.trim() || `${name} --version ended with ${status}.`;
  }
  return undefined;
}

/** The system's own cache first: a temporary folder may be mounted noexec or be swept. */
function cacheFolders(user: ServerUser | undefined): string[] {
  if (user !== undefined) return ['/var/cache/seatwell', '/var/lib/seatwell', join(tmpdir(), 'seatwell-root')];
  const cache = process.env.XDG_CACHE_HOME ?? join(homedir(), '.cache');
  return [join(cache, 'seatwell'), join(tmpdir(), `seatwell-${process.getuid?.()}`)];
}
