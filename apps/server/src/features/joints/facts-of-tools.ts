import type { ToolFacts } from '@seatwell/workflow';
import type { Database, Transaction } from '../../platform/database/pool.ts';

/** Tools with all their calibrations, by id; a tool that the site does not have is left out. */
export async function loadToolFacts(
  tx: Database | Transaction,
  siteId: string,
  toolIds: readonly string[],
): Promise<Record<string, ToolFacts>> {
  const { rows } = await tx.query<{ tool: ToolFacts }>({
    name: 'facts-of-tools',
    text: `SELECT jsonb_build_object('toolId', t.tool_id, 'tag', t.tag, 'kind', t.kind, 'scaleMinimum', t.scale_minimum,
        'scaleMaximum', t.scale_maximum, 'scaleUnit', t.scale_unit,
        'hydraulicArea_mm2', t.hydraulic_area_mm2, 'failedOn', t.failed_on,
        'calibrations', coalesce((SELECT jsonb_agg(jsonb_build_object('calibrationId', c.calibration_id,
          'calibratedOn', c.calibrated_on, 'validThrough', c.valid_through, 'provisional', c.provisional,
          'clearedAt', c.cleared_at, 'hasCertificate', c.certificate IS NOT NULL, 'recordedAt', c.recorded_at)
          ORDER BY c.calibrated_on, c.calibration_id)
          FROM calibration c WHERE c.site_id = $1 AND c.tool_id = t.tool_id), '[]')) AS tool
      FROM tool t WHERE t.site_id = $1 AND t.tool_id = ANY($2::uuid[])`,
    values: [siteId, toolIds],
  });
  return Object.fromEntries(rows.map(({ tool }) => [tool.toolId, tool]));
}
