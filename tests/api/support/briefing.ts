import type { TighteningMethod } from '@seatwell/contract';
import { uuidv7 } from 'uuidv7';
import { accepted, siteCommand } from './plant.ts';
import type { Shutdown } from './shutdown.ts';
import { holdTalk } from './talk.ts';

/** Qualifies the crew for a method and has it briefed on the procedure. */
export async function qualifyAndBrief(
  shutdown: Shutdown,
  procedureId: string,
  method: TighteningMethod,
): Promise<void> {
  const { plant, inspector, technician, mate } = shutdown;
  for (const { personId } of [technician, mate]) {
    const qualificationId = uuidv7();
    accepted(
      await siteCommand(plant, inspector, 'qualification-recorded', qualificationId, {
        qualificationId,
        personId,
        qualifiedFor: [method],
        validFrom: '2026-01-01',
        validThrough: '2028-01-01',
        scheme: 'test scheme',
        certificate: null,
      }),
    );
  }
  await holdTalk(shutdown, procedureId);
}
