import { randomUUID } from 'node:crypto';
import pg from 'pg';
import { uuidv7 } from 'uuidv7';
import { type ListedJoint, listJoint } from '../api/support/shutdown.ts';
import { openBenchShutdown, send } from './support/bench-shutdown.ts';
import { load, percentile, rounded, summary } from './support/statistics.ts';

const SECONDS = 8;
const JOINTS = 240;

/**
 * A command on a joint (a hold is placed): joint locked, folded and judged, projected, head row locked last, event
 * appended. Beside it the bare statements with the head row on the same database, from as many clients.
 */
export async function bench(): Promise<object> {
  const plant = await openBenchShutdown();
  const { shutdown, url, cookie, databaseUrl } = plant;
  shutdown.plant.now = new Date();
  const joints: ListedJoint[] = [];
  for (let index = 0; index < JOINTS; index += 1) joints.push(await listJoint(shutdown));
  const address = `${url}/api/v1/shutdowns/${shutdown.shutdownId}/commands/hold-placed`;
  const command = (client: number, round: number) => {
    const joint = joints[(client + round * 7) % joints.length];
    if (!joint) throw new Error('The bench has no joints.');
    return send(address, cookie, 'POST', {
      eventId: uuidv7(),
      v: 1,
      subjectId: joint.jointId,
      deviceTime: new Date().toISOString(),
      // One hold a joint, placed again and again, so that the state does not grow while it is measured.
      payload: { holdId: joint.makeId, reason: 'bench', releasedBy: 'coordinator' },
    });
  };
  const pool = new pg.Pool({ connectionString: databaseUrl, max: 20 });
  const bare = await bareStatements(
    pool,
    shutdown.shutdownId,
    joints.map((joint) => joint.jointId),
  );
  const result: Record<string, unknown> = {};
  for (const clients of [20, 200]) {
    await load(clients, 2, async (client, round) => void (await command(client, round)));
    const measured = await load(clients, SECONDS, async (client, round) => void (await command(client, round)));
    const floor = await load(clients, SECONDS, bare);
    result[`clients${clients}`] = {
      command: summary(measured.times_ms, measured.seconds),
      bareSql: summary(floor.times_ms, floor.seconds),
      ratio_p50: rounded(percentile(measured.times_ms, 0.5) / percentile(floor.times_ms, 0.5)),
      ratio_p95: rounded(percentile(measured.times_ms, 0.95) / percentile(floor.times_ms, 0.95)),
    };
  }
  await pool.end();
  await plant.close();
  return result;
}

/** Lock joint, update it, lock the head, insert an event of the same size, move the head: six round trips. */
async function bareStatements(pool: pg.Pool, shutdownId: string, jointIds: readonly string[]) {
  const sample = await pool.query('SELECT * FROM event WHERE stream_id = $1 ORDER BY sequence DESC LIMIT 1', [
    shutdownId,
  ]);
  const event = sample.rows[0];
  await pool.query(`CREATE TABLE bare_head (stream_id uuid PRIMARY KEY, sequence bigint, frontier bytea[], root bytea);
    CREATE TABLE bare_joint (joint_id uuid PRIMARY KEY, version int, state jsonb);
    CREATE TABLE bare_event (stream_id uuid, sequence bigint, event_id uuid UNIQUE, joint_id uuid, payload jsonb,
      evidence jsonb, canonical bytea, leaf bytea, response jsonb, PRIMARY KEY (stream_id, sequence))`);
  await pool.query('INSERT INTO bare_head SELECT stream_id, 0, frontier, root FROM stream_head WHERE stream_id = $1', [
    shutdownId,
  ]);
  await pool.query(
    'INSERT INTO bare_joint SELECT joint_id, version, state FROM joint WHERE joint_id = ANY($1::uuid[])',
    [jointIds],
  );
  return async (client: number, round: number): Promise<void> => {
    const jointId = jointIds[(client + round * 7) % jointIds.length];
    const tx = await pool.connect();
    try {
      await tx.query('BEGIN');
      const { rows } = await tx.query({
        name: 'bare-lock',
        text: 'SELECT state FROM bare_joint WHERE joint_id = $1 FOR UPDATE',
        values: [jointId],
      });
      await tx.query({
        name: 'bare-update',
        text: 'UPDATE bare_joint SET version = version + 1, state = $2 WHERE joint_id = $1',
        values: [jointId, JSON.stringify(rows[0].state)],
      });
      const head = await tx.query({
        name: 'bare-head',
        text: 'SELECT sequence, frontier FROM bare_head WHERE stream_id = $1 FOR UPDATE',
        values: [shutdownId],
      });
      await tx.query({
        name: 'bare-append',
        text: `WITH head AS (UPDATE bare_head SET sequence = sequence + 1, root = $8 WHERE stream_id = $1)
          INSERT INTO bare_event VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9)`,
        values: [
          shutdownId,
          Number(head.rows[0].sequence) + 1,
          randomUUID(),
          jointId,
          JSON.stringify(event.payload),
          JSON.stringify(event.evidence),
          event.canonical,
          event.leaf,
          JSON.stringify(event.response),
        ],
      });
      await tx.query('COMMIT');
    } finally {
      tx.release();
    }
  };
}
