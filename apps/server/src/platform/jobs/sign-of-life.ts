import type { PoolClient } from 'pg';
import type { Database } from '../database/pool.ts';

/** First key of the advisory locks by which processes say that they live; the second is the hash of their name. */
const LIFE_LOCKS = 43_102;

const LOOK_EVERY_MS = 2_000;

/** Time for a new process to say that it lives, after it has begun its first job. */
const GRACE_S = 5;

const TAKE_OVER = `
  WITH gone AS (
    SELECT array_agg(DISTINCT locked_by) AS names FROM graphile_worker._private_jobs j
    WHERE locked_by IS NOT NULL AND locked_at < now() - make_interval(secs => $2) AND NOT EXISTS (
      SELECT FROM pg_locks l WHERE l.locktype = 'advisory' AND l.granted AND l.classid = $1::int::oid
        AND l.objid = (hashtext(j.locked_by)::bigint & 4294967295)::oid
        AND l.database = (SELECT oid FROM pg_database WHERE datname = current_database())))
  SELECT names, graphile_worker.force_unlock_workers(names) FROM gone WHERE names IS NOT NULL`;

/** What was begun as often as it may be and never ended: nobody takes it over any more, and its screen is told. */
const GIVE_UP = `
  UPDATE job SET state = 'failed', ended_at = now(), result = $1
  FROM graphile_worker._private_jobs j
  WHERE job.state IN ('waiting', 'running') AND j.locked_at IS NULL AND j.attempts >= j.max_attempts
    AND job.site_id = (j.payload->>'siteId')::uuid AND job.job_id = (j.payload->>'jobId')::uuid`;

const GIVEN_UP = JSON.stringify({
  problem: {
    title: 'The job failed',
    detail:
      'Each process that began it ended before the job did. Start it again; if it happens again, tell the administrator.',
    errors: [],
  },
});

/**
 * Says in the database that this process lives, by a lock that PostgreSQL frees with the connection, and takes over the
 * jobs of processes that no longer do: the queue by itself would leave them for hours.
 * @param name under which the queue locks jobs for this process
 * @param tell is told of each take-over
 * @returns ends it
 */
export function signOfLife(db: Database, name: string, tell: (line: string) => void): () => Promise<void> {
  let held: PoolClient | undefined;
  let ended = false;
  let looking: Promise<void> = Promise.resolve();

  async function hold(): Promise<void> {
    const client = await db.connect();
    try {
      // A machine that vanished is noticed within a minute, not after the hours that systems wait by themselves.
      await client.query(
        'SET tcp_keepalives_idle = 20; SET tcp_keepalives_interval = 10; SET tcp_keepalives_count = 3',
      );
      await client.query('SELECT pg_advisory_lock_shared($1, hashtext($2))', [LIFE_LOCKS, name]);
    } catch (error) {
      client.release(true);
      throw error;
    }
    held = client;
    client.once('error', () => letGo(client));
  }

  /** Once for each connection: it may break just as it is given back. */
  function letGo(client: PoolClient | undefined): void {
    if (client === undefined || held !== client) return;
    held = undefined;
    client.release(true);
  }

  async function look(): Promise<void> {
    if (!held) await hold();
    const { rows } = await db.query<{ names: string[] }>(TAKE_OVER, [LIFE_LOCKS, GRACE_S]);
    for (const { names } of rows) tell(`Took over the jobs of processes that ended (${names.join(', ')}).`);
    await db.query(GIVE_UP, [GIVEN_UP]);
  }

  const timer = setInterval(again, LOOK_EVERY_MS);
  again();
  function again(): void {
    // The next look tries again what this one could not.
    looking = looking.then(() => (ended ? undefined : look())).catch(() => {});
  }

  return async () => {
    ended = true;
    clearInterval(timer);
    await looking;
    letGo(held);
  };
}
