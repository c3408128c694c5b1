import { createHash, type Hash } from 'node:crypto';
import { createWriteStream, existsSync, linkSync, renameSync, rmSync } from 'node:fs';
import { open } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { createGzip } from 'node:zlib';
import type pg from 'pg';
import { uuidv7 } from 'uuidv7';
import { StartupError } from '../startup-error.ts';
import { copyOut } from './copy-streams.ts';
import {
  type BackupHead,
  type BackupTotal,
  FORMAT,
  FORMAT_VERSION,
  type StreamHeadTotal,
  type TableTotal,
  WHAT_IT_HOLDS,
} from './format.ts';
import { type BackedUpTable, backedUpTables, copyOutSql, PLAIN_TEXT_FORMS } from './tables.ts';

const BLOCK_BYTES = 256 * 1024;

export interface WrittenBackup extends BackupTotal {
  readonly head: BackupHead;
}

/**
 * Writes the database as one transaction sees it to a new file, readable by its owner only. The file has its name
 * once it is complete and on disk.
 * @param client a connection of its own, as the owner of the schema; others may go on working meanwhile
 * @throws StartupError when the file is there already or the database is not Seatwell's
 */
export async function writeBackup(client: pg.ClientBase, file: string, seatwell: string): Promise<WrittenBackup> {
  const draft = join(dirname(file), `.${basename(file)}-${uuidv7()}`);
  const removeDraft = () => rmSync(draft, { force: true });
  // Ctrl-C ends the process at once.
  process.once('exit', removeDraft);
  try {
    await client.query('BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY');
    await client.query(PLAIN_TEXT_FORMS);
    const head = await headOf(client, seatwell);
    const tables = await backedUpTables(client);
    const heads = await streamHeads(client);
    const totals: TableTotal[] = [];
    const text = Readable.from(backupText(client, head, tables, heads, totals), { objectMode: false });
    await pipeline(text, createGzip({ level: 6 }), createWriteStream(draft, { mode: 0o600, flags: 'wx' }));
    await client.query('COMMIT');
    await onDisk(draft);
    putInPlace(draft, file);
    // Some file systems know no such thing for a folder; the file itself is on disk.
    await onDisk(dirname(file)).catch(() => undefined);
    return { head, tables: totals, heads };
  } catch (error) {
    await client.query('ROLLBACK').catch(() => undefined);
    throw error;
  } finally {
    removeDraft();
    process.off('exit', removeDraft);
  }
}

async function* backupText(
  client: pg.ClientBase,
  head: BackupHead,
  tables: readonly BackedUpTable[],
  heads: readonly StreamHeadTotal[],
  totals: TableTotal[],
): AsyncGenerator<Buffer, void> {
  const whole = createHash('sha256');
  const said = (bytes: Buffer): Buffer => {
    whole.update(bytes);
    return bytes;
  };
  const line = (value: object): Buffer => said(Buffer.from(`${JSON.stringify(value)}\n`));
  yield line(head);
  for (const table of tables) {
    yield line({ table: table.table, columns: table.columns });
    const rows = { count: 0, hash: createHash('sha256') };
    for await (const block of blocks(copyOut(client, copyOutSql(table)), rows)) yield said(block);
    const total = { table: table.table, rows: rows.count, sha256: rows.hash.digest('hex') };
    totals.push(total);
    yield line({ end: total.table, rows: total.rows, sha256: total.sha256 });
  }
  const total: BackupTotal = { tables: totals, heads };
  yield Buffer.from(`${JSON.stringify({ total, sha256: whole.digest('hex') })}\n`);
}

/** Whole rows in counted blocks, so that a reader skips a table without looking at each row. */
async function* blocks(
  rows: AsyncIterable<Buffer>,
  total: { count: number; readonly hash: Hash },
): AsyncGenerator<Buffer, void> {
  let held: Buffer[] = [];
  let bytes = 0;
  const block = () => Buffer.concat([Buffer.from(`#${bytes}\n`), ...held]);
  for await (const row of rows) {
    total.count += 1;
    total.hash.update(row);
    held.push(row);
    bytes += row.length;
    if (bytes < BLOCK_BYTES) continue;
    yield block();
    held = [];
    bytes = 0;
  }
  if (bytes > 0) yield block();
}

async function headOf(client: pg.ClientBase, seatwell: string): Promise<BackupHead> {
  const there = await client.query("SELECT to_regclass('public._prisma_migrations') IS NOT NULL AS there");
  if (!there.rows[0]?.there)
    throw new StartupError('This database holds no Seatwell: start Seatwell on it once, or name another.');
  const migrations = await client.query<{ name: string; checksum: string }>(
    `SELECT migration_name AS name, checksum FROM public._prisma_migrations
     WHERE rolled_back_at IS NULL AND finished_at IS NOT NULL ORDER BY migration_name COLLATE "C"`,
  );
  const facts = await client.query<{ postgres: string; joints: string; at: Date }>(
    "SELECT current_setting('server_version') AS postgres, (SELECT count(*) FROM joint)::text AS joints, now() AS at",
  );
  const { postgres, joints, at } = facts.rows[0] ?? { postgres: '', joints: '0', at: new Date() };
  return {
    format: FORMAT,
    formatVersion: FORMAT_VERSION,
    seatwell,
    postgres,
    takenAt: new Date(at).toISOString(),
    holds: WHAT_IT_HOLDS,
    migrations: migrations.rows,
    joints: Number(joints),
  };
}

async function streamHeads(client: pg.ClientBase): Promise<StreamHeadTotal[]> {
  const { rows } = await client.query<Omit<StreamHeadTotal, 'sequence'> & { sequence: string }>(
    `SELECT site_id AS "siteId", stream_id AS "streamId", kind, sequence::text, encode(root, 'hex') AS root
     FROM stream_head ORDER BY site_id, stream_id`,
  );
  return rows.map((row) => ({ ...row, sequence: Number(row.sequence) }));
}

async function onDisk(path: string): Promise<void> {
  const handle = await open(path, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** A link appears complete or not at all, and never replaces a file that is there; a share may know no links. */
function putInPlace(draft: string, file: string): void {
  try {
    linkSync(draft, file);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'EEXIST' || existsSync(file)) throw fileIsThere(file);
    if (!['EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS', 'EMLINK'].includes(code ?? '')) throw error;
    renameSync(draft, file);
  }
}

export const fileIsThere = (file: string): StartupError =>
  new StartupError(`${file} is there already, and a backup replaces no file: give another name.`);
