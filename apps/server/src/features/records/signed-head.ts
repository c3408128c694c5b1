import type { RecordHead as AnsweredHead, RecordKeys } from '@seatwell/contract';
import type { Database } from '../../platform/database/pool.ts';
import { Problem } from '../../platform/errors/problem.ts';
import type { HeadSigner } from '../../platform/record-key/head-signer.ts';
import { headOf, type RecordHead } from './head-of.ts';

export interface SigningParts {
  readonly db: Database;
  readonly signer: HeadSigner;
}

interface Stream {
  readonly siteId: string;
  readonly streamId: string;
}

/** What an export carries of the signing: the head signed, where heads are, and every public key that ever signed. */
export interface CarriedSignature {
  /** null where heads are not signed */
  readonly signedHead: string | null;
  /** a key that comes with a file proves nothing by itself: its fingerprint must be known from elsewhere */
  readonly keys: readonly { readonly fingerprint: string; readonly publicKey: string }[];
}

/** The signature that goes with an export of this head. */
export async function carriedSignature(
  signer: HeadSigner,
  stream: Stream,
  { sequence, root }: RecordHead,
): Promise<CarriedSignature> {
  const { signed } = await signer.sign({ ...stream, sequence, root });
  const { known } = await signer.signing();
  return { signedHead: signed, keys: known.map(({ fingerprint, publicKey }) => ({ fingerprint, publicKey })) };
}

/** `GET /record/head`: what somebody outside can keep, to see later that nothing before it was changed. */
export async function answeredHead({ db, signer }: SigningParts, stream: Stream): Promise<AnsweredHead> {
  const { sequence, root, changedAt } = await headOf(db, stream.siteId, stream.streamId);
  const signature = await signer.sign({ ...stream, sequence, root });
  return { sequence, root, changedAt: changedAt.toISOString(), ...signature };
}

/** A signed head as a file of its own. @throws Problem `head-unsigned` with the reason and the remedy */
export async function signedHeadFile(
  { db, signer }: SigningParts,
  stream: Stream,
): Promise<{ readonly name: string; readonly note: string }> {
  const { sequence, root } = await headOf(db, stream.siteId, stream.streamId);
  const { signed, unsigned } = await signer.sign({ ...stream, sequence, root });
  if (signed === null) throw new Problem('head-unsigned', unsigned);
  return { name: `head-${stream.streamId}-${sequence}.txt`, note: signed };
}

/** `GET /record-keys`: the public keys that signed heads, the one that signs now last. */
export async function recordKeys(signer: HeadSigner): Promise<RecordKeys> {
  const { known, key } = await signer.signing();
  return {
    signs: key?.fingerprint ?? null,
    keys: known.map(({ since, ...each }) => ({ ...each, since: since.toISOString() })),
  };
}
