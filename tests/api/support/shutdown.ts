import type { Criticality, JointKind, JointSpecification, MakePlan, Payload } from '@seatwell/contract';
import { uuidv7 } from 'uuidv7';
import { createTestDatabase, type TestDatabase } from './database.ts';
import { accepted, command, engage, openPlant, type Plant, type SignedIn, siteCommand } from './plant.ts';
import { finalMake, procedureContent, specification, springShutdown } from './sample-plant.ts';

/** A shutdown in progress: people of every role, an approved procedure, a calibrated wrench, a briefed crew. */
export interface Shutdown {
  readonly plant: Plant;
  readonly shutdownId: string;
  readonly areaId: string;
  readonly systemId: string;
  readonly packId: string;
  readonly crewId: string;
  readonly coordinator: SignedIn;
  readonly engineer: SignedIn;
  readonly operations: SignedIn;
  readonly technician: SignedIn;
  readonly mate: SignedIn;
  readonly chargehand: SignedIn;
  readonly inspector: SignedIn;
  readonly witness: SignedIn;
  readonly procedureId: string;
  readonly lubricantId: string;
  readonly gasketDataId: string;
  readonly wrenchId: string;
  readonly gaugeId: string;
  close(): Promise<void>;
}

const DAY_MS = 86_400_000;
export const dayAfter = (from: Date, days: number): string =>
  new Date(from.getTime() + days * DAY_MS).toISOString().slice(0, 10);

export const openShutdown = async (): Promise<Shutdown> => openShutdownOn(await createTestDatabase());

/** The same on a database that is given: benches bring their own. */
export async function openShutdownOn(database: TestDatabase): Promise<Shutdown> {
  const plant = await openPlant(database);
  plant.now = new Date('2027-03-09T08:00:00Z');
  const [coordinator, engineer, operations, technician, mate, chargehand, inspector, witness] = await Promise.all([
    engage(plant, 'coordinator', 'Cora Dinator', { company: 'Owner' }),
    engage(plant, 'engineer', 'Enno Gineer', { company: 'Owner' }),
    engage(plant, 'operations', 'Opal Rations', { company: 'Owner' }),
    engage(plant, 'technician', 'Theo Technician'),
    engage(plant, 'technician', 'Mara Mate'),
    engage(plant, 'chargehand', 'Chas Hand'),
    engage(plant, 'inspector', 'Ina Spector', { company: 'Inspection house' }),
    engage(plant, 'witness', 'Will Itness', { company: 'Client' }),
  ]);
  const ids = Object.fromEntries(
    [
      'shutdown',
      'area',
      'system',
      'pack',
      'crew',
      'procedure',
      'lubricant',
      'gasketData',
      'wrench',
      'gauge',
      'talk',
    ].map((name) => [name, uuidv7()]),
  ) as Record<
    | 'shutdown'
    | 'area'
    | 'system'
    | 'pack'
    | 'crew'
    | 'procedure'
    | 'lubricant'
    | 'gasketData'
    | 'wrench'
    | 'gauge'
    | 'talk',
    string
  >;
  const site = async <T extends Parameters<typeof siteCommand>[2]>(
    who: SignedIn,
    type: T,
    subjectId: string,
    payload: Payload<T>,
  ) => accepted(await siteCommand(plant, who, type, subjectId, payload as never));
  const record = async <T extends Parameters<typeof command>[3]>(
    who: SignedIn,
    type: T,
    subjectId: string,
    payload: Payload<T>,
  ) => accepted(await command(plant, who, ids.shutdown, type, subjectId, payload as never));

  await record(coordinator, 'shutdown-opened', ids.shutdown, springShutdown);
  await record(coordinator, 'area-listed', ids.area, { areaId: ids.area, code: 'U41', name: 'Unit 41' });
  await record(coordinator, 'system-listed', ids.system, {
    systemId: ids.system,
    areaId: ids.area,
    code: '41-01',
    name: 'Feed',
  });
  const crewPeople = [technician, mate, chargehand];
  await record(coordinator, 'crew-listed', ids.crew, {
    crewId: ids.crew,
    code: 'D1',
    company: 'Contractor',
    shift: 'day',
    personIds: crewPeople.map((person) => person.personId),
  });
  await record(coordinator, 'pack-planned', ids.pack, {
    packId: ids.pack,
    number: 'TP-41-01',
    systemId: ids.system,
    areaId: ids.area,
    way: 'hydrotest',
    medium: 'water',
    pressure_MPa: 3,
    pressureAsEntered: { value: 30, unit: 'bar' },
    hold_min: 30,
    plannedOn: '2027-03-20',
  });
  for (const person of [...crewPeople, inspector]) {
    const qualificationId = uuidv7();
    await site(inspector, 'qualification-recorded', qualificationId, {
      qualificationId,
      personId: person.personId,
      qualifiedFor: ['disassembly', 'assembly', 'face-inspection', 'torque-wrench', 'hydraulic-wrench', 'testing'],
      validFrom: '2026-01-01',
      validThrough: '2028-01-01',
      scheme: 'test scheme',
      certificate: null,
    });
  }
  await site(engineer, 'lubricant-entered', ids.lubricant, {
    lubricantId: ids.lubricant,
    name: 'test paste',
    nutFactor: 0.16,
    temperatureLimit_C: 400,
    source: 'test',
  });
  await site(engineer, 'gasket-data-entered', ids.gasketData, {
    gasketDataId: ids.gasketData,
    name: 'test spiral wound',
    family: 'spiral-wound',
    seating_MPa: 45,
    operating_MPa: 30,
    target_MPa: 90,
    maximum_MPa: 230,
    source: 'test',
  });
  await site(engineer, 'procedure-drafted', ids.procedure, {
    procedureId: ids.procedure,
    revision: 1,
    code: 'BP-01',
    title: 'Torque, legacy pattern',
    content: procedureContent(ids.lubricant),
  });
  await site(engineer, 'procedure-approved', ids.procedure, { revision: 1 });
  await registerTool(plant, inspector, ids.wrench, 'TW-1', 'torque-wrench', 450, 'N·m');
  await registerTool(plant, inspector, ids.gauge, 'PG-1', 'test-gauge', 6, 'MPa');
  await record(chargehand, 'talk-held', ids.talk, {
    talkId: ids.talk,
    procedureId: ids.procedure,
    revision: 1,
    crewId: ids.crew,
    heldBy: chargehand.personId,
    attendees: crewPeople.map((person) => ({ personId: person.personId, signedBy: 'pin' as const })),
  });
  return {
    plant,
    shutdownId: ids.shutdown,
    areaId: ids.area,
    systemId: ids.system,
    packId: ids.pack,
    crewId: ids.crew,
    coordinator,
    engineer,
    operations,
    technician,
    mate,
    chargehand,
    inspector,
    witness,
    procedureId: ids.procedure,
    lubricantId: ids.lubricant,
    gasketDataId: ids.gasketData,
    wrenchId: ids.wrench,
    gaugeId: ids.gauge,
    close: () => plant.close(),
  };
}

