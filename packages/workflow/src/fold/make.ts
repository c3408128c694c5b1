import type { EventType } from '@seatwell/contract';
import { eventKind, isEventType, needsSignature } from '../catalogue.ts';
import type { MakeState, RecordedEvent, WaitingReview } from '../state.ts';
import { moment } from '../time.ts';
import { type OutOfOrder, outOfOrder } from './order.ts';
import { upcast } from './upcast.ts';
import { WORK } from './work.ts';

const LEFT_OUT_BY_REVOCATION: readonly string[] = ['procedure-assigned', 'target-approved'];

const later = (a: string | null, b: string): string => (a && moment(a) >= moment(b) ? a : b);

/** What was done stays done and waits for its place; what was signed over it no longer stands. */
const waitsForItsPlace = (type: string, payload: unknown): boolean =>
  isEventType(type) && eventKind(type, payload) === 'fact' && !needsSignature(type, payload);

function wait(
  make: MakeState,
  event: RecordedEvent,
  codes: readonly string[],
  misplaced: OutOfOrder | null,
): MakeState {
  const waiting: WaitingReview = {
    eventId: event.eventId,
    type: event.type,
    codes,
    workTime: event.workTime,
    behind: misplaced ? (make.waiting[0]?.eventId ?? null) : null,
    missing: misplaced?.detail ?? null,
  };
  return { ...make, waiting: [...make.waiting, waiting] };
}

/**
 * One event of a make, in its place in the order of work time. A fact in review, and a fact that has no place
 * yet because an earlier one is in review or missing, waits; what was signed and has no place is superseded.
 */
export function foldMake(make: MakeState, event: RecordedEvent): MakeState {
  const payload = upcast(event.type, event.v, event.payload);
  const seen: MakeState = {
    ...make,
    lastEventAt: later(make.lastEventAt, event.workTime),
    lastEventBy: event.performedBy.length > 0 ? event.performedBy : make.lastEventBy,
  };
  const misplaced = outOfOrder(seen, event.type, payload);
  if (event.reviewCodes.length > 0) return wait(seen, event, event.reviewCodes, misplaced);
  if (misplaced && waitsForItsPlace(event.type, payload)) return wait(seen, event, [misplaced.code], misplaced);
  if (misplaced) return { ...seen, superseded: [...seen.superseded, { eventId: event.eventId, type: event.type }] };
  const apply = WORK[event.type as keyof typeof WORK] as
    | ((make: MakeState, payload: unknown, event: RecordedEvent) => MakeState)
    | undefined;
  return apply ? apply(seen, payload, event) : seen;
}

/** Whether revoking a decision of this type counts from the revocation on instead of from the decision. */
export const revokedFromNowOn = (type: string): boolean => LEFT_OUT_BY_REVOCATION.includes(type);

/**
 * A procedure or target that is revoked is gone from then on; what was done under it was done under it. Before
 * the release the make falls back to planned; after it, the passes wait for a new target.
 */
export function foldRevocation(make: MakeState, type: EventType, event: RecordedEvent): MakeState {
  const next: MakeState = {
    ...make,
    procedure: type === 'procedure-assigned' ? null : make.procedure,
    target: null,
    lastEventAt: later(make.lastEventAt, event.workTime),
  };
  return make.stage === 'engineered' ? { ...next, stage: 'planned', stageSince: event.workTime } : next;
}
