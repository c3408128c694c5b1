import { Problem } from '../../../platform/errors/problem.ts';
import type { SheetReading } from './load-sources.ts';
import type { SheetPump } from './sheet-source.ts';

interface ToolRow {
  readonly tag: string;
  readonly kind: string;
  readonly scale_division: number | null;
  readonly failed_on: string | null;
  readonly pairs: SheetPump['pairs'] | null;
}

async function toolOf({ db, siteId, now }: SheetReading, toolId: string): Promise<ToolRow> {
  const { rows } = await db.query<ToolRow>({
    name: 'sheet-tool',
    text: `SELECT t.tag, t.kind, t.scale_division, t.failed_on,
        (SELECT c.pairs FROM calibration c WHERE c.site_id = t.site_id AND c.tool_id = t.tool_id AND NOT c.provisional
          AND c.calibrated_on <= $3::date AND c.valid_through >= $3::date ORDER BY c.calibrated_on DESC LIMIT 1) AS pairs
      FROM tool t WHERE t.site_id = $1 AND t.tool_id = $2`,
    values: [siteId, toolId, now],
  });
  const tool = rows[0];
  if (!tool) throw new Problem('not-found', `This site has no tool ${toolId}.`);
  if (tool.failed_on !== null) throw new Problem('bad-input', `${tool.tag} has failed. Choose another tool.`);
  if (tool.pairs === null)
    throw new Problem('bad-input', `${tool.tag} has no calibration in force today. Choose another tool.`);
  return tool;
}

/**
 * The hydraulic wrench and the gauge that the pump pressures are printed for.
 * @throws Problem `not-found`, or `bad-input` for a tool that could not be set by: failed, out of calibration, without
 *   pressure-torque pairs, a gauge without its division
 */
export async function chosenPump(reading: SheetReading, toolId: string, gaugeId: string): Promise<SheetPump> {
  const [tool, gauge] = [await toolOf(reading, toolId), await toolOf(reading, gaugeId)];
  if (tool.kind !== 'hydraulic-wrench' || (tool.pairs?.length ?? 0) < 2)
    throw new Problem(
      'bad-input',
      `${tool.tag} has no pressure-torque pairs of a hydraulic wrench on its certificate.`,
    );
  if (gauge.kind !== 'pressure-gauge' || gauge.scale_division === null)
    throw new Problem('bad-input', `${gauge.tag} is no pressure gauge with a known division.`);
  return {
    toolTag: tool.tag,
    gaugeTag: gauge.tag,
    pairs: tool.pairs ?? [],
    gaugeDivision_MPa: gauge.scale_division,
  };
}
