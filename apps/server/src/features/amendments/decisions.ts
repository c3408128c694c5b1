import { Problem } from '../../platform/errors/problem.ts';
import { recordOnJoint } from '../joints/decisions.ts';
import { keptReading, settleReading } from '../packs/settle-reading.ts';
import { raisePunchItem } from '../punch-items/decisions.ts';
import type { DecisionInput, Decisions, Recording } from '../recording/decision.ts';
import { EventPayloadError, parsePayload } from '../recording/parse-payload.ts';
import { shutdownOf } from '../recording/shutdown-of.ts';
import { type NamedInRecord, namedEvent } from './named-event.ts';

async function named(input: DecisionInput, eventId: string): Promise<NamedInRecord> {
  const event = await namedEvent(input.tx, input.actor.siteId, shutdownOf(input).shutdownId, eventId, input.subjectId);
  if (!event) {
    throw new Problem('not-found', `The record of this joint has no event ${eventId}.`, [
      { path: 'payload.eventId', code: 'unknown-event', message: eventId },
    ]);
  }
  return event;
}

const amended = (recording: Recording, event: NamedInRecord): Recording => ({ ...recording, amends: event.eventId });

/** Corrections, revocations and settled reviews: what was recorded stays, and both stay visible. */
export const amendmentDecisions: Decisions<'corrected' | 'revoked' | 'review-settled'> = {
  corrected: async (input) => {
    const event = await named(input, input.payload.eventId);
    try {
      parsePayload(event.type, input.payload.payload);
    } catch (error) {
      if (!(error instanceof EventPayloadError)) throw error;
      throw new Problem('bad-input', `The correction is no valid “${event.type}”: ${error.message}`, error.items);
    }
    return amended(await recordOnJoint({ ...input, makeId: event.makeId }, { named: event }), event);
  },

  revoked: async (input) => {
    const event = await named(input, input.payload.eventId);
    return amended(await recordOnJoint({ ...input, makeId: event.makeId }, { named: event }), event);
  },

  'review-settled': async (input) => {
    const reading = await keptReading(input);
    if (reading) return settleReading(input, reading);
    const event = await named(input, input.payload.eventId);
    const recording = await recordOnJoint({ ...input, makeId: event.makeId }, { named: event });
    if (input.payload.outcome === 'accept-with-punch-item') {
      await raisePunchItem(
        input.tx,
        shutdownOf(input),
        {
          punchId: input.payload.punchId ?? input.eventId,
          category: 'B',
          text: input.payload.reason,
          jointId: input.subjectId,
          packId: null,
          systemId: null,
          owner: null,
        },
        { at: input.now, by: input.actor.personId },
      );
    }
    return amended(recording, event);
  },
};
