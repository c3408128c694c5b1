import { createHash } from 'node:crypto';
import canonicalize from 'canonicalize';

/** The bytes that are stored and hashed: JSON in the canonical form of RFC 8785. */
export function canonicalBytes(value: unknown): Buffer {
  const text = canonicalize(value);
  if (text === undefined) throw new Error('This value has no canonical JSON form.');
  return Buffer.from(text, 'utf8');
}

/** SHA-256 over the canonical bytes. */
export const contentHash = (value: unknown): Buffer => createHash('sha256').update(canonicalBytes(value)).digest();
