import type { Database } from '../database/pool.ts';
import { Problem } from '../errors/problem.ts';
import { retentionOf } from './retention.ts';

/** A plant of hundreds sits behind one address: wide enough for the typos of a shift start. */
const FAILURES_BEFORE_BLOCK = 100;
const COUNTED_MINUTES = 15;
const BLOCK_MINUTES = 15;

/**
 * Refuses an address from which too many wrong secrets came, whichever replica counted them.
 * @throws Problem `too-many-requests`
 */
export async function refuseBlockedAddress(db: Database, address: string): Promise<void> {
  const { rows } = await db.query<{ until: Date }>({
    name: 'blocked-address',
    text: 'SELECT max(blocked_until) AS until FROM sign_in_address WHERE address = $1 AND blocked_until > now()',
    values: [address],
  });
  const until = rows[0]?.until;
  if (!until) return;
  throw new Problem(
    'too-many-requests',
    `More than ${FAILURES_BEFORE_BLOCK} wrong secrets came from ${address} within ${COUNTED_MINUTES} minutes. Wait until ${until.toISOString()}, or ask an administrator.`,
  );
}

/** Counts a wrong sign-in against its address, and forgets addresses that were kept long enough. */
export async function countWrongSignIn(db: Database, address: string): Promise<void> {
  const { rows } = await db.query<{ site_id: string }>('SELECT site_id FROM site LIMIT 1');
  const siteId = rows[0]?.site_id;
  if (!siteId) return;
  const { signInDays } = await retentionOf(db, siteId);
  await db.query('DELETE FROM sign_in_address WHERE last_at < now() - make_interval(days => $1)', [signInDays]);
  await db.query(
    `INSERT INTO sign_in_address AS known (site_id, address, failures, counted_from, last_at)
     VALUES ($1, $2, 1, now(), now())
     ON CONFLICT (site_id, address) DO UPDATE SET last_at = now(),
       failures = CASE WHEN known.counted_from < now() - make_interval(mins => $3) THEN 1 ELSE known.failures + 1 END,
       counted_from = CASE WHEN known.counted_from < now() - make_interval(mins => $3) THEN now()
         ELSE known.counted_from END,
       blocked_until = CASE WHEN known.counted_from >= now() - make_interval(mins => $3) AND known.failures + 1 >= $4
         THEN now() + make_interval(mins => $5) ELSE known.blocked_until END`,
    [siteId, address, COUNTED_MINUTES, FAILURES_BEFORE_BLOCK, BLOCK_MINUTES],
  );
}
