import type { PackPage, PackSummary, PacksAnswer, Payload, PersonRef } from '@seatwell/contract';
import { Problem } from '../../platform/errors/problem.ts';
import { punchRows } from '../punch-items/queries.ts';
import { actionsOf } from '../reading/actions.ts';
import { namesOf, toolTagsOf } from '../reading/names.ts';
import { loadPlaces, type Places, placeOf, systemRefOf } from '../reading/places.ts';
import type { Reading } from '../reading/reading.ts';
import { type RoleHolders, roleHolders } from '../reading/role-holders.ts';
import { emptyPack, type PackCounts, packCounts } from './pack-facts.ts';
import { packMembers } from './pack-members.ts';
import { packState, stoppersOf } from './stoppers.ts';

type Plan = Payload<'pack-planned'>;
type Release = Payload<'pack-released'>;
type TestReading = Payload<'test-reading'>;

interface PackColumns {
  readonly packId: string;
  readonly number: string;
  readonly areaId: string | null;
  readonly systemId: string | null;
  readonly plannedOn: string | null;
  readonly plan: Plan;
  readonly released: Release | null;
  readonly releasedAt: Date | null;
  readonly readings: TestReading[];
  readonly version: number;
}

async function packColumns({ db, siteId, shutdownId }: Reading, packId: string | null): Promise<PackColumns[]> {
  const { rows } = await db.query<PackColumns>({
    name: 'pack-columns',
    text: `SELECT pack_id AS "packId", number, area_id AS "areaId", system_id AS "systemId", planned_on AS "plannedOn",
        plan, released, released_at AS "releasedAt", readings, version
      FROM test_pack WHERE site_id = $1 AND shutdown_id = $2 AND ($3::uuid IS NULL OR pack_id = $3)
      ORDER BY planned_on NULLS LAST, number_key, pack_id`,
    values: [siteId, shutdownId, packId],
  });
  return rows;
}

/** Whether a reading reached the pack's pressure for its time. */
const holds = (plan: Plan, reading: TestReading): boolean =>
  reading.pressure_MPa >= plan.pressure_MPa && reading.held_min >= plan.hold_min;

function summary(pack: PackColumns, counts: PackCounts, places: Places, holders: RoleHolders): PackSummary {
  const { packId, areaId, plan } = pack;
  const atHand = {
    released: pack.released !== null,
    held: pack.readings.some((each) => holds(plan, each)),
    pressure_MPa: plan.pressure_MPa,
    hold_min: plan.hold_min,
  };
  const stoppers = stoppersOf(atHand, counts, places, holders, { areaId, packId });
  return {
    packId,
    number: pack.number,
    area: placeOf(places.areas, areaId),
    system: systemRefOf(places, pack.systemId),
    plannedOn: pack.plannedOn,
    way: plan.way,
    medium: plan.medium,
    pressure_MPa: plan.pressure_MPa,
    hold_min: plan.hold_min,
    state: packState(atHand, counts, stoppers),
    releasedAt: pack.releasedAt?.toISOString() ?? null,
    total: counts.total,
    stages: counts.stages,
    stoppers,
    version: pack.version,
  };
}

/** Every pack by its planned day, with what stops it. */
export async function packSummaries(reading: Reading): Promise<PackSummary[]> {
  const [packs, counts, places, holders] = await Promise.all([
    packColumns(reading, null),
    packCounts(reading, null),
    loadPlaces(reading),
    roleHolders(reading),
  ]);
  return packs.map((pack) => summary(pack, counts.get(pack.packId) ?? emptyPack(), places, holders));
}

/** `GET /packs` */
export async function packs(reading: Reading): Promise<PacksAnswer> {
  const { actor, shutdownId } = reading;
  return { rows: await packSummaries(reading), actions: actionsOf(actor, ['pack-planned'], { shutdownId }) };
}

async function releasedBy({ db, siteId, shutdownId }: Reading, packId: string): Promise<PersonRef | null> {
  const { rows } = await db.query<{ person_id: string | null }>({
    name: 'pack-released-by',
    text: `SELECT person_id FROM event WHERE site_id = $1 AND stream_id = $2 AND subject_id = $3 AND type = 'pack-released'
      ORDER BY sequence DESC LIMIT 1`,
    values: [siteId, shutdownId, packId],
  });
  const personId = rows[0]?.person_id ?? null;
  return (await namesOf(db, siteId, [personId])).maybe(personId);
}

/** `GET /packs/:packId` @throws Problem `not-found`: another shutdown's pack is as unknown as any */
export async function packPage(reading: Reading, packId: string): Promise<PackPage> {
  const { db, siteId, shutdownId, actor } = reading;
  const [pack] = await packColumns(reading, packId);
  if (!pack) throw new Problem('not-found', `This shutdown has no test pack ${packId}.`);
  const [counts, places, holders, members, punchItems, by, gaugeTags] = await Promise.all([
    packCounts(reading, packId),
    loadPlaces(reading),
    roleHolders(reading),
    packMembers(reading, packId, pack.readings),
    punchRows(reading, { closed: 'any', packId }),
    releasedBy(reading, packId),
    toolTagsOf(db, siteId, [...(pack.released?.gaugeIds ?? []), ...pack.readings.flatMap((each) => each.gaugeIds)]),
  ]);
  const { plan, released, releasedAt } = pack;
  return {
    ...summary(pack, counts.get(packId) ?? emptyPack(), places, holders),
    plan,
    released: released && releasedAt ? { ...released, at: releasedAt.toISOString(), by, gaugeTags } : null,
    readings: pack.readings.map((each) => ({ ...each, holds: holds(plan, each) })),
    members,
    punchItems,
    gaugeTags,
    actions: actionsOf(
      actor,
      ['pack-planned', 'pack-released', 'test-reading', 'proven', 'punch-raised'],
      { shutdownId, areaId: pack.areaId, packIds: [packId] },
      (type) =>
        type === 'test-reading' && !released
          ? { code: 'not-released', message: 'The pack is released to pressure before a reading is taken.' }
          : null,
    ),
  };
}
