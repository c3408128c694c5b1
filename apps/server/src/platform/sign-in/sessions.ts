import { createHash, randomBytes } from 'node:crypto';
import type { Reach, Role } from '@seatwell/contract';
import type { Database } from '../database/pool.ts';
import { retentionOf } from './retention.ts';

export interface Grant {
  readonly grantId: string;
  readonly role: Role;
  readonly reach: Reach;
}

/** Who is acting: the account, the person behind it, and the roles that are in force today. */
export interface Actor {
  readonly siteId: string;
  readonly accountId: string;
  readonly personId: string;
  readonly name: string;
  readonly company: string;
  readonly email: string;
  readonly grants: readonly Grant[];
}

const tokenHash = (token: string): Buffer => createHash('sha256').update(token).digest();

/** Starts a session; the token leaves only in the cookie, the database keeps its hash. */
export async function startSession(
  db: Database,
  siteId: string,
  accountId: string,
  device: string | null,
): Promise<{ token: string; expiresAt: Date }> {
  const token = randomBytes(32).toString('base64url');
  const { sessionHours } = await retentionOf(db, siteId);
  const expiresAt = new Date(Date.now() + sessionHours * 3_600_000);
  await db.query(
    `INSERT INTO session (token_hash, site_id, account_id, started_at, last_seen_at, expires_at, device)
     VALUES ($1, $2, $3, now(), now(), $4, $5)`,
    [tokenHash(token), siteId, accountId, expiresAt, device?.slice(0, 200) ?? null],
  );
  await db.query('DELETE FROM session WHERE expires_at < now()');
  return { token, expiresAt };
}

export async function endSession(db: Database, token: string): Promise<void> {
  await db.query('DELETE FROM session WHERE token_hash = $1', [tokenHash(token)]);
}

/** The actor of a token, or null where it is unknown, expired or its account is closed. */
export async function actorOfToken(db: Database, token: string): Promise<Actor | null> {
  const { rows } = await db.query<{ site_id: string; account_id: string }>({
    name: 'actor-of-token',
    text: `SELECT s.site_id, s.account_id FROM session s
           JOIN account a ON a.site_id = s.site_id AND a.account_id = s.account_id
           WHERE s.token_hash = $1 AND s.expires_at > now() AND a.closed_at IS NULL`,
    values: [tokenHash(token)],
  });
  const session = rows[0];
  return session ? loadActor(db, session.site_id, session.account_id) : null;
}

/** The person and the roles in force today of an account. */
export async function loadActor(db: Database, siteId: string, accountId: string): Promise<Actor | null> {
  const { rows } = await db.query<{
    person_id: string;
    email: string;
    name: string | null;
    company: string;
    grants: Grant[];
  }>({
    name: 'load-actor',
    text: `SELECT a.person_id, a.email, p.name, p.company,
             coalesce((SELECT jsonb_agg(jsonb_build_object('grantId', g.grant_id, 'role', g.role, 'reach', g.reach) ORDER BY g.grant_id)
               FROM role_grant g WHERE g.site_id = a.site_id AND g.account_id = a.account_id AND g.ended_at IS NULL
                 AND (g.starts_on IS NULL OR g.starts_on <= current_date) AND (g.ends_on IS NULL OR g.ends_on >= current_date)), '[]') AS grants
           FROM account a JOIN person p ON p.site_id = a.site_id AND p.person_id = a.person_id
           WHERE a.site_id = $1 AND a.account_id = $2`,
    values: [siteId, accountId],
  });
  const row = rows[0];
  if (!row) return null;
  return {
    siteId,
    accountId,
    personId: row.person_id,
    name: row.name ?? '',
    company: row.company,
    email: row.email,
    grants: row.grants,
  };
}
