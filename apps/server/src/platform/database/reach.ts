import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { Settings } from '../config.ts';
import { runningEmbeddedPostgres, startEmbeddedPostgres } from '../embedded-postgres/index.ts';
import type { Log } from '../log.ts';
import { StartupError } from '../startup-error.ts';
import { checkServer, databaseName, ownedDatabase, ownerRole } from './open.ts';

export interface ReachedDatabase {
  /** connects as the owner of the schema */
  readonly url: string;
  /** whether a Seatwell of this machine runs on it, as far as can be told */
  readonly inService: boolean;
  close(): Promise<void>;
}

/**
 * The database for a command beside the server: that of DATABASE_URL; or the embedded one, through the socket of the
 * server that runs on the data folder, or, where none does, started here and stopped by `close`.
 * @param make whether an embedded database may be made where there is none
 * @throws StartupError when there is none, or it cannot be reached
 */
export async function reachDatabase(
  settings: Pick<Settings, 'databaseUrl' | 'dataFolder' | 'cacheFolder'>,
  log: Log,
  make: boolean,
): Promise<ReachedDatabase> {
  const { databaseUrl, dataFolder, cacheFolder } = settings;
  if (databaseUrl !== undefined) {
    await checkServer(databaseUrl);
    return { url: databaseUrl, inService: false, close: async () => {} };
  }
  const running = runningEmbeddedPostgres(dataFolder);
  if (running) {
    const { host, password, release } = running;
    const options = encodeURIComponent(`-c role=${ownerRole}`);
    return {
      url: `postgresql://postgres:${password}@/${databaseName}?host=${encodeURIComponent(host)}&options=${options}`,
      inService: true,
      close: async () => release(),
    };
  }
  if (!make && !existsSync(join(dataFolder, 'postgres')))
    throw new StartupError(
      `There is no database in ${dataFolder}: name its folder with --data, or a PostgreSQL in DATABASE_URL.`,
    );
  const server = await startEmbeddedPostgres({ dataFolder, stagingFolder: cacheFolder, log });
  return { url: await ownedDatabase(server.superuserUrl), inService: false, close: server.stop };
}
