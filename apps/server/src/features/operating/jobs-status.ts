import type { OperatorJob, OperatorStatus } from '@seatwell/contract';
import type { Database } from '../../platform/database/pool.ts';
import { namesOf } from '../reading/names.ts';

const SHOWN = 20;

type JobState = OperatorJob['state'];
interface JobRow {
  readonly jobId: string;
  readonly kind: string;
  readonly state: JobState;
  readonly done: number;
  readonly total: number;
  readonly personId: string | null;
  readonly startedBy: string;
  readonly createdAt: Date;
  readonly endedAt: Date | null;
  readonly problem: string | null;
}

/** Jobs by state, and the latest of them, those that failed or wait first. */
export async function jobsStatus(db: Database, siteId: string): Promise<OperatorStatus['jobs']> {
  const counted = await db.query<{ state: JobState; count: number }>(
    'SELECT state, count(*) AS count FROM job WHERE site_id = $1 GROUP BY state',
    [siteId],
  );
  const count = (state: JobState) => counted.rows.find((row) => row.state === state)?.count ?? 0;
  const { rows } = await db.query<JobRow>(
    `SELECT j.job_id AS "jobId", j.kind, j.state, j.done, j.total, a.person_id AS "personId",
       j.started_by AS "startedBy", j.created_at AS "createdAt", j.ended_at AS "endedAt",
       CASE WHEN j.state = 'failed' THEN coalesce(j.result -> 'problem' ->> 'detail', j.result -> 'problem' ->> 'title')
         END AS problem
     FROM job j LEFT JOIN account a ON a.site_id = j.site_id AND a.account_id = j.started_by
     WHERE j.site_id = $1 ORDER BY j.state = 'done', j.created_at DESC LIMIT $2`,
    [siteId, SHOWN],
  );
  const names = await namesOf(
    db,
    siteId,
    rows.map((row) => row.personId),
  );
  return {
    waiting: count('waiting'),
    running: count('running'),
    failed: count('failed'),
    recent: rows.map(({ personId, startedBy, createdAt, endedAt, ...row }) => ({
      ...row,
      startedBy: names.of(personId ?? startedBy),
      createdAt: createdAt.toISOString(),
      endedAt: endedAt?.toISOString() ?? null,
    })),
  };
}
