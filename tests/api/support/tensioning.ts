import type { Payload } from '@seatwell/contract';
import { uuidv7 } from 'uuidv7';
import { qualifyAndBrief } from './briefing.ts';
import { accepted, siteCommand } from './plant.ts';
import { procedureContent } from './sample-plant.ts';
import type { Shutdown } from './shutdown.ts';

/** An approved procedure for tensioners that the crew is qualified for and was briefed on; coverage null = not said. */
export async function tensionerProcedure(
  shutdown: Shutdown,
  code: string,
  coverage: Payload<'procedure-drafted'>['content']['coverage'] = 0.5,
): Promise<string> {
  const { plant, engineer } = shutdown;
  const procedureId = uuidv7();
  accepted(
    await siteCommand(plant, engineer, 'procedure-drafted', procedureId, {
      procedureId,
      revision: 1,
      code,
      title: 'Tensioner',
      content: {
        ...procedureContent(shutdown.lubricantId),
        method: 'tensioner',
        passPercents: [50, 100],
        coverage: coverage ?? null,
      },
    }),
  );
  accepted(await siteCommand(plant, engineer, 'procedure-approved', procedureId, { revision: 1 }));
  await qualifyAndBrief(shutdown, procedureId, 'tensioner');
  return procedureId;
}

/** A tensioner, its pump and its gauge, each with a certificate through the shutdown. */
export async function tensionerTools(
  { plant, inspector }: Shutdown,
  names: readonly [string, string, string] = ['TN-1', 'PU-1', 'GA-1'],
) {
  const register = async (
    tag: string,
    more: Pick<Payload<'tool-registered'>, 'kind' | 'scaleDivision'>,
    area?: number,
  ) => {
    const toolId = uuidv7();
    accepted(
      await siteCommand(plant, inspector, 'tool-registered', toolId, {
        toolId,
        tag,
        maker: null,
        scaleMinimum: null,
        scaleMaximum: 150,
        scaleUnit: 'MPa',
        ...more,
        ...(area === undefined ? {} : { hydraulicArea_mm2: area }),
      }),
    );
    accepted(
      await siteCommand(plant, inspector, 'calibration-recorded', toolId, {
        calibrationId: uuidv7(),
        toolId,
        calibratedOn: '2026-10-01',
        validThrough: '2027-10-01',
        certificate: null,
        certificateNumber: `C-${tag}`,
        provisional: false,
        pairs: [],
      }),
    );
    return toolId;
  };
  return {
    toolId: await register(names[0], { kind: 'tensioner', scaleDivision: null }, 1500),
    pumpId: await register(names[1], { kind: 'pump', scaleDivision: null }),
    gaugeId: await register(names[2], { kind: 'pressure-gauge', scaleDivision: 0.5 }),
  };
}
