import pg from 'pg';
import { prepareQueue } from '../jobs/queue.ts';
import { migrate } from './migrate.ts';
import { type PreparedRoles, prepareRoles } from './roles.ts';

/** Any number that nothing else locks in this database. */
const START_LOCK = 43_100_001;

/**
 * Brings the database to this version: migrations, roles, the queue's tables. Replicas that start together go one
 * after the other; those that come later find everything done.
 * @param ownerUrl connects as the owner of the schema
 */
export async function prepareDatabase(ownerUrl: string): Promise<PreparedRoles> {
  const client = new pg.Client({ connectionString: ownerUrl });
  await client.connect();
  try {
    await client.query('SELECT pg_advisory_lock($1)', [START_LOCK]);
    await migrate(ownerUrl);
    const roles = await prepareRoles(client);
    await prepareQueue(ownerUrl, roles.appRole);
    return roles;
  } finally {
    // Ending the session frees the lock.
    await client.end();
  }
}
