import type { firstVisit, Payload, SiteEventType } from '@seatwell/contract';
import { uuidv7 } from 'uuidv7';
import type { z } from 'zod';
import { type Database, inTransaction } from '../../platform/database/pool.ts';
import { Problem } from '../../platform/errors/problem.ts';
import { openStream } from '../../platform/record/append.ts';
import { hashSecret } from '../../platform/sign-in/secrets.ts';
import type { Actor } from '../../platform/sign-in/sessions.ts';
import { recordInTransaction } from '../recording/record-command.ts';
import { refuseUnknownTimeZone } from '../shutdowns/time-zone.ts';

const SET_UP_LOCK = 7_328_915;

export async function siteIsSetUp(db: Database): Promise<boolean> {
  const { rowCount } = await db.query('SELECT 1 FROM site LIMIT 1');
  return rowCount !== 0;
}

/**
 * The first visit: the site, its stream, and its administrator, who is recorded as registering himself: the record
 * begins with the person who began it.
 * @throws Problem `already-set-up` when somebody was first
 */
export async function setUpSite(
  db: Database,
  input: z.infer<typeof firstVisit>,
  now: Date,
): Promise<{ siteId: string; accountId: string }> {
  refuseUnknownTimeZone(input.timeZone);
  const secretHash = await hashSecret(input.administrator.password);
  return inTransaction(db, async (tx) => {
    await tx.query('SELECT pg_advisory_xact_lock($1)', [SET_UP_LOCK]);
    const there = await tx.query('SELECT 1 FROM site LIMIT 1');
    if (there.rowCount) throw new Problem('already-set-up', 'Somebody has set this site up already. Sign in instead.');
    const siteId = uuidv7();
    await tx.query('INSERT INTO site (site_id, name, time_zone, units, created_at) VALUES ($1, $2, $3, $4, $5)', [
      siteId,
      input.siteName,
      input.timeZone,
      input.units,
      now,
    ]);
    await openStream(tx, { siteId, streamId: siteId, kind: 'site', at: now.toISOString() });
    const { name, company, email } = input.administrator;
    const personId = uuidv7();
    const accountId = uuidv7();
    const founder: Actor = {
      siteId,
      accountId,
      personId,
      name,
      company,
      email,
      grants: [{ grantId: siteId, role: 'administrator', reach: { kind: 'site' } }],
    };
    const record = <T extends SiteEventType>(type: T, subjectId: string, payload: Payload<T>) =>
      recordInTransaction(tx, () => now, founder, { shutdownId: null }, type, {
        eventId: uuidv7(),
        v: 1,
        subjectId,
        makeId: null,
        deviceTime: now.toISOString(),
        clockOffset_ms: 0,
        device: null,
        performedBy: [],
        versionSeen: null,
        alreadyDone: false,
        signature: null,
        payload,
      });
    await record('person-registered', personId, { personId, name, company, badge: null, trade: null });
    await record('account-opened', accountId, { accountId, personId, email });
    const grantId = uuidv7();
    await record('role-granted', grantId, {
      grantId,
      accountId,
      role: 'administrator',
      reach: { kind: 'site' },
      endsOn: null,
    });
    await tx.query('UPDATE account SET secret_hash = $3 WHERE site_id = $1 AND account_id = $2', [
      siteId,
      accountId,
      secretHash,
    ]);
    return { siteId, accountId };
  });
}
