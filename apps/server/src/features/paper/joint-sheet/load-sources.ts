import { CALC_VERSION } from '@seatwell/calc';
import { flagsOf, type JointState, type MakeState } from '@seatwell/workflow';
import { Problem } from '../../../platform/errors/problem.ts';
import { previewTarget } from '../../engineering/compute-target.ts';
import type { Lubricant } from '../../engineering/target-request.ts';
import { FactsLoader } from '../../joints/facts.ts';
import { shownMake } from '../../joints/shown-make.ts';
import { inputsHashNow } from '../../joints/target-inputs.ts';
import { namesOf } from '../../reading/names.ts';
import { crewRefOf, loadPlaces, type Places, placeOf } from '../../reading/places.ts';
import type { Reading } from '../../reading/reading.ts';
import { openingPhotos, photoOf } from './photo-of-joint.ts';
import type { SheetPump, SheetSource } from './sheet-source.ts';

/** What paper is read with: a request has it, and a job. */
export type SheetReading = Pick<Reading, 'db' | 'siteId' | 'shutdown' | 'shutdownId' | 'now'>;

export interface SheetOrder {
  /** protocol and host under which the screens are found */
  readonly origin: string;
  /** absent = the make to work on */
  readonly makeId?: string | undefined;
  readonly pump?: SheetPump | null;
}

/** What many sheets share. */
interface Shared {
  readonly reading: SheetReading;
  readonly order: SheetOrder;
  readonly facts: FactsLoader;
  readonly places: Places;
  readonly site: string;
  readonly titles: ReadonlyMap<string, string>;
  readonly packs: ReadonlyMap<string, string>;
  readonly names: Readonly<Record<string, string | null>>;
  readonly openings: ReadonlyMap<string, string>;
}

const procedureKey = ({ procedure }: MakeState): string =>
  procedure ? `${procedure.procedureId} ${procedure.revision}` : '';

/** States of joints in the order asked for. @throws Problem `not-found` naming those that this shutdown does not have */
async function statesOf({ db, siteId, shutdownId }: SheetReading, jointIds: readonly string[]): Promise<JointState[]> {
  const { rows } = await db.query<{ joint_id: string; state: JointState }>({
    name: 'sheet-states',
    text: 'SELECT joint_id, state FROM joint WHERE site_id = $1 AND shutdown_id = $2 AND joint_id = ANY($3::uuid[])',
    values: [siteId, shutdownId, jointIds],
  });
  const states = new Map(rows.map((row) => [row.joint_id, row.state]));
  return jointIds.map((jointId) => {
    const state = states.get(jointId);
    if (!state) throw new Problem('not-found', `This shutdown has no joint ${jointId}.`);
    return state;
  });
}

async function titlesOf({ db, siteId }: SheetReading, makes: readonly MakeState[]): Promise<Map<string, string>> {
  const assigned = makes.flatMap(({ procedure }) => (procedure ? [procedure] : []));
  const { rows } = await db.query<{ key: string; title: string }>({
    name: 'sheet-procedure-titles',
    text: `SELECT procedure_id || ' ' || revision AS key, title FROM procedure_revision
      WHERE site_id = $1 AND (procedure_id, revision) IN (SELECT * FROM unnest($2::uuid[], $3::int[]))`,
    values: [siteId, assigned.map(({ procedureId }) => procedureId), assigned.map(({ revision }) => revision)],
  });
  return new Map(rows.map(({ key, title }) => [key, title]));
}

async function packNumbers({ db, siteId, shutdownId }: SheetReading, makes: readonly MakeState[]) {
  const { rows } = await db.query<{ pack_id: string; number: string }>({
    name: 'sheet-pack-numbers',
    text: 'SELECT pack_id, number FROM test_pack WHERE site_id = $1 AND shutdown_id = $2 AND pack_id = ANY($3::uuid[])',
    values: [siteId, shutdownId, makes.flatMap(({ packs }) => packs.map(({ packId }) => packId))],
  });
  return new Map(rows.map((row) => [row.pack_id, row.number]));
}

async function siteName({ db, siteId }: SheetReading): Promise<string> {
  const { rows } = await db.query<{ name: string }>({
    name: 'sheet-site',
    text: 'SELECT name FROM site WHERE site_id = $1',
    values: [siteId],
  });
  return rows[0]?.name ?? '';
}

function makeOf(joint: JointState, makeId: string | undefined): MakeState {
  const make = makeId ? joint.makes.find((each) => each.makeId === makeId) : (shownMake(joint) ?? joint.makes.at(-1));
  if (make) return make;
  throw new Problem(
    'not-found',
    makeId
      ? `${joint.tag} has no make ${makeId}.`
      : `${joint.tag} has no make: nothing is planned on it that a sheet could show.`,
  );
}

/**
 * The window of an approved target, from the inputs that it was approved on. Null where they have changed, another
 * version computed it, or the answer is not the approved one: a sheet never prints limits of something else.
 */
