import type { PackFacts } from '@seatwell/workflow';
import type { Database, Transaction } from '../../platform/database/pool.ts';

const tags = async (tx: Database | Transaction, text: string, values: readonly unknown[]): Promise<string[]> =>
  (await tx.query<{ tag: string }>(text, [...values])).rows.map((row) => row.tag);

/** A pack as the rules see it: its plan, release and readings, and what still stands in the way of pressure. */
export async function loadPackFacts(
  tx: Database | Transaction,
  siteId: string,
  shutdownId: string,
  packId: string,
): Promise<PackFacts | null> {
  const key = [siteId, shutdownId, packId] as const;
  const { rows } = await tx.query<{
    number: string;
    plan: { pressure_MPa: number; hold_min: number; way: string };
    released: PackFacts['released'];
    readings: PackFacts['readings'];
  }>(
    'SELECT number, plan, released, readings FROM test_pack WHERE site_id = $1 AND shutdown_id = $2 AND pack_id = $3',
    [...key],
  );
  const pack = rows[0];
  if (!pack) return null;
  const members = `FROM make_pack mp
    JOIN make m ON m.site_id = mp.site_id AND m.shutdown_id = mp.shutdown_id AND m.make_id = mp.make_id AND NOT m.cancelled
    JOIN joint j ON j.site_id = m.site_id AND j.shutdown_id = m.shutdown_id AND j.joint_id = m.joint_id AND j.voided IS NULL
    WHERE mp.site_id = $1 AND mp.shutdown_id = $2 AND mp.pack_id = $3`;
  return {
    packId,
    number: pack.number,
    pressure_MPa: pack.plan.pressure_MPa,
    hold_min: pack.plan.hold_min,
    way: pack.plan.way,
    released: pack.released,
    relaxationDue: await tags(
      tx,
      `SELECT DISTINCT j.tag ${members} AND m.relaxation_due_at IS NOT NULL ORDER BY j.tag`,
      key,
    ),
    unclosedA: await tags(
      tx,
      `SELECT p.text AS tag FROM punch_item p WHERE p.site_id = $1 AND p.shutdown_id = $2 AND p.category = 'A'
         AND p.closed_at IS NULL AND (p.pack_id = $3 OR p.joint_id IN (SELECT mp.joint_id ${members} AND mp.role <> 'reinstated'))
       ORDER BY p.raised_at`,
      key,
    ),
    // The members first: a planner without statistics would compare the history of every joint with every tool.
    provisionalTools: await tags(
      tx,
      `WITH member AS MATERIALIZED (SELECT j.tag, m.make_id, j.state->'makes' AS makes ${members}),
         tool AS MATERIALIZED (SELECT DISTINCT tool_id FROM calibration WHERE site_id = $1 AND provisional AND cleared_at IS NULL)
       SELECT DISTINCT tag FROM member JOIN tool ON makes @> jsonb_build_array(jsonb_build_object('makeId', make_id,
         'provisionalTools', jsonb_build_array(tool_id))) ORDER BY tag`,
      key,
    ),
    readings: pack.readings,
  };
}
