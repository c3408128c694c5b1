import type { Retention } from '@seatwell/contract';
import type { Database } from '../database/pool.ts';

/** A session lasts a long shift; addresses help to look into a bad night; nobody is offered for erasing by default. */
const DEFAULTS: Retention = { sessionHours: 14, signInDays: 30, leaverDays: null };

/** How long the site keeps traces of people; what it has not set has its default. */
export async function retentionOf(db: Database, siteId: string): Promise<Retention> {
  const { rows } = await db.query<{ retention: Partial<Retention> }>({
    name: 'retention-of',
    text: 'SELECT retention FROM site WHERE site_id = $1',
    values: [siteId],
  });
  return { ...DEFAULTS, ...rows[0]?.retention };
}
