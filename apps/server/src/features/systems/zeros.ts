import type { SystemsAnswer } from '@seatwell/contract';
import type { Reading } from '../reading/reading.ts';

type Zeros = SystemsAnswer['rows'][number]['zeros'];

const NOTHING: Zeros = { notProven: 0, temporaryBlindsIn: 0, temporaryFittings: 0, unclosedA: 0, unclosedB: 0 };

/** What must be zero before hand-over, counted for every system at once, by the same conditions as the hand-over rules. */
export async function zerosOfSystems({ db, siteId, shutdownId }: Reading): Promise<(systemId: string) => Zeros> {
  const { rows } = await db.query<Zeros & { systemId: string }>({
    name: 'zeros-of-systems',
    text: `WITH own AS (
        SELECT system_id, joint_id, stage, work_scope, make_count, flags FROM joint
        WHERE site_id = $1 AND shutdown_id = $2 AND system_id IS NOT NULL AND voided IS NULL),
      joints AS (
        SELECT system_id,
          count(*) FILTER (WHERE make_count > 0 AND NOT (stage IN ('proven', 'handed-over')
            OR (stage = 'checked' AND work_scope IN ('start-up-retorque', 'live-tightening', 'hot-bolting')))) AS not_proven,
          count(*) FILTER (WHERE 'temporary-fitting' = ANY(flags)) AS temporary_fittings
        FROM own GROUP BY system_id),
      blinds AS (
        SELECT own.system_id, count(*) AS blinds_in FROM blind b JOIN own ON own.joint_id = b.joint_id
        WHERE b.site_id = $1 AND b.shutdown_id = $2 AND b.in_at IS NOT NULL AND b.out_at IS NULL AND b.type <> 'spectacle'
        GROUP BY own.system_id),
      punch AS (
        SELECT coalesce(p.system_id, own.system_id) AS system_id, count(*) FILTER (WHERE p.category = 'A') AS a,
          count(*) FILTER (WHERE p.category = 'B') AS b
        FROM punch_item p LEFT JOIN own ON own.joint_id = p.joint_id
        WHERE p.site_id = $1 AND p.shutdown_id = $2 AND p.closed_at IS NULL GROUP BY 1)
      SELECT s.system_id AS "systemId", coalesce(not_proven, 0) AS "notProven", coalesce(blinds_in, 0) AS "temporaryBlindsIn",
        coalesce(temporary_fittings, 0) AS "temporaryFittings", coalesce(a, 0) AS "unclosedA", coalesce(b, 0) AS "unclosedB"
      FROM system s LEFT JOIN joints USING (system_id) LEFT JOIN blinds USING (system_id) LEFT JOIN punch USING (system_id)
      WHERE s.site_id = $1 AND s.shutdown_id = $2`,
    values: [siteId, shutdownId],
  });
  const zeros = new Map(rows.map(({ systemId, ...counts }) => [systemId, counts]));
  return (systemId) => zeros.get(systemId) ?? NOTHING;
}
