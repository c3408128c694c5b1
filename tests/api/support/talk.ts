import { uuidv7 } from 'uuidv7';
import { accepted, command } from './plant.ts';
import type { Shutdown } from './shutdown.ts';

/** The pre-job talk on a procedure, held now. @param personIds who hears it; the crew, if nobody is named */
export async function holdTalk(
  shutdown: Shutdown,
  procedureId: string = shutdown.procedureId,
  personIds: readonly string[] = [shutdown.technician, shutdown.mate, shutdown.chargehand].map(
    ({ personId }) => personId,
  ),
): Promise<void> {
  const { plant, chargehand, shutdownId, crewId } = shutdown;
  const talkId = uuidv7();
  accepted(
    await command(plant, chargehand, shutdownId, 'talk-held', talkId, {
      talkId,
      procedureId,
      revision: 1,
      crewId,
      heldBy: chargehand.personId,
      attendees: personIds.map((personId) => ({ personId, signedBy: 'pin' as const })),
    }),
  );
}
