import { randomBytes } from 'node:crypto';
import { requireAllowed } from '../../platform/access/allows.ts';
import type { Transaction } from '../../platform/database/pool.ts';
import { Problem } from '../../platform/errors/problem.ts';
import { nameCommitment, nameSalt } from '../../platform/record/commitment.ts';
import { hashSecret } from '../../platform/sign-in/secrets.ts';
import type { Decisions } from '../recording/decision.ts';
import { insertOrRefuse } from '../recording/insert-or-refuse.ts';

type PeopleEvents =
  | 'site-settings-changed'
  | 'person-registered'
  | 'person-erased'
  | 'account-opened'
  | 'account-closed'
  | 'role-granted'
  | 'role-ended'
  | 'deputy-named'
  | 'qualification-recorded'
  | 'qualification-withdrawn'
  | 'key-enrolled'
  | 'key-revoked';

/** Days come from the site's own clock: a grant or certificate ends with its last day there. */
async function changeOne(result: Promise<{ rowCount: number | null }>, otherwise: string): Promise<void> {
  if ((await result).rowCount === 0) throw new Problem('not-found', otherwise);
}

/** Without an administrator who can sign in and whose role does not end by itself, nobody could ever be let in again. */
async function keepAnAdministrator(
  tx: Transaction,
  siteId: string,
  column: 'g.grant_id' | 'g.account_id',
  ending: string,
): Promise<void> {
  const others = await tx.query(
    `SELECT 1 FROM role_grant g JOIN account a ON a.site_id = g.site_id AND a.account_id = g.account_id
      WHERE g.site_id = $1 AND g.role = 'administrator' AND g.ended_at IS NULL AND g.ends_on IS NULL
        AND a.closed_at IS NULL AND ${column} <> $2`,
    [siteId, ending],
  );
  if (others.rowCount === 0)
    throw new Problem('stale-decision', 'This is the last administrator; grant the role to somebody else first.');
}

