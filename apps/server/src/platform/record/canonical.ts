import { createHash } from 'node:crypto';
import canonicalize from 'canonicalize';
import { Problem } from '../errors/problem.ts';

/**
 * The bytes that are stored and hashed: JSON in the canonical form of RFC 8785.
 * @throws Problem on text with half a character in it (a lone surrogate), which that form does not have
 */
export function canonicalBytes(value: unknown): Buffer {
  const text = canonicalForm(value);
  if (text === undefined) throw new Error('This value has no canonical JSON form.');
  return Buffer.from(text, 'utf8');
}

function canonicalForm(value: unknown): string | undefined {
  try {
    return canonicalize(value);
  } catch (error) {
    if (!/surrogate/i.test((error as Error).message)) throw error;
    throw new Problem(
      'bad-input',
      'A text of the request holds half a character (a lone surrogate), which cannot be kept. Type that text again.',
    );
  }
}

/** SHA-256 over the canonical bytes. */
export const contentHash = (value: unknown): Buffer => createHash('sha256').update(canonicalBytes(value)).digest();
