import type { EventType, Payload } from '@seatwell/contract';
import { Problem } from '../../platform/errors/problem.ts';

/**
 * Events that bring about a thing say its id twice: as their subject, and in what they say. A calibration is
 * recorded about its tool, which is what the reader of the record looks for.
 */
const OWN_ID: { readonly [T in EventType]?: keyof Payload<T> & string } = {
  'area-listed': 'areaId',
  'system-listed': 'systemId',
  'crew-listed': 'crewId',
  'permit-recorded': 'permitId',
  'talk-held': 'talkId',
  'punch-raised': 'punchId',
  'item-registered': 'itemId',
  'blind-planned': 'blindId',
  'pack-planned': 'packId',
  'person-registered': 'personId',
  'account-opened': 'accountId',
  'role-granted': 'grantId',
  'qualification-recorded': 'qualificationId',
  'tool-registered': 'toolId',
  'calibration-recorded': 'toolId',
  'calibration-cleared': 'calibrationId',
  'procedure-drafted': 'procedureId',
  'target-table-approved': 'tableId',
  'gasket-data-entered': 'gasketDataId',
  'lubricant-entered': 'lubricantId',
  'maker-torque-entered': 'makerTorqueId',
  'key-enrolled': 'keyId',
};

/** @throws Problem `bad-input` when the record would say of one thing what was meant for another */
export function refuseOtherSubject(type: EventType, subjectId: string, payload: unknown): void {
  const field = OWN_ID[type];
  if (!field) return;
  const own = (payload as Record<string, unknown>)[field];
  if (own === subjectId) return;
  throw new Problem('bad-input', `The command is about ${subjectId}, and its ${field} is ${String(own)}.`, [
    { path: 'subjectId', code: 'other-subject', message: `Give the same id as payload.${field}.` },
  ]);
}
