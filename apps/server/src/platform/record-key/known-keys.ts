import type pg from 'pg';
import type { KeyPair } from './key-file.ts';

/** A public key that signed heads of this database's record. */
export interface KnownKey {
  readonly fingerprint: string;
  /** SubjectPublicKeyInfo, PEM */
  readonly publicKey: string;
  readonly since: Date;
}

export type Queryable = Pick<pg.ClientBase, 'query'>;

/** Every key that signed, the one that signs now last. */
export async function knownKeys(db: Queryable): Promise<readonly KnownKey[]> {
  const { rows } = await db.query<KnownKey>(
    'SELECT fingerprint, public_key AS "publicKey", since FROM record_key ORDER BY number',
  );
  return rows;
}

const pemOf = ({ publicKey }: KeyPair): string => publicKey.export({ format: 'pem', type: 'spki' }) as string;

/**
 * Remembers the first key of a database. Of two processes that come with different ones at once, one is the first. A
 * database without a site has no record yet, and stays one into which a backup can be restored.
 */
export async function rememberFirstKey(db: Queryable, key: KeyPair, at: Date): Promise<void> {
  await db.query(
    `INSERT INTO record_key (number, fingerprint, public_key, since)
     SELECT 1, $1, $2, $3 WHERE EXISTS (SELECT FROM site) ON CONFLICT DO NOTHING`,
    [key.fingerprint, pemOf(key), at],
  );
}

/** Makes a key the one that signs from now on; those before it stay known. */
export async function rememberNextKey(db: Queryable, key: KeyPair, at: Date): Promise<void> {
  await db.query(
    `INSERT INTO record_key (number, fingerprint, public_key, since)
     SELECT coalesce(max(number), 0) + 1, $1, $2, $3 FROM record_key`,
    [key.fingerprint, pemOf(key), at],
  );
}
