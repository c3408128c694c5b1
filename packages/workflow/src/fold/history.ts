import type { EventType, Payload } from '@seatwell/contract';
import { CATALOGUE, isEventType } from '../catalogue.ts';
import type { JointState, MakeState, RecordedEvent } from '../state.ts';
import { moment } from '../time.ts';
import { beginJoint, foldRegister } from './joint.ts';
import { foldMake, foldRevocation, revokedFromNowOn } from './make.ts';
import { withMerged } from './merge.ts';
import { WORK } from './work.ts';

const AMENDMENTS: readonly string[] = ['corrected', 'revoked', 'review-settled'];

/** Signed over what was done: none of them outlives a correction of it. */
const SIGNED_OVER_WORK: readonly string[] = [
  'checked',
  'witnessed',
  'witness-waived',
  'proven',
  'hand-over-offered',
  'handed-over',
];

const isWork = (event: RecordedEvent): boolean => Object.hasOwn(WORK, event.type);

const bySequence = (a: RecordedEvent, b: RecordedEvent): number => a.sequence - b.sequence;

const byWorkTime = (a: RecordedEvent, b: RecordedEvent): number =>
  moment(a.workTime) - moment(b.workTime) || bySequence(a, b);

/** Blinds and punch items name a joint and stand in its history, but they have a state of their own. */
const changesJoint = ({ type }: RecordedEvent): boolean =>
  isEventType(type) && ['joint', 'make', 'event'].includes(CATALOGUE[type].subject);

interface Amendments {
  readonly replaced: ReadonlyMap<string, RecordedEvent>;
  readonly revoked: ReadonlyMap<string, RecordedEvent>;
  readonly settled: ReadonlyMap<string, Payload<'review-settled'>['outcome']>;
}

function amendmentsOf(events: readonly RecordedEvent[]): Amendments {
  const revoked = new Map<string, RecordedEvent>();
  const settled = new Map<string, Payload<'review-settled'>['outcome']>();
  const replaced = new Map<string, RecordedEvent>();
  for (const event of events) {
    if (event.type === 'revoked') revoked.set((event.payload as Payload<'revoked'>).eventId, event);
  }
  for (const event of events) {
    if (event.type !== 'review-settled' || revoked.has(event.eventId)) continue;
    const { eventId, outcome } = event.payload as Payload<'review-settled'>;
    settled.set(eventId, outcome);
  }
  for (const event of events) {
    if (event.type !== 'corrected') continue;
    const outcome = settled.get(event.eventId);
    const counts = event.reviewCodes.length === 0 || (outcome !== undefined && outcome !== 'reject-as-not-done');
    if (counts) replaced.set((event.payload as Payload<'corrected'>).eventId, event);
  }
  return { replaced, revoked, settled };
}

/** The event as it counts after correction and settling; null when it does not count at all. */
function asItCounts(event: RecordedEvent, { replaced, revoked, settled }: Amendments): RecordedEvent | null {
  if (revoked.has(event.eventId) && !revokedFromNowOn(event.type)) return null;
  const outcome = settled.get(event.eventId);
  if (outcome === 'reject-as-not-done') return null;
  const correction = replaced.get(event.eventId);
  return {
    ...event,
    reviewCodes: outcome ? [] : event.reviewCodes,
    payload: correction ? (correction.payload as Payload<'corrected'>).payload : event.payload,
  };
}

function foldMakeHistory(make: MakeState, events: readonly RecordedEvent[], amendments: Amendments): MakeState {
  const revocations = new Map<string, EventType>();
  const moving: RecordedEvent[] = [];
  for (const event of events) {
    const revocation = amendments.revoked.get(event.eventId);
    if (revocation && revokedFromNowOn(event.type)) {
      revocations.set(revocation.eventId, event.type as EventType);
      moving.push(revocation);
    }
    moving.push(event);
  }
  moving.sort(byWorkTime);

  let state = make;
  let correctedAt = -1;
  for (const event of moving) {
    const revokedType = revocations.get(event.eventId);
    if (revokedType) {
      state = foldRevocation(state, revokedType, event);
      continue;
    }
    if (SIGNED_OVER_WORK.includes(event.type) && event.sequence < correctedAt) {
      state = { ...state, superseded: [...state.superseded, { eventId: event.eventId, type: event.type }] };
      continue;
    }
    const correction = amendments.replaced.get(event.eventId);
    if (correction) correctedAt = Math.max(correctedAt, correction.sequence);
    const counting = asItCounts(event, amendments);
    if (counting) state = foldMake(state, counting);
  }
  return state;
}

/**
 * The state of a joint from all its events: the register in the order of recording, the work of each make in the
 * order of work time, with corrections, revocations and settled reviews in force. Any order of `events` will do.
 *
 * @returns null for no events
 * @throws Error when the first event recorded neither lists nor finds the joint
 */
export function foldHistory(events: readonly RecordedEvent[]): JointState | null {
  const own = events.filter(changesJoint);
  const recorded = [...withMerged(own)].sort(bySequence);
  const amendments = amendmentsOf(recorded);
  const counting = recorded.filter((event) => !isWork(event) && !AMENDMENTS.includes(event.type));
  const [first, ...rest] = counting;
  if (!first) return null;
  let joint = beginJoint(asItCounts(first, amendments) ?? first);
  for (const event of rest) {
    const counts = asItCounts(event, amendments);
    if (counts) joint = foldRegister(joint, counts);
  }
  const makes = joint.makes.map((make) =>
    foldMakeHistory(
      make,
      recorded.filter((event) => isWork(event) && event.makeId === make.makeId),
      amendments,
    ),
  );
  return { ...joint, makes, version: own.length };
}

/**
 * Whether an event changes more than the end of the story, so that the joint has to be folded again from all its
 * events: work that arrives late, a correction, a revocation, a settled review, the work of a found joint.
 */
export function needsFullFold(state: JointState | null, event: RecordedEvent): boolean {
  if (AMENDMENTS.includes(event.type) || event.evidence.merged) return true;
  if (!state || !isWork(event)) return false;
  const last = state.makes.find((make) => make.makeId === event.makeId)?.lastEventAt;
  return last != null && moment(event.workTime) < moment(last);
}

/**
 * The state after one more event, which comes after all that were folded before it.
 *
 * @throws Error when the event needs the whole history (see `needsFullFold`)
 */
export function foldJoint(state: JointState | null, event: RecordedEvent): JointState {
  if (needsFullFold(state, event))
    throw new Error(`Event ${event.eventId} (${event.type}) changes what came before it: fold the whole history.`);
  if (!state) return { ...beginJoint(event), version: 1 };
  const next = isWork(event)
    ? {
        ...state,
        makes: state.makes.map((make) => (make.makeId === event.makeId ? foldMake(make, event) : make)),
      }
    : foldRegister(state, event);
  return { ...next, version: state.version + 1 };
}
