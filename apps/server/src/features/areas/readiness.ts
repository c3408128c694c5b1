import type { AreaProgress, TighteningMethod } from '@seatwell/contract';
import { dayOf, shiftAt } from '@seatwell/workflow';
import { daysAfter, LAPSING_DAYS } from '../reading/days.ts';
import { namesOf } from '../reading/names.ts';
import { crewRefOf, type Places, placeOf } from '../reading/places.ts';
import type { Reading } from '../reading/reading.ts';

type Readiness = AreaProgress['people'];

interface CrewWork {
  readonly areaId: string | null;
  readonly crewId: string;
  readonly method: TighteningMethod | null;
  /** joints with this method that are not tight yet */
  readonly left: number;
}

async function crewWork({ db, siteId, shutdownId }: Reading): Promise<CrewWork[]> {
  const { rows } = await db.query<CrewWork>({
    name: 'crew-work',
    text: `SELECT j.area_id AS "areaId", m.crew_id AS "crewId", p.content->>'method' AS method,
        count(*) FILTER (WHERE m.tight_at IS NULL) AS left
      FROM make m
      JOIN joint j ON j.site_id = m.site_id AND j.shutdown_id = m.shutdown_id AND j.joint_id = m.joint_id AND j.voided IS NULL
      LEFT JOIN procedure_revision p ON p.site_id = m.site_id AND p.procedure_id = m.procedure_id
        AND p.revision = m.procedure_revision
      WHERE m.site_id = $1 AND m.shutdown_id = $2 AND m.crew_id IS NOT NULL AND NOT m.cancelled GROUP BY 1, 2, 3`,
    values: [siteId, shutdownId],
  });
  return rows;
}

interface Valid {
  readonly personId: string;
  readonly qualifiedFor: string;
  readonly validThrough: string;
}

/** The longest validity of each thing that each person is qualified for today, through the shift. */
async function validity({ db, siteId }: Reading, personIds: readonly string[], endDay: string): Promise<Valid[]> {
  const { rows } = await db.query<Valid>({
    name: 'validity',
    text: `SELECT person_id AS "personId", each AS "qualifiedFor", max(valid_through) AS "validThrough"
      FROM qualification, unnest(qualified_for) AS each
      WHERE site_id = $1 AND person_id = ANY($2::uuid[]) AND withdrawn_at IS NULL AND valid_from <= $3::date
        AND valid_through >= $3::date GROUP BY 1, 2 ORDER BY 3, 1, 2`,
    values: [siteId, personIds, endDay],
  });
  return rows;
}

/**
 * The people of the crews that work in each area: in date, lapsing within a week, and missing what the procedures of
 * the joints that are still to be tightened ask for.
 */
export async function readinessByArea(reading: Reading, places: Places): Promise<(areaId: string | null) => Readiness> {
  const { shutdown, now, db, siteId } = reading;
  const work = await crewWork(reading);
  const personsOf = (crewId: string): readonly string[] => placeOf(places.crews, crewId)?.personIds ?? [];
  const everybody = [...new Set(work.flatMap((each) => personsOf(each.crewId)))];
  const shift = shiftAt(now, shutdown.shifts, shutdown.timeZone);
  const [valid, names] = await Promise.all([
    validity(reading, everybody, shift.endDay),
    namesOf(db, siteId, everybody),
  ]);
  const has = new Set(valid.map((each) => `${each.personId} ${each.qualifiedFor}`));
  const lapsesBy = daysAfter(dayOf(now, shutdown.timeZone), LAPSING_DAYS);
  return (areaId) => {
    const own = work.filter((each) => each.areaId === areaId);
    const persons = new Set(own.flatMap((each) => personsOf(each.crewId)));
    const missing = own.flatMap(({ crewId, method, left }) => {
      const crew = crewRefOf(places, crewId);
      if (!method || left === 0 || !crew) return [];
      return personsOf(crewId)
        .filter((personId) => !has.has(`${personId} ${method}`))
        .map((personId) => ({ person: names.of(personId), crew, method, plannedJoints: left }));
    });
    const lacking = new Set(missing.map((each) => each.person.personId));
    return {
      persons: persons.size,
      inDate: [...persons].filter((id) => !lacking.has(id) && valid.some((each) => each.personId === id)).length,
      lapsing: valid
        .filter((each) => persons.has(each.personId) && each.validThrough <= lapsesBy)
        .map(({ personId, qualifiedFor, validThrough }) => ({
          person: names.of(personId),
          qualifiedFor,
          validThrough,
        })),
      missing,
    };
  };
}
