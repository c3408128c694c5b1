import { createPublicKey } from 'node:crypto';
import { expect, it } from 'vitest';
import { openNote } from '../../apps/server/record-verifier.mjs';

// A published case from another maker's code: golang.org/x/mod, package sumdb/note, the example of its documentation
// (verifier key and signed note). The key is name+key id+base64(type ‖ 32 bytes); the values were written down from
// memory, and an Ed25519 signature that fits can be no slip of it.
const KEY = 'PeterNeumann+c74f20a3+ARpc2QcUPDhMQegwxbzhKqiBfsVkmqq/LDE4izWy10TW';
const NOTE = `If you think cryptography is the answer to your problem,
then you don't know what your problem is.

— PeterNeumann x08go/ZJkuBS9UG/SffcvIAQxVBtiFupLLr8pAcElZInNIuGUgYN1FFYC2pZSNXgKvqfqdngotpRZb6KE6RyyBwJnAM=
`;

it('a signed note of another maker opens with its key, and not once it is changed', () => {
  const raw = Buffer.from(KEY.split('+')[2] ?? '', 'base64').subarray(1);
  // SubjectPublicKeyInfo of Ed25519, RFC 8410.
  const der = Buffer.concat([Buffer.from('302a300506032b6570032100', 'hex'), raw]);
  const key = createPublicKey({ key: der, format: 'der', type: 'spki' });
  expect(openNote(NOTE, 'PeterNeumann', key)).toBe(NOTE.slice(0, NOTE.indexOf('\n\n') + 1));
  expect(openNote(NOTE.replace('answer', 'ansver'), 'PeterNeumann', key)).toBeNull();
  expect(openNote(NOTE, 'SomebodyElse', key)).toBeUndefined();
});
