import type { TodayAnswer } from '@seatwell/contract';
import type { ShiftAt } from '@seatwell/workflow';
import { type Places, placeOf } from '../reading/places.ts';
import type { Reading } from '../reading/reading.ts';

/**
 * Makes opened, made tight and accepted at their check in a shift, by area, each once. What is in review does not
 * count, and what was revoked no longer does.
 */
export async function lastShiftByArea(
  { db, siteId, shutdownId }: Reading,
  shift: ShiftAt,
  places: Places,
): Promise<TodayAnswer['lastShiftByArea']> {
  const { rows } = await db.query<{ areaId: string | null; opened: number; tight: number; checked: number }>({
    name: 'last-shift-by-area',
    // Work is never recorded before it is done, so the index on the time of recording finds it.
    text: `WITH own AS (
        SELECT e.event_id, e.type, e.joint_id, e.make_id, e.payload FROM event e
          WHERE e.site_id = $1 AND e.stream_id = $2 AND e.recorded_at >= $3 AND e.work_time >= $3 AND e.work_time < $4
            AND e.type IN ('opened', 'final-round-recorded', 'checked') AND e.review_codes = '{}' AND e.joint_id IS NOT NULL
        UNION ALL
        SELECT e.event_id, e.type, r.joint_id, r.make_id, r.payload FROM event e
          JOIN event_row r ON r.site_id = e.site_id AND r.event_id = e.event_id
          WHERE e.site_id = $1 AND e.stream_id = $2 AND e.recorded_at >= $3 AND e.work_time >= $3 AND e.work_time < $4
            AND e.type = 'checked' AND e.joint_id IS NULL)
      SELECT j.area_id AS "areaId",
        count(DISTINCT own.make_id) FILTER (WHERE own.type = 'opened') AS opened,
        count(DISTINCT own.make_id) FILTER (WHERE own.type = 'final-round-recorded' AND own.payload->>'nutMoved' = 'false') AS tight,
        count(DISTINCT own.make_id) FILTER (WHERE own.type = 'checked' AND own.payload->>'outcome' = 'accepted') AS checked
      FROM own JOIN joint j ON j.site_id = $1 AND j.shutdown_id = $2 AND j.joint_id = own.joint_id AND j.voided IS NULL
      WHERE NOT EXISTS (SELECT FROM event a WHERE a.site_id = $1 AND a.amends = own.event_id AND a.type = 'revoked'
        AND a.joint_id = own.joint_id)
      GROUP BY j.area_id`,
    values: [siteId, shutdownId, shift.start, shift.end],
  });
  const counts = new Map(rows.map((row) => [row.areaId, row]));
  const row = (areaId: string | null) => {
    const found = counts.get(areaId);
    return {
      area: placeOf(places.areas, areaId),
      opened: found?.opened ?? 0,
      tight: found?.tight ?? 0,
      checked: found?.checked ?? 0,
    };
  };
  return [...[...places.areas.keys()].map(row), ...(counts.has(null) ? [row(null)] : [])];
}
