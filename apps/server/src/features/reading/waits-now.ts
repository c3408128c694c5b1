import type { Role } from '@seatwell/contract';
import { Values, waitsNowSql } from '../joints/register-filters.ts';
import type { Reading } from './reading.ts';

export interface WaitCount {
  readonly areaId: string | null;
  readonly waitsFor: string;
  readonly by: Role | null;
  readonly count: number;
}

/** How many joints of each area wait for what, and for whom, at this moment. */
export async function waitCounts(reading: Reading): Promise<WaitCount[]> {
  const values = new Values();
  const effective = waitsNowSql(reading, values);
  const { rows } = await reading.db.query<WaitCount>(
    `SELECT "areaId", "waitsFor", CASE WHEN "waitsFor" = stored THEN by ELSE 'technician' END AS by, count(*) AS count
     FROM (SELECT j.area_id AS "areaId", ${effective} AS "waitsFor", j.waits_for AS stored, j.waits_for_data->>'by' AS by
       FROM joint j WHERE j.site_id = ${values.add(reading.siteId)} AND j.shutdown_id = ${values.add(reading.shutdownId)}
         AND j.voided IS NULL AND j.waits_for <> 'nothing') waits
     GROUP BY 1, 2, 3`,
    values.list,
  );
  return rows;
}
