import type { Payload } from '@seatwell/contract';
import { uuidv7 } from 'uuidv7';
import { accepted, command, siteCommand } from '../../api/support/plant.ts';
import { procedureContent } from '../../api/support/shutdown.ts';
import type { BuiltPlant } from './built-plant.ts';

type Method = Payload<'procedure-drafted'>['content']['method'];

/** Lets the plant's clock stand some hours back while something is told. */
export async function hoursAgo({ shutdown }: BuiltPlant, hours: number, tell: () => Promise<void>): Promise<void> {
  let now = new Date(Date.now() - hours * 3_600_000);
  Object.defineProperty(shutdown.plant, 'now', {
    configurable: true,
    get: () => now,
    set: (next: Date) => {
      now = next;
    },
  });
  await tell();
  Object.defineProperty(shutdown.plant, 'now', {
    configurable: true,
    get: () => new Date(),
    set: () => undefined,
  });
}

/** The pre-job talk on a procedure, with the technician and his mate. */
export async function holdTalk({ shutdown }: BuiltPlant, procedureId: string): Promise<void> {
  const talkId = uuidv7();
  accepted(
    await command(shutdown.plant, shutdown.chargehand, shutdown.shutdownId, 'talk-held', talkId, {
      talkId,
      procedureId,
      revision: 1,
      crewId: shutdown.crewId,
      heldBy: shutdown.chargehand.personId,
      attendees: [shutdown.technician, shutdown.mate].map(({ personId }) => ({ personId, signedBy: 'pin' as const })),
    }),
  );
}

/** A procedure of another method, approved and talked about. */
export async function procedureFor(plant: BuiltPlant, code: string, method: Method): Promise<string> {
  const { shutdown } = plant;
  const procedureId = uuidv7();
  const content = { ...procedureContent(shutdown.lubricantId), method };
  for (const step of [
    siteCommand(shutdown.plant, shutdown.engineer, 'procedure-drafted', procedureId, {
      procedureId,
      revision: 1,
      code,
      title: code,
      content,
    }),
    siteCommand(shutdown.plant, shutdown.engineer, 'procedure-approved', procedureId, { revision: 1 }),
  ])
    accepted(await step);
  await holdTalk(plant, procedureId);
  return procedureId;
}
