import type { EventType } from '@seatwell/contract';
import { actionFor, roleAllows } from '@seatwell/workflow';
import type { Transaction } from '../../platform/database/pool.ts';
import type { StoredSignature } from '../../platform/record/append.ts';
import { contentHash } from '../../platform/record/canonical.ts';
import { nameCommitment } from '../../platform/record/commitment.ts';
import type { Actor } from '../../platform/sign-in/sessions.ts';

/** What was shown to the signer: the decision, what it is about, and the versions seen. */
interface Shown {
  readonly payload: unknown;
  readonly signature: { readonly meaning: string } | null;
}

/** The signature as it is kept: printed name (as a commitment), role, meaning, time and the hash of what was shown. */
export async function signatureOf(
  tx: Transaction,
  actor: Actor,
  type: EventType,
  command: Shown & object,
  signedAt: string,
): Promise<StoredSignature> {
  const { rows } = await tx.query<{ name: string; name_salt: Buffer }>(
    "SELECT coalesce(name, '') AS name, name_salt FROM person WHERE site_id = $1 AND person_id = $2",
    [actor.siteId, actor.personId],
  );
  const person = rows[0];
  if (!person) throw new Error(`Account ${actor.accountId} has no person.`);
  const { signature, ...shown } = command;
  const action = actionFor(type, command.payload);
  return {
    personId: actor.personId,
    nameCommitment: nameCommitment(person.name, person.name_salt),
    role: actor.grants.find((grant) => roleAllows(grant.role, action))?.role ?? '',
    meaning: signature?.meaning ?? '',
    signedAt,
    contentHash: contentHash({ type, shown }).toString('hex'),
  };
}
