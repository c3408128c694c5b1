import type { Retention } from '@seatwell/contract';
import type { Database } from '../../platform/database/pool.ts';
import { Problem } from '../../platform/errors/problem.ts';
import { retentionOf } from '../../platform/sign-in/retention.ts';

/**
 * Queues a failed job again; jobs are safe to repeat.
 * @throws Problem `not-found` where no failed job has this id
 */
export async function retryJob(db: Database, siteId: string, jobId: string): Promise<void> {
  const { rowCount } = await db.query(
    `WITH again AS (
       UPDATE job SET state = 'waiting', result = NULL, ended_at = NULL
       WHERE site_id = $1 AND job_id = $2 AND state = 'failed' RETURNING kind)
     SELECT graphile_worker.add_job(kind, json_build_object('siteId', $1::uuid, 'jobId', $2::uuid), max_attempts := 3)
     FROM again`,
    [siteId, jobId],
  );
  if (rowCount === 0) throw new Problem('not-found', 'No job with this id has failed. Look at the list again.');
}

/** Lets an account sign in and sign again at once. @throws Problem `not-found` where it is not locked */
export async function unlockAccount(db: Database, siteId: string, accountId: string): Promise<void> {
  const { rowCount } = await db.query(
    `UPDATE account SET failures = 0, locked_until = NULL
     WHERE site_id = $1 AND account_id = $2 AND locked_until > now()`,
    [siteId, accountId],
  );
  if (rowCount === 0) throw new Problem('not-found', 'This account is not locked. Look at the list again.');
}

/** Lets an address sign in again and forgets its wrong ones. @throws Problem `not-found` where none are counted */
export async function unlockAddress(db: Database, siteId: string, address: string): Promise<void> {
  const { rowCount } = await db.query('DELETE FROM sign_in_address WHERE site_id = $1 AND address = $2', [
    siteId,
    address,
  ]);
  if (rowCount === 0) throw new Problem('not-found', `No wrong sign-ins are counted for ${address}.`);
}

/** Sets how long traces of people are kept; sessions that are open keep the end they were given. */
export async function setRetention(db: Database, siteId: string, retention: Retention): Promise<Retention> {
  await db.query('UPDATE site SET retention = $2 WHERE site_id = $1', [siteId, JSON.stringify(retention)]);
  await db.query('DELETE FROM sign_in_address WHERE site_id = $1 AND last_at < now() - make_interval(days => $2)', [
    siteId,
    retention.signInDays,
  ]);
  return retentionOf(db, siteId);
}
