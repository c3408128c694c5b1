import type { AreaRef, CrewRef, JointRef, PackRef, SystemRef } from '@seatwell/contract';
import type { Reading } from './reading.ts';

type InReading = Pick<Reading, 'db' | 'siteId' | 'shutdownId'>;

export interface CrewPlace extends CrewRef {
  readonly company: string;
  readonly shift: string | null;
  readonly personIds: readonly string[];
}

/** Areas, systems and crews of a shutdown: small tables, read whole. */
export interface Places {
  readonly areas: ReadonlyMap<string, AreaRef>;
  readonly systems: ReadonlyMap<string, SystemRef & { areaId: string | null }>;
  readonly crews: ReadonlyMap<string, CrewPlace>;
}

const byId = <T>(rows: readonly T[], id: (row: T) => string): ReadonlyMap<string, T> =>
  new Map(rows.map((row) => [id(row), row]));

export async function loadPlaces({ db, siteId, shutdownId }: InReading): Promise<Places> {
  const values = [siteId, shutdownId];
  const [areas, systems, crews] = await Promise.all([
    db.query<AreaRef>({
      name: 'places-areas',
      text: `SELECT area_id AS "areaId", code, name FROM area WHERE site_id = $1 AND shutdown_id = $2 ORDER BY code COLLATE "C"`,
      values,
    }),
    db.query<SystemRef & { areaId: string | null }>({
      name: 'places-systems',
      text: `SELECT system_id AS "systemId", area_id AS "areaId", code, name FROM system
        WHERE site_id = $1 AND shutdown_id = $2 ORDER BY code COLLATE "C"`,
      values,
    }),
    db.query<CrewPlace>({
      name: 'places-crews',
      text: `SELECT crew_id AS "crewId", code, company, shift, person_ids AS "personIds" FROM crew
        WHERE site_id = $1 AND shutdown_id = $2 ORDER BY code COLLATE "C"`,
      values,
    }),
  ]);
  return {
    areas: byId(areas.rows, (row) => row.areaId),
    systems: byId(systems.rows, (row) => row.systemId),
    crews: byId(crews.rows, (row) => row.crewId),
  };
}

/** A thing of the places by its id; null where there is no id. */
export const placeOf = <T>(places: ReadonlyMap<string, T>, id: string | null): T | null =>
  (id ? places.get(id) : undefined) ?? null;

export const crewRefOf = (places: Places, crewId: string | null): CrewRef | null => {
  const crew = placeOf(places.crews, crewId);
  return crew ? { crewId: crew.crewId, code: crew.code } : null;
};

export const systemRefOf = (places: Places, systemId: string | null): SystemRef | null => {
  const system = placeOf(places.systems, systemId);
  return system ? { systemId: system.systemId, code: system.code, name: system.name } : null;
};

export async function jointRefs(
  { db, siteId, shutdownId }: InReading,
  jointIds: readonly (string | null)[],
): Promise<Map<string, JointRef>> {
  const ids = [...new Set(jointIds.filter((id): id is string => id !== null))];
  if (ids.length === 0) return new Map();
  const { rows } = await db.query<JointRef>({
    name: 'joint-refs',
    text: `SELECT joint_id AS "jointId", tag FROM joint WHERE site_id = $1 AND shutdown_id = $2 AND joint_id = ANY($3::uuid[])`,
    values: [siteId, shutdownId, ids],
  });
  return new Map(rows.map((row) => [row.jointId, row]));
}

export async function packRefs(
  { db, siteId, shutdownId }: InReading,
  packIds: readonly (string | null)[],
): Promise<Map<string, PackRef>> {
  const ids = [...new Set(packIds.filter((id): id is string => id !== null))];
  if (ids.length === 0) return new Map();
  const { rows } = await db.query<PackRef>({
    name: 'pack-refs',
    text: `SELECT pack_id AS "packId", number FROM test_pack WHERE site_id = $1 AND shutdown_id = $2 AND pack_id = ANY($3::uuid[])`,
    values: [siteId, shutdownId, ids],
  });
  return new Map(rows.map((row) => [row.packId, row]));
}
