import fc from 'fast-check';
import pg from 'pg';
import { uuidv7 } from 'uuidv7';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { roleNames } from '../../apps/server/src/platform/database/roles.ts';
import { expectFoldIsProjection } from './support/compare.ts';
import { clients } from './support/random-work.ts';
import { openShutdown, type Shutdown } from './support/shutdown.ts';

let shutdown: Shutdown;
beforeAll(async () => {
  shutdown = await openShutdown();
});
afterAll(() => shutdown.close());

/** A connection of its own that may only read. */
async function asReader<T>(work: (client: pg.Client) => Promise<T>): Promise<T> {
  const client = new pg.Client({ connectionString: shutdown.plant.database.url });
  await client.connect();
  const { rows } = await client.query('SELECT current_database() AS name');
  await client.query(`SET ROLE ${pg.escapeIdentifier(roleNames(rows[0].name).reader)}`);
  try {
    await expect(client.query('DELETE FROM joint')).rejects.toThrow(/permission denied/);
    return await work(client);
  } finally {
    await client.end();
  }
}

it('folds to what the projections say, whatever several people at once did to many joints', async () => {
  const seed = fc.sample(fc.integer(), 1)[0] ?? 0;
  const work = await clients(shutdown, { seed, joints: 24, people: 6, commands: 2500 });
  const read = await asReader((client) => expectFoldIsProjection(client, shutdown.shutdownId));

  const times = new Map<string, number>();
  for (const { eventId } of read.events) times.set(eventId, (times.get(eventId) ?? 0) + 1);
  for (const eventId of work.acknowledged) expect(times.get(eventId), `seed ${seed}`).toBe(1);
  for (const eventId of work.refused) expect(times.get(eventId), `seed ${seed}`).toBeUndefined();
  // The histories went somewhere: most stages were reached, facts waited, and many commands were refused.
  const stages = new Set([...read.joints.values()].flatMap((joint) => joint.makes.map((make) => make.stage)));
  expect(stages.size, `seed ${seed}`).toBeGreaterThan(3);
  expect(work.acknowledged.length, `seed ${seed}`).toBeGreaterThan(500);
  expect(work.refused.length, `seed ${seed}`).toBeGreaterThan(50);
}, 240_000);

it('notices a projection that says something else', async () => {
  const { db } = shutdown.plant;
  const { rows } = await db.query('SELECT joint_id, state FROM joint WHERE shutdown_id = $1 LIMIT 1', [
    shutdown.shutdownId,
  ]);
  const { joint_id, state } = rows[0];
  await db.query('UPDATE joint SET state = $2 WHERE joint_id = $1', [
    joint_id,
    JSON.stringify({ ...state, tag: uuidv7() }),
  ]);
  await expect(asReader((client) => expectFoldIsProjection(client, shutdown.shutdownId))).rejects.toThrow();
});
