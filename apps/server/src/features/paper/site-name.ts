import type { Reading } from '../reading/reading.ts';

/** The site's name, as paper is headed. */
export async function siteName({ db, siteId }: Pick<Reading, 'db' | 'siteId'>): Promise<string> {
  const { rows } = await db.query<{ name: string }>({
    name: 'paper-site-name',
    text: 'SELECT name FROM site WHERE site_id = $1',
    values: [siteId],
  });
  return rows[0]?.name ?? '';
}
