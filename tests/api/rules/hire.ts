import type { Payload } from '@seatwell/contract';
import { uuidv7 } from 'uuidv7';
import { accepted, command, siteCommand } from '../support/plant.ts';
import { procedureContent } from '../support/sample-plant.ts';
import { registerTool, type Shutdown } from '../support/shutdown.ts';
import type { Tale } from '../support/tale.ts';

type Qualified = Payload<'qualification-recorded'>['qualifiedFor'];

/** A person of the site without an account. */
export async function hire({ plant, coordinator }: Shutdown, company = 'Contractor'): Promise<string> {
  const personId = uuidv7();
  accepted(
    await siteCommand(plant, coordinator, 'person-registered', personId, {
      personId,
      name: `Newcomer ${personId.slice(-4)}`,
      company,
      badge: null,
      trade: null,
    }),
  );
  return personId;
}

export async function qualify({ plant, inspector }: Shutdown, personId: string, ...qualifiedFor: Qualified) {
  const qualificationId = uuidv7();
  accepted(
    await siteCommand(plant, inspector, 'qualification-recorded', qualificationId, {
      qualificationId,
      personId,
      qualifiedFor,
      validFrom: '2026-01-01',
      validThrough: '2028-01-01',
      scheme: 'test scheme',
      certificate: null,
    }),
  );
}

/** A crew of these people only. */
export async function crewOf({ plant, coordinator, shutdownId }: Shutdown, ...personIds: string[]): Promise<string> {
  const crewId = uuidv7();
  accepted(
    await command(plant, coordinator, shutdownId, 'crew-listed', crewId, {
      crewId,
      code: crewId.slice(-6),
      company: 'Contractor',
      shift: 'day',
      personIds,
    }),
  );
  return crewId;
}

type Content = Payload<'procedure-drafted'>['content'];
type Applies = Partial<Content['appliesTo']>;

/** A procedure as the tests' own but for what is given, drafted. */
export async function draft(shutdown: Shutdown, applies: Applies, change: Partial<Content> = {}): Promise<string> {
  const procedureId = uuidv7();
  const content = procedureContent(shutdown.lubricantId);
  accepted(
    await siteCommand(shutdown.plant, shutdown.engineer, 'procedure-drafted', procedureId, {
      procedureId,
      revision: 1,
      code: `BP-${procedureId.slice(-6)}`,
      title: 'Torque, another one',
      content: { ...content, ...change, appliesTo: { ...content.appliesTo, ...applies } },
    }),
  );
  return procedureId;
}

export const approve = async ({ plant, engineer }: Shutdown, procedureId: string) =>
  accepted(await siteCommand(plant, engineer, 'procedure-approved', procedureId, { revision: 1 }));

/** A procedure for other joints than the one at hand, approved. */
export async function otherProcedure(shutdown: Shutdown, applies: Applies, change: Partial<Content> = {}) {
  const procedureId = await draft(shutdown, applies, change);
  await approve(shutdown, procedureId);
  return procedureId;
}

export type Tools = Payload<'pass-recorded'>['tools'];
type Kind = Payload<'tool-registered'>['kind'];

/** A tool of the site with its certificate; the certificate may be another one. */
export async function tool(
  { plant, inspector }: Shutdown,
  kind: Kind,
  scale: readonly [number, Payload<'tool-registered'>['scaleUnit']],
  calibration: Partial<Payload<'calibration-recorded'>> = {},
): Promise<{ toolId: string; calibrationId: string }> {
  const toolId = uuidv7();
  const calibrationId = await registerTool(
    plant,
    inspector,
    toolId,
    `T-${toolId.slice(-6)}`,
    kind,
    scale[0],
    scale[1],
    calibration,
  );
  return { toolId, calibrationId };
}

export const wrenchOnly = (toolId: string): Tools => ({ toolId, pumpId: null, gaugeId: null });

/** What one has said may be needed again in the second scenario: kept by joint. */
export const keep = <T>() => {
  const kept = new Map<string, T>();
  return {
    set: (tale: Tale, value: T): T => {
      kept.set(tale.jointId, value);
      return value;
    },
    of: (tale: Tale): T => {
      const value = kept.get(tale.jointId);
      if (value === undefined) throw new Error(`Nothing was kept for ${tale.joint.tag}.`);
      return value;
    },
  };
};

/** Changes what the rules of the shutdown read. */
export const settings = async (
  { plant, coordinator, shutdownId }: Shutdown,
  change: Payload<'settings-changed'>['settings'],
) =>
  accepted(
    await command(plant, coordinator, shutdownId, 'settings-changed', shutdownId, {
      settings: change,
      reason: 'The test asks for it',
    }),
  );
