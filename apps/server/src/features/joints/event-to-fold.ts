import type { EventType } from '@seatwell/contract';
import { CATALOGUE, type RecordedEvent } from '@seatwell/workflow';
import type { DecisionInput } from '../recording/decision.ts';

type About = Pick<RecordedEvent, 'jointId' | 'makeId' | 'payload'> &
  Partial<Pick<RecordedEvent, 'evidence' | 'reviewCodes'>> & { readonly type?: EventType };

/** The event that a command is about to record, as the fold reads it. */
export function eventToFold(input: DecisionInput, about: About): RecordedEvent {
  const type = about.type ?? input.type;
  return {
    eventId: input.eventId,
    type,
    v: CATALOGUE[type].currentVersion,
    // The true sequence comes from the stream's head, last; for the fold it only has to come after all others.
    sequence: Number.MAX_SAFE_INTEGER,
    jointId: about.jointId,
    makeId: about.makeId,
    payload: about.payload,
    evidence: about.evidence ?? {},
    accountId: input.actor.accountId,
    recordedByPersonId: input.actor.personId,
    performedBy: input.performedBy,
    workTime: input.workTime,
    recordedAt: input.now,
    signed: input.signed,
    reviewCodes: about.reviewCodes ?? [],
  };
}
