import type { CommandAnswer, EventType, Payload } from '@seatwell/contract';
import { CATALOGUE, eventKind, needsSignature } from '@seatwell/workflow';
import { type Database, inTransaction, type Transaction } from '../../platform/database/pool.ts';
import { Problem } from '../../platform/errors/problem.ts';
import { appendEvent, type StoredSignature } from '../../platform/record/append.ts';
import { contentHash } from '../../platform/record/canonical.ts';
import { confirmSecret } from '../../platform/sign-in/accounts.ts';
import type { Actor } from '../../platform/sign-in/sessions.ts';
import { loadShutdown } from '../shutdowns/load-shutdown.ts';
import type { Decide, DecisionInput, Recording } from './decision.ts';
import { refuseOtherSubject } from './refuse-other-subject.ts';
import { decisionFor } from './registry.ts';
import { requirePaperForm } from './require-paper-form.ts';
import { applyRollup } from './rollup.ts';
import { signatureOf } from './signature.ts';
import { workTime } from './work-time.ts';

/** The time of the command path: the server's clock, or the time of history that is loaded. */
export type Clock = () => Date;

export interface RecordingParts {
  readonly db: Database;
  readonly clock: Clock;
}

/** A command as it arrives, already parsed by its schema. */
export interface Command<T extends EventType = EventType> {
  readonly eventId: string;
  readonly v: 1;
  readonly subjectId: string;
  readonly makeId: string | null;
  readonly deviceTime: string;
  readonly clockOffset_ms: number;
  readonly device: string | null;
  readonly performedBy: readonly string[];
  readonly versionSeen: number | null;
  readonly alreadyDone: boolean;
  readonly paperForm?: string | null;
  readonly signature: { readonly secret: string; readonly meaning: string } | null;
  readonly payload: Payload<T>;
}

/** Which stream a command goes to: a shutdown's, or the site's. */
export interface StreamTarget {
  readonly shutdownId: string | null;
}

/**
 * Records one command: the same id again gets the first answer again; a signature is checked before anything is
 * locked; decision, projections, event and rollups stand or fall together.
 * @throws Problem with every rule that stops it, or what is wrong with the command
 */
export async function recordCommand<T extends EventType>(
  parts: RecordingParts,
  actor: Actor,
  target: StreamTarget,
  type: T,
  command: Command<T>,
): Promise<CommandAnswer> {
  const hash = commandHash(actor, target, type, command);
  const earlier = await earlierAnswer<CommandAnswer>(parts.db, actor.siteId, command.eventId, hash);
  if (earlier) return earlier;
  const signed = await confirmSignature(parts.db, actor, type, command);
  try {
    return await inTransaction(parts.db, (tx) =>
      recordInTransaction(tx, parts.clock, actor, target, type, command, hash, signed),
    );
  } catch (error) {
    if (!isEventIdTaken(error)) throw error;
    // The same command arrived twice at once and the other one was first.
    const first = await earlierAnswer<CommandAnswer>(parts.db, actor.siteId, command.eventId, hash);
    if (first) return first;
    throw error;
  }
}

/** The part of `recordCommand` that runs in its transaction; the set-up of a site calls it before anybody can sign. */
export async function recordInTransaction<T extends EventType>(
  tx: Transaction,
  clock: Clock,
  actor: Actor,
  target: StreamTarget,
  type: T,
  command: Command<T>,
  hash: Buffer = commandHash(actor, target, type, command),
  signed = false,
): Promise<CommandAnswer> {
  refuseOtherSubject(type, command.subjectId, command.payload);
  const now = clock().toISOString();
  const shutdown =
    target.shutdownId && type !== 'shutdown-opened' ? await loadShutdown(tx, actor.siteId, target.shutdownId) : null;
  const kind = eventKind(type, command.payload);
  const measured = workTime(command.deviceTime, command.clockOffset_ms, now);
  const input: DecisionInput<T> = {
    tx,
    type,
    payload: command.payload,
    eventId: command.eventId,
    subjectId: command.subjectId,
    makeId: command.makeId,
    actor,
    now,
    workTime: kind === 'fact' ? measured.at : now,
    doubtfulTime: kind === 'fact' && measured.doubtful,
    performedBy: command.performedBy.length > 0 ? command.performedBy : [actor.personId],
    versionSeen: command.versionSeen,
    alreadyDone: command.alreadyDone,
    signed,
    shutdown,
  };
  await requirePaperForm(tx, actor.siteId, kind, command.paperForm ?? null);
  const decide = decisionFor(type) as Decide<T>;
  const recording = await decide(input);
  const signature = signed ? await signatureOf(tx, actor, type, command, now) : null;
  return append(input, target, kind, command, hash, recording, signature);
}

