import { type AreaProgress, type Role, STAGES, type Stage, WORK_SCOPES } from '@seatwell/contract';
import { passesStage } from '@seatwell/workflow';
import type { Reading } from '../reading/reading.ts';
import type { RoleHolders } from '../reading/role-holders.ts';
import type { WaitCount } from '../reading/waits-now.ts';

type SignOff = AreaProgress['signOffs'][number];

const GIVEN_AT: readonly { what: SignOff['what']; stage: Stage }[] = [
  { what: 'release', stage: 'released' },
  { what: 'check', stage: 'checked' },
  { what: 'proof', stage: 'proven' },
  { what: 'hand-over', stage: 'handed-over' },
];

const ORDER: readonly SignOff['what'][] = ['release', 'check', 'witness', 'proof', 'hand-over'];

/** What waits under another name than its sign-off: a hand-over has two signatures. */
const WAITS: { readonly [K in SignOff['what']]?: readonly string[] } = { 'hand-over': ['hand-over', 'taking-over'] };

/** Sign-offs that the joints of each area have, counted by the stage that stands on them. */
export async function signOffsGiven(reading: Reading): Promise<Map<string | null, Record<SignOff['what'], number>>> {
  const { siteId, shutdownId, shutdown } = reading;
  const demanded = Object.entries(shutdown.settings.criticalities).filter(([, demand]) => demand.witnessPoint);
  const filters = GIVEN_AT.map(({ what, stage }) => {
    const scopes = WORK_SCOPES.filter((scope) => passesStage(scope, stage));
    return `count(*) FILTER (WHERE stage_rank >= ${STAGES.indexOf(stage)} AND work_scope IN (${scopes.map((scope) => `'${scope}'`).join(', ')})) AS "${what}"`;
  });
  const { rows } = await reading.db.query<{ areaId: string | null } & Record<SignOff['what'], number>>({
    name: 'sign-offs-given',
    text: `SELECT area_id AS "areaId", ${filters.join(', ')},
        count(*) FILTER (WHERE criticality = ANY($3::text[]) AND stage_rank >= ${STAGES.indexOf('part-tight')}
          AND jsonb_path_exists(state, '$.makes[*] ? (@.makeId == $make).witnessed[*] ? (@ == "tightening")',
            jsonb_build_object('make', make_id))) AS witness
      FROM joint WHERE site_id = $1 AND shutdown_id = $2 AND voided IS NULL GROUP BY area_id`,
    values: [siteId, shutdownId, demanded.map(([criticality]) => criticality)],
  });
  return new Map(rows.map(({ areaId, ...given }) => [areaId, given]));
}

/** Given and waiting side by side, and for whom. */
export function signOffsOf(
  areaId: string | null,
  given: Readonly<Record<SignOff['what'], number>> | undefined,
  waits: readonly WaitCount[],
  holders: RoleHolders,
): SignOff[] {
  return ORDER.map((what) => {
    const own = waits.filter(
      (wait) => wait.areaId === areaId && (WAITS[what] ?? [what]).includes(wait.waitsFor) && wait.by !== null,
    );
    return {
      what,
      given: given?.[what] ?? 0,
      waiting: own.reduce((sum, wait) => sum + wait.count, 0),
      by: own.map(({ by, count }) => ({ role: by as Role, count, persons: holders.of(by, { areaId }) })),
    };
  });
}
