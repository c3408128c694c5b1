import { randomUUID } from 'node:crypto';
import type { EventType, FailedRuleAnswer, TryAnswer, tryInput } from '@seatwell/contract';
import { CATALOGUE, eventKind, needsSignature } from '@seatwell/workflow';
import type { z } from 'zod';
import { inTransaction } from '../../platform/database/pool.ts';
import { Problem } from '../../platform/errors/problem.ts';
import type { Reading } from '../reading/reading.ts';
import type { DecisionInput, Recording } from '../recording/decision.ts';
import { EventPayloadError, parsePayload } from '../recording/parse-payload.ts';
import { recordOnJoint } from './decisions.ts';

/** Carries the outcome out of the transaction that must not be kept. */
class RolledBack extends Error {
  readonly recording: Recording;

  constructor(recording: Recording) {
    super('rolled back');
    this.recording = recording;
  }
}

const TRIED: readonly string[] = Object.entries(CATALOGUE)
  .filter(([, entry]) => entry.subject === 'make')
  .map(([type]) => type);

function parsed(type: string, payload: unknown): { type: EventType; payload: never } {
  if (!TRIED.includes(type))
    throw new Problem('bad-input', `“${type}” is not recorded on a make, so it cannot be tried on one.`);
  try {
    return { type: type as EventType, payload: parsePayload(type as EventType, payload) as never };
  } catch (error) {
    if (!(error instanceof EventPayloadError)) throw error;
    throw new Problem('bad-input', error.message, error.items);
  }
}

const ruleOf = (item: Problem['items'][number]): FailedRuleAnswer => ({
  rule: item.code,
  severity: item['severity'] as FailedRuleAnswer['severity'],
  joint: (item['joint'] as string | null) ?? null,
  message: item.message,
  why: String(item['why'] ?? ''),
  remedy: String(item['remedy'] ?? ''),
  detail: String(item['detail'] ?? ''),
});

function refusal(error: Problem): TryAnswer {
  const none = { wouldRecord: false, failed: [], flags: [], problem: null, stage: null };
  if (error.code !== 'rules-not-met') return { ...none, problem: { code: error.code, message: error.message } };
  const rules = error.items.map(ruleOf);
  return {
    ...none,
    failed: rules.filter((rule) => rule.severity !== 'flag'),
    flags: rules.filter((rule) => rule.severity === 'flag'),
  };
}

/**
 * Runs a decision about a make in a transaction that is rolled back, as if the caller had signed: a screen shows every
 * failed rule before anybody types a secret.
 * @throws Problem `bad-input` for an event that is not recorded on a make, or a payload that is none
 */
export async function tryRecord(
  reading: Reading,
  where: { readonly jointId: string; readonly makeId: string; readonly type: string },
  body: z.output<typeof tryInput>,
): Promise<TryAnswer> {
  const { type, payload } = parsed(where.type, body.payload);
  const { actor, shutdown, now } = reading;
  const kind = eventKind(type, payload);
  try {
    return await inTransaction(reading.db, async (tx) => {
      const input: DecisionInput = {
        tx,
        type,
        payload,
        eventId: randomUUID(),
        subjectId: where.jointId,
        makeId: where.makeId,
        actor,
        now,
        workTime: kind === 'fact' ? earlier(body.at ?? now, now) : now,
        doubtfulTime: false,
        performedBy: body.performedBy.length > 0 ? body.performedBy : [actor.personId],
        versionSeen: body.versionSeen,
        alreadyDone: false,
        signed: needsSignature(type, payload),
        shutdown,
      };
      throw new RolledBack(await recordOnJoint(input));
    });
  } catch (error) {
    if (error instanceof RolledBack) return answerOf(error.recording);
    if (error instanceof Problem && error.code !== 'not-found') return refusal(error);
    throw error;
  }
}

const earlier = (a: string, b: string): string => (Date.parse(a) < Date.parse(b) ? new Date(a).toISOString() : b);

const answerOf = (recording: Recording): TryAnswer => ({
  wouldRecord: true,
  failed: [],
  flags: [...(recording.failed ?? [])],
  problem: null,
  stage: (recording.stage ?? null) as TryAnswer['stage'],
});
