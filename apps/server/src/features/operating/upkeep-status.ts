import type { UpkeepRun } from '@seatwell/contract';
import type { Database } from '../../platform/database/pool.ts';

interface UpkeepRow {
  readonly kind: UpkeepRun['kind'];
  readonly outcome: UpkeepRun['outcome'];
  readonly startedAt: Date;
  readonly endedAt: Date;
  readonly details: {
    readonly file?: string;
    readonly bytes?: number;
    readonly events?: number;
    readonly problems?: number;
    readonly findings?: string[];
  };
}

/** The last backup, restore and verification. */
export async function upkeepStatus(db: Database, siteId: string): Promise<UpkeepRun[]> {
  const { rows } = await db.query<UpkeepRow>(
    `SELECT DISTINCT ON (kind) kind, outcome, started_at AS "startedAt", ended_at AS "endedAt", details
     FROM upkeep WHERE site_id = $1 ORDER BY kind, ended_at DESC`,
    [siteId],
  );
  return rows.map(({ details, startedAt, endedAt, ...row }) => ({
    ...row,
    startedAt: startedAt.toISOString(),
    endedAt: endedAt.toISOString(),
    file: details.file ?? null,
    size_bytes: details.bytes ?? null,
    events: details.events ?? null,
    problems: details.problems ?? null,
    findings: details.findings ?? [],
  }));
}
