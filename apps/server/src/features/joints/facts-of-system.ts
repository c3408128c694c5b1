import type { SystemFacts } from '@seatwell/workflow';
import type { Database, Transaction } from '../../platform/database/pool.ts';

/** A system as the hand-over rules see it: what must be zero, by name. */
export async function loadSystemFacts(
  tx: Database | Transaction,
  siteId: string,
  shutdownId: string,
  systemId: string,
): Promise<SystemFacts | null> {
  const { rows } = await tx.query<Omit<SystemFacts, 'systemId'>>(
    `WITH own AS (
       SELECT joint_id, tag, stage, work_scope, make_count FROM joint
       WHERE site_id = $1 AND shutdown_id = $2 AND system_id = $3 AND voided IS NULL),
     punch AS (
       SELECT p.category, p.text FROM punch_item p
       WHERE p.site_id = $1 AND p.shutdown_id = $2 AND p.closed_at IS NULL
         AND (p.system_id = $3 OR p.joint_id IN (SELECT joint_id FROM own)))
     SELECT s.code,
       coalesce((SELECT array_agg(tag ORDER BY tag) FROM own WHERE make_count > 0 AND NOT (stage IN ('proven', 'handed-over')
         OR (stage = 'checked' AND work_scope IN ('start-up-retorque', 'live-tightening', 'hot-bolting')))), '{}') AS "notProven",
       coalesce((SELECT array_agg(b.number ORDER BY b.number) FROM blind b WHERE b.site_id = $1 AND b.shutdown_id = $2
         AND b.in_at IS NOT NULL AND b.out_at IS NULL AND b.type <> 'spectacle' AND b.joint_id IN (SELECT joint_id FROM own)), '{}')
         AS "temporaryBlindsIn",
       coalesce((SELECT array_agg(DISTINCT own.tag) FROM make m JOIN own ON own.joint_id = m.joint_id
         WHERE m.site_id = $1 AND m.shutdown_id = $2 AND m.temporary_fitting), '{}') AS "temporaryFittings",
       coalesce((SELECT array_agg(text) FROM punch WHERE category = 'A'), '{}') AS "unclosedA",
       coalesce((SELECT array_agg(text) FROM punch WHERE category = 'B'), '{}') AS "unclosedB"
     FROM system s WHERE s.site_id = $1 AND s.shutdown_id = $2 AND s.system_id = $3`,
    [siteId, shutdownId, systemId],
  );
  const system = rows[0];
  return system ? { systemId, ...system } : null;
}
