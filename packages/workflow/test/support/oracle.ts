import type { Payload } from '@seatwell/contract';
import { hasReached, type JointState, type MakeState, passesStage, type RecordedEvent } from '@seatwell/workflow';

/**
 * What the record must show for a make to be where it is, read from its events alone and written apart from the
 * fold: the events that count, in order of work time.
 */
function countingEvents(make: MakeState, events: readonly RecordedEvent[]): readonly RecordedEvent[] {
  const out = new Set([...make.waiting, ...make.superseded].map((e) => e.eventId));
  const corrections = new Map<string, unknown>();
  for (const event of events) {
    const named = (event.payload as { eventId?: string }).eventId ?? '';
    if (event.type === 'revoked') {
      const type = events.find((e) => e.eventId === named)?.type;
      if (type !== 'target-approved' && type !== 'procedure-assigned') out.add(named);
    }
    if (event.type === 'review-settled' && (event.payload as { outcome: string }).outcome === 'reject-as-not-done')
      out.add(named);
    if (event.type === 'corrected') corrections.set(named, (event.payload as Payload<'corrected'>).payload);
  }
  return events
    .filter((event) => event.makeId === make.makeId && !out.has(event.eventId))
    .map((event) => ({ ...event, payload: corrections.get(event.eventId) ?? event.payload }))
    .sort((a, b) => Date.parse(a.workTime) - Date.parse(b.workTime) || a.sequence - b.sequence);
}

const PASSES = [1, 2, 3];

/** Each thing that is missing for the stage that the make is at; empty when the record carries it. */
export function missingFor(joint: JointState, make: MakeState, events: readonly RecordedEvent[]): string[] {
  const counted = countingEvents(make, events);
  const missing: string[] = [];
  const last = (...types: string[]) => counted.findLastIndex((e) => types.includes(e.type));
  const needs = (stage: MakeState['stage'], what: string, there: () => boolean) => {
    if (passesStage(make.workScope, stage) && hasReached(make.stage, stage) && !there())
      missing.push(`${joint.tag} make ${make.number} (${make.workScope}, ${make.stage}): ${what}`);
  };
  const opened = last('opened');
  const since = counted.slice(opened + 1);
  needs('engineered', 'procedure', () => last('procedure-assigned') >= 0);
  needs('engineered', 'target', () => last('target-approved') >= 0);
  needs('released', 'signed release', () => counted.some((e) => e.type === 'break-released' && e.signed));
  needs('open', 'opening', () => opened >= 0);
  needs('faces-accepted', 'faces accepted since it was opened', () =>
    since.some((e) => e.type === 'faces-inspected' && (e.payload as Payload<'faces-inspected'>).accepted),
  );
  needs('nipped-up', 'nipped up since it was opened', () => since.some((e) => e.type === 'nipped-up'));

  const finalRound = counted.findLastIndex(
    (e) => e.type === 'final-round-recorded' && !(e.payload as Payload<'final-round-recorded'>).nutMoved,
  );
  needs(
    'tight',
    'final round after anything that undid it',
    () => finalRound > last('opened', 'loosened', 'stud-replaced'),
  );
  needs('tight', 'every pass since it was opened or loosened', () => {
    const loose = last('opened', 'loosened');
    const done = counted
      .filter((e, index) => e.type === 'pass-recorded' && index > loose && index < finalRound)
      .map((e) => e.payload as Payload<'pass-recorded'>)
      .filter((pass) => pass.outcome === 'finished');
    return PASSES.every((n) => done.some(({ pass }) => pass === n));
  });
  const check = counted.findLastIndex(
    (e) => e.type === 'checked' && (e.payload as Payload<'checked'>).outcome === 'accepted',
  );
  const leak = last('leak-found');
  needs('checked', 'check after the final round and any leak', () => check > finalRound && check > leak);
  needs('proven', 'proof after the check and any leak', () => last('proven') > Math.max(check, leak));
  needs('handed-over', 'hand-over after the check and any leak', () => last('handed-over') > Math.max(check, leak));
  return missing;
}
