import type { ToolJointsAnswer } from '@seatwell/contract';
import { failedTools, type JointState } from '@seatwell/workflow';
import { Problem } from '../../platform/errors/problem.ts';
import { loadToolFacts } from '../joints/facts-of-tools.ts';
import { byText } from '../reading/by-text.ts';
import type { SiteReading } from '../reading/reading.ts';

/**
 * `GET /tools/:toolId/joints`: the joints of every shutdown that a tool found wrong tightened since its last good
 * calibration. None while the tool stands in good order.
 * @throws Problem `not-found` when the site has no such tool
 */
export async function toolJoints({ db, siteId }: SiteReading, toolId: string): Promise<ToolJointsAnswer> {
  const tools = await loadToolFacts(db, siteId, [toolId]);
  const tool = tools[toolId];
  if (!tool) throw new Problem('not-found', 'There is no such tool at this site.');
  if (tool.failedOn === null) return { rows: [] };
  const { rows } = await db.query<{ shutdownId: string; shutdown: string; state: JointState }>({
    name: 'joints-of-tool',
    text: `SELECT j.shutdown_id AS "shutdownId", s.name AS shutdown, j.state FROM joint j
      JOIN shutdown s ON s.site_id = j.site_id AND s.shutdown_id = j.shutdown_id
      WHERE j.site_id = $1 AND (j.shutdown_id, j.joint_id) IN (
        SELECT m.shutdown_id, m.joint_id FROM make m WHERE m.site_id = $1 AND m.tools_used @> ARRAY[$2::uuid])`,
    values: [siteId, toolId],
  });
  return {
    rows: rows
      .flatMap(({ state, ...shutdown }) =>
        state.makes
          .filter((make) => failedTools(make, tools).includes(toolId))
          .map((make) => ({
            ...shutdown,
            jointId: state.jointId,
            tag: state.tag,
            makeNumber: make.number,
            stage: make.stage,
          })),
      )
      .sort(byText((row) => row.tag)),
  };
}