async function append<T extends EventType>(
  input: DecisionInput<T>,
  target: StreamTarget,
  kind: 'fact' | 'decision',
  command: Command<T>,
  hash: Buffer,
  recording: Recording,
  signature: StoredSignature | null,
): Promise<CommandAnswer> {
  const { tx, actor } = input;
  const reviewCodes = recording.reviewCodes ?? [];
  const answer = (sequence: number): CommandAnswer => ({
    eventId: command.eventId,
    sequence,
    recordedAt: input.now,
    disposition: reviewCodes.length > 0 ? 'needs-review' : 'applied',
    failed: [...(recording.failed ?? [])],
    subjectId: command.subjectId,
    stage: recording.stage ?? null,
    version: recording.version ?? null,
  });
  const sequence = await appendEvent(tx, {
    siteId: actor.siteId,
    streamId: target.shutdownId ?? actor.siteId,
    eventId: command.eventId,
    type: input.type,
    v: CATALOGUE[input.type].currentVersion,
    kind,
    subjectId: command.subjectId,
    jointId: recording.jointId ?? null,
    makeId: recording.makeId ?? null,
    accountId: actor.accountId,
    personId: actor.personId,
    performedBy: input.performedBy,
    device: command.device,
    deviceTime: command.deviceTime,
    workTime: input.workTime,
    recordedAt: input.now,
    payload: recording.storedPayload ?? command.payload,
    evidence: { ...recording.evidence, ...(command.paperForm ? { paperForm: command.paperForm } : {}) },
    signature,
    reviewCodes,
    amends: recording.amends ?? null,
    commandHash: hash,
    rows: recording.rows ?? [],
    answer,
  });
  if (target.shutdownId) await applyRollup(tx, actor.siteId, target.shutdownId, recording.rollup ?? []);
  return answer(sequence);
}

interface Sent {
  readonly signature?: { readonly meaning: string } | null;
  readonly deviceTime?: unknown;
  readonly clockOffset_ms?: unknown;
  readonly device?: unknown;
  readonly alreadyDone?: unknown;
  readonly paperForm?: unknown;
}

/** What names a person: after an erasure a hash of it could be tried out name by name, so that none is kept. */
const NAMES_A_PERSON: Readonly<Record<string, readonly string[]>> = {
  'person-registered': ['name', 'badge'],
  'account-opened': ['email'],
};

function withoutNames(type: string, said: { readonly payload?: unknown }): object {
  const names = NAMES_A_PERSON[type];
  if (!names) return said;
  const rest = Object.entries(said.payload ?? {}).filter(([key]) => !names.includes(key));
  return { ...said, payload: Object.fromEntries(rest) };
}

/**
 * What an event id is bound to: the account and everything said. Not the secret, and not when and how it was sent:
 * a device that got no answer sends again later, and may by then say that the work is already done.
 */
export function commandHash(actor: Actor, target: StreamTarget, type: string, command: object): Buffer {
  const {
    signature,
    deviceTime: _at,
    clockOffset_ms: _off,
    device: _by,
    alreadyDone: _done,
    paperForm,
    ...said
  } = command as Sent;
  // Left out where there is none, as in commands from before there were paper forms.
  const bound = paperForm ? { ...said, paperForm } : said;
  return contentHash({
    account: actor.accountId,
    stream: target.shutdownId,
    type,
    said: withoutNames(type, bound),
    meaning: signature?.meaning ?? null,
  });
}

/** The answer that this event id got before. @throws Problem `event-id-reused` when it said something else */
export async function earlierAnswer<A>(db: Database, siteId: string, eventId: string, hash: Buffer): Promise<A | null> {
  const { rows } = await db.query<{ command_hash: Buffer; response: A }>({
    name: 'earlier-answer',
    text: 'SELECT command_hash, response FROM event WHERE site_id = $1 AND event_id = $2',
    values: [siteId, eventId],
  });
  const event = rows[0];
  if (!event) return null;
  if (!event.command_hash.equals(hash)) {
    throw new Problem(
      'event-id-reused',
      `Event ${eventId} was recorded with other content or by another account. Make a new id for each new command.`,
    );
  }
  return event.response;
}

/** @throws Problem `signature-missing` or `wrong-secret` */
export async function confirmSignature(
  db: Database,
  actor: Actor,
  type: EventType,
  command: { readonly payload: unknown; readonly signature: { readonly secret: string } | null },
): Promise<boolean> {
  if (!needsSignature(type, command.payload)) return false;
  if (!command.signature) {
    throw new Problem(
      'signature-missing',
      'Type your secret again to sign: the record binds your name, the time and what you saw.',
    );
  }
  await confirmSecret(db, actor.siteId, actor.accountId, command.signature.secret);
  return true;
}

const isEventIdTaken = (error: unknown): boolean =>
  error instanceof Error &&
  (error as { code?: string }).code === '23505' &&
  (error as { constraint?: string }).constraint === 'event_site_id_event_id_key';
