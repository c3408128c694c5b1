import type { TodayAnswer } from '@seatwell/contract';
import { dayOf, type ShiftAt } from '@seatwell/workflow';
import { namesOf } from '../reading/names.ts';
import { crewRefOf, type Places, placeOf } from '../reading/places.ts';
import type { Reading } from '../reading/reading.ts';

type Lapse = TodayAnswer['lapses'][number];

const HOUR_MS = 3_600_000;

/** Tools whose calibration does not outlast the shift, and provisional ones that must be cleared in it. */
async function toolLapses({ db, siteId, shutdown, now }: Reading, shift: ShiftAt): Promise<Lapse[]> {
  const { rows } = await db.query<{
    toolId: string;
    tag: string;
    validThrough: string;
    uncleared: boolean;
    recordedAt: Date;
  }>({
    name: 'tool-lapses',
    text: `SELECT t.tool_id AS "toolId", t.tag, c.valid_through AS "validThrough",
        c.provisional AND c.cleared_at IS NULL AS uncleared, c.recorded_at AS "recordedAt"
      FROM tool t CROSS JOIN LATERAL (SELECT * FROM calibration c WHERE c.site_id = t.site_id AND c.tool_id = t.tool_id
        AND c.calibrated_on <= $2::date ORDER BY c.valid_through DESC, c.calibration_id LIMIT 1) c
      WHERE t.site_id = $1 AND t.failed_on IS NULL AND c.valid_through >= $2::date ORDER BY t.tag COLLATE "C"`,
    values: [siteId, dayOf(now, shutdown.timeZone)],
  });
  return rows.flatMap(({ toolId, tag, validThrough, uncleared, recordedAt }): Lapse[] => {
    const clearBy = recordedAt.getTime() + shutdown.settings.provisionalToolCleared_h * HOUR_MS;
    return [
      ...(validThrough <= shift.endDay ? [{ what: 'calibration' as const, toolId, tag, validThrough }] : []),
      ...(uncleared && clearBy <= Date.parse(shift.end)
        ? [{ what: 'provisional-tool' as const, toolId, tag, clearBy: new Date(clearBy).toISOString() }]
        : []),
    ];
  });
}

/** People of the crews with a qualification that ends with this shift, and no other that goes on. */
async function qualificationLapses(reading: Reading, shift: ShiftAt, places: Places): Promise<Lapse[]> {
  const { db, siteId, shutdown, now } = reading;
  const personIds = [...new Set([...places.crews.values()].flatMap((crew) => crew.personIds))];
  const { rows } = await db.query<{ personId: string; qualifiedFor: string[]; validThrough: string }>({
    name: 'qualification-lapses',
    text: `SELECT "personId", array_agg("for" ORDER BY "for") AS "qualifiedFor", last AS "validThrough"
      FROM (SELECT person_id AS "personId", each AS "for", max(valid_through) AS last
        FROM qualification, unnest(qualified_for) AS each
        WHERE site_id = $1 AND person_id = ANY($2::uuid[]) AND withdrawn_at IS NULL AND valid_from <= $4::date
        GROUP BY 1, 2) held
      WHERE last >= $3::date AND last <= $4::date GROUP BY 1, 3 ORDER BY 3, 1`,
    values: [siteId, personIds, dayOf(now, shutdown.timeZone), shift.endDay],
  });
  const names = await namesOf(
    db,
    siteId,
    rows.map((row) => row.personId),
  );
  return rows.map(({ personId, qualifiedFor, validThrough }) => ({
    what: 'qualification',
    person: names.of(personId),
    qualifiedFor,
    validThrough,
  }));
}

/** Crews with joints left to tighten under a procedure revision that somebody of them attended no talk on. */
async function talksMissing({ db, siteId, shutdownId }: Reading, places: Places): Promise<Lapse[]> {
  const { rows } = await db.query<{
    procedureId: string;
    revision: number;
    code: string;
    crewId: string;
    attended: string[];
  }>({
    name: 'talks-missing',
    text: `SELECT w.procedure_id AS "procedureId", w.revision, p.code, w.crew_id AS "crewId",
        coalesce((SELECT array_agg(DISTINCT a) FROM talk t, unnest(t.attendees) AS a WHERE t.site_id = $1
          AND t.shutdown_id = $2 AND t.procedure_id = w.procedure_id AND t.revision = w.revision), '{}') AS attended
      FROM (SELECT DISTINCT m.procedure_id, m.procedure_revision AS revision, m.crew_id FROM make m
        WHERE m.site_id = $1 AND m.shutdown_id = $2 AND m.crew_id IS NOT NULL AND m.procedure_id IS NOT NULL
          AND NOT m.cancelled AND m.tight_at IS NULL AND m.current) w
      JOIN procedure_revision p ON p.site_id = $1 AND p.procedure_id = w.procedure_id AND p.revision = w.revision
      ORDER BY p.code COLLATE "C", w.revision, w.crew_id`,
    values: [siteId, shutdownId],
  });
  const missingOf = (row: { crewId: string; attended: string[] }) =>
    (placeOf(places.crews, row.crewId)?.personIds ?? []).filter((personId) => !row.attended.includes(personId));
  const names = await namesOf(
    db,
    siteId,
    rows.flatMap((row) => missingOf(row)),
  );
  return rows.flatMap((row): Lapse[] => {
    const missing = missingOf(row);
    const crew = crewRefOf(places, row.crewId);
    if (missing.length === 0 || !crew) return [];
    const { procedureId, revision, code } = row;
    return [{ what: 'talk', procedureId, revision, code, crew, missing: names.all(missing) }];
  });
}

/** What will not last through this shift. */
export async function lapsesInShift(reading: Reading, shift: ShiftAt, places: Places): Promise<Lapse[]> {
  const found = await Promise.all([
    toolLapses(reading, shift),
    qualificationLapses(reading, shift, places),
    talksMissing(reading, places),
  ]);
  return found.flat();
}
