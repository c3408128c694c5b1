import type { Database } from '../../platform/database/pool.ts';

/** The site's time zone: what is valid through a day is so to the end of that day there. */
export async function siteZone(db: Database, siteId: string): Promise<string> {
  const { rows } = await db.query<{ time_zone: string }>({
    name: 'site-zone',
    text: 'SELECT time_zone FROM site WHERE site_id = $1',
    values: [siteId],
  });
  if (!rows[0]) throw new Error(`There is no site ${siteId}.`);
  return rows[0].time_zone;
}
