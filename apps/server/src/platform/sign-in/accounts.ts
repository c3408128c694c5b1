import type { Database } from '../database/pool.ts';
import { Problem } from '../errors/problem.ts';
import { countWrongSignIn, refuseBlockedAddress } from './addresses.ts';
import { secretMatches } from './secrets.ts';

const FAILURES_BEFORE_LOCK = 6;
const LOCK_MINUTES = 15;

interface AccountRow {
  readonly site_id: string;
  readonly account_id: string;
  readonly secret_hash: string;
  readonly locked_until: Date | null;
}

/**
 * Checks a secret against an account and counts wrong ones: after six in a row the account is locked for
 * fifteen minutes, for signing in and for signatures alike.
 * @throws Problem `locked-out`, or `onWrong` when the secret does not match
 */
async function checkAccountSecret(
  db: Database,
  account: AccountRow | undefined,
  secret: string,
  onWrong: 'wrong-sign-in' | 'wrong-secret',
): Promise<void> {
  if (account?.locked_until && account.locked_until > new Date()) {
    throw new Problem(
      'locked-out',
      `Wait until ${account.locked_until.toISOString()}, or ask an administrator. Nothing was recorded.`,
    );
  }
  if (await secretMatches(account?.secret_hash ?? null, secret)) {
    await db.query(
      'UPDATE account SET failures = 0, locked_until = NULL WHERE site_id = $1 AND account_id = $2 AND failures > 0',
      [account?.site_id, account?.account_id],
    );
    return;
  }
  if (account) {
    await db.query(
      `UPDATE account SET failures = CASE WHEN failures + 1 >= $3 THEN 0 ELSE failures + 1 END,
         locked_until = CASE WHEN failures + 1 >= $3 THEN now() + make_interval(mins => $4) ELSE locked_until END
       WHERE site_id = $1 AND account_id = $2`,
      [account.site_id, account.account_id, FAILURES_BEFORE_LOCK, LOCK_MINUTES],
    );
  }
  throw new Problem(
    onWrong,
    'Check the spelling and try again; after six wrong tries the account is locked for 15 minutes.',
  );
}

/**
 * Finds the open account of an e-mail address whose secret matches.
 * @param from the network address that asks: too many wrong secrets from one are slowed down together
 */
export async function accountBySecret(
  db: Database,
  email: string,
  secret: string,
  from: string,
): Promise<{ siteId: string; accountId: string }> {
  await refuseBlockedAddress(db, from);
  const { rows } = await db.query<AccountRow>(
    'SELECT site_id, account_id, secret_hash, locked_until FROM account WHERE email = $1 AND closed_at IS NULL',
    [email.toLowerCase()],
  );
  const account = rows[0];
  try {
    await checkAccountSecret(db, account, secret, 'wrong-sign-in');
  } catch (error) {
    if (error instanceof Problem && error.code === 'wrong-sign-in') await countWrongSignIn(db, from);
    throw error;
  }
  if (!account) throw new Problem('wrong-sign-in', 'Check the spelling and try again.');
  return { siteId: account.site_id, accountId: account.account_id };
}

/** Checks the secret that a person re-enters to sign. */
export async function confirmSecret(db: Database, siteId: string, accountId: string, secret: string): Promise<void> {
  const { rows } = await db.query<AccountRow>(
    'SELECT site_id, account_id, secret_hash, locked_until FROM account WHERE site_id = $1 AND account_id = $2 AND closed_at IS NULL',
    [siteId, accountId],
  );
  await checkAccountSecret(db, rows[0], secret, 'wrong-secret');
}
