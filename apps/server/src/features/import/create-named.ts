import type { EventType, Payload } from '@seatwell/contract';
import type { DecisionInput } from '../recording/decision.ts';
import { decisionFor } from '../recording/registry.ts';
import { derivedId } from './confirm.ts';
import type { Import } from './import-run.ts';

const CREATED = {
  areas: ['area-listed', 'areaId'],
  systems: ['system-listed', 'systemId'],
  crews: ['crew-listed', 'crewId'],
  packs: ['pack-planned', 'packId'],
} as const;

/** Areas, systems, crews and packs first; their events are appended at the end, under the stream's head. */
export async function createNamed(run: Import): Promise<{ type: EventType; id: string; payload: unknown }[]> {
  const created: { type: EventType; id: string; payload: unknown }[] = [];
  for (const [kind, [type, idName]] of Object.entries(CREATED) as [
    keyof typeof CREATED,
    readonly [EventType, string],
  ][])
    for (const payload of run.preview.creations[kind]) {
      const id = (payload as unknown as Record<string, string>)[idName] as string;
      await decisionFor(type)({
        tx: run.tx,
        type,
        payload: payload as Payload<EventType>,
        eventId: derivedId(run.confirmation.eventId, id),
        subjectId: id,
        makeId: null,
        actor: run.actor,
        now: run.now,
        workTime: run.now,
        doubtfulTime: false,
        performedBy: [run.actor.personId],
        versionSeen: null,
        alreadyDone: false,
        signed: false,
        shutdown: run.shutdown,
      } satisfies DecisionInput);
      created.push({ type, id, payload });
    }
  return created;
}
