import type { TodayAnswer } from '@seatwell/contract';
import { dayOf, type JointState, temporaryFittingOf } from '@seatwell/workflow';
import type { Reading } from '../reading/reading.ts';

/** What is in the plant and must not stay: blinds, temporary gaskets and bolts, open ends. */
export async function stillIn({ db, siteId, shutdownId, shutdown, now }: Reading): Promise<TodayAnswer['stillIn']> {
  const [blinds, fittings, ends] = await Promise.all([
    db.query<{ blindsIn: number; blindsOverdue: number }>({
      name: 'still-in-blinds',
      text: `SELECT count(*) AS "blindsIn", count(*) FILTER (WHERE out_by < $3::date) AS "blindsOverdue" FROM blind
        WHERE site_id = $1 AND shutdown_id = $2 AND in_at IS NOT NULL AND out_at IS NULL AND type <> 'spectacle'`,
      values: [siteId, shutdownId, dayOf(now, shutdown.timeZone)],
    }),
    db.query<{ state: JointState }>({
      name: 'still-in-fittings',
      text: `SELECT state FROM joint WHERE site_id = $1 AND shutdown_id = $2 AND voided IS NULL
        AND flags @> ARRAY['temporary-fitting']`,
      values: [siteId, shutdownId],
    }),
    db.query<{ openEnds: number; openEndsUncovered: number }>({
      name: 'still-in-ends',
      text: `SELECT count(*) AS "openEnds", count(*) FILTER (WHERE NOT covered) AS "openEndsUncovered"
        FROM (SELECT coalesce((SELECT (e.payload->>'openEndsCovered')::boolean FROM event e
            WHERE e.site_id = j.site_id AND e.joint_id = j.joint_id AND e.type = 'opened'
            ORDER BY e.sequence DESC LIMIT 1), false) AS covered
          FROM joint j WHERE j.site_id = $1 AND j.shutdown_id = $2 AND j.voided IS NULL
            AND j.stage IN ('open', 'faces-accepted') AND j.work_scope <> 'new') ends`,
      values: [siteId, shutdownId],
    }),
  ]);
  const temporary = fittings.rows.map(({ state }) => temporaryFittingOf(state));
  return {
    ...(blinds.rows[0] ?? { blindsIn: 0, blindsOverdue: 0 }),
    temporaryGaskets: temporary.filter((fitting) => fitting?.gasket).length,
    temporaryBolts: temporary.filter((fitting) => fitting?.bolts).length,
    ...(ends.rows[0] ?? { openEnds: 0, openEndsUncovered: 0 }),
  };
}
