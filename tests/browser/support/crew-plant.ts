import type { Payload } from '@seatwell/contract';
import { uuidv7 } from 'uuidv7';
import { accepted, siteCommand } from '../../api/support/plant.ts';
import { procedureContent } from '../../api/support/sample-plant.ts';
import { holdTalk } from '../../api/support/talk.ts';
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
  await holdTalk(shutdown, procedureId);
  return procedureId;
}