async function windowOf(
  facts: FactsLoader,
  joint: JointState,
  make: MakeState,
  hashNow: string | null,
): Promise<SheetSource['window']> {
  const { target } = make;
  if (!target || target.basis === 'makers-torque' || hashNow !== target.inputsHash) return null;
  const { gasketDataId, lubricantId, boltStress_MPa, tensioning } = target;
  if (target.calcVersion !== CALC_VERSION || !gasketDataId || !lubricantId) return null;
  const boltingCondition = target.boltCondition === 'reused' ? 'reused' : 'new';
  try {
    const { evidence, answer } = await previewTarget(
      facts,
      joint,
      { ...make, boltingCondition },
      {
        basis: 'calculated',
        gasketDataId,
        lubricantId,
        boltStress_MPa,
        acceptedShortfall: target.shortfallReason,
        ...(tensioning
          ? { tensioner: { toolId: tensioning.toolId, gaugeDivision_MPa: tensioning.gaugeDivision_MPa } }
          : {}),
      },
    );
    const same = evidence.insideWindow === target.insideWindow;
    return answer && same ? { lower: answer.window.lower, upper: answer.window.upper } : null;
  } catch (error) {
    if (error instanceof Problem) return null;
    throw error;
  }
}

async function lubricantOf(facts: FactsLoader, make: MakeState, fallback: string | undefined) {
  const lubricantId = make.target ? make.target.lubricantId : fallback;
  const data = lubricantId ? await facts.sourcedData(lubricantId) : null;
  if (data?.kind !== 'lubricant') return null;
  const { name, nutFactor, source } = data.content as Lubricant;
  return { name, nutFactor, source };
}

async function sourceOf(shared: Shared, joint: JointState, make: MakeState): Promise<SheetSource> {
  const { reading, order, facts, places } = shared;
  const { shutdown, shutdownId, now } = reading;
  const procedure = make.procedure ? await facts.procedure(make.procedure.procedureId, make.procedure.revision) : null;
  const hashNow = await inputsHashNow(facts, joint, make, procedure);
  const area = placeOf(places.areas, joint.whereabouts.areaId);
  const system = placeOf(places.systems, joint.whereabouts.systemId);
  const flags = flagsOf(joint, make, {
    now,
    settings: shutdown.settings,
    tools: await facts.tools([...make.toolsUsed, ...make.provisionalTools]),
    targetInputsHashNow: hashNow,
    unclosedPunch: {},
  });
  return {
    site: shared.site,
    shutdown: shutdown.name,
    timeZone: shutdown.timeZone,
    settings: shutdown.settings,
    address: `${order.origin}/shutdowns/${shutdownId}/joints/${joint.jointId}`,
    printedAt: now,
    joint,
    make,
    area: area ? `${area.code} ${area.name}` : null,
    system: system ? `${system.code} ${system.name}` : null,
    crew: crewRefOf(places, make.crewId)?.code ?? null,
    packs: make.packs.map(({ packId, role }) => ({ number: shared.packs.get(packId) ?? '', role })),
    procedure: procedure ? { ...procedure, title: shared.titles.get(procedureKey(make)) ?? '' } : null,
    lubricant: await lubricantOf(facts, make, procedure?.content.lubricantId),
    flags,
    names: shared.names,
    window: await windowOf(facts, joint, make, hashNow),
    photo: photoOf(joint, shared.openings),
    pump: order.pump ?? null,
  };
}

/**
 * What the sheets of joints are made from, in the order asked for.
 * @throws Problem `not-found` for another shutdown's joint, or one without the make
 */
export async function loadSheetSources(
  reading: SheetReading,
  jointIds: readonly string[],
  order: SheetOrder,
): Promise<SheetSource[]> {
  const { db, siteId, shutdownId } = reading;
  const pairs = (await statesOf(reading, jointIds)).map((joint) => ({ joint, make: makeOf(joint, order.makeId) }));
  const makes = pairs.map(({ make }) => make);
  const [places, site, titles, packs, openings, names] = await Promise.all([
    loadPlaces(reading),
    siteName(reading),
    titlesOf(reading, makes),
    packNumbers(reading, makes),
    openingPhotos(reading, jointIds),
    namesOf(
      db,
      siteId,
      makes.flatMap(({ partTight }) => partTight?.leftBy ?? []),
    ),
  ]);
  const facts = new FactsLoader(db, siteId, shutdownId);
  const shared: Shared = { reading, order, facts, places, site, titles, packs, names: names.record(), openings };
  const sources: SheetSource[] = [];
  for (const { joint, make } of pairs) sources.push(await sourceOf(shared, joint, make));
  return sources;
}

/** The photos that sheets name, by hash; only pictures as the file store keeps them. */
export async function loadPhotos(
  { db, siteId }: SheetReading,
  sources: readonly SheetSource[],
): Promise<Map<string, Buffer>> {
  const hashes = [...new Set(sources.flatMap(({ photo }) => (photo === null ? [] : [photo.hash])))];
  if (hashes.length === 0) return new Map();
  const { rows } = await db.query<{ hash: string; content: Buffer }>({
    name: 'sheet-photos',
    text: `SELECT hash, content FROM stored_file WHERE site_id = $1 AND hash = ANY($2) AND media_type = 'image/jpeg'`,
    values: [siteId, hashes],
  });
  return new Map(rows.map(({ hash, content }) => [hash, content]));
}
