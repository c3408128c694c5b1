import { randomUUID } from 'node:crypto';
import pg from 'pg';
import { StartupError } from '../startup-error.ts';
import { type MigrationFile, migrationFiles } from './migration-files.ts';

/** The advisory lock that Prisma's own tool takes: two starts, or a start and the tool, wait for each other. */
export const migrationLock = 72707369;

/** As Prisma's tool makes it, so that `prisma migrate deploy` agrees with what was applied here. */
export const bookkeeping = `
  CREATE TABLE IF NOT EXISTS public._prisma_migrations (
    id                  VARCHAR(36) PRIMARY KEY NOT NULL,
    checksum            VARCHAR(64) NOT NULL,
    finished_at         TIMESTAMPTZ,
    migration_name      VARCHAR(255) NOT NULL,
    logs                TEXT,
    rolled_back_at      TIMESTAMPTZ,
    started_at          TIMESTAMPTZ NOT NULL DEFAULT now(),
    applied_steps_count INTEGER NOT NULL DEFAULT 0
  )`;

/**
 * Applies the migrations that the database does not have yet, each in a transaction of its own together
 * with its entry in the bookkeeping.
 * @param ownerUrl connects as the owner of the schema
 * @returns the names of those applied now
 * @throws StartupError when the database holds a migration that is changed, unknown or unfinished here
 */
export async function migrate(ownerUrl: string, files: readonly MigrationFile[] = migrationFiles()): Promise<string[]> {
  const client = new pg.Client({ connectionString: ownerUrl });
  await client.connect();
  try {
    await client.query('SELECT pg_advisory_lock($1)', [migrationLock]);
    await client.query(bookkeeping);
    const applied = await appliedMigrations(client);
    refuseDisagreement(applied, files);
    const missing = files.filter(({ name }) => !applied.has(name));
    for (const file of missing) await apply(client, file);
    return missing.map(({ name }) => name);
  } finally {
    // Ending the session frees the lock.
    await client.end();
  }
}

interface AppliedMigration {
  readonly checksum: string;
  readonly finished: boolean;
}

async function appliedMigrations(client: pg.Client): Promise<Map<string, AppliedMigration>> {
  const { rows } = await client.query<{ migration_name: string } & AppliedMigration>(
    `SELECT migration_name, checksum, finished_at IS NOT NULL AS finished
       FROM public._prisma_migrations WHERE rolled_back_at IS NULL`,
  );
  return new Map(rows.map((row) => [row.migration_name, row]));
}

function refuseDisagreement(applied: ReadonlyMap<string, AppliedMigration>, files: readonly MigrationFile[]): void {
  const brought = new Map(files.map((file) => [file.name, file]));
  for (const [name, { checksum, finished }] of applied) {
    const file = brought.get(name);
    if (file === undefined) {
      throw new StartupError(
        `The database has the migration ${name}, which this version of Seatwell does not know: a newer version used it. Start that version, or restore a backup made with this one.`,
      );
    }
    if (!finished) {
      throw new StartupError(
        `The migration ${name} was begun by another tool and did not finish: settle it with "prisma migrate resolve", then start again.`,
      );
    }
    if (file.checksum !== checksum) {
      throw new StartupError(
        `The file of the migration ${name} has changed since it was applied (SHA-256 ${checksum} then, ${file.checksum} now): bring the file back; a change belongs in a new migration.`,
      );
    }
  }
}

/** One migration with its entry in the bookkeeping, in the transaction that the caller has open. */
export async function applyInTransaction(client: pg.ClientBase, { name, sql, checksum }: MigrationFile): Promise<void> {
  await client.query(sql);
  await client.query(
    `INSERT INTO public._prisma_migrations (id, checksum, migration_name, finished_at, applied_steps_count)
     VALUES ($1, $2, $3, clock_timestamp(), 1)`,
    [randomUUID(), checksum, name],
  );
}

async function apply(client: pg.Client, file: MigrationFile): Promise<void> {
  const { name } = file;
  try {
    await client.query('BEGIN');
    await applyInTransaction(client, file);
    await client.query('COMMIT');
  } catch (error) {
    await client.query('ROLLBACK');
    const reason = error instanceof Error ? error.message : String(error);
    throw new StartupError(`The migration ${name} failed and was undone: ${reason}`, { cause: error });
  }
}