/** People, their accounts, roles and qualifications. */
export const peopleDecisions: Decisions<PeopleEvents> = {
  'site-settings-changed': async ({ tx, actor, payload }) => {
    requireAllowed(actor, 'manage-settings', {});
    await tx.query(
      `UPDATE site SET name = coalesce($2, name), time_zone = coalesce($3, time_zone), units = coalesce($4, units)
       WHERE site_id = $1`,
      [actor.siteId, payload.name ?? null, payload.timeZone ?? null, payload.units ?? null],
    );
    return {};
  },

  'person-registered': async ({ tx, actor, payload }) => {
    requireAllowed(actor, 'manage-people', {});
    const salt = nameSalt();
    // Neither name nor badge stands in the record: both go with the person.
    const { name, badge: _badge, ...said } = payload;
    await insertOrRefuse(tx, 'person', {
      site_id: actor.siteId,
      person_id: payload.personId,
      name,
      name_salt: salt,
      company: payload.company,
      badge: payload.badge,
      trade: payload.trade,
    });
    return { storedPayload: { ...said, nameCommitment: nameCommitment(name, salt) } };
  },

  'person-erased': async ({ tx, actor, subjectId, now }) => {
    requireAllowed(actor, 'manage-people', {});
    const open = await tx.query('SELECT 1 FROM account WHERE site_id = $1 AND person_id = $2 AND closed_at IS NULL', [
      actor.siteId,
      subjectId,
    ]);
    if (open.rowCount) throw new Problem('stale-decision', 'This person still has an open account. Close it first.');
    await changeOne(
      tx.query(
        'UPDATE person SET name = NULL, name_salt = $4, badge = NULL, erased_at = $3 WHERE site_id = $1 AND person_id = $2',
        [actor.siteId, subjectId, now, randomBytes(16)],
      ),
      'There is no such person at this site.',
    );
    // The address names the person as well; the account keeps its id, which the record knows.
    await tx.query(
      `UPDATE account SET email = account_id || '@erased.invalid', secret_hash = '', preferences = '{}'
       WHERE site_id = $1 AND person_id = $2`,
      [actor.siteId, subjectId],
    );
    return {};
  },

  'account-opened': async ({ tx, actor, payload }) => {
    requireAllowed(actor, 'manage-accounts', {});
    const known = await tx.query('SELECT 1 FROM person WHERE site_id = $1 AND person_id = $2', [
      actor.siteId,
      payload.personId,
    ]);
    if (known.rowCount === 0) throw new Problem('not-found', 'Register the person first.');
    await insertOrRefuse(tx, 'account', {
      site_id: actor.siteId,
      account_id: payload.accountId,
      person_id: payload.personId,
      email: payload.email.toLowerCase(),
      // No one signs in until the administrator hands out a first secret (features/session/routes.ts).
      secret_hash: await hashSecret(randomBytes(32).toString('base64')),
    });
    const { email: _email, ...said } = payload;
    return { storedPayload: said };
  },

  'account-closed': async ({ tx, actor, subjectId, now }) => {
    requireAllowed(actor, 'manage-accounts', {});
    await keepAnAdministrator(tx, actor.siteId, 'g.account_id', subjectId);
    await changeOne(
      tx.query('UPDATE account SET closed_at = $3 WHERE site_id = $1 AND account_id = $2 AND closed_at IS NULL', [
        actor.siteId,
        subjectId,
        now,
      ]),
      'There is no such open account.',
    );
    await tx.query('DELETE FROM session WHERE site_id = $1 AND account_id = $2', [actor.siteId, subjectId]);
    return {};
  },

  'role-granted': async ({ tx, actor, payload }) => {
    requireAllowed(actor, 'manage-accounts', {});
    const known = await tx.query('SELECT 1 FROM account WHERE site_id = $1 AND account_id = $2', [
      actor.siteId,
      payload.accountId,
    ]);
    if (known.rowCount === 0) throw new Problem('not-found', 'There is no such account at this site.');
    await insertOrRefuse(tx, 'role_grant', {
      site_id: actor.siteId,
      grant_id: payload.grantId,
      account_id: payload.accountId,
      role: payload.role,
      reach: JSON.stringify(payload.reach),
      ends_on: payload.endsOn,
    });
    return {};
  },

  'role-ended': async ({ tx, actor, subjectId, now }) => {
    requireAllowed(actor, 'manage-accounts', {});
    await keepAnAdministrator(tx, actor.siteId, 'g.grant_id', subjectId);
    await changeOne(
      tx.query('UPDATE role_grant SET ended_at = $3 WHERE site_id = $1 AND grant_id = $2 AND ended_at IS NULL', [
        actor.siteId,
        subjectId,
        now,
      ]),
      'There is no such grant in force.',
    );
    return {};
  },

  'deputy-named': async ({ tx, actor, payload, eventId }) => {
    requireAllowed(actor, 'manage-accounts', {});
    const held = await tx.query<{ reach: object }>(
      'SELECT reach FROM role_grant WHERE site_id = $1 AND account_id = $2 AND role = $3 AND ended_at IS NULL LIMIT 1',
      [actor.siteId, payload.accountId, payload.role],
    );
    const grant = held.rows[0];
    if (!grant)
      throw new Problem(
        'bad-input',
        `The person does not hold the role ${payload.role}, so nobody can stand in for it.`,
      );
    // A deputy has the role itself, until a day: nobody signs in another's name.
    await insertOrRefuse(tx, 'role_grant', {
      site_id: actor.siteId,
      grant_id: eventId,
      account_id: payload.deputyAccountId,
      role: payload.role,
      reach: JSON.stringify(grant.reach),
      starts_on: payload.from,
      ends_on: payload.until,
    });
    return {};
  },

  'qualification-recorded': async ({ tx, actor, payload }) => {
    requireAllowed(actor, 'record-qualifications', {});
    const known = await tx.query('SELECT 1 FROM person WHERE site_id = $1 AND person_id = $2', [
      actor.siteId,
      payload.personId,
    ]);
    if (known.rowCount === 0) throw new Problem('not-found', 'Register the person first.');
    await insertOrRefuse(tx, 'qualification', {
      site_id: actor.siteId,
      qualification_id: payload.qualificationId,
      person_id: payload.personId,
      qualified_for: payload.qualifiedFor,
      valid_from: payload.validFrom,
      valid_through: payload.validThrough,
      scheme: payload.scheme,
      certificate: payload.certificate,
    });
    return {};
  },

  'qualification-withdrawn': async ({ tx, actor, subjectId, now }) => {
    requireAllowed(actor, 'record-qualifications', {});
    await changeOne(
      tx.query(
        'UPDATE qualification SET withdrawn_at = $3 WHERE site_id = $1 AND qualification_id = $2 AND withdrawn_at IS NULL',
        [actor.siteId, subjectId, now],
      ),
      'There is no such qualification in force.',
    );
    return {};
  },

  'key-enrolled': async ({ actor, payload }) => {
    requireAllowed(actor, 'manage-own-keys', {});
    if (payload.personId !== actor.personId) throw new Problem('not-allowed', 'Everybody enrols their own devices.');
    return {};
  },

  'key-revoked': async ({ actor }) => {
    requireAllowed(actor, 'manage-own-keys', {});
    return {};
  },
};
