import type { OperatorStatus } from '@seatwell/contract';
import type { Database } from '../../platform/database/pool.ts';
import { namesOf } from '../reading/names.ts';

/** Who and what address is kept from signing in at this moment, and where wrong secrets came from lately. */
export async function signInStatus(db: Database, siteId: string): Promise<OperatorStatus['signIn']> {
  const sessions = await db.query<{ count: number }>(
    'SELECT count(*) AS count FROM session WHERE site_id = $1 AND expires_at > now()',
    [siteId],
  );
  const locked = await db.query<{ accountId: string; personId: string; email: string; until: Date }>(
    `SELECT account_id AS "accountId", person_id AS "personId", email, locked_until AS until FROM account
     WHERE site_id = $1 AND locked_until > now() AND closed_at IS NULL ORDER BY locked_until DESC LIMIT 100`,
    [siteId],
  );
  const addresses = await db.query<{ address: string; failures: number; lastAt: Date; blockedUntil: Date | null }>(
    `SELECT address, failures, last_at AS "lastAt",
       CASE WHEN blocked_until > now() THEN blocked_until END AS "blockedUntil"
     FROM sign_in_address WHERE site_id = $1 ORDER BY last_at DESC LIMIT 100`,
    [siteId],
  );
  const names = await namesOf(
    db,
    siteId,
    locked.rows.map((row) => row.personId),
  );
  return {
    sessions: sessions.rows[0]?.count ?? 0,
    locked: locked.rows.map(({ accountId, personId, email, until }) => ({
      accountId,
      person: names.of(personId),
      email,
      lockedUntil: until.toISOString(),
    })),
    addresses: addresses.rows.map(({ lastAt, blockedUntil, ...row }) => ({
      ...row,
      lastAt: lastAt.toISOString(),
      blockedUntil: blockedUntil?.toISOString() ?? null,
    })),
  };
}

/** Persons whose accounts were all closed longer ago than the site wants to keep names of those who left. */
export async function leaversToErase(
  db: Database,
  siteId: string,
  leaverDays: number | null,
): Promise<OperatorStatus['leavers']> {
  if (leaverDays === null) return [];
  const { rows } = await db.query<{ personId: string; name: string; leftAt: Date }>(
    `SELECT p.person_id AS "personId", p.name, max(a.closed_at) AS "leftAt"
     FROM person p JOIN account a ON a.site_id = p.site_id AND a.person_id = p.person_id
     WHERE p.site_id = $1 AND p.erased_at IS NULL
     GROUP BY p.person_id, p.name
     HAVING bool_and(a.closed_at IS NOT NULL) AND max(a.closed_at) < now() - make_interval(days => $2)
     ORDER BY max(a.closed_at) LIMIT 200`,
    [siteId, leaverDays],
  );
  return rows.map(({ personId, name, leftAt }) => ({ person: { personId, name }, leftAt: leftAt.toISOString() }));
}
