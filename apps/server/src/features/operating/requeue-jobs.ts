import type pg from 'pg';

/**
 * Queues jobs again that had not ended when a backup was taken: the queue's own entries are not part of one. Jobs are
 * safe to repeat.
 * @returns how many
 */
export async function requeueJobs(client: pg.ClientBase): Promise<number> {
  const { rowCount } = await client.query(
    `SELECT graphile_worker.add_job(kind, json_build_object('siteId', site_id, 'jobId', job_id), max_attempts := 3)
     FROM job WHERE state IN ('waiting', 'running')`,
  );
  return rowCount ?? 0;
}
