import type pg from 'pg';
import { uuidv7 } from 'uuidv7';

export type UpkeepKind = 'backup' | 'restore' | 'verification';

/** What one run of an upkeep command came to. */
export interface UpkeepRun {
  readonly kind: UpkeepKind;
  readonly outcome: 'ok' | 'failed';
  readonly startedAt: Date;
  readonly endedAt: Date;
  readonly details: object;
}

const KEPT_DAYS = 400;

/**
 * Notes a run for the operator's page. A database that has no site yet, or is older than the table, has nowhere to
 * note it.
 * @returns whether it was noted
 */
export async function noteUpkeep(client: pg.ClientBase, run: UpkeepRun): Promise<boolean> {
  const there = await client.query("SELECT to_regclass('public.upkeep') IS NOT NULL AS there");
  if (!there.rows[0]?.there) return false;
  await client.query('DELETE FROM upkeep WHERE ended_at < now() - make_interval(days => $1)', [KEPT_DAYS]);
  const { rows } = await client.query<{ site_id: string }>('SELECT site_id FROM site');
  for (const { site_id } of rows) {
    await client.query(
      `INSERT INTO upkeep (site_id, run_id, kind, outcome, started_at, ended_at, details)
       VALUES ($1, $2, $3, $4, $5, $6, $7)`,
      [site_id, uuidv7(), run.kind, run.outcome, run.startedAt, run.endedAt, JSON.stringify(run.details)],
    );
  }
  return rows.length > 0;
}
