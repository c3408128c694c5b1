import type pg from 'pg';
import { copyOut } from '../../../platform/backup/copy-streams.ts';
import { rowsOfBlock } from '../../../platform/backup/copy-text.ts';
import { type ReadBackup, readBackup } from '../../../platform/backup/read-backup.ts';
import { backedUpTables, copyOutSql, PLAIN_TEXT_FORMS } from '../../../platform/backup/tables.ts';
import { RecordVerifier, type Verified } from './record-verifier.ts';

/** Joints folded anew unless all are asked for. */
const JOINTS_DRAWN = 200;

const shareOf = (joints: number, all: boolean): number => (all || joints === 0 ? 1 : JOINTS_DRAWN / joints);

/**
 * Verifies the database as one transaction sees it.
 * @param client as the owner; where a transaction is open already, it is verified as that one sees it
 */
export async function verifyInTransaction(client: pg.ClientBase, all = false): Promise<Verified> {
  await client.query(PLAIN_TEXT_FORMS);
  const { rows } = await client.query<{ joints: string }>('SELECT count(*)::text AS joints FROM joint');
  const seen = await client.query<{ name: string }>(
    'SELECT migration_name AS name FROM public._prisma_migrations WHERE rolled_back_at IS NULL',
  );
  const migrations = seen.rows.map(({ name }) => name);
  const verifier = new RecordVerifier(shareOf(Number(rows[0]?.joints), all), migrations);
  for (const table of await backedUpTables(client)) {
    if (!verifier.tables.includes(table.table)) continue;
    for await (const row of copyOut(client, copyOutSql(table))) verifier.row(table.table, table.columns, row);
  }
  return verifier.finish();
}

/** Verifies the database while others go on working. */
export async function verifyDatabase(client: pg.ClientBase, all = false): Promise<Verified> {
  await client.query('BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY');
  try {
    return await verifyInTransaction(client, all);
  } finally {
    await client.query('ROLLBACK').catch(() => undefined);
  }
}

/**
 * Verifies a backup without a database: every count and hash of the file, and the record in it.
 * @throws StartupError when the file is damaged or cut short
 */
export async function verifyFile(file: string, all = false): Promise<Verified & { readonly backup: ReadBackup }> {
  let verifier: RecordVerifier | undefined;
  const backup = await readBackup(file, async ({ table, columns, blocks }, { joints, migrations }) => {
    verifier ??= new RecordVerifier(
      shareOf(joints, all),
      migrations.map(({ name }) => name),
    );
    if (!verifier.tables.includes(table)) return;
    for await (const block of blocks) for (const row of rowsOfBlock(block)) verifier.row(table, columns, row);
  });
  return { ...(verifier ?? new RecordVerifier(1, [])).finish(), backup };
}
