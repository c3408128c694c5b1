import { createHash, randomBytes } from 'node:crypto';

/** A fresh salt for a person's name. */
export const nameSalt = (): Buffer => randomBytes(16);

/**
 * A salted commitment to a name, hex. The record holds only this; name and salt stand in the person's row, and erasing
 * them removes the name while the record still verifies.
 */
export const nameCommitment = (name: string, salt: Uint8Array): string =>
  createHash('sha256').update(salt).update(name, 'utf8').digest('hex');
