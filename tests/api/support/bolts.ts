import type { Payload, ProcedureBolts } from '@seatwell/contract';
import { uuidv7 } from 'uuidv7';
import { accepted, siteCommand } from './plant.ts';
import { procedureContent } from './sample-plant.ts';
import type { Shutdown } from './shutdown.ts';

/** New bare bolts without washers, of a steel whose values were given. */
export const steelBolts: ProcedureBolts = {
  condition: 'new',
  coating: null,
  washers: null,
  material: { elasticModulus_MPa: 204_000, expansion_perK: 1.2e-5, source: 'test steel' },
};

/** An approved procedure like the standard one of the tests, with what it says of its bolts. */
export async function procedureWith(
  shutdown: Shutdown,
  code: string,
  change: Partial<Payload<'procedure-drafted'>['content']>,
): Promise<string> {
  const { plant, engineer } = shutdown;
  const procedureId = uuidv7();
  const content = { ...procedureContent(shutdown.lubricantId), ...change };
  accepted(
    await siteCommand(plant, engineer, 'procedure-drafted', procedureId, {
      procedureId,
      revision: 1,
      code,
      title: `Procedure ${code}`,
      content,
    }),
  );
  accepted(await siteCommand(plant, engineer, 'procedure-approved', procedureId, { revision: 1 }));
  return procedureId;
}