/** A tool with a certificate through the shutdown; another certificate can be given. */
export async function registerTool(
  plant: Plant,
  inspector: SignedIn,
  toolId: string,
  tag: string,
  kind: Payload<'tool-registered'>['kind'],
  scaleMaximum: number,
  scaleUnit: Payload<'tool-registered'>['scaleUnit'],
  calibration: Partial<Payload<'calibration-recorded'>> = {},
): Promise<string> {
  accepted(
    await siteCommand(plant, inspector, 'tool-registered', toolId, {
      toolId,
      tag,
      kind,
      maker: null,
      scaleMinimum: null,
      scaleMaximum,
      scaleUnit,
      scaleDivision: null,
    }),
  );
  const calibrationId = uuidv7();
  accepted(
    await siteCommand(plant, inspector, 'calibration-recorded', toolId, {
      calibrationId,
      toolId,
      calibratedOn: '2026-10-01',
      validThrough: '2027-10-01',
      certificate: null,
      certificateNumber: `C-${tag}`,
      provisional: false,
      pairs: [],
      ...calibration,
    }),
  );
  return calibrationId;
}

export interface ListedJoint {
  readonly jointId: string;
  readonly makeId: string;
  readonly makeIds: readonly string[];
  readonly tag: string;
}

export interface JointOptions {
  readonly criticality?: Criticality;
  readonly kind?: JointKind;
  readonly specification?: JointSpecification;
  readonly makes?: readonly Partial<MakePlan>[];
  readonly tag?: string;
}

let counter = 0;

/** Lists a joint with its makes (one final make unless given). */
export async function listJoint(shutdown: Shutdown, options: JointOptions = {}): Promise<ListedJoint> {
  const jointId = uuidv7();
  counter += 1;
  const tag = options.tag ?? `U41-P1-${counter}`;
  const makes = (options.makes ?? [{}]).map(
    (make, index): MakePlan =>
      finalMake(uuidv7(), {
        number: index + 1,
        plannedOn: '2027-03-09',
        crewId: shutdown.crewId,
        packs: [{ packId: shutdown.packId, role: 'inside' }],
        ...make,
      }),
  );
  accepted(
    await command(shutdown.plant, shutdown.coordinator, shutdown.shutdownId, 'joint-listed', jointId, {
      placeId: uuidv7(),
      tag,
      kind: options.kind ?? 'flange-pair',
      criticality: options.criticality ?? 'C',
      whereabouts: {
        areaId: shutdown.areaId,
        systemId: shutdown.systemId,
        line: '8"-HC-4101',
        location: 'pipe rack',
        drawing: null,
        item: null,
        viewedFrom: 'the pump side',
        bolt1At: 'the top',
      },
      specification: options.specification ?? specification(),
      makes,
      remark: null,
    }),
  );
  const first = makes[0];
  if (!first) throw new Error('A listed joint needs a make.');
  return { jointId, tag, makeId: first.makeId, makeIds: makes.map((make) => make.makeId) };
}
