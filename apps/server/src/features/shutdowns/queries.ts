import type { ChoicesAnswer, CrewsAnswer, ShutdownAnswer, ShutdownsAnswer } from '@seatwell/contract';
import { shiftAt } from '@seatwell/workflow';
import { actionsOf } from '../reading/actions.ts';
import { namesOf } from '../reading/names.ts';
import { loadPlaces } from '../reading/places.ts';
import type { Reading, SiteReading } from '../reading/reading.ts';
import { noCounts, reached, rollupOf, totalOf } from '../reading/stage-counts.ts';
import { listShutdowns } from './load-shutdown.ts';

/** `GET /shutdowns` */
export async function shutdowns({ db, siteId, actor }: SiteReading): Promise<ShutdownsAnswer> {
  const rows = await listShutdowns(db, siteId);
  return {
    rows: await Promise.all(
      rows.map(async ({ shutdownId, name, startsOn, endsOn, timeZone, units }) => {
        const counts = (await rollupOf({ db, siteId, shutdownId }, 'shutdown')).get(shutdownId) ?? noCounts();
        return {
          shutdownId,
          name,
          startsOn,
          endsOn,
          timeZone,
          units,
          joints: totalOf(counts),
          tight: reached(counts, 'tight'),
        };
      }),
    ),
    actions: actionsOf(actor, ['shutdown-opened'], {}),
  };
}

/** `GET /shutdown`: what the rules and screens of a shutdown read, and the shift that it is now. */
export function shutdownPage({ shutdown, actor, now }: Reading): ShutdownAnswer {
  const { siteId: _siteId, shifts, settings, ...rest } = shutdown;
  const { name, day, start, end } = shiftAt(now, shifts, shutdown.timeZone);
  return {
    ...rest,
    shifts: shifts.map((shift) => ({ ...shift })),
    settings,
    now,
    shift: { name, day, start, end },
    actions: actionsOf(actor, ['settings-changed', 'area-listed', 'system-listed', 'crew-listed'], {
      shutdownId: shutdown.shutdownId,
    }),
  };
}

type Key = 'size' | 'rating' | 'gasket_family';

/** The keys that the joints have, the most frequent first. */
async function keysOf({ db, siteId, shutdownId }: Reading, column: Key): Promise<string[]> {
  const order = column === 'size' ? 'min(size_rank)' : 'count(*) DESC';
  const { rows } = await db.query<{ key: string }>({
    name: `keys-of-${column}`,
    text: `SELECT ${column} AS key FROM joint WHERE site_id = $1 AND shutdown_id = $2 AND voided IS NULL
      GROUP BY ${column} ORDER BY ${order}, ${column} COLLATE "C" LIMIT 200`,
    values: [siteId, shutdownId],
  });
  return rows.map((row) => row.key);
}

/** `GET /choices` */
export async function choices(reading: Reading): Promise<ChoicesAnswer> {
  const { db, siteId, shutdownId, actor } = reading;
  const [places, packs, sizes, ratings, gasketFamilies] = await Promise.all([
    loadPlaces(reading),
    db.query<ChoicesAnswer['packs'][number]>({
      name: 'choices-packs',
      text: `SELECT pack_id AS "packId", number, area_id AS "areaId", system_id AS "systemId" FROM test_pack
        WHERE site_id = $1 AND shutdown_id = $2 ORDER BY number_key`,
      values: [siteId, shutdownId],
    }),
    keysOf(reading, 'size'),
    keysOf(reading, 'rating'),
    keysOf(reading, 'gasket_family'),
  ]);
  const crews = [...places.crews.values()];
  const names = await namesOf(
    db,
    siteId,
    crews.flatMap((crew) => crew.personIds),
  );
  return {
    areas: [...places.areas.values()],
    systems: [...places.systems.values()],
    crews: crews.map(({ crewId, code, company, shift, personIds }) => ({
      crewId,
      code,
      company,
      shift,
      persons: names.all(personIds),
    })),
    packs: packs.rows,
    sizes,
    ratings,
    gasketFamilies,
    actions: actionsOf(
      actor,
      ['area-listed', 'system-listed', 'crew-listed', 'pack-planned', 'joint-listed', 'joint-found'],
      {
        shutdownId,
      },
    ),
  };
}

/** `GET /crews`: who is in them, what they may do today, and what they are planned for. */
export async function crews(reading: Reading): Promise<CrewsAnswer> {
  const { db, siteId, shutdownId, actor, now } = reading;
  const places = await loadPlaces(reading);
  const rows = [...places.crews.values()];
  const personIds = rows.flatMap((crew) => crew.personIds);
  const [names, work, qualified] = await Promise.all([
    namesOf(db, siteId, personIds),
    db.query<{ crewId: string; joints: number; methods: CrewsAnswer['rows'][number]['methods'] }>({
      name: 'crews-work',
      text: `SELECT m.crew_id AS "crewId", count(DISTINCT m.joint_id) AS joints,
          coalesce(array_agg(DISTINCT p.content->>'method') FILTER (WHERE p.procedure_id IS NOT NULL), '{}') AS methods
        FROM make m LEFT JOIN procedure_revision p ON p.site_id = m.site_id AND p.procedure_id = m.procedure_id
          AND p.revision = m.procedure_revision
        WHERE m.site_id = $1 AND m.shutdown_id = $2 AND m.crew_id IS NOT NULL AND NOT m.cancelled GROUP BY m.crew_id`,
      values: [siteId, shutdownId],
    }),
    db.query<{ personId: string; qualifiedFor: string[] }>({
      name: 'crews-qualified',
      text: `SELECT person_id AS "personId", array_agg(DISTINCT each) AS "qualifiedFor"
        FROM qualification, unnest(qualified_for) AS each
        WHERE site_id = $1 AND person_id = ANY($2::uuid[]) AND withdrawn_at IS NULL AND valid_from <= $3::date
          AND valid_through >= $3::date GROUP BY person_id`,
      values: [siteId, personIds, shiftAt(now, reading.shutdown.shifts, reading.shutdown.timeZone).endDay],
    }),
  ]);
  const workOf = new Map(work.rows.map((row) => [row.crewId, row]));
  const qualifiedFor = new Map(qualified.rows.map((row) => [row.personId, row.qualifiedFor]));
  return {
    rows: rows.map(({ crewId, code, company, shift, personIds: members }) => ({
      crewId,
      code,
      company,
      shift,
      persons: members.map((id) => ({ ...names.of(id), qualifiedFor: qualifiedFor.get(id) ?? [] })),
      joints: workOf.get(crewId)?.joints ?? 0,
      methods: workOf.get(crewId)?.methods ?? [],
    })),
    actions: actionsOf(actor, ['crew-listed', 'talk-held'], { shutdownId }),
  };
}
