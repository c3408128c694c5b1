import { createHash, type KeyObject, sign } from 'node:crypto';

/** A head as it is signed: which record, how many events, their Merkle root. */
export interface HeadToSign {
  readonly siteId: string;
  readonly streamId: string;
  readonly sequence: number;
  /** Merkle root, hex */
  readonly root: string;
}

/** SubjectPublicKeyInfo of an Ed25519 key ends with its 32 bytes (RFC 8410, section 4). */
const RAW_BYTES = 32;
/** Signature type of Ed25519 over the text itself (C2SP signed-note). */
const ED25519 = Buffer.from([0x01]);

const spki = (publicKey: KeyObject): Buffer => publicKey.export({ format: 'der', type: 'spki' });

/** SHA-256 of the public key in DER, pairs of hexadecimal digits with colons, to be read out and compared. */
export const fingerprintOf = (publicKey: KeyObject): string =>
  (createHash('sha256').update(spki(publicKey)).digest('hex').toUpperCase().match(/../g) ?? []).join(':');

/** The first line of what is signed: nothing else that a key may sign begins with it. */
export const originOf = ({ siteId, streamId }: Pick<HeadToSign, 'siteId' | 'streamId'>): string =>
  `seatwell/record/${siteId}/${streamId}`;

/** What is signed: origin, number of events, root in base64, and the time of signing; each a line. */
const textOf = (head: HeadToSign, at: Date): string =>
  [
    originOf(head),
    String(head.sequence),
    Buffer.from(head.root, 'hex').toString('base64'),
    `time ${at.toISOString()}`,
    '',
  ].join('\n');

/**
 * A signed head: a checkpoint (C2SP tlog-checkpoint) in a signed note (C2SP signed-note), so that a witness's programs of
 * any maker can read it. The time is an extension line: the forms have none, and a witness wants to know from when a head is.
 * @param at when it is signed
 */
export function signedHead(head: HeadToSign, at: Date, privateKey: KeyObject, publicKey: KeyObject): string {
  const text = textOf(head, at);
  const name = originOf(head);
  const raw = spki(publicKey).subarray(-RAW_BYTES);
  const keyId = createHash('sha256').update(`${name}\n`).update(ED25519).update(raw).digest().subarray(0, 4);
  const signature = sign(null, Buffer.from(text, 'utf8'), privateKey);
  return `${text}\n— ${name} ${Buffer.concat([keyId, signature]).toString('base64')}\n`;
}
