import type { OperatorStatus } from '@seatwell/contract';
import type { Database } from '../../platform/database/pool.ts';
import type { HeadSigner } from '../../platform/record-key/head-signer.ts';
import { retentionOf } from '../../platform/sign-in/retention.ts';
import { jobsStatus } from './jobs-status.ts';
import { leaversToErase, signInStatus } from './people-status.ts';
import { upkeepStatus } from './upkeep-status.ts';

export interface OperatorParts {
  readonly db: Database;
  readonly version: string;
  readonly warnings: readonly string[];
  readonly signer: HeadSigner;
}

const processStartedAt = new Date(Date.now() - process.uptime() * 1000);

/** `GET /operator/status`: version, database, heads, jobs, upkeep, sign-in and what is kept about people. */
export async function readStatus(
  { db, version, warnings, signer }: OperatorParts,
  siteId: string,
  now: Date,
): Promise<OperatorStatus> {
  const retention = await retentionOf(db, siteId);
  const [signing, database, streams, jobs, upkeep, signIn, leavers] = await Promise.all([
    signer.signing(),
    databaseStatus(db),
    streamHeads(db, siteId),
    jobsStatus(db, siteId),
    upkeepStatus(db, siteId),
    signInStatus(db, siteId),
    leaversToErase(db, siteId, retention.leaverDays),
  ]);
  return {
    at: now.toISOString(),
    version,
    processStartedAt: processStartedAt.toISOString(),
    warnings: [...warnings],
    signing: { fingerprint: signing.key?.fingerprint ?? null, unsigned: signing.unsigned ?? null },
    database,
    streams,
    jobs,
    upkeep,
    signIn,
    retention,
    leavers,
  };
}

async function databaseStatus(db: Database): Promise<OperatorStatus['database']> {
  const { rows } = await db.query<Omit<OperatorStatus['database'], 'connections'>>(
    `SELECT current_setting('server_version') AS version, pg_database_size(current_database()) AS size_bytes,
       current_user::text AS role,
       (SELECT count(*) FROM _prisma_migrations WHERE rolled_back_at IS NULL) AS migrations,
       (SELECT max(migration_name COLLATE "C") FROM _prisma_migrations WHERE rolled_back_at IS NULL) AS "lastMigration"`,
  );
  const row = rows[0];
  if (!row) throw new Error('The database says nothing about itself.');
  const connections = { busy: db.totalCount - db.idleCount, idle: db.idleCount, waiting: db.waitingCount };
  return { ...row, connections };
}

async function streamHeads(db: Database, siteId: string): Promise<OperatorStatus['streams']> {
  const { rows } = await db.query<OperatorStatus['streams'][number] & { changedAt: Date }>(
    `SELECT h.stream_id AS "streamId", h.kind, coalesce(d.name, s.name) AS name, h.sequence,
       encode(h.root, 'hex') AS root, h.changed_at AS "changedAt"
     FROM stream_head h JOIN site s ON s.site_id = h.site_id
     LEFT JOIN shutdown d ON d.site_id = h.site_id AND d.shutdown_id = h.stream_id
     WHERE h.site_id = $1 ORDER BY h.changed_at DESC`,
    [siteId],
  );
  return rows.map((row) => ({ ...row, changedAt: (row.changedAt as Date).toISOString() }));
}
