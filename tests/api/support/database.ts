import { createHash, randomBytes } from 'node:crypto';
import pg from 'pg';
import { inject } from 'vitest';
import { migrate } from '../../../apps/server/src/platform/database/migrate.ts';
import { migrationFiles } from '../../../apps/server/src/platform/database/migration-files.ts';

export interface TestDatabase {
  /** Connects as the superuser. */
  readonly url: string;
  /** Drops it, with whatever is still connected. */
  drop(): Promise<void>;
}

/** Any number that nothing else locks in the server's maintenance database. */
const templateLock = 4_310;

/**
 * A migrated database of the caller's own: a clone of a template that the first caller makes.
 * @param serverUrl a superuser's address of any database of the server; the run's own server unless given
 */
export async function createTestDatabase(serverUrl: string = inject('postgres')): Promise<TestDatabase> {
  const name = `test_${randomBytes(8).toString('hex')}`;
  await withServer(serverUrl, async (client) => {
    const template = await ensureTemplate(client, serverUrl);
    await client.query(`CREATE DATABASE ${name} TEMPLATE ${template}`);
  });
  return {
    url: databaseUrl(serverUrl, name),
    drop: () =>
      withServer(serverUrl, async (client) => {
        await client.query(`DROP DATABASE IF EXISTS ${name} WITH (FORCE)`);
      }),
  };
}

/** The template is named after the migrations' content, so changed migrations never meet an old one. */
async function ensureTemplate(client: pg.Client, serverUrl: string): Promise<string> {
  const hash = createHash('sha256');
  for (const { name, checksum } of migrationFiles()) hash.update(`${name} ${checksum}\n`);
  const template = `template_${hash.digest('hex').slice(0, 16)}`;
  const exists = async () =>
    (await client.query('SELECT FROM pg_database WHERE datname = $1', [template])).rowCount === 1;

  await client.query('SELECT pg_advisory_lock($1)', [templateLock]);
  try {
    if (!(await exists())) {
      // Renamed when complete: a migration that fails leaves no template behind.
      const draft = `${template}_draft`;
      await client.query(`DROP DATABASE IF EXISTS ${draft} WITH (FORCE)`);
      await client.query(`CREATE DATABASE ${draft}`);
      await migrate(databaseUrl(serverUrl, draft));
      await client.query(`ALTER DATABASE ${draft} RENAME TO ${template}`);
    }
  } finally {
    await client.query('SELECT pg_advisory_unlock($1)', [templateLock]);
  }
  return template;
}

async function withServer(url: string, work: (client: pg.Client) => Promise<void>): Promise<void> {
  const client = new pg.Client({ connectionString: databaseUrl(url, 'postgres') });
  await client.connect();
  try {
    await work(client);
  } finally {
    await client.end();
  }
}

export function databaseUrl(serverUrl: string, name: string): string {
  const url = new URL(serverUrl);
  url.pathname = `/${name}`;
  return url.href;
}
