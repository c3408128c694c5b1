import pg from 'pg';
import { copyIn } from '../../platform/backup/copy-streams.ts';
import type { BackupHead } from '../../platform/backup/format.ts';
import { type ReadBackup, readBackup } from '../../platform/backup/read-backup.ts';
import { copyInSql, PLAIN_TEXT_FORMS } from '../../platform/backup/tables.ts';
import { applyInTransaction, bookkeeping, migrationLock } from '../../platform/database/migrate.ts';
import { type MigrationFile, migrationFiles } from '../../platform/database/migration-files.ts';
import { StartupError } from '../../platform/startup-error.ts';
import type { Verified } from './verify/record-verifier.ts';
import { verifyInTransaction } from './verify/verify-sources.ts';

export interface Restored extends ReadBackup {
  readonly verified: Verified;
  /** migrations that this version brings beyond those of the file */
  readonly migratedForward: readonly string[];
}

/**
 * Brings a backup into an empty database: the schema as the file knew it, its rows, the migrations since, and the
 * verification of all of it, in one transaction. Whatever goes wrong, the database is as it was.
 * @param client a connection of its own, as the owner of the schema
 * @throws StartupError when the file is damaged or newer than this version, the database is not empty, or what was
 *   restored does not verify
 */
export async function restoreBackup(
  client: pg.ClientBase,
  file: string,
  files: readonly MigrationFile[] = migrationFiles(),
): Promise<Restored> {
  // Before anything is begun: a damaged file is named as such, and not by the error of a database.
  const { head } = await readBackup(file);
  const [known, since] = migrationsAround(head, files);
  try {
    await client.query('BEGIN');
    await client.query(PLAIN_TEXT_FORMS);
    await client.query('SELECT pg_advisory_xact_lock($1)', [migrationLock]);
    await clearEmptySchema(client);
    await client.query(bookkeeping);
    for (const migration of known) await applyInTransaction(client, migration);
    const backup = await loadTables(client, file);
    for (const migration of since) await applyInTransaction(client, migration);
    const verified = await verifyInTransaction(client);
    refuseWhatDoesNotVerify(backup, verified);
    await client.query('COMMIT');
    await client.query('ANALYZE');
    return { ...backup, verified, migratedForward: since.map(({ name }) => name) };
  } catch (error) {
    await client.query('ROLLBACK').catch(() => undefined);
    throw error;
  }
}

/** The migrations that the file was written with, and those that came since. */
function migrationsAround(head: BackupHead, files: readonly MigrationFile[]): [MigrationFile[], MigrationFile[]] {
  for (const { name, checksum } of head.migrations) {
    const brought = files.find((file) => file.name === name);
    if (!brought)
      throw new StartupError(
        `The backup has the migration ${name}, which this version of Seatwell does not know: restore it with version ${head.seatwell} or newer.`,
      );
    if (brought.checksum !== checksum)
      throw new StartupError(
        `The migration ${name} was another one when the backup was made (SHA-256 ${checksum}, here ${brought.checksum}): bring the file back.`,
      );
  }
  const applied = new Set(head.migrations.map(({ name }) => name));
  return [files.filter(({ name }) => applied.has(name)), files.filter(({ name }) => !applied.has(name))];
}

/**
 * Makes room where there is nothing to lose: a database that Seatwell was started on and that nobody used has its
 * tables, and perhaps newer ones than the file.
 * @throws StartupError when any table holds a row, or is not Seatwell's
 */
async function clearEmptySchema(client: pg.ClientBase): Promise<void> {
  const { rows } = await client.query<{ name: string }>(
    `SELECT c.relname AS name FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace
     WHERE n.nspname = 'public' AND c.relkind IN ('r', 'p', 'v', 'm', 'f') ORDER BY c.relname`,
  );
  const names = rows.map((row) => row.name);
  if (names.length === 0) return;
  if (!names.includes('_prisma_migrations'))
    throw new StartupError(
      `This database holds tables that are not Seatwell's (${names.slice(0, 3).join(', ')} …): restore into an empty database, for example one made by CREATE DATABASE.`,
    );
  for (const name of names.filter((each) => each !== '_prisma_migrations')) {
    const { rowCount } = await client.query(`SELECT FROM public.${pg.escapeIdentifier(name)} LIMIT 1`);
    if (rowCount)
      throw new StartupError(
        `This database is in use: its table ${name} holds rows, and a restore replaces nothing. Restore into an empty one: an empty folder with --data, or a new database in DATABASE_URL.`,
      );
  }
  for (const name of names) await client.query(`DROP TABLE public.${pg.escapeIdentifier(name)} CASCADE`);
  const functions = await client.query<{ signature: string }>(
    `SELECT p.oid::regprocedure::text AS signature FROM pg_proc p JOIN pg_namespace n ON n.oid = p.pronamespace
     WHERE n.nspname = 'public' AND pg_get_userbyid(p.proowner) = current_user
       AND NOT EXISTS (SELECT FROM pg_depend d WHERE d.objid = p.oid AND d.deptype = 'e')`,
  );
  for (const { signature } of functions.rows) await client.query(`DROP FUNCTION ${signature}`);
}

async function loadTables(client: pg.ClientBase, file: string): Promise<ReadBackup> {
  const loaded = new Map<string, number>();
  const backup = await readBackup(file, async ({ table, columns, blocks }) => {
    loaded.set(table, await copyIn(client, copyInSql({ table, columns }), blocks));
  });
  for (const { table, rows } of backup.tables)
    if (loaded.get(table) !== rows)
      throw new StartupError(
        `Table ${table} took ${loaded.get(table)} rows of ${rows}: nothing was restored. Try again on another server.`,
      );
  return backup;
}

function refuseWhatDoesNotVerify({ tables, heads }: ReadBackup, verified: Verified): void {
  const inFile = (name: string) => tables.find(({ table }) => table === name)?.rows ?? 0;
  const wrong = [...verified.findings];
  if (verified.events !== inFile('event') || verified.rows !== inFile('event_row'))
    wrong.push(`The file has ${inFile('event')} events, and ${verified.events} were read back.`);
  if (verified.streams !== heads.length)
    wrong.push(`The file has ${heads.length} streams, and ${verified.streams} were read back.`);
  if (wrong.length === 0) return;
  throw new StartupError(
    `The backup does not verify, and nothing was restored. ${wrong.length} or more things are wrong, the first: ${wrong[0]} Use an earlier backup; "verify" lists what is wrong with a file.`,
  );
}
