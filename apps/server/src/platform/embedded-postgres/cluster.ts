import { spawnSync } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import {
  chmodSync,
  chownSync,
  closeSync,
  existsSync,
  mkdirSync,
  openSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import type { Log } from '../log.ts';
import { StartupError } from '../startup-error.ts';
import type { Binaries } from './binaries.ts';
import { clusterPathFor, serverEnvironment } from './postmaster.ts';
import type { ServerUser } from './server-user.ts';

/** Where things are in a data folder. */
export function dataFolderLayout(dataFolder: string) {
  return {
    cluster: join(dataFolder, 'postgres'),
    draft: join(dataFolder, 'postgres.new'),
    password: join(dataFolder, 'database-password'),
    log: join(dataFolder, 'postgres.log'),
  };
}

/**
 * Makes the database files on the first start and checks them on every other.
 * @returns the superuser's password
 * @throws StartupError for files of another PostgreSQL version or user, or a folder that holds other things
 */
export function prepareCluster(dataFolder: string, binaries: Binaries, user: ServerUser | undefined, log: Log): string {
  const { cluster, password } = dataFolderLayout(dataFolder);
  if (!existsSync(cluster)) createCluster(dataFolder, binaries, user, log);
  checkOwner(cluster, user);
  checkVersion(cluster, binaries.majorVersion);
  return readFileSync(password, 'utf8').trim();
}

/** initdb works on a draft that is renamed when complete: a start broken off here leaves nothing half made. */
function createCluster(dataFolder: string, binaries: Binaries, user: ServerUser | undefined, log: Log): void {
  const { cluster, draft, password } = dataFolderLayout(dataFolder);
  log.info(`Creating the database in ${dataFolder}.`);
  rmSync(draft, { recursive: true, force: true });
  mkdirSync(draft, { mode: 0o700 });
  writeFileSync(password, `${randomBytes(24).toString('base64url')}\n`, {
    mode: 0o600,
  });
  chmodSync(password, 0o600);
  if (user !== undefined) {
    chownSync(draft, user.uid, user.gid);
    chownSync(password, user.uid, user.gid);
  }
  const passwordDescriptor = openSync(password, 'r');
  const { status, error, stdout, stderr } = spawnSync(
    binaries.initdb,
    [
      `--pgdata=${clusterPathFor(user, draft)}`,
      '--username=postgres',
      `--pwfile=${user === undefined ? password : '/proc/self/fd/3'}`,
      '--auth=scram-sha-256',
      // Not from LANG, which containers leave unset: text would be SQL_ASCII and sort by the host's taste.
      '--encoding=UTF8',
      '--locale=C',
      '--locale-provider=builtin',
      '--builtin-locale=C.UTF-8',
    ],
    {
      ...user,
      cwd: draft,
      env: serverEnvironment,
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'pipe', passwordDescriptor],
    },
  );
  closeSync(passwordDescriptor);
  if (error !== undefined || status !== 0) {
    rmSync(draft, { recursive: true, force: true });
    throw new StartupError(
      `The database could not be created in ${dataFolder}: ${error?.message ?? `${stdout}\n${stderr}`.trim()}`,
    );
  }
  renameSync(draft, cluster);
}

function checkOwner(cluster: string, user: ServerUser | undefined): void {
  const owner = statSync(cluster).uid;
  const uid = user?.uid ?? process.getuid?.();
  if (uid !== undefined && owner !== uid) {
    throw new StartupError(
      `The database in ${cluster} belongs to user ${owner} and Seatwell runs as user ${uid}: start it as the user who made the data (or as root), or choose another folder with --data.`,
    );
  }
}

function checkVersion(cluster: string, majorVersion: string): void {
  const file = join(cluster, 'PG_VERSION');
  if (!existsSync(file)) {
    throw new StartupError(
      `${cluster} is there but holds no PostgreSQL database (no PG_VERSION): move it away, or choose another folder with --data.`,
    );
  }
  const found = readFileSync(file, 'utf8').trim();
  if (found !== majorVersion) {
    throw new StartupError(
      `The database in ${cluster} was written by PostgreSQL ${found}, and this Seatwell brings PostgreSQL ${majorVersion}: back it up with the Seatwell that made it and restore the backup here, or choose another folder with --data.`,
    );
  }
}
