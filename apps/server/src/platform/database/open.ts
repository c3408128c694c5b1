import { randomBytes } from 'node:crypto';
import pg from 'pg';
import { parse } from 'pg-connection-string';
import type { Settings } from '../config.ts';
import { startEmbeddedPostgres } from '../embedded-postgres/index.ts';
import type { Lifecycle } from '../lifecycle.ts';
import type { Log } from '../log.ts';
import { StartupError } from '../startup-error.ts';

const leastVersion = 15;

/**
 * Gives the address of the database: the one of DATABASE_URL, or the embedded server, started here and
 * stopped last.
 * @returns connects as the owner of the schema
 * @throws StartupError when it cannot be reached, is too old, or the embedded one does not start
 */
export async function openDatabase(settings: Settings, lifecycle: Lifecycle, log: Log): Promise<string> {
  if (settings.databaseUrl !== undefined) {
    await checkServer(settings.databaseUrl);
    return settings.databaseUrl;
  }
  const server = await startEmbeddedPostgres({
    dataFolder: settings.dataFolder,
    stagingFolder: settings.cacheFolder,
    log,
  });
  lifecycle.onStop('PostgreSQL', server.stop);
  void server.failed.then((reason) => lifecycle.fail(`${reason} Start Seatwell again: it recovers.`));
  return ownedDatabase(server.superuserUrl);
}

export const ownerRole = 'seatwell_owner';
export const databaseName = 'seatwell';

/**
 * On the embedded server, a database with an owner of its own: nothing of ours runs as the superuser.
 * The owner's password is new at every start and never leaves the process.
 */
export async function ownedDatabase(superuserUrl: string): Promise<string> {
  const client = new pg.Client({ connectionString: superuserUrl });
  await client.connect();
  const password = randomBytes(24).toString('hex');
  try {
    const role = await client.query('SELECT FROM pg_roles WHERE rolname = $1', [ownerRole]);
    const verb = role.rowCount === 0 ? 'CREATE' : 'ALTER';
    await client.query(`${verb} ROLE ${ownerRole} LOGIN NOSUPERUSER CREATEROLE CREATEDB PASSWORD '${password}'`);
    const database = await client.query('SELECT FROM pg_database WHERE datname = $1', [databaseName]);
    if (database.rowCount === 0) await client.query(`CREATE DATABASE ${databaseName} OWNER ${ownerRole}`);
  } finally {
    await client.end();
  }
  const { host, port } = parse(superuserUrl);
  return `postgresql://${ownerRole}:${password}@/${databaseName}?host=${encodeURIComponent(host ?? '')}&port=${port ?? 5432}`;
}

/** @throws StartupError when it cannot be reached or is too old */
export async function checkServer(url: string): Promise<void> {
  const client = new pg.Client({
    connectionString: url,
    connectionTimeoutMillis: 10_000,
  });
  let version: number;
  try {
    await client.connect();
    const { rows } = await client.query<{ server_version_num: string }>('SHOW server_version_num');
    version = Math.floor(Number(rows[0]?.server_version_num) / 10_000);
  } catch (error) {
    const reason = (error as Error).message || (error as NodeJS.ErrnoException).code;
    throw new StartupError(`The database of DATABASE_URL cannot be used: ${reason}`);
  } finally {
    await client.end().catch(() => undefined);
  }
  if (version < leastVersion) {
    throw new StartupError(
      `The database of DATABASE_URL is PostgreSQL ${version}, and Seatwell needs ${leastVersion} or newer.`,
    );
  }
}
